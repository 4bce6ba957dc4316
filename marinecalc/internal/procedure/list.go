package procedure

import (
	"strings"

	"example.org/driveline/marinecalc/internal/boat"
	"example.org/driveline/marinecalc/internal/calc"
	"example.org/driveline/marinecalc/internal/survey"
	"example.org/driveline/marinecalc/problem"
	"example.org/driveline/marinecalc/rules"
)

// PartWork is the work there is on one part of the drivetrain.
type PartWork struct {
	Part string `json:"part"`
	Work []Work `json:"work"`
}

// Work is one piece of work that can be gone through.
type Work struct {
	Piece
	Cures  []string `json:"cures"` // by their titles
	Steps  int      `json:"steps"`
	Hours  float64  `json:"hours"`
	Ticked int      `json:"ticked"` // on the boat
}

// List is all work by the part that it is on, as the causes name it, but for what
// cannot be needed on the boat.
func List(book *rules.Book, b *boat.Boat) []PartWork {
	book = calc.BookFor(book, b)
	kept := stepsKept(b)
	hours := map[string]float64{}
	for _, s := range book.Steps().All() {
		hours[s.ID] = s.Hours
	}
	list := []PartWork{}
	listed := map[string]bool{}
	for _, cause := range book.Causes().All() {
		for _, r := range book.Remedies().All() {
			if listed[r.ID] || !rules.Contains(r.Cures, cause.ID) || calc.CannotBe(book, b, r) != "" {
				continue
			}
			listed[r.ID] = true
			at := 0
			for at < len(list) && list[at].Part != partTitle(cause.Part) {
				at++
			}
			if at == len(list) {
				list = append(list, PartWork{Part: partTitle(cause.Part), Work: []Work{}})
			}
			list[at].Work = append(list[at].Work, workOf(book, r, kept, hours))
		}
	}
	return list
}

// For is the work on a calculation's part of the line that goes by what it finds:
// with a step that uses a figure of it or, where there is none, all of the part.
func For(book *rules.Book, b *boat.Boat, calculation string) []PartWork {
	goes := map[string]bool{} // steps
	for i := range book.Steps().Len() {
		step := book.Steps().At(i)
		for k := range step.Use.Len() {
			goes[step.ID] = goes[step.ID] || strings.HasPrefix(step.Use.At(k), calculation+"/")
		}
	}
	for i := range book.Remedies().Len() {
		r := book.Remedies().At(i)
		for k := range r.Steps.Len() {
			goes[r.ID] = goes[r.ID] || goes[r.Steps.At(k)]
		}
	}
	all, by := []PartWork{}, []PartWork{}
	for _, p := range List(book, b) {
		if !survey.HasSheet(book, strings.ToLower(p.Part), calculation) {
			continue
		}
		all = append(all, p)
		some := PartWork{Part: p.Part}
		for _, w := range p.Work {
			if goes[w.ID] {
				some.Work = append(some.Work, w)
			}
		}
		if some.Work != nil {
			by = append(by, some)
		}
	}
	if len(by) > 0 {
		return by
	}
	return all
}

func workOf(book *rules.Book, r rules.Remedy, kept []boatStep, hours map[string]float64) Work {
	w := Work{Piece: piece(r), Cures: []string{}, Steps: r.Steps.Len()}
	for _, c := range book.Causes().All() {
		if rules.Contains(r.Cures, c.ID) {
			w.Cures = append(w.Cures, c.Title)
		}
	}
	for _, id := range r.Steps.All() {
		w.Hours += hours[id]
		for i := range kept {
			if kept[i].Step == id && kept[i].Done != "" && kept[i].Belongs([]string{r.ID}) {
				w.Ticked++
				break
			}
		}
	}
	return w
}

// partTitle is a part as a heading.
func partTitle(part string) string {
	if part == "" || part == "none" {
		return "Anything else"
	}
	return problem.Capital(part)
}
