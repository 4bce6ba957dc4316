// Package calc is one run of a calculation, from what was typed to its sheet:
// calculation.go binds an id to a typed function, session.go holds what the runs
// of one request share, run.go goes through a run, write.go writes the sheet.
// What a run is made of lies in the packages below, each of which knows only
// those before it: inputs gathers what the function takes, results is what came
// out, with its ranges, verdict holds that against the limits.
package calc

import (
	"cmp"
	"context"
	"fmt"
	"slices"
	"strings"

	"example.org/driveline/marinecalc/internal/boat"
	"example.org/driveline/marinecalc/internal/calc/inputs"
	"example.org/driveline/marinecalc/internal/contract"
	"example.org/driveline/marinecalc/internal/day"
	"example.org/driveline/marinecalc/internal/spread"
	"example.org/driveline/marinecalc/problem"
	"example.org/driveline/marinecalc/quantity"
	"example.org/driveline/marinecalc/rules"
	"example.org/driveline/marinecalc/sheet"
)

// Version is marinecalc's own version and that of its standard rules.
const Version = "0.2.0-dev"

// DefaultTrials is how many Monte Carlo trials a calculation runs when
// nothing else is asked for.
const DefaultTrials = spread.DefaultTrials

// MaxTrials is how many are run at the most: more would take seconds, and move
// no digit that is shown.
const MaxTrials = 1 << 16

// Options say how a calculation is run. The zero value runs it without a
// boat, in metric units, with 1024 trials, by the standard rules.
type Options struct {
	Boat     *boat.Boat
	Units    string      // "metric", "us" or "both"; "" is the boat's choice, or metric
	Trials   int         // 0 is DefaultTrials
	NoRanges bool        // no trials are run: the sheet has no ranges, and verdicts go by the estimates
	Seed     uint64      // of the trials; 0 is 1
	Rules    *rules.Book // nil is rules.Standard()
	Day      string      // on which the input was typed, year-month-day; "" where that is not known
	Brief    bool        // the sheet without its worked lines and drawings, for a host that shows neither
}

// Session is what the calculations of one request share: earlier results are
// calculated once. It serves one goroutine; see Ahead for several.
type Session struct {
	inputs.Request
	Calculations []Calculation
	brief        bool
	made         sheet.Made
	inHand       *inputs.Inputs // of the run in hand
	board        *board
	waits        *entry                     // for another session, under the board's mutex
	done         map[string]*inputs.Outcome // of the board, with brackets that this session works out; nil when it cannot be
}

// Session checks the options. A run of the session stops when ctx ends, which
// none never does. The error is a *problem.Error with trials or units that cannot be used.
func (o Options) Session(ctx context.Context, list []Calculation) (*Session, error) {
	s := &Session{Calculations: list, Request: inputs.Request{Boat: o.Boat, Book: o.Rules, Ctx: ctx, Seed: max(o.Seed, 1), Day: o.Day}, brief: o.Brief, board: &board{}, done: map[string]*inputs.Outcome{}}
	s.OtherSheet, s.WhyWithheld, s.WhyNone = s.Earlier, s.Withheld, s.noneBecause
	if s.Ctx == nil {
		s.Ctx = context.Background()
	}
	if s.Book == nil {
		s.Book = rules.Standard()
	}
	s.Boat = s.Boat.Under(s.Book)
	s.Book = BookFor(s.Book, s.Boat)
	if !o.NoRanges {
		if s.Trials = o.Trials; s.Trials == 0 {
			s.Trials = DefaultTrials
		}
		if s.Trials < spread.MinTrials || s.Trials > MaxTrials {
			p := problem.Problem{Where: "/trials", What: fmt.Sprintf("%d trials", s.Trials), Allowed: fmt.Sprintf("%d to %d", spread.MinTrials, MaxTrials),
				Hint: fmt.Sprintf("leave it out for %d, or ask for no ranges", DefaultTrials)}
			if s.Trials > MaxTrials {
				p.Kind = problem.TooLarge
			}
			return nil, problem.List{p}.Err()
		}
	}
	if o.Day != "" {
		if _, err := day.Parse(o.Day); err != nil {
			return nil, problem.List{{Where: "/date", What: err.Error(), Allowed: "year-month-day"}}.Err()
		}
	}
	word := cmp.Or(o.Units, s.Boat.Units(), "metric")
	units, err := quantity.ParseSystem(word)
	if err != nil {
		return nil, problem.List{{Where: "/units", What: fmt.Sprintf("%q is not a system of units", word), Allowed: "metric, us, both"}}.Err()
	}
	s.Units = units
	s.made = sheet.Made{Version: Version, Overlays: s.Book.Overlays(), Units: units.String(), Trials: s.Trials, Boat: s.Boat.Name(), Day: s.Boat.NewestDay()}
	if s.Trials > 0 {
		s.made.Seed = s.Seed
	}
	return s, nil
}

// fewTrials are as many as leave no verdict in doubt where none comes near.
const fewTrials = 256

// FewWhereClear runs few trials first, and all of them where these leave a verdict
// in doubt, unless the options say how many. It is for many sheets at once, which
// are read for their words: the ends of an interval are 3 % of its half width off
// then in place of 1 %.
func (s *Session) FewWhereClear(o Options) {
	if o.Trials == 0 && !o.NoRanges {
		s.Few, s.made.Few = fewTrials, fewTrials
	}
}

// Spread is what is known of a number among the inputs of the run in hand,
// and whether it is one. It is for a typed function whose estimate is a mean
// over the ranges of its inputs.
func (s *Session) Spread(input string) (spread.Factor, bool) {
	if s.inHand == nil {
		return spread.Factor{}, false
	}
	k := s.inHand.At(input)
	if k == nil || s.inHand.Form.Input.Child(input).Kind == nil {
		return spread.Factor{}, false
	}
	return k.Factor, true
}

// Made says what makes the sheets of the session.
func (s *Session) Made() sheet.Made {
	made := s.made
	made.Overlays = slices.Clone(made.Overlays)
	return made
}

// Unused names what of the boat file no calculation takes: members that are not
// known, with those by older names, and maker's figures for what there is not;
// and readings of days to come, where today is known. It is no error: all that
// is kept in the file.
func (s *Session) Unused() problem.List {
	list := problem.List(s.Boat.Warnings())
	for i, name := range s.Boat.FiguresFor() {
		if known := s.figured(name); known != nil {
			list = append(list, problem.Problem{Where: fmt.Sprintf("/makersFigures/%d/of", i), Kind: problem.Unknown,
				What: fmt.Sprintf("there is no %q; the figure is kept, and not used", name), Hint: problem.DidYouMean(name, known),
				Allowed: "the id of a limit, or calculation/input or calculation/result"})
		}
	}
	return append(append(append(list, s.Boat.Ahead(s.Day)...), s.Boat.Outdated()...), s.figureFaults()...)
}

// figured is nil where a maker's figure of that name is used, and otherwise
// the names that there are.
func (s *Session) figured(name string) (known []string) {
	if l, p := s.limitNamed(name); l != nil || p != nil {
		return nil
	}
	id, _, one := strings.Cut(name, "/")
	if c, is := named(s.Calculations, id); is && one {
		names, err := contract.Names(c.ID)
		if err != nil {
			return nil // Run tells of it
		}
		for _, n := range names {
			known = append(known, id+"/"+n)
		}
	}
	for _, c := range s.Calculations {
		known = append(known, c.ID+"/")
		for _, l := range s.Book.Limits(c.ID).All() {
			known = append(known, l.ID)
		}
	}
	return known
}

// Cancelled is what is wrong once the session's context has ended, or none.
func (s *Session) Cancelled() problem.List {
	if err := s.Ctx.Err(); err != nil {
		return problem.List{{What: "the calculation was stopped: " + err.Error(), Kind: problem.Cancelled}}
	}
	return nil
}

// Earlier is the outcome of another calculation on the boat alone, or nil
// when the boat does not allow it.
func (s *Session) Earlier(id string) *inputs.Outcome {
	if out, done := s.done[id]; done {
		return out
	}
	c, is := named(s.Calculations, id)
	if !is {
		return nil
	}
	out, _, _ := s.Work(c)
	return out
}

// Work runs a calculation on the boat alone, once for all sessions of the
// request, and keeps the answer. missing and problems say why there is none.
func (s *Session) Work(c Calculation) (out *inputs.Outcome, missing []*contract.Property, problems problem.List) {
	e, mine := s.board.take(s, c.ID)
	if mine {
		e.out, e.missing, e.problems = s.Run(c, map[string]any{})
		if c.ID == faultFinding && s.Boat != nil && len(e.missing) > 0 {
			e.out = s.unasked(c)
		}
		s.board.finish(e)
	}
	if e == nil {
		return nil, nil, nil
	}
	if e.out == nil {
		s.done[c.ID] = nil
		return nil, e.missing, e.problems
	}
	if s.done[c.ID] == nil {
		with := *e.out
		with.Bracket = s.brackets(c, e)
		s.done[c.ID] = &with
	}
	return s.done[c.ID], nil, nil
}

// Lacking is the error of a calculation that misses an input which it would
// have taken from elsewhere too.
type Lacking struct{ Input, What, Hint string }

func (l Lacking) problem() problem.Problem {
	return problem.Problem{Where: "/" + l.Input, What: l.What, Hint: l.Hint, Kind: problem.Missing}
}

// Error says what is missing.
func (l Lacking) Error() string { return l.What }

// Find returns the calculation of that id.
func (s *Session) Find(id string) (Calculation, error) { return Find(s.Calculations, id) }

// Find returns the calculation of that id in a list. The error names the
// closest one.
func Find(list []Calculation, id string) (Calculation, error) {
	if c, is := named(list, id); is {
		return c, nil
	}
	ids := make([]string, len(list))
	for i, c := range list {
		ids[i] = c.ID
	}
	hint := ""
	if best, ok := problem.Closest(id, ids); ok {
		hint = fmt.Sprintf("did you mean %q?", best)
	}
	if id == "" {
		return Calculation{}, problem.List{{Where: "/calculation", What: "no calculation is named", Allowed: strings.Join(ids, ", "), Kind: problem.Missing}}.Err()
	}
	return Calculation{}, problem.List{{Where: "/calculation", What: fmt.Sprintf("there is no calculation %q", id), Allowed: strings.Join(ids, ", "), Hint: hint, Kind: problem.Unknown}}.Err()
}

// named is Find without the error, which takes longer than a plain sheet to word.
func named(list []Calculation, id string) (c Calculation, is bool) {
	for _, c := range list {
		if c.ID == id {
			return c, true
		}
	}
	return c, false
}

// Property is the result or input of that name, "calculation/name", or nil.
func (s *Session) Property(of string) *contract.Property {
	id, name, _ := strings.Cut(of, "/")
	c, is := named(s.Calculations, id)
	if !is {
		return nil
	}
	k, err := c.Form()
	if err != nil {
		return nil
	}
	if r := k.Result.Child(name); r != nil {
		return r
	}
	return k.Input.Child(name)
}

// Money writes an amount in the currency of the run in hand.
func (s *Session) Money(amount float64) string {
	kind, _ := quantity.Lookup("money")
	currency := ""
	if s.inHand != nil {
		currency = s.inHand.Currency
	}
	return kind.Print(amount, s.Units, currency, currency)
}
