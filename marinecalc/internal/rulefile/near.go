package rulefile

import (
	"cmp"
	"fmt"
	"maps"
	"slices"
	"strings"

	"example.org/driveline/marinecalc/problem"
	"example.org/driveline/marinecalc/rules"
)

// kinds are the members of a file that hold rows with ids, as they are told.
var kinds = []string{"limits", "rows", "cautions", "advice", "causes", "evidence", "signs", "chains", "remedies", "steps", "parts"}

// changes lists what the file replaces and adds, and tells of ids that were
// likely meant to be those of other rows.
func (c *checker) changes() {
	old := map[string]rules.Limit{}
	for _, l := range c.book.AllLimits().All() {
		old[l.ID] = l
	}
	held := 0
	for _, kind := range kinds {
		for where, row := range c.rows(kind) {
			held++
			id := text(row, "id")
			if id == "" {
				continue // said by the schema
			}
			change := Change{Kind: kind, ID: id, Title: cmp.Or(text(row, "title"), text(row, "name"), text(row, "text"))}
			if kind == "limits" {
				change.Now = asked(row)
			}
			if !c.ids[kind][id] {
				c.near(where, kind, row, old)
				c.out.Adds, c.addsAt = append(c.out.Adds, change), append(c.addsAt, where)
				continue
			}
			if l, is := old[id]; is && kind == "limits" {
				change.Was, change.WasTitle, change.WasSource = boundOf(&l), l.Title, l.Source.String()
			}
			c.out.Replaces, c.replacesAt = append(c.out.Replaces, change), append(c.replacesAt, where)
		}
	}
	if held+len(list(c.file, "shared"))+len(c.out.Problems) == 0 {
		c.warn("", "the file holds no rows", strings.Join(kinds, ", "), "")
	}
}

func list(row map[string]any, name string) []any {
	l, _ := row[name].([]any)
	return l
}

// asked says what a limit of the file asks for.
func asked(row map[string]any) string {
	for _, side := range []struct{ name, says string }{{"max", "at most "}, {"min", "at least "}} {
		switch v := row[side.name].(type) {
		case nil:
		case map[string]any:
			return side.says + text(v, "of")
		default:
			return side.says + fmt.Sprint(v)
		}
	}
	return ""
}

// boundOf says what a limit of the book asks for.
func boundOf(l *rules.Limit) string {
	says, b := "at most ", l.Max
	if l.Min.Given() {
		says, b = "at least ", l.Min
	}
	return says + cmp.Or(b.Of, b.Text)
}

// near tells of a new row whose id is nearly that of one in force: it was
// likely meant to take its place, and does not. Of a limit on the same thing
// that is a fault. Numbers apart, since rows of a series differ in them.
func (c *checker) near(where, kind string, row map[string]any, old map[string]rules.Limit) {
	id := text(row, "id")
	for _, known := range slices.Sorted(maps.Keys(c.ids[kind])) {
		if !c.ids[kind][known] || max(len(id), len(known))-min(len(id), len(known)) > 2 || problem.Distance(id, known) > 2 || letters(id) == letters(known) {
			continue
		}
		what := fmt.Sprintf("%q is nearly the id of %q, which stays in force beside it", id, known)
		hint := fmt.Sprintf("write %q to take its place, or an id that is less like it", known)
		if l := old[known]; kind == "limits" && l.Calculation == text(row, "calculation") && l.On == text(row, "on") {
			c.fail(where+"/id", what, known, hint)
		} else {
			c.warn(where+"/id", what, known, hint)
		}
		return
	}
	if kind != "limits" {
		return
	}
	var same []string
	for _, known := range slices.Sorted(maps.Keys(old)) {
		if l := old[known]; l.Calculation == text(row, "calculation") && l.On == text(row, "on") {
			same = append(same, known)
		}
	}
	if best, is := problem.Closest(id, same); is && letters(best) != letters(id) {
		c.warn(where+"/id", fmt.Sprintf("limit %q is on the same thing, and stays in force beside %q", best, id), "", fmt.Sprintf("write %q where it is to take its place", best))
	}
}

// letters is an id without its digits.
func letters(id string) string {
	return strings.Map(func(r rune) rune {
		if r >= '0' && r <= '9' {
			return -1
		}
		return r
	}, id)
}
