package rulefile

import (
	"encoding/json"
	"fmt"
	"iter"
	"math"
	"slices"
	"strconv"
	"strings"

	"example.org/driveline/marinecalc/internal/binding"
	"example.org/driveline/marinecalc/internal/calc"
	"example.org/driveline/marinecalc/internal/catalogue"
	"example.org/driveline/marinecalc/internal/contract"
	"example.org/driveline/marinecalc/problem"
	"example.org/driveline/marinecalc/quantity"
	"example.org/driveline/marinecalc/rules"
)

// checker goes through one file. It reads the decoded text, so that a row
// which does not load is told of as far as it can be understood.
type checker struct {
	book *rules.Book
	file map[string]any
	ids  map[string]map[string]bool // kind of row -> id -> whether the book has it
	out  *Report

	replacesAt, addsAt []string // the places of the rows
}

// enough caps what is gathered: each problem can have a long list of what is
// allowed, and no more than fifty are told.
const enough = 200

func (c *checker) fail(where, what, allowed, hint string) {
	if len(c.out.Problems) < enough {
		c.out.Problems.Add(where, what, allowed, hint)
	}
}

func (c *checker) warn(where, what, allowed, hint string) {
	if len(c.out.Warnings) < enough {
		c.out.Warnings.Add(where, what, allowed, hint)
	}
}

// rows goes through the rows of one kind, with their places.
func (c *checker) rows(kind string) iter.Seq2[string, map[string]any] {
	return func(yield func(string, map[string]any) bool) {
		list, _ := c.file[kind].([]any)
		for i, item := range list {
			if row, is := item.(map[string]any); is && !yield("/"+kind+"/"+strconv.Itoa(i), row) {
				return
			}
		}
	}
}

// text is a member that is a text, or "".
func text(row map[string]any, name string) string {
	t, _ := row[name].(string)
	return t
}

// texts goes through a list of texts, with their places.
func texts(where string, list any) iter.Seq2[string, string] {
	return func(yield func(string, string) bool) {
		items, _ := list.([]any)
		for i, item := range items {
			if t, is := item.(string); is && !yield(where+"/"+strconv.Itoa(i), t) {
				return
			}
		}
	}
}

// unknown tells of a name that leads nowhere.
func (c *checker) unknown(where, what, name string, known []string) {
	if len(c.out.Problems) >= enough {
		return
	}
	hint := problem.DidYouMean(name, known)
	if most := 60; len(known) > most {
		known = append(slices.Clip(known[:most]), "…")
	}
	c.fail(where, fmt.Sprintf("there is no %s %q", what, contract.Shorten(name)), strings.Join(known, ", "), hint)
	c.out.Problems[len(c.out.Problems)-1].Kind = problem.Unknown
}

// form is the calculation that a row names, or nil.
func (c *checker) form(where, id string) *binding.Form {
	if id == "" {
		return nil // said by the schema
	}
	of, err := calc.Find(catalogue.Calculations, id)
	if err != nil {
		var ids []string
		for _, one := range catalogue.Calculations {
			ids = append(ids, one.ID)
		}
		c.unknown(where, "calculation", id, ids)
		return nil
	}
	f, _ := of.Form() // a test opens them all
	return f
}

// property is an input or result of a calculation by its name, or nil.
func (c *checker) property(where string, f *binding.Form, name string) *contract.Property {
	if f == nil || name == "" {
		return nil
	}
	for _, side := range []*contract.Property{f.Result, f.Input} {
		if p := side.Child(name); p != nil {
			return p
		}
	}
	c.unknown(where, "input or result of "+f.ID, name, namesOf(f))
	return nil
}

func namesOf(f *binding.Form) (names []string) {
	for _, p := range slices.Concat(f.Result.Properties, f.Input.Properties) {
		names = append(names, p.Name)
	}
	return names
}

// numeric tells whether a property is a number that can be held against one.
func numeric(p *contract.Property) bool {
	return p.Kind != nil || slices.Contains(p.Types, "number") || slices.Contains(p.Types, "integer") || p.IsResult && len(p.Enum) == 0 && len(p.Types) == 0
}

// amount reads a figure as the property takes it. What another kind of
// quantity is, or can be taken for another number, is refused.
func (c *checker) amount(where string, p *contract.Property, raw any, what string) (si float64, ok bool) {
	switch v := raw.(type) {
	case json.Number:
		si, _ = v.Float64()
		if p.Kind != nil && p.Kind.SIUnit() != "" && si != 0 {
			c.warn(where, fmt.Sprintf("%s is read as %s %s", v, v, p.Kind.SIUnit()), strings.Join(p.Kind.Units(), ", "), "write the unit behind the number")
		}
		return si, true
	case string:
		kind := p.Kind
		if kind == nil {
			kind, _ = quantity.Lookup("ratio")
		}
		r, err := kind.Parse(v)
		if err != nil {
			fault := problem.Of(err)[0]
			c.fail(where, fmt.Sprintf("%s: %s is a %s; %s", what, p.Title, strings.ReplaceAll(kind.Name, "-", " "), fault.What), fault.Allowed, fault.Hint)
			return 0, false
		}
		if quantity.HasAccuracy(v) {
			value, _, _ := strings.Cut(strings.NewReplacer("+/-", "±", "+-", "±").Replace(v), "±")
			c.fail(where, what+" "+strconv.Quote(v)+" has a ±, and a limit is one figure", "one figure with its unit", "write "+strconv.Quote(strings.TrimSpace(value))+", or the end of it that is the stricter")
			return 0, false
		}
		other, inferred, err := quantity.Infer(v)
		if err == nil && inferred != kind && math.Abs(other.SI-r.SI) > 1e-9*math.Abs(r.SI) {
			c.fail(where, fmt.Sprintf("%s: %s is a %s, and %q can be read as a %s too", what, p.Title, strings.ReplaceAll(kind.Name, "-", " "), v, strings.ReplaceAll(inferred.Name, "-", " ")),
				"a unit of that kind alone", "write it as "+kind.Exact(r.SI, kind.SIUnit()))
			return 0, false
		}
		return r.SI, true
	}
	return 0, false // said by the schema
}

// bound checks one side of a limit.
func (c *checker) bound(where string, f *binding.Form, p *contract.Property, raw any) {
	if named, is := raw.(map[string]any); is {
		if of := c.property(where+"/of", f, text(named, "of")); of != nil && !of.Kind.Is(p.Kind) {
			c.fail(where+"/of", fmt.Sprintf("%s is not the kind of quantity that %s is", of.Title, p.Title), "an input or result of the same kind", "")
		}
		return
	}
	si, ok := c.amount(where, p, raw, "the limit")
	if !ok || p.IsResult {
		return
	}
	if p.Maximum != nil && si > *p.Maximum || p.Minimum != nil && si < *p.Minimum {
		c.fail(where, fmt.Sprintf("the limit on %s lies where no value is taken", p.Title), contract.AllowedRange(p), "look for a slip of the unit")
	}
}

// valid checks the conditions of a row. known gives what each is on, or nil
// with the problem told.
func (c *checker) valid(where string, raw any, known func(where, name string) *contract.Property) {
	conditions, _ := raw.(map[string]any)
	for name, condition := range conditions {
		at := where + contract.Pointer([]string{"valid", name})
		of, _ := condition.(map[string]any)
		if p := known(at, name); p != nil && of != nil {
			c.condition(at, p, of)
		}
	}
}

// condition checks what a row asks of one input or result: that it is of its
// kind, and that it can be met.
func (c *checker) condition(where string, p *contract.Property, of map[string]any) {
	never := func(why string) {
		c.fail(where, "the row never applies: "+why, "", "mend the condition, or leave the row out")
	}
	if k, is := of["known"].(bool); is {
		switch {
		case len(of) > 1:
			c.fail(where, "beside \"known\" nothing else is asked of "+p.Title, `{"known": `+strconv.FormatBool(k)+`}`, "")
		case !k && p.Default != nil && !p.IsResult:
			never(p.Title + " is always known: it has a default")
		}
		return
	}
	for _, by := range [...]string{"any", "not"} {
		if list, is := of[by]; is {
			c.words(where, p, by, list, len(of) > 1)
			return
		}
	}
	if !numeric(p) {
		c.fail(where, p.Title+" is a word, and is held to numbers here", `{"any": ["…"]}`, "")
		return
	}
	low, high, open := math.Inf(-1), math.Inf(1), false
	for _, side := range []struct {
		name            string
		lower, strictly bool
	}{{"min", true, false}, {"above", true, true}, {"max", false, false}, {"below", false, true}} {
		raw, has := of[side.name]
		if !has {
			continue
		}
		si, ok := c.amount(where+"/"+side.name, p, raw, `"`+side.name+`"`)
		switch {
		case !ok:
			return
		case side.lower:
			low = max(low, si)
		default:
			high = min(high, si)
		}
		open = open || side.strictly
	}
	switch {
	case low > high || low == high && open:
		never("its lower bound on " + p.Title + " lies above the upper one")
	case !p.IsResult && (p.Maximum != nil && low > *p.Maximum || p.Minimum != nil && high < *p.Minimum):
		never(fmt.Sprintf("%s is taken from %s", p.Title, contract.AllowedRange(p)))
	}
}

// words checks a list of words of which one is asked (by "any"), or none ("not").
func (c *checker) words(where string, p *contract.Property, by string, list any, more bool) {
	known := p.Enum
	switch {
	case more:
		c.fail(where, "beside \""+by+"\" nothing else is asked of "+p.Title, `{"`+by+`": ["…"]}`, "")
	case p.Kind != nil:
		c.fail(where, p.Title+" is a number, and is held to words here", `{"min": …}, {"max": …}, {"above": …} or {"below": …}`, "")
		return
	case slices.Contains(p.Types, "boolean"):
		known = []string{"yes", "no"}
	case p.Rows != "":
		if t := c.book.Table(p.Rows); t != nil {
			known, _ = t.Picks()
		}
		if p.Rows == text(c.file, "table") {
			for _, row := range c.rows("rows") {
				known = append(slices.Clip(known), text(row, "id"), text(row, "pick"))
			}
		}
	}
	if len(known) == 0 {
		return // what such a result can say stands nowhere
	}
	for at, word := range texts(where+"/"+by, list) {
		if !slices.Contains(known, word) {
			c.unknown(at, "such choice of "+p.Title+":", word, known)
		}
	}
}
