// What a reading is held against.

package trend

import (
	"math"

	"example.org/driveline/marinecalc/internal/boat"
	"example.org/driveline/marinecalc/internal/contract"
	"example.org/driveline/marinecalc/problem"
)

// limit reads what the reading is held against: as typed, or as the boat file
// has it for this reading. A difference is a rise above the sea.
func (t *follower) limit(in *Input, bad *problem.List) {
	text, from := in.Limit, ""
	if text == "" {
		text, from = t.limitOfBoat(in.Reading)
	}
	if text == "" {
		return
	}
	blame := "/limit"
	if from != "" {
		blame = "/boat" + from
	}
	kind := t.property.Kind
	if t.series.Shifted {
		if rise, is := boat.RiseOf(text); is {
			if math.IsNaN(t.warmest) {
				bad.Add(blame, "a rise above the sea is the limit, and not every reading has the temperature of the sea beside it", "a temperature such as 60 °C, or the water temperature beside each reading", "")
				return
			}
			if rise <= 0 {
				bad.Add(blame, "a rise above the sea of "+text+" is none", "more than 0 K", "what runs is warmer than the sea")
				return
			}
			t.series.Limit = t.warmest + rise
			t.out.LimitHeld = t.show(t.series.Limit) + ", " + text + " above that sea"
			return
		}
	}
	r, err := kind.Parse(text)
	if err != nil {
		contract.NotRead(bad, t.property, blame, err)
		return
	}
	t.series.Limit = r.SI
	t.out.LimitHeld = t.show(r.SI)
	if from != "" {
		t.out.LimitHeld += ", from the boat file"
	}
}

// limitOfBoat is the limit that the boat file gives for a reading, and where.
func (t *follower) limitOfBoat(reading string) (text, where string) {
	for _, f := range t.session.Boat.Follows() {
		if f.Reading == reading {
			return f.Limit, f.Where
		}
	}
	return "", ""
}
