package rules

import (
	"strings"
	"testing"
)

// apart are rows that a row of what is not known does not stand for, and why.
var apart = map[string]string{
	"thread-finishes/stainless-dry":       "of stainless bolts, whose advice asks for a finish of stainless (finish-of-steel of bolt-preload)",
	"thread-finishes/not-known-any-metal": "of bolts that may be stainless; the other row is of steel",
}

// usualOf are usual values of a metal that nobody told, and the table of the metals.
var usualOf = map[string]struct{ calculation, column, table string }{
	"shaft-modulus": {"propeller-taper", "elasticModulus", "shaft-alloys"},
	"hub-modulus":   {"propeller-taper", "hubModulus", "hub-metals"},
	"hub-poisson":   {"propeller-taper", "hubPoisson", "hub-metals"},
}

// What is not known may be any row of its table: its bracket holds the least and the
// most of them all, or else an "OK for all of what is usual" is told of a greased cone
// whose surfaces nobody looked at.
func TestRowsOfWhatIsNotKnownReachAsFarAsWhatTheyStandFor(t *testing.T) {
	b, seen, met := Standard(), 0, map[string]bool{}
	hold := func(name string, unknown Row, column string, table *Table, of string) {
		has, ok := unknown.Values.Find(column)
		if !ok || has.IsText {
			return
		}
		least, most := edges(has)
		for _, r := range table.Rows.All() {
			v, ok := r.Values.Find(column)
			if !ok || v.IsText || r.ID == unknown.ID {
				continue
			}
			seen++
			low, high := edges(v)
			if least <= low*(1+1e-9) && high <= most*(1+1e-9) {
				continue
			}
			if met[of+"/"+r.ID] = true; apart[of+"/"+r.ID] == "" {
				t.Errorf("%s, %s: %g to %g; %s/%s may be %g to %g", name, column, least, most, of, r.ID, low, high)
			}
		}
	}
	for _, name := range b.Tables() {
		table := b.Table(name)
		for _, r := range table.Rows.All() {
			if !strings.Contains(r.ID, "not-known") {
				continue
			}
			for column := range table.columns {
				hold(name+"/"+r.ID, r, column, table, name)
			}
		}
	}
	for id, u := range usualOf {
		found := false
		for _, r := range b.Usual(u.calculation).Rows.All() {
			if r.ID == id {
				found = true
				hold(id, r, u.column, b.Table(u.table), u.table)
			}
		}
		if !found {
			t.Errorf("no usual value %s", id)
		}
	}
	for key := range apart {
		if !met[key] {
			t.Errorf("%s is not there, or needs no reason any more", key)
		}
	}
	if seen < 50 {
		t.Errorf("%d values compared", seen)
	}
}

// edges are the least and the most of a value.
func edges(v Value) (low, high float64) {
	if v.Ranged() {
		return v.Low, v.High
	}
	return v.SI, v.SI
}
