// What other programs ask for besides sheets.

package marinecalc

import (
	"context"
	"encoding/json"
	"fmt"
	"strings"

	"example.org/driveline/marinecalc/internal/boat"
	"example.org/driveline/marinecalc/internal/calc"
	"example.org/driveline/marinecalc/internal/calc/inputs"
	"example.org/driveline/marinecalc/internal/catalogue"
	"example.org/driveline/marinecalc/internal/host"
	"example.org/driveline/marinecalc/internal/rulefile"
	"example.org/driveline/marinecalc/problem"
	"example.org/driveline/schemas"
)

type (
	// RulesInForce are limits and tables by which sheets are made.
	// Its members are Files, Limits, Table and Tables: what each is stands with
	// host.InForce of the inner packages.
	RulesInForce = host.InForce
	// Converted is a quantity in another unit.
	// Its members are Accuracy, Quantity, SI, Text, Unit and Value: what each is stands
	// with host.Converted of the inner packages.
	Converted = host.Converted
	// Fit tells which picks of an input's table go with what is known.
	// Its members are Picks and With: what each is stands with inputs.Fit of the inner
	// packages.
	Fit = inputs.Fit
)

// Convert reads a quantity as people write it, "45 lbf·ft ± 5 %", and gives it
// in another unit, its accuracy too. The kind may be "" where the units tell
// it; a difference of temperatures has to be named. The error is an [*Error].
func Convert(kind, text, to string) (*Converted, error) { return host.Convert(kind, text, "", to) }

// Form is the input of a calculation as a JSON Schema (draft 7) that refers to
// nothing else, for a program that draws forms of such: in order, with titles,
// help, units, defaults, and what can be picked with its titles. What is filled
// in goes into [Engine.Run] as it is. What the boat gives need not be typed; it
// may be nil. The error is an [*Error].
func (e *Engine) Form(ctx context.Context, id string, b *Boat) ([]byte, error) {
	c, err := calc.Find(catalogue.Calculations, id)
	if err != nil {
		return nil, err
	}
	o, err := e.with(Options{Boat: b, NoRanges: true})
	if err != nil {
		return nil, err
	}
	text, err := form(ctx, c, o)
	return made(ctx, text, err)
}

func form(ctx context.Context, c calc.Calculation, o Options) (json.RawMessage, error) {
	k, err := c.Form()
	if err != nil {
		return nil, Problems{{What: err.Error()}}.Err()
	}
	known, err := given(ctx, c, o)
	if err != nil {
		return nil, err
	}
	return host.Form(k.Calculation, o.Rules, known)
}

// given is what the boat gives of what a calculation asks for; nil without one.
func given(ctx context.Context, c calc.Calculation, o Options) (map[string]calc.Given, error) {
	if o.Boat == nil {
		return nil, nil
	}
	o.NoRanges = true
	s, err := o.Session(ctx, catalogue.Calculations)
	if err != nil {
		return nil, err
	}
	return s.Given(c), nil
}

// Fits tells which picks go with what is typed, a JSON object, and with what the boat
// of the options gives: the nuts of a thread. It tells so of each input, by its name,
// whose picks ask for others, and leaves out of account what cannot be used. The
// error is an [*Error].
func (e *Engine) Fits(ctx context.Context, id string, input []byte, o Options) (map[string]Fit, error) {
	typed, err := decoded(input)
	if err != nil {
		return nil, err
	}
	return e.fits(ctx, id, typed, o)
}

// fits is Fits on an input that was decoded already.
func (e *Engine) fits(ctx context.Context, id string, typed any, o Options) (map[string]Fit, error) {
	o.NoRanges = true
	s, c, object, err := e.opened(ctx, id, typed, o, nil)
	if err != nil {
		return nil, err
	}
	return made(ctx, s.Fits(c, object), nil)
}

// InForce tells by which limits sheets are made, those of one calculation or,
// where it is "", of all, and which tables there are; where a table is named
// its rows. The error is an [*Error]: neither calculation nor table of that name.
func (e *Engine) InForce(calculation, table string) (*RulesInForce, error) {
	if calculation != "" {
		if _, err := calc.Find(catalogue.Calculations, calculation); err != nil {
			return nil, err
		}
	}
	return host.Rules(e.rules(), calculation, table)
}

// Warm reads every schema and rule beforehand, which the first calls would do
// otherwise: a host does it while nobody waits. The error is that of a context
// that ends.
func (e *Engine) Warm(ctx context.Context) error {
	if err := stopped(ctx, nil); err != nil {
		return err
	}
	if _, err := boat.Contract(); err != nil {
		return err
	}
	for _, c := range catalogue.Calculations {
		if _, err := c.Form(); err != nil {
			return err
		}
	}
	e.Procedures(nil)
	b, err := ReadBoat([]byte(`{"name": "-"}`))
	if err != nil {
		return err
	}
	_, err = e.Check(ctx, b, Options{NoRanges: true})
	return err
}

// Schemas lists the names of the schemas of all inputs: those of the
// calculations, "boat", "rules", and the parts that these refer to. Those of
// requests and replies have their own functions in package schemas.
func Schemas() []string { return schemas.Names() }

// Schema is the JSON Schema (draft 2020-12) of that name. The error is an [*Error].
func Schema(name string) ([]byte, error) {
	text, err := schemas.Read(name)
	if err != nil {
		return nil, Problems{{Where: "/document", What: fmt.Sprintf("there is no schema %q", name), Allowed: strings.Join(schemas.Names(), ", "), Hint: problem.DidYouMean(name, schemas.Names()), Kind: problem.Unknown}}.Err()
	}
	return text, nil
}

// CheckRules reads a rule file and says what is wrong with it, with file and
// line, what may not be meant, and which rows it replaces and adds. name is the
// file's and may be empty. A file without problems is one that [WithOverlays]
// and a request take. Of a context that ended the report has that problem alone.
func (e *Engine) CheckRules(ctx context.Context, text []byte, name string) *RulesReport {
	if err := stopped(ctx, nil); err != nil {
		return &RulesReport{File: name, Problems: problem.Of(err)}
	}
	if len(text) > MaxBytes {
		return &RulesReport{File: name, Problems: problem.List{tooLong(text)}}
	}
	_, report := rulefile.Check(e.rules(), text, name)
	return report
}
