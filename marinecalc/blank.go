package marinecalc

import (
	"slices"

	"example.org/driveline/marinecalc/internal/calc"
	"example.org/driveline/marinecalc/internal/catalogue"
	"example.org/driveline/marinecalc/internal/contract"
	"example.org/driveline/marinecalc/quantity"
	"example.org/driveline/marinecalc/rules"
	"example.org/driveline/marinecalc/sheet"
)

// Blank is a calculation as a form still to be filled in.
type Blank struct {
	Entry
	Inputs []BlankInput
}

// BlankInput is one line of the form.
type BlankInput struct {
	Name     string
	Title    string
	Help     string
	Kind     string   // kind of quantity, "" for words
	Units    []string // that can be typed, the SI unit first
	Example  any
	Choices  []Choice
	Required bool         // must be known from some origin
	Detail   bool         // rarely typed
	Parts    []BlankInput // of an entry, where the input is a list
	JSON     bool         // takes a JSON value (a list, a whole number or a yes or no) where the others take text
}

// Choice is one thing that can be picked.
type Choice struct {
	Pick string `json:"pick"`
	Name string `json:"name"`
}

// Open returns the blank form of a calculation. The error is Problems.
func Open(id string) (*Blank, error) {
	c, err := calc.Find(catalogue.Calculations, id)
	if err != nil {
		return nil, err
	}
	k, err := c.Form()
	if err != nil {
		return nil, Problems{{What: err.Error()}}.Err()
	}
	b := &Blank{Entry: Entry{ID: id, Title: k.Title, Answers: k.Answers}}
	for _, p := range k.Input.Properties {
		b.Inputs = append(b.Inputs, blankInput(p, k.Input))
	}
	return b, nil
}

// blankInput is the line of a property that stands in another.
func blankInput(p, in *contract.Property) BlankInput {
	line := BlankInput{Name: p.Name, Title: p.Title, Help: p.Description, Required: slices.Contains(in.Needs, p.Name),
		Detail: p.Level == sheet.Detail, JSON: !slices.Contains(p.Types, "string"), Choices: choices(p, in, rules.Standard())}
	if p.Kind != nil {
		line.Kind, line.Units = p.Kind.Name, p.Kind.Units()
	}
	if p.Items != nil {
		for _, part := range p.Items.Properties {
			line.Parts = append(line.Parts, blankInput(part, p.Items))
		}
	}
	if len(p.Examples) > 0 {
		line.Example = p.Examples[0]
	}
	return line
}

// choices lists what can be picked for an input: its words, or the rows of
// its table; of the gauges those that fit, where in says what is read with p.
func choices(p, in *contract.Property, book *rules.Book) []Choice {
	if p.Rows == calc.Gauges {
		if fit := gaugesFor(p, in, book); len(fit) > 0 {
			return fit
		}
	}
	var list []Choice
	for i, word := range p.Enum {
		name := word
		if i < len(p.EnumTitles) {
			name = p.EnumTitles[i]
		}
		list = append(list, Choice{word, name})
	}
	if t := book.Table(p.Rows); t != nil {
		picks, names := t.Picks()
		for i := range picks {
			list = append(list, Choice{picks[i], names[i]})
		}
	}
	return list
}

// gaugesFor lists the gauges that read the kinds of quantity for which in names
// p as their gauge; none where it names it for none.
func gaugesFor(p, in *contract.Property, book *rules.Book) []Choice {
	var kinds []*quantity.Kind
	var look func(*contract.Property)
	look = func(reading *contract.Property) {
		if reading == nil {
			return
		}
		if reading.ReadBy == p.Name && reading.Kind != nil {
			kinds = append(kinds, reading.Kind)
		}
		look(reading.Items)
		for _, child := range reading.Properties {
			look(child)
		}
	}
	look(in)
	var list []Choice
	for _, row := range book.Table(calc.Gauges).Rows.All() {
		if slices.ContainsFunc(kinds, func(k *quantity.Kind) bool { return calc.ReadsKind(row, k) }) {
			list = append(list, Choice{row.Pick, row.Name})
		}
	}
	return list
}
