package marinecalc

import (
	"example.org/driveline/marinecalc/internal/catalogue"
	"example.org/driveline/marinecalc/internal/contract"
)

// Entry is one line of the contents: what can be calculated.
type Entry struct {
	ID      string   `json:"id"`
	Title   string   `json:"title"`
	Answers string   `json:"answers"`
	Onward  []string `json:"onward,omitempty"` // ids of those whose sheets one opens after it, as the work goes
}

// Calculations lists what can be calculated, from engine to propeller.
func Calculations() []Entry {
	list := make([]Entry, 0, len(catalogue.Calculations))
	for _, c := range catalogue.Calculations {
		if h, err := contract.HeadingOf(c.ID); err == nil { // a test opens every contract
			list = append(list, Entry{ID: c.ID, Title: h.Title, Answers: h.Answers, Onward: h.Onward})
		}
	}
	return list
}
