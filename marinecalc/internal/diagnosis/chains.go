package diagnosis

import (
	"fmt"
	"slices"
	"strings"

	"example.org/driveline/marinecalc/internal/diagnosis/bayes"
	"example.org/driveline/marinecalc/rules"
	"example.org/driveline/marinecalc/sheet"
)

// Chains says how the troubles that the sheets show lead to one another, in
// the order of the rows: every link between two troubles that are seen, with
// the links that lie between them, and what to expect next from each.
//
// A limit is a trouble when its verdict is "beyond" or "near the limit"; a
// cause is one when a verdict answers its confirming question with yes, or
// when the fault finding says that it was found or is more likely than not.
func Chains(book *rules.Book, sheets []*sheet.Sheet) []string {
	w := readWeb(book, sheets)
	if len(w.seen) == 0 {
		return []string{}
	}
	links := book.Chains()
	reached := spreadOver(w.seen, links, func(c rules.Chain) (from, to string) { return c.From, c.To })
	leads := spreadOver(w.seen, links, func(c rules.Chain) (from, to string) { return c.To, c.From })
	sentences := []string{}
	for _, c := range links.All() {
		between := reached[c.From] && leads[c.To]
		expected := w.seen[c.From] && !w.within[c.To]
		if between || expected {
			sentences = append(sentences, w.sentence(c))
		}
	}
	return sentences
}

// web is what the sheets say of the ends of the chains.
type web struct {
	title  map[string]string // of each limit and cause
	word   map[string]string // how each trouble was seen
	seen   map[string]bool   // it is a trouble
	within map[string]bool   // its verdict is within
	open   map[string]string // what is said of it that is neither
}

func readWeb(book *rules.Book, sheets []*sheet.Sheet) *web {
	w := &web{title: map[string]string{}, word: map[string]string{}, seen: map[string]bool{}, within: map[string]bool{}, open: map[string]string{}}
	for _, l := range book.AllLimits().All() {
		w.title[l.ID] = l.Title
		if how := strings.TrimSuffix(l.How, "."); how != "" {
			w.open[l.ID] = "no verdict yet: " + strings.ToLower(how[:1]) + how[1:]
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
			a, v := answerByVerdict(e, func(limit string) *sheet.Verdict { return verdicts[limit] })
			switch {
			case a == bayes.Yes:
				w.seen[c.ID], w.word[c.ID] = true, "by the verdict on “"+v.Title+"”"
			case a == bayes.No:
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
	open := judgement(book, "sure-open")
	for n := 0; sheets[i].Cell("ranking", n, "cause") != nil; n++ {
		cause, p, known := sheets[i].Cell("ranking", n, "cause").Text, sheets[i].Cell("ranking", n, "probability"), sheets[i].Cell("ranking", n, "known")
		switch {
		case w.seen[cause]:
		case known != nil && known.Text != "":
			w.seen[cause], w.word[cause] = true, known.Text
		case p != nil && p.SI != nil && *p.SI >= open:
			w.seen[cause], w.word[cause] = true, p.Text+" by the fault finding"
		}
	}
}

// spreadOver gives everything that can be reached from the troubles along the
// links, the troubles themselves among it.
func spreadOver(seen map[string]bool, links rules.List[rules.Chain], ends func(rules.Chain) (from, to string)) map[string]bool {
	reached := map[string]bool{}
	for id := range seen {
		reached[id] = true
	}
	for grown := true; grown; {
		grown = false
		for _, c := range links.All() {
			if from, to := ends(c); reached[from] && !reached[to] {
				reached[to], grown = true, true
			}
		}
	}
	return reached
}

// sentence says one link.
func (w *web) sentence(c rules.Chain) string {
	named := func(id string) string {
		switch {
		case w.seen[id]:
			return fmt.Sprintf("%s (%s)", w.title[id], w.word[id])
		case w.within[id]:
			return w.title[id] + " (OK so far)"
		}
		if open := w.open[id]; open != "" {
			return w.title[id] + " (" + open + ")"
		}
		return w.title[id] + " (nothing seen of it so far: look for it)"
	}
	return fmt.Sprintf("%s → %s: %s [%s]", named(c.From), named(c.To), strings.TrimSpace(c.Because), c.Basis.Authority())
}
