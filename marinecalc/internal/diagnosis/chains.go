package diagnosis

import (
	"fmt"
	"slices"
	"strings"

	"example.org/driveline/marinecalc/internal/boat"
	"example.org/driveline/marinecalc/internal/calc"
	"example.org/driveline/marinecalc/internal/diagnosis/bayes"
	"example.org/driveline/marinecalc/problem"
	"example.org/driveline/marinecalc/rules"
	"example.org/driveline/marinecalc/sheet"
)

// Chains says how the troubles that the sheets show lead to one another, in
// the order of the rows: every link between two troubles that are seen, two of which
// each brings on the other in one line, and the
// shortest way from a limit that is over to a trouble that nothing else seen
// explains. Then, in one line for each trouble, what it may have brought on
// that nobody has seen.
//
// A limit is a trouble when its verdict is "beyond" or "near the limit"; a
// cause is one when a verdict answers its confirming question with yes, or
// when the fault finding says that it was found or is more likely than not.
// What is near its limit alone makes no chain: nothing is wrong there yet.
func Chains(book *rules.Book, b *boat.Boat, sheets []*sheet.Sheet) []string {
	w := readWeb(book, b, sheets)
	sentences := []string{}
	if !w.wrong {
		return sentences
	}
	links := book.Chains()
	between := w.between(links)
	told := map[string]bool{}
	for _, c := range links.All() {
		if (w.seen[c.From] && w.seen[c.To] || between[c.ID]) && !told[c.From+"/"+c.To] {
			other := back(links, c)
			if other == nil || !w.seen[c.From] || !w.seen[c.To] {
				sentences = append(sentences, w.sentence(c))
			} else {
				sentences = append(sentences, w.circle(c, *other))
				told[c.To+"/"+c.From] = true
			}
			told[c.From+"/"+c.To] = true
		}
	}
	expected, order := map[string][]string{}, []string{}
	basis := map[string]string{}
	for _, c := range links.All() {
		if !w.seen[c.From] || w.within[c.To] || w.seen[c.To] || w.unseen[c.To] || told[c.From+"/"+c.To] || !w.fitted(c.To) {
			continue
		}
		if expected[c.From] == nil {
			order = append(order, c.From)
		}
		expected[c.From] = append(expected[c.From], w.short(c.To))
		basis[c.From] = c.Basis.Authority()
	}
	for _, from := range order {
		sentences = append(sentences, fmt.Sprintf("Look for what “%s” may have brought on: %s. [%s]", w.title[from], strings.Join(expected[from], "; "), basis[from]))
	}
	return sentences
}

// back is the link that leads from where another leads to where it comes from.
func back(links rules.List[rules.Chain], c rules.Chain) *rules.Chain {
	for _, other := range links.All() {
		if other.From == c.To && other.To == c.From {
			return &other
		}
	}
	return nil
}

// between are the links, by id, of the shortest ways over what nobody has seen,
// from each limit that is over to the next troubles that no trouble seen leads
// to directly.
func (w *web) between(links rules.List[rules.Chain]) map[string]bool {
	explained := map[string]bool{}
	for _, c := range links.All() {
		if w.seen[c.From] && w.seen[c.To] {
			explained[c.To] = true
		}
	}
	on := map[string]bool{}
	for start := range w.over {
		by := map[string]rules.Chain{} // the link over which each was reached first
		for edge := []string{start}; len(edge) > 0; {
			var next []string
			for _, at := range edge {
				for _, c := range links.All() {
					if _, has := by[c.To]; has || c.From != at || c.To == start || w.within[c.To] || !w.fitted(c.To) {
						continue
					}
					by[c.To] = c
					if !w.seen[c.To] {
						next = append(next, c.To)
					} else if !explained[c.To] {
						for back, ok := c, true; ok; back, ok = by[back.From] {
							on[back.ID] = true
						}
					}
				}
			}
			edge = next
		}
	}
	return on
}

// fitted tells whether the boat has what a cause is of.
func (w *web) fitted(id string) bool { return !w.absent[id] }

// web is what the sheets say of the ends of the chains.
type web struct {
	title  map[string]string // of each limit and cause
	word   map[string]string // how each trouble was seen
	seen   map[string]bool   // it is a trouble
	within map[string]bool   // its verdict is within
	open   map[string]string // what is said of it that is neither
	over   map[string]bool   // limits that are over
	unseen map[string]bool   // a cause that a look did not show
	absent map[string]bool   // a cause of something that the boat does not have
	wrong  bool              // something is over a limit or was found
}

func readWeb(book *rules.Book, b *boat.Boat, sheets []*sheet.Sheet) *web {
	w := &web{title: map[string]string{}, word: map[string]string{}, seen: map[string]bool{}, within: map[string]bool{}, open: map[string]string{},
		over: map[string]bool{}, unseen: map[string]bool{}, absent: map[string]bool{}}
	for _, l := range book.AllLimits().All() {
		w.title[l.ID] = l.Title
		if how := strings.TrimSuffix(l.How, "."); how != "" {
			w.open[l.ID] = noVerdict + ": " + problem.MidSentence(how)
		}
	}
	for _, c := range book.Causes().All() {
		w.title[c.ID] = c.Title
	}
	verdicts := verdictsByLimit(book, sheets)
	for id, v := range verdicts {
		switch v.Word.Plain() {
		case sheet.Beyond, sheet.NearLimit:
			w.seen[id], w.word[id] = true, v.Reads
			if v.Word.Plain() == sheet.Beyond {
				w.over[id], w.wrong = true, true
			}
		case sheet.Within:
			w.within[id] = true
		case sheet.CannotTell:
			w.open[id] = v.Reads
		}
	}
	for _, c := range book.Causes().All() {
		for _, e := range book.Evidence().All() {
			if e.ID != c.Confirm {
				continue
			}
			has, _ := calc.ByWhatSheHas(b, e, func(id string) string { return calc.Told(book, b, id) })
			w.absent[c.ID] = has == answerWord(bayes.No)
			a, v := answerByVerdict(e, func(limit string) *sheet.Verdict { return verdicts[limit] })
			switch {
			case a == bayes.Yes:
				w.seen[c.ID], w.word[c.ID], w.wrong = true, "by the verdict on “"+v.Title+"”", true
			case a == bayes.No:
				w.unseen[c.ID] = true
				w.open[c.ID] = "no sign of it in the verdict on “" + v.Title + "”"
			default:
				w.doubt(c.ID, e, verdicts)
			}
		}
	}
	w.takeFinding(book, sheets)
	return w
}

// doubt notes of a cause what was measured of it and tells nothing yet.
func (w *web) doubt(cause string, e rules.Evidence, verdicts map[string]*sheet.Verdict) {
	for _, by := range e.Verdicts.All() {
		for _, limit := range by.Limits.All() {
			if v := verdicts[limit]; v != nil && v.Word.Plain() == sheet.CannotTell {
				w.open[cause] = "the verdict on “" + v.Title + "” is " + v.Reads
			}
		}
	}
}

// verdictsByLimit finds the verdict on each limit in the sheet of the limit's
// own calculation; those that share it judge something else by it.
func verdictsByLimit(book *rules.Book, sheets []*sheet.Sheet) map[string]*sheet.Verdict {
	verdicts := map[string]*sheet.Verdict{}
	for _, l := range book.AllLimits().All() {
		for _, s := range sheets {
			if s.Calculation != l.Calculation {
				continue
			}
			if v := s.Verdict(l.ID); v != nil {
				verdicts[l.ID] = v
			}
		}
	}
	return verdicts
}

// takeFinding takes for troubles what the fault finding says was found, and
// what is more likely than not.
func (w *web) takeFinding(book *rules.Book, sheets []*sheet.Sheet) {
	i := slices.IndexFunc(sheets, func(s *sheet.Sheet) bool { return s.Calculation == FaultFinding })
	if i < 0 || sheets[i].Result("cause") == nil {
		return
	}
	looked := map[string]bool{} // questions answered with no, by id
	for n := 0; sheets[i].Cell("weights", n, "question") != nil; n++ {
		if sheets[i].Cell("weights", n, "answer").Text == answerWord(bayes.No) {
			looked[sheets[i].Cell("weights", n, "evidence").Text] = true
		}
	}
	for _, c := range book.Causes().All() {
		for _, e := range book.Evidence().All() {
			if e.ID == c.Confirm && looked[e.ID] {
				w.unseen[c.ID] = true
			}
		}
	}
	open := Judgement(book, "sure-open")
	for n := 0; sheets[i].Cell("ranking", n, "cause") != nil; n++ {
		cause, p, known := sheets[i].Cell("ranking", n, "cause").Text, sheets[i].Cell("ranking", n, "probability"), sheets[i].Cell("ranking", n, "known")
		switch {
		case w.seen[cause]:
		case known != nil && known.Text != "":
			w.seen[cause], w.word[cause], w.wrong = true, known.Text, true
		case p != nil && p.SI != nil && *p.SI >= open:
			w.seen[cause], w.word[cause], w.wrong = true, p.Text+" by the fault finding", true
		}
	}
}

// named is one end of a chain with how it is known.
func (w *web) named(id string) string {
	switch {
	case w.seen[id]:
		return fmt.Sprintf("%s (%s)", w.title[id], w.word[id])
	case w.within[id]:
		return w.title[id] + " (OK so far)"
	}
	if open := w.open[id]; open != "" {
		return w.title[id] + " (" + open + ")"
	}
	return w.title[id] + " (not seen yet)"
}

// short is what nobody has seen yet, without how it is read.
func (w *web) short(id string) string {
	if strings.HasPrefix(w.open[id], noVerdict) {
		return w.title[id] + " (" + noVerdict + ")"
	}
	return strings.TrimSuffix(w.named(id), " (not seen yet)")
}

// noVerdict begins what is said of a limit that was not judged.
const noVerdict = "no verdict yet"

// sentence says one link.
func (w *web) sentence(c rules.Chain) string {
	return fmt.Sprintf("%s → %s: %s [%s]", w.named(c.From), w.named(c.To), strings.TrimSpace(c.Because), c.Basis.Authority())
}

// circle says two troubles of which each brings on the other.
func (w *web) circle(c, back rules.Chain) string {
	return fmt.Sprintf("%s ↔ %s, each brings on the other: %s %s [%s]", w.named(c.From), w.named(c.To), strings.TrimSpace(c.Because), strings.TrimSpace(back.Because), c.Basis.Authority())
}
