package rulefile

import (
	"fmt"
	"maps"
	"slices"
	"strings"

	"example.org/driveline/marinecalc/internal/boat"
	"example.org/driveline/marinecalc/rules"
)

// leads says which members of the rows of the job are ids of which rows; a
// member inside a list of objects is written with a stroke.
var leads = []struct {
	kind, member string
	to           []string
}{
	{"limits", "stops", []string{"causes"}}, {"advice", "stops", []string{"causes"}},
	{"causes", "confirm", []string{"evidence"}}, {"causes", "remedies", []string{"remedies"}},
	{"evidence", "hazards", []string{"cautions"}}, {"evidence", "verdicts/limits", []string{"limits"}}, {"evidence", "boat/question", []string{"evidence"}},
	{"signs", "cause", []string{"causes"}}, {"signs", "evidence", []string{"evidence"}},
	{"chains", "from", []string{"causes", "limits"}}, {"chains", "to", []string{"causes", "limits"}},
	{"remedies", "cures", []string{"causes"}}, {"remedies", "steps", []string{"steps"}},
	{"steps", "after", []string{"steps"}}, {"steps", "hazards", []string{"cautions"}}, {"steps", "bares", []string{"remedies"}}, {"steps", "parts/part", []string{"parts"}},
	{"steps", "parts/with", []string{"steps"}}, {"steps", "parts/without", []string{"steps"}},
}

// figures are the members of the job that name a result or an input as
// calculation/name, or in a choice (of) a question as fault-finding/id.
var figures = []struct{ kind, member string }{
	{"parts", "sizes"}, {"parts", "only/of"}, {"parts", "unless/of"}, {"steps", "parts/quantity/of"}, {"steps", "use"},
	{"steps", "cases/use"}, {"steps", "cases/only/of"}, {"steps", "cases/unless/of"}, {"steps", "unless/of"},
}

// identify gathers the ids that rows can lead to, of the book and of the file.
func (c *checker) identify() {
	c.ids = map[string]map[string]bool{}
	add := func(kind, id string, had bool) {
		if c.ids[kind] == nil {
			c.ids[kind] = map[string]bool{}
		}
		c.ids[kind][id] = c.ids[kind][id] || had
	}
	of(c.book.AllLimits(), "limits", func(r rules.Limit) string { return r.ID }, add)
	of(c.book.AllCautions(), "cautions", func(r rules.Caution) string { return r.ID }, add)
	of(c.book.AllAdvice(), "advice", func(r rules.Advice) string { return r.ID }, add)
	of(c.book.Causes(), "causes", func(r rules.Cause) string { return r.ID }, add)
	of(c.book.Evidence(), "evidence", func(r rules.Evidence) string { return r.ID }, add)
	of(c.book.Signs(), "signs", func(r rules.Sign) string { return r.ID }, add)
	of(c.book.Chains(), "chains", func(r rules.Chain) string { return r.ID }, add)
	of(c.book.Remedies(), "remedies", func(r rules.Remedy) string { return r.ID }, add)
	of(c.book.Steps(), "steps", func(r rules.Step) string { return r.ID }, add)
	of(c.book.Parts(), "parts", func(r rules.Part) string { return r.ID }, add)
	if t := c.book.Table(text(c.file, "table")); t != nil {
		of(t.Rows, "rows", func(r rules.Row) string { return r.ID }, add)
	}
	for kind := range c.file {
		for _, row := range c.rows(kind) {
			add(kind, text(row, "id"), false)
		}
	}
}

func of[T any](list rules.List[T], kind string, id func(T) string, add func(kind, id string, had bool)) {
	for _, row := range list.All() {
		add(kind, id(row), true)
	}
}

// job checks what the rows of the job lead to.
func (c *checker) job() {
	for _, l := range leads {
		for where, row := range c.rows(l.kind) {
			walk(where, row, strings.Split(l.member, "/"), func(at, id string) { c.led(at, id, l.to) })
		}
	}
	for _, l := range figures {
		for where, row := range c.rows(l.kind) {
			walk(where, row, strings.Split(l.member, "/"), func(at, path string) {
				id, name, _ := strings.Cut(path, "/")
				if id == "fault-finding" && strings.HasSuffix(l.member, "/of") { // what is said of her there
					c.led(at, name, []string{"evidence"})
					return
				}
				c.property(at, c.form(at, id), name)
			})
		}
	}
	c.looks()
	for where, row := range c.rows("steps") {
		c.form(where+"/drawing", text(row, "drawing"))
	}
}

// walk calls with every text at the end of a way of members, through lists.
func walk(where string, value any, way []string, with func(where, text string)) {
	switch v := value.(type) {
	case map[string]any:
		if len(way) > 0 {
			walk(where+"/"+way[0], v[way[0]], way[1:], with)
		}
	case []any:
		for i, item := range v {
			walk(fmt.Sprintf("%s/%d", where, i), item, way, with)
		}
	case string:
		if len(way) == 0 {
			with(where, v)
		}
	}
}

func (c *checker) led(at, id string, to []string) {
	var known []string
	for _, kind := range to {
		if _, is := c.ids[kind][id]; is {
			return
		}
		known = append(known, slices.Sorted(maps.Keys(c.ids[kind]))...)
	}
	c.unknown(at, "row of "+strings.Join(to, " or "), id, known)
}

// looks checks the readings of the boat file that answer a question, or that a
// step asks to write down, and the calculation whose picture stands beside it.
func (c *checker) looks() {
	file, err := boat.Contract()
	if err != nil {
		return
	}
	entry, _ := file.Root.At([]string{"readings", "0"})
	var names []string
	for _, p := range entry.Properties {
		names = append(names, p.Name)
	}
	for where, row := range c.rows("steps") {
		walk(where, row, []string{"record", "reading"}, func(at, name string) {
			if entry.Child(name) == nil {
				c.unknown(at, "reading of the boat file", name, names)
			}
		})
		if id := text(row, "drawing"); id != "" {
			c.form(where+"/drawing", id)
		}
	}
	ways, _ := c.book.Table("ways-of-looking").Picks()
	for where, row := range c.rows("evidence") {
		for _, member := range []string{"ways", "blind"} {
			for place, word := range texts(where+"/"+member, row[member]) {
				if !slices.Contains(ways, word) {
					c.unknown(place, "row of ways-of-looking", word, ways)
				}
			}
		}
		list, _ := row["readings"].([]any)
		for i, item := range list {
			one, _ := item.(map[string]any)
			at := fmt.Sprintf("%s/readings/%d", where, i)
			p := entry.Child(text(one, "reading"))
			if p == nil {
				c.unknown(at+"/reading", "reading of the boat file", text(one, "reading"), names)
				continue
			}
			if _, figures := one["words"]; !figures && p.Kind == nil {
				c.fail(at+"/reading", p.Title+" is no quantity, so that no figure of it can be asked for", `"words": […]`, "")
			}
			for place, word := range texts(at+"/words", one["words"]) {
				if len(p.Enum) > 0 && !slices.Contains(p.Enum, word) {
					c.unknown(place, "such choice of "+p.Title+":", word, p.Enum)
				}
			}
			by := entry.Child(text(one, "reading") + "By")
			for place, word := range texts(at+"/by", one["by"]) {
				if by == nil {
					c.unknown(place, "reading of the boat file", text(one, "reading")+"By", names)
				} else if !slices.Contains(by.Enum, word) {
					c.unknown(place, "such choice of "+by.Title+":", word, by.Enum)
				}
			}
		}
	}
}
