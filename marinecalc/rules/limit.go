package rules

import (
	"encoding/json"
	"fmt"
	"iter"
	"maps"
	"strings"
)

// Bound is one side of a limit: an amount, or the value of another input or
// result of the same calculation.
type Bound struct {
	Amount
	Of    string
	given bool
}

// BoundAt returns a bound of an amount in SI.
func BoundAt(si float64) Bound { return Bound{Amount: Amount{SI: si}, given: true} }

// Given tells whether there is a bound on this side.
func (b Bound) Given() bool { return b.given }

// UnmarshalJSON reads an amount or {"of": "name"}.
func (b *Bound) UnmarshalJSON(text []byte) error {
	*b = Bound{given: string(text) != "null"}
	switch {
	case !b.given:
		return nil
	case text[0] != '{':
		return b.Amount.UnmarshalJSON(text)
	}
	var w struct{ Of string }
	if err := json.Unmarshal(text, &w); err != nil {
		return err
	}
	if w.Of == "" {
		return fmt.Errorf("a bound by name needs %q", "of")
	}
	b.Of = w.Of
	return nil
}

// Limit is what a result or a reading is held against.
type Limit struct {
	ID          string       `json:"id"`
	Calculation string       `json:"calculation"`
	On          string       `json:"on"`
	Title       string       `json:"title"`
	Max         Bound        `json:"max"` // given, or min is
	Min         Bound        `json:"min"`
	Near        float64      `json:"near"`
	Scale       Bound        `json:"scale"`  // of a limit of 0: what there is on its right side, as nearness goes by a share
	Chance      bool         `json:"chance"` // the value is itself the probability that all is well
	Past        *Valid       `json:"past"`   // where it is past its limit, whatever its range or chance
	Valid       Valid        `json:"valid"`
	How         string       `json:"how"`      // how to take the reading when it is missing
	Lacks       List[Lack]   `json:"lacks"`    // in place of that, of several things those that are not known
	Each        Each         `json:"each"`     // columns of the list of which the value is the worst, that must be known of every entry, or of none, for it to be OK
	States      List[State]  `json:"states"`   // in which there is nothing to judge
	Why         string       `json:"why"`      // what it means to be beyond
	Meanings    List[State]  `json:"meanings"` // in place of that, where a value is such
	Stops       List[string] `json:"stops"`    // past it the shaft must not run: the causes of which one cured takes that away
	Finer       string       `json:"finer"`    // another way of reading, where no gauge of this one settles a doubt; goes on from "To settle it, "
	Note        string       `json:"note"`
	Names       string       `json:"names"` // result in words that stands behind the value: what was counted
	While       While        `json:"while"` // limits that must not be passed for it to be OK
	Void        While        `json:"void"`  // limits that must not be passed for it to be told at all: they show that the reading is none
	Provenance
	replaced *Limit
}

// While names limits of this sheet or another, "calculation/limit", on which
// what gives a value hangs: a clamp that strips the thread is none.
type While = List[string]

// Each names columns of a list that is typed, "mounts/ratedLoad": of an entry
// without what others have nothing is known, and the worst of the others is not the worst.
type Each = List[string]

// StatesAlike tells whether the limit has one state, or several that are read alike,
// as by one way and another to the same.
func (l *Limit) StatesAlike() bool {
	if l.States.Len() == 1 {
		return true
	}
	for _, s := range l.States.All() {
		if s.Reads == "" || s.Reads != l.States.At(0).Reads {
			return false
		}
	}
	return l.States.Len() > 0
}

// StateOf is the state, of several alike, that trials without a value are in, by what
// is known; ok is false for none.
func (l *Limit) StateOf(known Known) (of State, ok bool) {
	if !l.StatesAlike() {
		return State{}, false
	}
	for _, s := range l.States.All() {
		if l.States.Len() == 1 || s.Valid.Knows(known) {
			return s, true
		}
	}
	return State{}, false
}

// State is how things are where there is nothing to judge, and no reading to
// take: a bolt that is broken, a load under which no life is calculated. With
// Tell it is one that leaves too little to tell, until that input is told. With
// Reads it has a word of its own, as where nothing can be counted on until a bolt is
// renewed.
type State struct {
	Valid Valid  `json:"valid"`
	Text  string `json:"text"` // goes on from "nothing to judge," or "not enough to tell,"
	Tell  string `json:"tell"`
	Reads string `json:"reads"` // in place of "nothing to judge"
	named string // in place of these, until the file is read
}

// UnmarshalJSON reads a state, or the name of one that its file describes for
// several limits.
func (s *State) UnmarshalJSON(text []byte) error {
	*s = State{}
	if text[0] == '"' {
		return json.Unmarshal(text, &s.named)
	}
	type plain State
	return json.Unmarshal(text, (*plain)(s))
}

// Lack is one of several things that a verdict wants.
type Lack struct {
	Of    string `json:"of"`    // input or result that is not known, or a column that is not known of every entry of its list
	Valid Valid  `json:"valid"` // where it is wanted
	Text  string `json:"text"`  // how to get it
	Part  string `json:"part"`  // what the value is worked out without, for it is no OK then: “what driving does is not in it”
}

// own begins the id of a limit that is no row.
const own = "own-"

// IsOwn tells whether a limit is one that the owner set.
func IsOwn(limit string) bool { return strings.HasPrefix(limit, own) }

// OwnLimit is the id of the limit that the owner set for a reading in the boat file,
// "own-drip-rate" for dripRate: rows of advice ask by it.
func OwnLimit(reading string) string {
	id := []byte(own)
	for _, c := range []byte(reading) {
		if 'A' <= c && c <= 'Z' {
			id = append(id, '-')
			c += 'a' - 'A'
		}
		id = append(id, c)
	}
	return string(id)
}

// Replaced is the limit whose place this one of an overlay has taken, or nil.
// Where the conditions of this one are not met, that one stays in force.
func (l *Limit) Replaced() *Limit {
	if l.replaced == nil {
		return nil
	}
	was := *l.replaced
	return &was
}

// Shared says that results of one calculation are held against the limits of
// another, under names of their own.
type Shared struct {
	Calculation string
	LimitsOf    string
	Title       string // put before the limit's title
	How         string // how to get the result when it is missing
	on          map[string]string
}

// On goes through what a limit is on, and the result held against it here.
func (s *Shared) On() iter.Seq2[string, string] { return maps.All(s.on) }

// UnmarshalJSON reads what is shared.
func (s *Shared) UnmarshalJSON(text []byte) error {
	var w struct {
		Calculation, LimitsOf, Title, How string
		On                                map[string]string
	}
	err := json.Unmarshal(text, &w)
	*s = Shared{Calculation: w.Calculation, LimitsOf: w.LimitsOf, Title: w.Title, How: w.How, on: w.On}
	return err
}

// share is a limit as the calculation holds one of its own results to it.
func (s *Shared) share(l Limit, on string) Limit {
	l.Each = Each{} // the list is the other calculation's
	lacks := make([]Lack, 0, l.Lacks.Len())
	for _, one := range l.Lacks.All() {
		if of, has := s.on[one.Of]; has {
			one = Lack{Of: of, Text: s.How}
		}
		lacks = append(lacks, one)
	}
	l.Calculation, l.On, l.How, l.Lacks = s.Calculation, on, s.How, List[Lack]{lacks}
	l.Title = s.Title + ": " + l.Title
	if l.replaced != nil {
		was := s.share(*l.replaced, on)
		l.replaced = &was
	}
	return l
}

// limits gives the limits that the calculation shares.
func (s *Shared) limits(all []Limit) []Limit {
	var list []Limit
	for _, l := range all {
		if on, has := s.on[l.On]; has && l.Calculation == s.LimitsOf {
			list = append(list, s.share(l, on))
		}
	}
	return list
}
