package boat

import (
	"maps"
	"slices"
)

// dates lists every day with a reading, oldest first.
func (b *Boat) Dates() []string {
	var days []string
	list, _ := b.Document["readings"].([]any)
	for _, item := range list {
		m, _ := item.(map[string]any)
		if d, _ := m["date"].(string); d != "" && !slices.Contains(days, d) {
			days = append(days, d)
		}
	}
	slices.Sort(days)
	return days
}

// asOf is the boat as it was known up to and including a day: later readings
// and events are not there yet.
func (b *Boat) AsOf(day string) *Boat {
	document := maps.Clone(b.Document)
	for _, name := range []string{"readings", "events"} {
		list, has := b.Document[name].([]any)
		if !has {
			continue
		}
		kept := []any{}
		for _, item := range list {
			m, _ := item.(map[string]any)
			if d, _ := m["date"].(string); d <= day {
				kept = append(kept, item)
			}
		}
		document[name] = kept
	}
	then := &Boat{Document: document, figures: b.figures}
	then.readReadings()
	return then
}
