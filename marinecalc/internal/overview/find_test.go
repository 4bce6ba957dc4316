package overview

import (
	"slices"
	"strings"
	"testing"

	"example.org/driveline/marinecalc/internal/catalogue"
	"example.org/driveline/marinecalc/internal/survey"
	"example.org/driveline/marinecalc/rules"
)

// A lock nut brings the thread of its size along, and a thread no nut: there are
// several for it.
func TestRowsThatGoTogether(t *testing.T) {
	tried := 0
	for _, h := range Find(rules.Standard(), "3/8-24") {
		if h.Calculation != "bolt-preload" || h.Kind != HitRow {
			continue
		}
		tried++
		want := []Pick{{Input: "thread", ID: "3/8-24 UNF"}}
		if h.Input == "thread" {
			want = nil
		}
		if !slices.Equal(h.With, want) {
			t.Errorf("%s goes with %v, want %v", h.Title, h.With, want)
		}
	}
	if tried < 2 {
		t.Errorf("%d rows were tried", tried)
	}
}

// What people type at the dock, spelt well and badly, and what must be among
// the first three found.
func TestFindsWhatPeopleType(t *testing.T) {
	for typed, want := range map[string]string{
		"overheating": "sign/gland-hot", "metal": "calculation/wear-debris", "rust": "look/particles-oxide", "split pin": "calculation/propeller-taper", "wont go into gear": "sign/revs-no-drive", "grease": "calculation/bolt-preload",
		"clunk": "sign/knock-into-gear", "Knock!": "sign/knock-into-gear", "knocking noise": "sign/knock-into-gear",
		"log": "view/readings", "readings": "view/readings", "my boat": "view/boat", "drips": "sign/gland-drips-much", "5 drips a minute": "sign/gland-drips-much", "leaking gland": "part/gland",
		"3/8-24": "row/3/8-24 UNF", "m10": "row/M10x1.5", "6206": "row/6206", "316": "row/s31600-annealed",
		"alignment": "calculation/coupling-alignment", "allignment": "calculation/coupling-alignment", "alignmnet": "calculation/coupling-alignment",
		"mounts": "part/mounts", "hot gearbox": "sign/gearbox-hot", "gearbx hot": "sign/gearbox-hot", "my transmission is hot": "sign/gearbox-hot",
		"shakes": "sign/shake-grows", "vibraton": "sign/shake-grows", "cutless": "part/bearing", "cutlass bearing": "part/bearing", "cutlas": "part/bearing",
		"stuffing box": "part/gland", "stufing box": "part/gland", "propellor": "part/propeller", "prop nut": "calculation/propeller-taper",
		"nyloc": "calculation/bolt-preload", "torque": "calculation/bolt-preload", "red dust": "look/red-dust", "milky oil": "look/fluid-milky",
		"repack": "work/repack-gland", "backlash": "calculation/backlash", "overdue": "calculation/service-schedule", "run out": "calculation/flange-run-out",
	} {
		var got []string
		for _, h := range Find(rules.Standard(), typed) {
			got = append(got, string(h.Kind)+"/"+h.ID)
		}
		if first := got[:min(3, len(got))]; !slices.Contains(first, want) {
			t.Errorf("%q finds %q, want %s among the first three", typed, got, want)
		}
	}
	for _, typed := range []string{"", "   ", "the", "?!", "xyzzy", strings.Repeat("clunk", 100), "9/99-99"} {
		if hits := Find(rules.Standard(), typed); len(hits) > 0 {
			t.Errorf("%.20q finds %v", typed, hits)
		}
	}
}

// Words that mean rows for several inputs of one calculation find them together.
func TestFindsRowsThatGoTogether(t *testing.T) {
	for typed, want := range map[string]string{
		"3/8-24 grade 8":          "bolt-preload grade=j429-8 thread=3/8-24 UNF",
		"m10 8.8":                 "bolt-preload thread=M10x1.5 grade=iso-8.8",
		"grade 8 3/8-24 molybdän": "",
		"nylon 3/8-24":            "",
	} {
		got := ""
		for _, h := range Find(rules.Standard(), typed) {
			for i, row := range h.With {
				if row.Title == "" {
					continue
				}
				if i == 0 {
					got = h.Calculation + " " + h.Input + "=" + h.ID
				}
				got += " " + row.Input + "=" + row.ID
			}
			if got != "" {
				break
			}
		}
		if got != want {
			t.Errorf("%q finds together %q, want %q", typed, got, want)
		}
	}
}

// A size is that size: no row of another is offered for it.
func TestSizesAreNotGuessed(t *testing.T) {
	for _, h := range Find(rules.Standard(), "3/8-24") {
		if !strings.Contains(h.Title, "3/8-24") {
			t.Errorf("3/8-24 finds %s", h.Title)
		}
	}
	if near("m10", "m12") || near("3/8-16", "3/8-24") {
		t.Error("sizes count as misspelt")
	}
}

// Every word of the table leads somewhere.
func TestSearchWordsLeadSomewhere(t *testing.T) {
	x := newIndex(rules.Standard())
	known := map[string]bool{}
	for i := range x.entries {
		known[x.entries[i].key()] = true
	}
	if len(x.leads) < 100 {
		t.Fatalf("only %d words", len(x.leads))
	}
	for _, l := range x.leads {
		if len(l.words) == 0 || len(l.to) == 0 {
			t.Errorf("%v leads to %v", l.words, l.to)
		}
		for _, to := range l.to {
			if !known[to] {
				t.Errorf("%v leads to %s, which there is not", l.words, to)
			}
		}
	}
}

// Sheets of the whole boat belong to no part.
var ofTheWhole = strings.Fields("fault-finding line-joints repair-or-replace work-plan reading-trend sea-trial service-schedule")

// Every calculation stands with one part of the line or is of the whole, and
// every name that causes and care have for a part is known.
func TestEveryCalculationHasItsPart(t *testing.T) {
	held := map[string]int{}
	rows, limits := rules.Standard().Table(survey.PartsTable).Rows, map[string]bool{}
	for _, l := range rules.Standard().AllLimits().All() {
		limits[l.Calculation+"/"+l.ID] = true
	}
	for _, row := range rows.All() {
		for _, id := range strings.Fields(row.Values.Of("calculations").Text) {
			held[id]++
		}
		for _, limit := range strings.Fields(row.Values.Of("limits").Text) {
			if !limits[limit] {
				t.Errorf("%s names the limit %s, which there is not", row.ID, limit)
			}
		}
	}
	for _, c := range catalogue.Calculations {
		whole := slices.Contains(ofTheWhole, c.ID)
		if n := held[c.ID]; n > 1 || (n == 1) == whole {
			t.Errorf("%s stands with %d parts of the table line-parts (of the whole: %v)", c.ID, n, whole)
		}
		delete(held, c.ID)
	}
	for id := range held {
		t.Errorf("line-parts names %s, which there is not", id)
	}
	for _, c := range rules.Standard().Causes().All() {
		if c.Part != "none" && partNamed(rules.Standard(), c.Part) == "" {
			t.Errorf("cause %s: no part of the line is called %q", c.ID, c.Part)
		}
	}
	for _, row := range rules.Standard().Table("service-intervals").Rows.All() {
		if name := row.Values.Of("part").Text; name != "" && partNamed(rules.Standard(), name) == "" {
			t.Errorf("care %s: no part of the line is called %q", row.ID, name)
		}
	}
}
