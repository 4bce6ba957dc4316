package marinecalc

import (
	"context"
	"fmt"

	"example.org/driveline/marinecalc/internal/calc"
	"example.org/driveline/marinecalc/internal/catalogue"
	"example.org/driveline/marinecalc/internal/contract"
	"example.org/driveline/marinecalc/internal/setting"
	"example.org/driveline/marinecalc/internal/spread"
	"example.org/driveline/marinecalc/internal/survey"
	"example.org/driveline/marinecalc/problem"
	"example.org/driveline/marinecalc/quantity"
	"example.org/driveline/marinecalc/rules"
)

// Engine runs calculations by one set of rules. It is made once, by [New], and
// is safe for concurrent use. The zero Engine, or a nil one, goes by the
// standard rules. A nil context is one that never ends.
type Engine struct {
	book      *rules.Book // nil for the standard one
	units     string
	maxTrials int // 0 for the most there can be
	last      calc.Keeper
}

// Option sets up an Engine. One that is nil sets up nothing.
type Option func(*Engine) error

// New makes an engine. The error, when there is one, is an [*Error] with what
// is wrong with the options.
func New(options ...Option) (*Engine, error) {
	e := new(Engine)
	for _, set := range options {
		if set == nil {
			continue
		}
		if err := set(e); err != nil {
			return nil, err
		}
	}
	return e, nil
}

// WithRules gives the engine a book of rules.
func WithRules(book *rules.Book) Option {
	return func(e *Engine) error {
		e.book = book
		return nil
	}
}

// WithOverlays applies rule files, such as those of a yard or a maker, over
// the rules that the engine has so far, one after the other.
func WithOverlays(files ...[]byte) Option {
	return func(e *Engine) (err error) {
		e.book, err = apply(e.rules(), files)
		return err
	}
}

// WithUnits sets the units of what is printed, "metric", "us" or "both", for
// boats and requests that do not choose their own.
func WithUnits(system string) Option {
	return func(e *Engine) error {
		if _, err := quantity.ParseSystem(system); err != nil {
			return problem.List{{Where: "/units", What: fmt.Sprintf("%q is not a system of units", system), Allowed: "metric, us, both"}}.Err()
		}
		e.units = system
		return nil
	}
}

// WithMaxTrials refuses requests for more trials than that, and runs no more
// where nothing is asked for.
func WithMaxTrials(most int) Option {
	return func(e *Engine) error {
		if most < spread.MinTrials || most > calc.MaxTrials {
			return problem.List{{Where: "/maxTrials", What: fmt.Sprintf("at most %d trials", most), Allowed: fmt.Sprintf("%d to %d", spread.MinTrials, calc.MaxTrials)}}.Err()
		}
		e.maxTrials = most
		return nil
	}
}

func (e *Engine) rules() *rules.Book {
	if e == nil || e.book == nil {
		return rules.Standard()
	}
	return e.book
}

// keeper keeps the boat of the last request.
func (e *Engine) keeper() *calc.Keeper {
	if e == nil {
		e = &standard
	}
	return &e.last
}

// with fills in what a call leaves to the engine.
func (e *Engine) with(o Options) (Options, error) {
	if e == nil {
		e = &standard
	}
	if o.Rules == nil {
		o.Rules = e.rules()
	}
	if o.Units == "" && o.Boat.Units() == "" {
		o.Units = e.units
	}
	if e.maxTrials > 0 && !o.NoRanges {
		if o.Trials > e.maxTrials {
			return o, problem.List{{Where: "/trials", What: fmt.Sprintf("%d trials", o.Trials), Allowed: fmt.Sprintf("up to %d here", e.maxTrials),
				Hint: "ask for fewer, or leave it out", Kind: problem.TooLarge}}.Err()
		}
		if o.Trials == 0 && e.maxTrials < DefaultTrials {
			o.Trials = e.maxTrials
		}
	}
	return o, nil
}

// maxBoatTrials is how many trials a whole boat is worked out with at the most,
// of which each of her calculations runs as many.
const maxBoatTrials = calc.MaxTrials / 2

// withBoat is with for what works out a whole boat.
func (e *Engine) withBoat(o Options) (Options, error) {
	if o.Trials > maxBoatTrials && !o.NoRanges {
		return o, problem.List{{Where: "/trials", What: fmt.Sprintf("%d trials of each calculation of a boat", o.Trials), Allowed: fmt.Sprintf("up to %d", maxBoatTrials),
			Hint: "ask for fewer, or leave it out", Kind: problem.TooLarge}}.Err()
	}
	return e.with(o)
}

// Run runs one calculation on an input written as a JSON object and returns
// its sheet; no text stands for the empty object. It stops when ctx ends. The
// error is an [*Error] with every fault at its place: errors.Is tells
// [ErrUnknown] (no such calculation), [ErrMissing] (an input that no origin
// gave), [ErrTooLarge] and [ErrCancelled] from the rest.
func (e *Engine) Run(ctx context.Context, id string, input []byte, o Options) (*Sheet, error) {
	typed, err := decoded(input)
	if err != nil {
		return nil, err
	}
	return e.run(ctx, id, typed, o, nil)
}

// decoded is an input as it was typed; no text stands for the empty object.
func decoded(input []byte) (any, error) {
	if len(input) == 0 {
		input = []byte("{}")
	}
	typed, problems := contract.Decode(input)
	return typed, problems.Err()
}

// opened is a session that goes on from what was kept, which may be nothing, the
// calculation of that id and what was typed for it.
func (e *Engine) opened(ctx context.Context, id string, typed any, o Options, kept *calc.Kept) (s *calc.Session, c calc.Calculation, object map[string]any, err error) {
	if o, err = e.with(o); err != nil {
		return nil, c, nil, err
	}
	if s, err = o.Session(ctx, catalogue.Calculations); err != nil {
		return nil, c, nil, err
	}
	s.GoOn(kept, o)
	if c, err = s.Find(id); err != nil {
		return nil, c, nil, err
	}
	object, ok := typed.(map[string]any)
	if !ok {
		return nil, c, nil, noObject()
	}
	return s, c, object, nil
}

// run is Run on an input that was decoded already, and a boat that may be kept.
func (e *Engine) run(ctx context.Context, id string, typed any, o Options, kept *calc.Kept) (*Sheet, error) {
	s, c, object, err := e.opened(ctx, id, typed, o, kept)
	if err != nil {
		return nil, err
	}
	out, _, problems := s.Run(c, object)
	if len(problems) > 0 {
		return nil, stopped(ctx, problems.Sorted().Err())
	}
	s.HoldStill(out.Sheet)
	setting.Mark(out.Sheet, s.Book)
	if err := stopped(ctx, nil); err != nil {
		return nil, err
	}
	return out.Sheet, nil
}

// Check runs every calculation that the boat file allows and says for the
// rest what is missing and how to get it. The error is as in [Engine.Run].
//
// A sheet whose limits are all met by far has 256 trials, unless the options say
// how many there are to be: its words are those of [DefaultTrials], the ends of its
// ranges lie about 3 % of half their width off in place of 1 %. Where
// people go by printed figures there is [Engine.CheckToPrint].
func (e *Engine) Check(ctx context.Context, b *Boat, o Options) (*Survey, error) {
	if b == nil {
		return nil, noBoat()
	}
	o.Boat = b
	o, err := e.withBoat(o)
	if err != nil {
		return nil, err
	}
	s, err := survey.Check(ctx, b, o)
	return made(ctx, s, err)
}

// CheckToPrint is Check with all trials on every sheet, since people go by what
// is printed: [DefaultTrials], unless options or engine say how many.
func (e *Engine) CheckToPrint(ctx context.Context, b *Boat, o Options) (*Survey, error) {
	few := e != nil && 0 < e.maxTrials && e.maxTrials < DefaultTrials
	if o.Trials == 0 && !o.NoRanges && !few {
		o.Trials = DefaultTrials
	}
	return e.Check(ctx, b, o)
}

// Unused names what of the boat file no calculation takes: members that are not
// known or have older names, and maker's figures for what there is not. It is
// kept in the file, and it is shown because a misspelt name would vanish
// otherwise. None where the options cannot be used: [Engine.Run] tells of that.
func (e *Engine) Unused(b *Boat, o Options) Problems {
	if b == nil {
		return nil
	}
	o.Boat = b
	o, err := e.with(o)
	if err != nil {
		return nil
	}
	s, err := o.Session(context.Background(), catalogue.Calculations)
	if err != nil {
		return nil
	}
	return s.Unused()
}

// Compare works the boat out as it was read up to each of two days (ISO 8601,
// year-month-day, the day itself included) and says what moved, and by how
// much more than the gauges can explain. The error is as in [Engine.Run].
func (e *Engine) Compare(ctx context.Context, b *Boat, before, after string, o Options) (*Comparison, error) {
	if b == nil {
		return nil, noBoat()
	}
	o.Boat = b
	o, err := e.withBoat(o)
	if err != nil {
		return nil, err
	}
	c, err := survey.Compare(ctx, b, before, after, o)
	return made(ctx, c, err)
}

// standard is the engine behind the functions of the package.
var standard Engine
