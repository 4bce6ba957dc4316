// What the boat file says of the job: readings to follow, parts in hand, chosen work,
// the sea trial.

package boat

import (
	"fmt"
	"slices"

	"example.org/driveline/marinecalc/quantity"
)

// Follow is a reading that is followed, and the limit that the boat file has for it.
type Follow struct {
	Reading string
	Limit   string // "" where it has none
	Where   string // the limit stands in the boat file
}

// Follows are the readings that are followed: those that have a limit in the list, then
// the one that is followed first, so that of two limits of a reading that of the list
// comes first.
func (b *Boat) Follows() (list []Follow) {
	add := func(m map[string]any, where string) {
		f := Follow{Where: where + "/limit"}
		f.Reading, _ = m["reading"].(string)
		f.Limit, _ = m["limit"].(string)
		if f.Reading != "" {
			list = append(list, f)
		}
	}
	limits, _, _, _ := b.Find("/follow/limits")
	for i, m := range Objects(limits) {
		add(m, fmt.Sprintf("/follow/limits/%d", i))
	}
	first, _, _, _ := b.Find("/follow")
	if m, is := first.(map[string]any); is {
		add(m, "/follow")
	}
	return list
}

// RiseOf reads the limit of a temperature that is written as a rise above the sea,
// "15 K", in kelvin: no boat has a part at a temperature under 150 K. ok is false of
// any other.
func RiseOf(limit string) (kelvin float64, ok bool) {
	difference, _ := quantity.Lookup(quantity.KindTemperatureDifference)
	r, err := difference.Parse(limit)
	return r.SI, err == nil && r.Unit == "K" && r.SI < 150
}

// HeldPart is what the boat file says of a part, as far as it decides whether a step
// takes it.
type HeldPart struct {
	Part      string
	OnBoard   bool
	MakerAsks bool
}

// HeldParts are those of the work in hand.
func (b *Boat) HeldParts() (list []HeldPart) {
	parts, _, _, _ := b.Find("/work/parts")
	for _, m := range Objects(parts) {
		var h HeldPart
		h.Part, _ = m["part"].(string)
		h.OnBoard, _ = m["onBoard"].(bool)
		h.MakerAsks, _ = m["makerAsks"].(bool)
		list = append(list, h)
	}
	return list
}

// ChosenWork is the list of work, and whether there is one: an empty one says that
// nothing is to be done.
func (b *Boat) ChosenWork() (remedies []string, is bool) {
	work, _, _, _ := b.Find("/work/remedies")
	_, is = work.([]any)
	for _, m := range Objects(work) {
		id, _ := m["remedy"].(string)
		remedies = append(remedies, id)
	}
	return remedies, is
}

// OnAList tells whether a piece of work stands on the list of work, or stood on one of
// an earlier day.
func (b *Boat) OnAList(remedy string) bool {
	if b == nil {
		return false
	}
	all := []any{b.document["work"]}
	for _, e := range b.entries {
		all = append(all, e.values["work"])
	}
	for _, work := range all {
		m, _ := work.(map[string]any)
		for _, one := range Objects(m["remedies"]) {
			if one["remedy"] == remedy {
				return true
			}
		}
	}
	return false
}

// TrialRead is the day of the sea trial, where one of the names was read on a run of
// it; "" where none was.
func (b *Boat) TrialRead(names []string) string {
	date, _, _, _ := b.Find("/seaTrial/date")
	on, _ := date.(string)
	runs, _, _, _ := b.Find("/seaTrial/runs")
	for _, run := range Objects(runs) {
		if slices.ContainsFunc(names, func(name string) bool { _, has := run[name]; return has }) {
			return on
		}
	}
	return ""
}

// TrialAt is what was read of a name at a stage of the sea trial, and its day; ok is
// false where it was not.
func (b *Boat) TrialAt(stage, name string) (raw any, date string, ok bool) {
	on, _, _, _ := b.Find("/seaTrial/date")
	date, _ = on.(string)
	runs, _, _, _ := b.Find("/seaTrial/runs")
	for _, run := range Objects(runs) {
		if raw, ok = run[name]; ok && run["stage"] == stage {
			return raw, date, true
		}
	}
	return nil, "", false
}
