// Which one input settles a verdict that waits, found by trying.

package survey

import (
	"context"
	"slices"

	"example.org/driveline/marinecalc/internal/calc"
	"example.org/driveline/marinecalc/internal/calc/inputs"
	"example.org/driveline/marinecalc/internal/contract"
	"example.org/driveline/marinecalc/problem"
	"example.org/driveline/marinecalc/sheet"
)

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
	s.throughCarried(g, session)
	return nil
}

// example is a value that the schema gives for an input; ok is false where it
// is nothing to measure.
func example(p *contract.Property) (value any, ok bool) {
	if p.Rows == inputs.Gauges || len(p.Examples) == 0 {
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
