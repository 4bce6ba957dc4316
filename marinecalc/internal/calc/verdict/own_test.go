package verdict_test

import (
	"fmt"
	"strings"
	"testing"

	"example.org/driveline/marinecalc"
	"example.org/driveline/marinecalc/internal/testboat"
)

// What an owner set as the limit of a reading is held against beside the limits of
// the rules: a reading past it is past it, on either side, and a rise above the sea is
// one above the sea of that day.
func TestAnOwnersLimitIsHeldAgainst(t *testing.T) {
	const gland = `{"name": "Tern", "shaft": {"diameter": "32 mm", "alloy": "s31600-annealed"}, "gland": {"boxBore": "50 mm", "packedLength": "36 mm", "packing": "flax"},
		"follow": %s, "readings": [{"date": "2026-05-01", "dripRate": "%s drips/min", "glandTemperature": "%s °C", "waterTemperature": "15 °C"}]}`
	for _, c := range []struct {
		name, follow, drips, warm string
		own, reads, bound         string
		says                      string
	}{
		{"under it", `{"reading": "dripRate", "limit": "20 drips/min"}`, "6", "20", "own-drip-rate", "OK", "at most 20 drips/min", "set for it"},
		{"over it, under the guide", `{"reading": "dripRate", "limit": "20 drips/min"}`, "25", "20", "own-drip-rate", "over the limit", "at most 20 drips/min", "That is the limit which you set"},
		{"just over it, by a coarse count", `{"reading": "dripRate", "limit": "20 drips/min"}`, "21", "20", "own-drip-rate", "over the limit", "at most 20 drips/min", "That is the limit"},
		{"among the others", `{"limits": [{"reading": "glandTemperature", "limit": "30 °C"}]}`, "6", "34", "own-gland-temperature", "over the limit", "at most 30 °C", ""},
		{"a rise, kept", `{"limits": [{"reading": "glandTemperature", "limit": "10 K"}]}`, "6", "21", "own-gland-temperature", "OK", "at most 25 °C", ""},
		{"a rise, passed", `{"limits": [{"reading": "glandTemperature", "limit": "10 K"}]}`, "6", "28", "own-gland-temperature", "over the limit", "at most 25 °C", ""},
		{"no amount", `{"limits": [{"reading": "glandTemperature", "limit": "warm"}]}`, "6", "28", "own-gland-temperature", "not enough to tell", "", "cannot be read"},
		{"none set", `{"reading": "dripRate"}`, "25", "20", "own-drip-rate", "", "", ""},
		{"of another reading", `{"reading": "bearingClearance", "limit": "1 mm"}`, "25", "20", "own-drip-rate", "", "", ""},
	} {
		s := testboat.RunOn(t, fmt.Sprintf(gland, c.follow, c.drips, c.warm), "gland-heat", `{"shaftSpeed": "1200 rpm"}`)
		v := s.Verdict(c.own)
		if v == nil {
			if c.reads != "" {
				t.Errorf("%s: nothing is held against it", c.name)
			}
			continue
		}
		if v.Reads != c.reads || c.bound != "" && v.Bound != c.bound || c.reads != "OK" && !strings.Contains(v.Sentence, c.says) {
			t.Errorf("%s: %s %s, %s", c.name, v.Reads, v.Bound, v.Sentence)
		}
	}
}

// A limit that is a least is one of the owner's too, and the survey, the part and the
// sheet say the same word of it.
func TestAnOwnersLimitCountsForThePart(t *testing.T) {
	b := testboat.Read(t, `{"name": "Tern", "shaft": {"diameter": "32 mm", "alloy": "s31600-annealed"}, "gland": {"boxBore": "50 mm", "packedLength": "36 mm", "packing": "flax"},
		"follow": {"reading": "dripRate", "limit": "20 drips/min"}, "bilge": {"floodVolume": "90 L"},
		"readings": [{"date": "2026-05-01", "dripRate": "25 drips/min", "glandTemperature": "20 °C", "waterTemperature": "15 °C", "shaftSpeed": "1200 rpm"}]}`)
	s := testboat.Check(t, b, marinecalc.Options{})
	own := 0
	for _, f := range s.Findings {
		if f.Verdict.Limit == "own-drip-rate" {
			own++
		}
	}
	found := []string{}
	for _, f := range s.Found {
		found = append(found, f.Title)
	}
	if own != 1 || found[0] != "Drips under way, against your own limit" || strings.Contains(strings.Join(found[1:], ""), "Drips") {
		t.Errorf("told %d times; found %q", own, found)
	}
	for _, p := range s.Parts {
		if is := p.Reads == "over the limit"; is != (p.Part == "gland") {
			t.Errorf("%s: %s", p.Part, p.Reads)
		}
	}
}
