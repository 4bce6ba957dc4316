package rules

import (
	"encoding/json"
	"iter"
	"maps"
	"slices"
	"strings"

	"example.org/driveline/marinecalc/sheet"
)

// Caution is what can hurt people or the boat in the work that a calculation
// belongs to.
type Caution struct {
	ID           string       `json:"id"`
	Calculations List[string] `json:"calculations"`
	Signal       sheet.Signal `json:"signal"`
	Precaution   bool         `json:"precaution"` // obeyed, nothing of the hazard is left
	Text         string       `json:"text"`
	Valid        Valid        `json:"valid"`
	Note         string       `json:"note"`
	Provenance
}

// StopNow is the id of the caution that stands in front while the fault finding
// proposes nothing that runs the shaft.
const StopNow = "fault-stop-now"

// Hazards are the ids of the cautions that a row names in a column of that name.
func (r Row) Hazards() []string { return strings.Fields(r.Values.Of("hazards").Text) }

// Said is the caution as sheets have it.
func (c Caution) Said() sheet.Caution {
	return sheet.Caution{Signal: c.Signal, Text: c.Text, Short: c.InShort(), Source: c.Source.String(), Basis: string(c.Basis)}
}

// InShort is the first statement of a caution: what can hurt.
func (c Caution) InShort() string {
	end := len(c.Text)
	for _, stop := range []string{". ", ": ", "; "} {
		if i := strings.Index(c.Text, stop); i >= 0 {
			end = min(end, i)
		}
	}
	return strings.TrimSuffix(c.Text[:end], ".")
}

// Advice is what to do next, after a verdict or always.
type Advice struct {
	ID            string           `json:"id"`
	Calculation   string           `json:"calculation"`
	Limit         string           `json:"limit"`
	Words         List[sheet.Word] `json:"words"`
	OtherVerdicts OtherVerdicts    `json:"besides"`
	Runs          bool             `json:"runs"`   // to follow it the shaft turns under power
	Stops         List[string]     `json:"stops"`  // as it says the shaft must not run, though no verdict is sure: the causes of which one cured takes that away
	Before        bool             `json:"before"` // it is done before what the rest is about, and stands before it
	Valid         Valid            `json:"valid"`
	Text          string           `json:"text"`
	Note          string           `json:"note"`
	Provenance
}

// OtherVerdicts is what advice asks of other limits, of this sheet or, as
// "calculation/limit", of another of the boat: limit -> the verdicts with
// which it may be given. A limit that does not apply does not stand in its way.
type OtherVerdicts struct{ words map[string][]sheet.Word }

// UnmarshalJSON reads an object of verdicts by limit.
func (b *OtherVerdicts) UnmarshalJSON(text []byte) error {
	b.words = nil
	return json.Unmarshal(text, &b.words)
}

// Limits goes through the limits whose verdicts matter.
func (b OtherVerdicts) Limits() iter.Seq[string] { return maps.Keys(b.words) }

// Agree tells whether no verdict stands in its way. word gives the verdict on
// a limit, or nothing where the limit does not apply.
func (b OtherVerdicts) Agree(word func(limit string) sheet.Word) bool {
	for limit, words := range b.words {
		if w := word(limit); w != "" && !slices.Contains(words, w) {
			return false
		}
	}
	return true
}
