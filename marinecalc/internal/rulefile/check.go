package rulefile

import (
	"fmt"
	"slices"
	"strings"

	"example.org/driveline/marinecalc/internal/binding"
	"example.org/driveline/marinecalc/internal/calc/verdict"
	"example.org/driveline/marinecalc/internal/contract"
	"example.org/driveline/marinecalc/rules"
)

// limits checks what limits name, and that one of the same id is one on the
// same thing: else the one in force would vanish.
func (c *checker) limits() {
	old := map[string]rules.Limit{}
	for _, l := range c.book.AllLimits().All() {
		old[l.ID] = l
	}
	for where, row := range c.rows("limits") {
		f := c.form(where+"/calculation", text(row, "calculation"))
		p := c.property(where+"/on", f, text(row, "on"))
		named := func(at, name string) *contract.Property { return c.property(at, f, name) }
		c.valid(where, row["valid"], named)
		states, _ := row["states"].([]any)
		for i := range states {
			if state, is := states[i].(map[string]any); is {
				c.valid(fmt.Sprintf("%s/states/%d", where, i), state["valid"], named)
				named(fmt.Sprintf("%s/states/%d/tell", where, i), text(state, "tell"))
			}
		}
		lacks, _ := row["lacks"].([]any)
		for i := range lacks {
			if lack, is := lacks[i].(map[string]any); is {
				list, _, _ := strings.Cut(text(lack, "of"), "/")
				named(fmt.Sprintf("%s/lacks/%d/of", where, i), list)
				c.valid(fmt.Sprintf("%s/lacks/%d", where, i), lack["valid"], named)
			}
		}
		each, _ := row["each"].([]any)
		for i := range each {
			list, column, _ := strings.Cut(fmt.Sprint(each[i]), "/")
			at := fmt.Sprintf("%s/each/%d", where, i)
			if p := named(at, list); p != nil && p.Items == nil {
				c.fail(at, p.Title+" is no list", "a list that is typed, and a column of it", "")
			} else if p != nil && p.Items.Child(column) == nil {
				c.unknown(at, "column of "+list, column, columns(p))
			}
		}
		c.hangs(where, row, "while")
		c.hangs(where, row, "void")
		if was, is := old[text(row, "id")]; is {
			c.sameLimit(where, row, &was)
		}
		if p == nil {
			continue
		}
		if !numeric(p) {
			c.fail(where+"/on", p.Title+" is no number, and nothing can be over it", "an input or result that is a number", "")
			continue
		}
		for _, side := range []string{"max", "min", "scale"} {
			if raw, has := row[side]; has {
				c.bound(where+"/"+side, f, p, raw)
			}
		}
	}
}

// sameLimit holds a limit against the one that it replaces.
func (c *checker) sameLimit(where string, row map[string]any, was *rules.Limit) {
	own := fmt.Sprintf("give it an id of its own; %s stays in force beside it", was.ID)
	side, bound := "max", was.Max
	if was.Min.Given() {
		side, bound = "min", was.Min
	}
	_, has := row[side]
	switch {
	case text(row, "calculation") != was.Calculation || text(row, "on") != was.On:
		c.fail(where+"/id", fmt.Sprintf("limit %s is on %s/%s, and would be lost", was.ID, was.Calculation, was.On), was.Calculation+"/"+was.On, own)
	case !has:
		c.fail(where+"/id", fmt.Sprintf("limit %s has a %s, which would be lost", was.ID, side), fmt.Sprintf("%q: …", side), own)
	case rules.Basis(text(row, "basis")).Guides() && !was.Basis.Guides():
		c.fail(where+"/basis", fmt.Sprintf("limit %s rests on a %s and decides; a guide cannot take its place", was.ID, was.Basis.Authority()), "a surer basis", own)
	}
	if raw, is := row[side].(string); is && bound.Of == "" {
		var now rules.Amount
		if now.UnmarshalJSON([]byte(`"`+raw+`"`)) == nil && now.Kind.Is(bound.Kind) && bound.SI != 0 {
			if share := now.SI / bound.SI; share > 20 || share < 0.05 {
				c.warn(where+"/"+side, fmt.Sprintf("%s is %.3g times the figure in force, %s", raw, share, bound.Text), "", "look whether the unit is right")
			}
		}
	}
}

// shared checks which results are held against the limits of another.
func (c *checker) shared() {
	for where, row := range c.rows("shared") {
		own, other := c.form(where+"/calculation", text(row, "calculation")), c.form(where+"/limitsOf", text(row, "limitsOf"))
		on, _ := row["on"].(map[string]any)
		for of := range on {
			at := where + contract.Pointer([]string{"on", of})
			p, q := c.property(at, other, of), c.property(at, own, text(on, of))
			if p != nil && q != nil && !p.Kind.Is(q.Kind) {
				c.fail(at, fmt.Sprintf("%s and %s are of two kinds of quantity", p.Title, q.Title), "two of one kind", "")
			}
		}
	}
}

func (c *checker) cautions() {
	for where, row := range c.rows("cautions") {
		if list, _ := row["calculations"].([]any); len(list) == 0 && !c.isHazard(text(row, "id")) {
			c.fail(where+"/calculations", "nothing shows this caution", "a calculation, or a step or a question that has it among its hazards", "")
		}
		for at, id := range texts(where+"/calculations", row["calculations"]) {
			f := c.form(at, id)
			c.valid(where, row["valid"], func(at, name string) *contract.Property { return c.property(at, f, name) })
		}
	}
}

// isCaution tells whether the book or the file has a caution of that id.
func (c *checker) isCaution(id string) bool {
	for _, row := range c.rows("cautions") {
		if text(row, "id") == id {
			return true
		}
	}
	for _, known := range c.book.AllCautions().All() {
		if known.ID == id {
			return true
		}
	}
	return false
}

// isHazard tells whether a row of a table, a step or a question, of the book or of the file, has
// the caution of that id among its hazards.
func (c *checker) isHazard(id string) bool {
	if id == rules.StopNow {
		return true
	}
	for _, row := range c.rows("rows") {
		values, _ := row["values"].(map[string]any)
		if slices.Contains(strings.Fields(text(values, "hazards")), id) {
			return true
		}
	}
	for _, name := range c.book.Tables() {
		for _, row := range c.book.Table(name).Rows.All() {
			if slices.Contains(row.Hazards(), id) {
				return true
			}
		}
	}
	for kind, members := range map[string][]string{"steps": {"hazards"}, "evidence": {"hazards", "dangers"}, "causes": {"dangers"}} {
		for _, row := range c.rows(kind) {
			for _, member := range members {
				if list, _ := row[member].([]any); slices.Contains(list, any(id)) {
					return true
				}
			}
		}
	}
	for _, s := range c.book.Steps().All() {
		if rules.Contains(s.Hazards, id) {
			return true
		}
	}
	for _, e := range c.book.Evidence().All() {
		if rules.Contains(e.Hazards, id) || rules.Contains(e.Dangers, id) {
			return true
		}
	}
	for _, cause := range c.book.Causes().All() {
		if rules.Contains(cause.Dangers, id) {
			return true
		}
	}
	return false
}

// advice checks what advice names, and that its limit is one that its
// calculation is held against.
func (c *checker) advice() {
	for where, row := range c.rows("advice") {
		f := c.form(where+"/calculation", text(row, "calculation"))
		c.valid(where, row["valid"], func(at, name string) *contract.Property { return c.property(at, f, name) })
		if f == nil {
			continue
		}
		if id := text(row, "limit"); id != "" {
			c.limitNamed(where+"/limit", f, id)
		}
		besides, _ := row["besides"].(map[string]any)
		for id := range besides {
			c.limitNamed(where+contract.Pointer([]string{"besides", id}), f, id)
		}
	}
}

// limitNamed holds a limit of a calculation, or "calculation/limit" of another, to
// those there are.
func (c *checker) limitNamed(where string, f *binding.Form, id string) {
	if of, limit, other := strings.Cut(id, "/"); other {
		if f, id = c.form(where, of), limit; f == nil {
			return
		}
	}
	if limits := c.limitsOf(f); !slices.Contains(limits, id) {
		c.unknown(where, "limit of "+f.ID, id, limits)
	}
}

// hangs holds the limits that a member of a limit names to those there are.
func (c *checker) hangs(where string, row map[string]any, member string) {
	list, _ := row[member].([]any)
	for i := range list {
		at := fmt.Sprintf("%s/%s/%d", where, member, i)
		c.limitNamed(at, nil, fmt.Sprint(list[i]))
	}
}

func columns(p *contract.Property) (names []string) {
	for _, part := range p.Items.Properties {
		names = append(names, part.Name)
	}
	return names
}

// limitsOf lists the limits of a calculation, those of the file and those that an owner
// may set among them.
func (c *checker) limitsOf(f *binding.Form) (ids []string) {
	for _, l := range c.book.Limits(f.ID).All() {
		ids = append(ids, l.ID)
	}
	from := []string{f.ID}
	for _, row := range c.rows("shared") {
		if text(row, "calculation") == f.ID {
			from = append(from, text(row, "limitsOf"))
			for _, l := range c.book.Limits(text(row, "limitsOf")).All() {
				ids = append(ids, l.ID)
			}
		}
	}
	for _, p := range f.Input.Properties {
		if id := verdict.OwnOf(p); id != "" {
			ids = append(ids, id)
		}
	}
	for _, row := range c.rows("limits") {
		if slices.Contains(from, text(row, "calculation")) {
			ids = append(ids, text(row, "id"))
		}
	}
	return ids
}
