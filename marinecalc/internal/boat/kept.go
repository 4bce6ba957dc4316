package boat

import (
	"encoding/json"
	"fmt"
	"slices"
)

// KeptStep is a step of the work in hand that was ticked off, or noted at.
type KeptStep struct {
	Step     string   `json:"step"`
	Remedies []string `json:"remedies,omitempty"`
	Done     string   `json:"done,omitempty"` // the day
}

// Belongs tells whether what is kept of a step is of one of these remedies: a
// step that several pieces of work share is ticked off for each job anew.
func (s *KeptStep) Belongs(remedies []string) bool {
	return len(s.Remedies) == 0 || slices.ContainsFunc(s.Remedies, func(id string) bool { return slices.Contains(remedies, id) })
}

// PlaceOfSteps is where the boat file keeps them.
const PlaceOfSteps = "/work/steps"

// KeptSteps are the steps of the work in hand.
func (b *Boat) KeptSteps() (list []KeptStep) {
	b.listAt(PlaceOfSteps, &list)
	return list
}

// PlaceOfAnswers is where the boat file keeps what was answered to the fault finding.
const PlaceOfAnswers = "/symptoms"

// Recheck is a look that finished work still asks for.
type Recheck struct {
	Step        string   `json:"step"`
	Remedies    []string `json:"remedies,omitempty"`
	After       string   `json:"after"` // the day of the trial
	EngineHours any      `json:"engineHours,omitempty"`
}

// PlaceOfRechecks is where the boat file keeps them.
const PlaceOfRechecks = "/service/rechecks"

// Rechecks are the looks that finished work still asks for.
func (b *Boat) Rechecks() (list []Recheck) {
	b.listAt(PlaceOfRechecks, &list)
	return list
}

// ServiceDone is care that was taken.
type ServiceDone struct {
	Item        string `json:"item"`
	Date        string `json:"date"`
	EngineHours any    `json:"engineHours,omitempty"`
}

// PlaceOfService is where the boat file keeps it.
const PlaceOfService = "/service/done"

// ServiceDone is the care that was taken.
func (b *Boat) ServiceDone() (list []ServiceDone) {
	b.listAt(PlaceOfService, &list)
	return list
}

// lastCare is the last day on which care was taken, and where that stands; "" where
// none was.
func (b *Boat) lastCare() (day, where string) {
	for i, d := range b.ServiceDone() {
		if d.Date > day {
			day, where = d.Date, fmt.Sprintf("/boat%s/%d/date", PlaceOfService, i)
		}
	}
	return day, where
}

// AddService returns the boat with care written behind what was taken before.
func (b *Boat) AddService(list []ServiceDone, day string) (*Boat, error) {
	var all []json.RawMessage // what the boat file has more is kept
	b.listAt(PlaceOfService, &all)
	for _, one := range list {
		text, err := json.Marshal(one)
		if err != nil {
			return nil, err
		}
		all = append(all, text)
	}
	return b.Keep([]Typed{{Input: "done", Pointer: PlaceOfService, Value: all}}, day)
}

func (b *Boat) listAt(pointer string, to any) {
	if raw, _, _, ok := b.Find(pointer); ok {
		if text, err := json.Marshal(raw); err == nil {
			_ = json.Unmarshal(text, to) // the boat's schema let it through
		}
	}
}
