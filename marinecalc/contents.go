package marinecalc

import (
	"example.org/driveline/marinecalc/internal/catalogue"
	"example.org/driveline/marinecalc/internal/contract"
)

// Entry is one line of the contents: what can be calculated.
type Entry struct {
	ID      string `json:"id"`
	Title   string `json:"title"`
	Answers string `json:"answers"`
}

// Calculations lists what can be calculated, from engine to propeller.
func Calculations() []Entry {
	list := make([]Entry, 0, len(catalogue.Calculations))
	for _, c := range catalogue.Calculations {
		if title, answers, err := contract.Heading(c.ID); err == nil { // a test opens every contract
			list = append(list, Entry{ID: c.ID, Title: title, Answers: answers})
		}
	}
	return list
}
