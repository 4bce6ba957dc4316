package procedure

import (
	"example.org/driveline/marinecalc/internal/boat"
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

// List is all work by the part that it is on, as the causes name it.
func List(book *rules.Book, b *boat.Boat) []PartWork {
	kept := stepsKept(b)
	hours := map[string]float64{}
	for _, s := range book.Steps().All() {
		hours[s.ID] = s.Hours
	}
	list := []PartWork{}
	listed := map[string]bool{}
	for _, cause := range book.Causes().All() {
		for _, r := range book.Remedies().All() {
			if listed[r.ID] || !rules.Contains(r.Cures, cause.ID) {
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
