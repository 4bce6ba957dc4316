package rules

// words keeps equal texts once. Sources, bases and columns recur from row to
// row, and every text that is kept is one more thing for the garbage collector
// to look at in every one of its rounds.
type words map[string]string

// share puts the text first met in the place of equal ones.
func (w words) share(texts ...*string) {
	for _, t := range texts {
		if first, met := w[*t]; met {
			*t = first
		} else {
			w[*t] = *t
		}
	}
}

func (w words) shareBacking(b *Backing) {
	s := &b.Source
	w.share(&s.Document, &s.Edition, &s.Clause, &s.line, (*string)(&b.Basis))
}

func (w words) shareValid(v Valid) {
	for i := range v {
		w.share(&v[i].Of)
		for n := range v[i].Condition.words {
			w.share(&v[i].Condition.words[n])
		}
	}
}

// share keeps equal texts of a table once. It is for one that nobody has seen
// yet.
func (t *Table) share(w words) {
	for column := range t.Columns {
		w.share(&column)
	}
	for i := range t.Rows {
		r := &t.Rows[i]
		w.share(&r.ID, &r.Pick, &r.Name, &r.Note)
		w.shareBacking(&r.Backing)
		w.shareValid(r.Valid)
		for n := range r.Values {
			w.share(&r.Values[n].Column, &r.Values[n].Shape, &r.Values[n].Text)
		}
	}
}

// share keeps equal texts of limits, cautions and advice once. It is for a
// file that nobody has seen yet.
func (s *sheaf) share(w words) {
	s.Table.share(w)
	for i := range s.Limits {
		l := &s.Limits[i]
		w.share(&l.Calculation, &l.On, &l.How, &l.Why, &l.Note)
		w.shareBacking(&l.Backing)
		w.shareValid(l.Valid)
	}
	for i := range s.Cautions {
		c := &s.Cautions[i]
		w.share((*string)(&c.Signal))
		w.shareBacking(&c.Backing)
		w.shareValid(c.Valid)
		for n := range c.Calculations {
			w.share(&c.Calculations[n])
		}
	}
	for i := range s.Advice {
		a := &s.Advice[i]
		w.share(&a.Calculation, &a.Limit)
		w.shareBacking(&a.Backing)
		w.shareValid(a.Valid)
		for n := range a.Words {
			w.share(&a.Words[n])
		}
	}
}
