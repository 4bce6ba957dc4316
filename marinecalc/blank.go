package marinecalc

import (
	"slices"

	"example.org/driveline/marinecalc/internal/calc"
	"example.org/driveline/marinecalc/internal/catalogue"
	"example.org/driveline/marinecalc/internal/contract"
	"example.org/driveline/marinecalc/internal/host"
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
// Its members are Name and Pick: what each is stands with host.Choice of the inner
// packages.
type Choice = host.Choice

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
	line := BlankInput{Name: p.Name, Title: p.Title, Help: p.Description, Required: host.Required(p, in, rules.Standard()),
		Detail: p.Level == sheet.Detail, JSON: !slices.Contains(p.Types, "string"), Choices: host.Choices(p, in, rules.Standard())}
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

// Entry is one line of the contents: what can be calculated.
type Entry struct {
	ID      string   `json:"id"`
	Title   string   `json:"title"`
	Answers string   `json:"answers"`
	Onward  []string `json:"onward,omitempty"` // ids of those whose sheets one opens after it, as the work goes
}

// Calculations lists what can be calculated, from engine to propeller.
func Calculations() []Entry {
	list := make([]Entry, 0, len(catalogue.Calculations))
	for _, c := range catalogue.Calculations {
		if h, err := contract.HeadingOf(c.ID); err == nil { // a test opens every contract
			list = append(list, Entry{ID: c.ID, Title: h.Title, Answers: h.Answers, Onward: h.Onward})
		}
	}
	return list
}
