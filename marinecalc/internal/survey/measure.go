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
	How     string    `json:"how,omitempty"`   // to get it
	Gauge   string    `json:"gauge,omitempty"` // what it is read with
	Input   string    `json:"input"`           // "calculation/input", where it is typed
	Settles []Settled `json:"settles"`         // by itself
	Helps   []Settled `json:"helps"`           // together with others
	With    []string  `json:"with"`            // the others, by title
}

// group is one of them under way.
type group struct {
	Measure
	key  string
	of   string // the reading of the boat file that it is, or no name of one
	read bool   // a reading, and not a maker's figure
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
	still := s.heldBack() != ""
	for _, m := range g.list {
		if still && g.runsShaft(m) {
			continue // the shaft must not run for it
		}
		m.Text = m.text()
		out = append(out, m.Measure)
	}
	sort.SliceStable(out, func(i, j int) bool {
		a, b := &out[i], &out[j]
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
	m := &group{key: key, Measure: Measure{Title: p.Title, How: p.Description, Input: calculation + "/" + p.Name, Settles: []Settled{}, Helps: []Settled{}, With: []string{}}}
	m.of, m.read = strings.CutPrefix(p.Boat, boat.LatestReading)
	if c, err := g.session.Find(calculation); err == nil {
		if k, err := c.Form(); err == nil {
			m.Gauge = gaugeOf(g.session, k.Calculation, p)
		}
	}
	g.list = append(g.list, m)
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
	verb := "Find out"
	if m.read || m.Gauge != "" {
		verb = "Measure"
	}
	text := verb + ": " + m.Title
	if m.Gauge != "" {
		text += " (" + m.Gauge + ")"
	}
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
	with := strings.ToLower(strings.Join(m.With, ", "))
	if len(m.With) > mostNamed {
		with = fmt.Sprintf("%d others", len(m.With))
	}
	told("helps, together with "+with+", with", m.Helps)
	return text + ". It " + strings.Join(parts, ". It ") + "."
}

// tryMissing finds, for every limit without a reading and every calculation
// that lacks inputs, the one input that settles it.
func (s *Survey) tryMissing(ctx context.Context, g *gatherer, o calc.Options) error {
	o.NoRanges, o.Brief = true, true
	session, err := o.Session(ctx, g.session.Calculations)
	if err != nil {
		return err
	}
	for _, c := range session.Calculations {
		k, err := c.Form()
		if err != nil {
			return problem.List{{What: err.Error()}}.Err()
		}
		var open []*sheet.Verdict
		for i := range s.Open {
			if s.Open[i].Calculation == c.ID {
				open = append(open, &s.Open[i].Verdict)
			}
		}
		if len(open) > 0 {
			s.tryOpen(g, session, c, k.Calculation, open)
		}
		if stopped := session.Cancelled(); len(stopped) > 0 {
			return stopped.Err()
		}
	}
	for _, m := range s.Missing {
		s.tryLacking(g, session, m)
	}
	return nil
}

// example is a value that the schema gives for an input; ok is false where it
// is nothing to measure.
func example(p *contract.Property) (value any, ok bool) {
	if p.Rows == calc.Gauges || len(p.Examples) == 0 {
		return nil, false
	}
	return p.Examples[0], true
}

// tryOpen tries every input that the open verdicts rest on and that is not
// known, one at a time; where no single one settles a verdict, all together and
// then with each left out that is not needed.
func (s *Survey) tryOpen(g *gatherer, session *calc.Session, c calc.Calculation, k *contract.Calculation, open []*sheet.Verdict) {
	out := s.sheet(c.ID)
	settled := map[string]bool{}
	tells := func(typed map[string]any, limit string) bool {
		try, _, _ := session.Run(c, typed)
		told := try != nil && try.Sheet.Verdict(limit) != nil
		return told && try.Sheet.Verdict(limit).Word != sheet.NotMeasured
	}
	tried := map[string]bool{}
	for _, v := range open {
		candidates := s.unknown(session, k, out, v)
		for _, p := range candidates {
			value, _ := example(p)
			if settled[v.Limit] || tried[p.Name] {
				continue
			}
			tried[p.Name] = true
			try, _, _ := session.Run(c, map[string]any{p.Name: value})
			if try == nil {
				continue
			}
			for _, other := range open {
				if told := try.Sheet.Verdict(other.Limit); told != nil && told.Word != sheet.NotMeasured && !settled[other.Limit] {
					settled[other.Limit] = true
					g.at(keyOf(p), c.ID, p).add(Settled{c.ID, out.Title, other.Limit, other.Title}, nil)
				}
			}
		}
	}
	for _, v := range open {
		if settled[v.Limit] {
			continue
		}
		needed := s.unknown(session, k, out, v)
		typed := map[string]any{}
		for _, p := range needed {
			typed[p.Name], _ = example(p)
		}
		if len(needed) < 2 || !tells(typed, v.Limit) {
			continue
		}
		needed = slices.DeleteFunc(needed, func(p *contract.Property) bool {
			value := typed[p.Name]
			delete(typed, p.Name)
			if tells(typed, v.Limit) {
				return true
			}
			typed[p.Name] = value
			return false
		})
		for _, p := range needed {
			var with []string
			for _, other := range needed {
				if other != p {
					with = append(with, other.Title)
				}
			}
			g.at(keyOf(p), c.ID, p).add(Settled{c.ID, out.Title, v.Limit, v.Title}, with)
		}
	}
}

// unknown are the inputs that a verdict rests on, or its bound, and that
// nobody has given.
func (s *Survey) unknown(session *calc.Session, k *contract.Calculation, out *sheet.Sheet, v *sheet.Verdict) []*contract.Property {
	on := []string{v.On}
	for _, l := range session.Book.Limits(k.ID).All() {
		if l.ID == v.Limit {
			on = append(on, l.Max.Of, l.Min.Of)
		}
	}
	var list []*contract.Property
	for _, name := range on {
		for _, p := range restsOn(k, name) {
			if _, can := example(p); can && out.Input(p.Name) == nil && !slices.Contains(list, p) {
				list = append(list, p)
			}
		}
	}
	return list
}

// tryLacking gives a calculation what it lacks, and counts the verdicts that
// it then draws.
func (s *Survey) tryLacking(g *gatherer, session *calc.Session, m Missing) {
	c, err := session.Find(m.Calculation)
	if err != nil {
		return
	}
	k, err := c.Form()
	if err != nil {
		return
	}
	typed := map[string]any{}
	var lacking []*contract.Property
	for _, n := range m.Needs {
		p := k.Input.Child(n.Input)
		if p == nil {
			return
		}
		value, can := example(p)
		if !can {
			return
		}
		typed[p.Name] = value
		lacking = append(lacking, p)
	}
	try, _, _ := session.Run(c, typed)
	if try == nil {
		return
	}
	for _, v := range try.Sheet.Verdicts {
		if v.Word == sheet.NotMeasured {
			continue
		}
		for i, p := range lacking {
			var with []string
			for j, other := range lacking {
				if j != i {
					with = append(with, other.Title)
				}
			}
			g.at(keyOf(p), c.ID, p).add(Settled{c.ID, m.Title, v.Limit, v.Title}, with)
		}
	}
}
