package diagnosis

import (
	"example.org/driveline/marinecalc/rules"
	"example.org/driveline/marinecalc/sheet"
)

// FaultFinding is the id of the calculation whose form asks questions.
const FaultFinding = "fault-finding"

// Question is one question of the fault finding, to be answered with yes, no
// or don't know.
type Question struct {
	ID         string          `json:"id"`
	Title      string          `json:"title"`
	Help       string          `json:"help"`
	Kind       string          `json:"kind"`  // "symptom" or "check"
	Group      string          `json:"group"` // a pick of the table evidence-groups
	GroupTitle string          `json:"groupTitle"`
	Minutes    float64         `json:"minutes"`
	Access     int             `json:"access"` // 1 in reach, 2 something must come off, 3 hard to reach
	Place      string          `json:"place"`  // "afloat", "ashore" or "either"
	Hazards    []sheet.Caution `json:"hazards"`
	Ways       []WayOfLooking  `json:"ways"` // how it can be looked at
}

// WayOfLooking is a row of the table ways-of-looking.
type WayOfLooking struct {
	ID    string `json:"id"`
	Title string `json:"title"`
}

// Questions lists the questions by their groups, in the order of the table
// evidence-groups.
func Questions(book *rules.Book) []Question {
	groups, titles := book.Table("evidence-groups").Picks()
	list := make([]Question, 0, book.Evidence().Len())
	for g, group := range groups {
		for _, e := range book.Evidence().All() {
			if e.Group != group {
				continue
			}
			q := Question{ID: e.ID, Title: e.Title, Help: e.Help, Kind: e.Kind, Group: group, GroupTitle: titles[g],
				Minutes: e.Minutes, Access: e.Access, Place: e.Place, Hazards: []sheet.Caution{}, Ways: []WayOfLooking{}}
			for _, row := range book.Table("ways-of-looking").Rows.All() {
				if rules.Contains(e.WaysToLook(), row.ID) {
					q.Ways = append(q.Ways, WayOfLooking{ID: row.ID, Title: row.Name})
				}
			}
			for _, c := range book.AllCautions().All() {
				if rules.Contains(e.Hazards, c.ID) {
					q.Hazards = append(q.Hazards, c.Said())
				}
			}
			list = append(list, q)
		}
	}
	return list
}
