package survey

import (
	"context"
	"fmt"
	"slices"
	"sort"
	"strings"

	"example.org/driveline/marinecalc/internal/boat"
	"example.org/driveline/marinecalc/internal/calc"
	"example.org/driveline/marinecalc/internal/contract"
	"example.org/driveline/marinecalc/problem"
	"example.org/driveline/marinecalc/sheet"
)

// Measure is one thing to measure, to look up or to type, with every verdict
// that it settles.
type Measure struct {
	Title   string    `json:"title"`
	Text    string    `json:"text"`            // what to do, and how many verdicts it settles
	Gain    string    `json:"gain"`            // the end of that: what it settles, in sentences
	How     string    `json:"how,omitempty"`   // to get it
	Gauge   string    `json:"gauge,omitempty"` // what it is read with
	Input   string    `json:"input"`           // "calculation/input", where it is typed
	Do      Do        `json:"do"`              // what the owner can do for it
	Place   string    `json:"place,omitempty"` // "ashore" or "afloat" where it can be done there only, and she lies elsewhere
	Settles []Settled `json:"settles"`         // by itself
	Helps   []Settled `json:"helps"`           // together with others
	With    []string  `json:"with"`            // the others, by title
}

// Do is what the owner can do for a figure.
type Do string

// In the order in which they are proposed: a gauge is read, a plate or a book
// is looked into, and what neither gives is chosen.
const (
	DoMeasure Do = "measure"
	DoLookUp  Do = "look-up"
	DoChoose  Do = "choose"
)

// rank is its place in that order.
func (d Do) rank() int { return slices.Index([]Do{DoMeasure, DoLookUp, DoChoose}, d) }

// chosen are the kinds of figures that stand on no plate and that no gauge
// aboard reads: rows of the table bare-figures.
var chosen = []string{"load", "clamp", "friction", "coefficient", "film", "efficiency"}

// byHand are the kinds of which the row is what they are read with.
var byHand = []string{"machined", "rule", "tape", "thermometer"}

// group is one of them under way.
type group struct {
	Measure
	key   string
	of    string // the reading of the boat file that it is, or no name of one
	bare  string // the row of the bare figures that it has
	after string // "calculation/result" that gives it
	words bool   // one of several, as it is made: never chosen for the worse
	seen  bool   // the owner can see or count it
	read  bool   // a reading, and not a maker's figure
	past  bool   // a reading of an earlier day

	withheld bool // the sheet that gives it has nothing to judge it by
}

// what the owner can do for it.
func (m *group) what() Do {
	switch {
	case m.read || m.Gauge != "" || m.seen || slices.Contains(byHand, m.bare):
		return DoMeasure
	case m.words || m.after != "" && m.bare == "coefficient": // as it is made, or as it was worked out
		return DoLookUp
	case slices.Contains(chosen, m.bare):
		return DoChoose
	}
	return DoLookUp
}

// Settled is a verdict that waits.
type Settled struct {
	Calculation string `json:"calculation"`
	Sheet       string `json:"sheet"`
	Limit       string `json:"limit"`
	Title       string `json:"title"`
}

// gatherer groups the verdicts that wait by what settles them.
type gatherer struct {
	session *calc.Session
	list    []*group
}

// measure groups every verdict that waits by the one thing that settles it:
// the unverified figure at which it turns, the reading that a finer gauge
// would settle, or the input that is missing. Of a missing input that is tried:
// with the example of its schema in its place the verdict must be told.
func (s *Survey) measure(ctx context.Context, session *calc.Session, o calc.Options) ([]Measure, error) {
	g := gatherer{session: session}
	for _, f := range s.Findings {
		v := &f.Verdict
		waits := Settled{f.Calculation, f.Sheet, v.Limit, v.Title}
		switch {
		case v.Word.Plain() != sheet.CannotTell:
		case v.Turns != nil:
			g.figure(f.Calculation, v.Turns.Title, waits, nil)
		case len(v.Awaits) == 1:
			g.figure(f.Calculation, v.Awaits[0], waits, nil)
		case len(v.Awaits) > 1:
			for _, title := range v.Awaits {
				g.figure(f.Calculation, title, waits, slices.DeleteFunc(slices.Clone(v.Awaits), func(t string) bool { return t == title }))
			}
		case v.SettleBy != nil:
			g.again(f.Calculation, v.SettleBy, waits)
		}
	}
	if err := s.tryMissing(ctx, &g, o); err != nil {
		return nil, err
	}
	out := []Measure{}
	still := s.Still != ""
	for _, m := range g.list {
		if still && g.runsShaft(m) || m.past {
			continue // the shaft must not run for it, or no gauge reads what was
		}
		m.Place, m.Do = g.elsewhere(m), m.what()
		m.Gain = m.gain()
		m.Text = m.text()
		out = append(out, m.Measure)
	}
	sort.SliceStable(out, func(i, j int) bool {
		a, b := &out[i], &out[j]
		if (a.Place == "") != (b.Place == "") {
			return a.Place == "" // what can be done where she lies
		}
		if a.Do != b.Do {
			return a.Do.rank() < b.Do.rank()
		}
		if len(a.Settles) != len(b.Settles) {
			return len(a.Settles) > len(b.Settles)
		}
		return len(a.Helps) > len(b.Helps)
	})
	return out, nil
}

// at is the group of a key, made where there is none.
func (g *gatherer) at(key, calculation string, p *contract.Property) *group {
	for _, m := range g.list {
		if m.key == key {
			return m
		}
	}
	m := g.made(key, calculation, p)
	g.list = append(g.list, m)
	return m
}

// made is the group of an input, not yet among the others.
func (g *gatherer) made(key, calculation string, p *contract.Property) *group {
	m := &group{key: key, Measure: Measure{Title: p.Title, How: p.Description, Input: calculation + "/" + p.Name, Settles: []Settled{}, Helps: []Settled{}, With: []string{}}}
	m.of, m.read = strings.CutPrefix(p.Boat, boat.LatestReading)
	m.past = strings.HasPrefix(p.Boat, boat.FirstReading)
	m.withheld = p.After != "" && g.session.Withheld(p) != ""
	m.bare, m.seen, m.after, m.words = p.Bare, p.Seen, p.After, len(p.Enum) > 0 || p.Rows != ""
	if c, err := g.session.Find(calculation); err == nil {
		if k, err := c.Form(); err == nil {
			m.Gauge = gaugeOf(g.session, k.Calculation, p)
		}
	}
	return m
}

func (m *Measure) add(waits Settled, with []string) {
	if slices.Contains(m.Settles, waits) || slices.Contains(m.Helps, waits) {
		return
	}
	if len(with) == 0 {
		m.Settles = append(m.Settles, waits)
		return
	}
	m.Helps = append(m.Helps, waits)
	for _, title := range with {
		if !slices.Contains(m.With, title) {
			m.With = append(m.With, title)
		}
	}
}

// figure is an unverified figure, by its title: an input of the calculation,
// or of another one that it rests on.
func (g *gatherer) figure(calculation, title string, waits Settled, with []string) {
	ids := []string{calculation}
	for _, c := range g.session.Calculations {
		ids = append(ids, c.ID)
	}
	for _, id := range ids {
		c, err := g.session.Find(id)
		if err != nil {
			continue
		}
		k, err := c.Form()
		if err != nil {
			continue
		}
		for _, p := range k.Input.Properties {
			if p.Title == title {
				g.at(keyOf(p), id, p).add(waits, with)
				return
			}
		}
	}
}

// keyOf is the same for one thing on several sheets.
func keyOf(p *contract.Property) string {
	if p.Boat != "" {
		return p.Boat
	}
	return p.Title
}

// again is a reading to take again, with a finer gauge or several times.
func (g *gatherer) again(calculation string, by *sheet.SettleBy, waits Settled) {
	c, err := g.session.Find(calculation)
	if err != nil {
		return
	}
	k, err := c.Form()
	if err != nil {
		return
	}
	p := k.Input.Child(by.Input)
	if p == nil {
		return
	}
	m := g.at(keyOf(p)+" again", calculation, p)
	m.Title, m.read = p.Title+" again", true
	switch {
	case by.Gauge != "":
		m.Gauge = by.Gauge
	case by.Readings > 0:
		m.Title = fmt.Sprintf("%s %d times, for the mean", p.Title, by.Readings)
	}
	m.add(waits, nil)
}

// mostNamed is how many verdicts or figures are named in a sentence.
const mostNamed = 3

// text says what to do.
func (m *group) text() string {
	verb := map[Do]string{DoMeasure: "Measure", DoLookUp: "Look up", DoChoose: "Choose"}[m.what()]
	if m.Place != "" {
		verb = "When she is next " + m.Place + ", " + strings.ToLower(verb)
	}
	text := verb + ": " + m.Title
	if m.Gauge != "" {
		text += " (" + m.Gauge + ")"
	}
	return text + ". " + m.Gain
}

// gain says what that settles, and how to choose what is chosen.
func (m *group) gain() string {
	var parts []string
	told := func(words string, list []Settled) {
		if len(list) == 0 {
			return
		}
		var titles []string
		for i, w := range list {
			if i == mostNamed && len(list) > mostNamed+1 {
				titles = append(titles, fmt.Sprintf("and %d more", len(list)-i))
				break
			}
			titles = append(titles, w.Title)
		}
		verdicts := "one verdict"
		if n := len(list); n > 1 {
			verdicts = fmt.Sprintf("%d verdicts", n)
		}
		parts = append(parts, words+" "+verdicts+": "+strings.Join(titles, "; "))
	}
	told("settles", m.Settles)
	var others []string
	for _, title := range m.With {
		others = append(others, problem.MidSentence(title))
	}
	with := strings.Join(others, ", ")
	if len(m.With) > mostNamed {
		with = fmt.Sprintf("%d others", len(m.With))
	}
	told("helps, together with "+with+", with", m.Helps)
	how := ""
	if m.what() == DoChoose {
		how = "As its maker gives it, or as you know it, else the end of its range that makes the verdict worse. "
	}
	return how + "It " + strings.Join(parts, ". It ") + "."
}
