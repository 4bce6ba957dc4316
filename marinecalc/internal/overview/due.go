package overview

import (
	"context"
	"sort"

	"example.org/driveline/marinecalc/internal/boat"
	"example.org/driveline/marinecalc/internal/calc"
	"example.org/driveline/marinecalc/internal/catalogue"
	"example.org/driveline/marinecalc/internal/survey"
	"example.org/driveline/marinecalc/rules"
)

// mostDue is how much of the care a home has space for.
const mostDue = 3

// Due is care that is due or was never taken, of the service schedule.
type Due struct {
	What  string `json:"what"`
	State string `json:"state"`         // as people read it
	By    string `json:"by,omitempty"`  // day
	Part  string `json:"part"`          // id, of the table line-parts; "" where it is of none
	Last  string `json:"last"`          // when it was done last
	How   string `json:"how,omitempty"` // to do it
}

// cares are what the service schedule calls overdue or soon due, then what
// nobody has looked at.
func cares(ctx context.Context, b *boat.Boat, o calc.Options, today string) ([]Due, error) {
	o.Boat, o.NoRanges, o.Brief = b, true, true
	s, err := o.Session(ctx, catalogue.Calculations)
	if err != nil {
		return nil, err
	}
	c, err := s.Find("service-schedule")
	if err != nil {
		return nil, err
	}
	out, _, _ := s.Run(c, map[string]any{"today": today})
	list := []Due{}
	if out == nil {
		return list, nil // the sheet itself says what it lacks
	}
	rank := map[string]int{"found at fault": 0, "overdue": 1, "soon": 2, "never looked at": 3}
	for n := 0; ; n++ {
		cell := func(name string) string {
			if c := out.Sheet.Cell("schedule", n, name); c != nil {
				return c.Text
			}
			return ""
		}
		if out.Sheet.Cell("schedule", n, "what") == nil {
			break
		}
		d := Due{What: cell("what"), State: cell("state"), By: cell("due"), Last: cell("lastDone"), How: cell("how")}
		d.Part = partNamed(bookOf(o), cell("part"))
		if _, pressing := rank[d.State]; pressing {
			list = append(list, d)
		}
	}
	sort.SliceStable(list, func(i, j int) bool { return rank[list[i].State] < rank[list[j].State] })
	return list, nil
}

// partNamed is the part that care has a name for.
func partNamed(book *rules.Book, name string) string {
	for _, row := range book.Table(survey.PartsTable).Rows.All() {
		if survey.OfPart(&row, name) {
			return row.ID
		}
	}
	return ""
}
