package rules

import (
	"regexp"
	"slices"
	"testing"
)

// What the text of a step calls new is bought by that step; and every part is
// taken by a step of some work. The words are the text's, the parts the rows'
// (calculated: read off the rule data).
func TestWhatIsNewIsBought(t *testing.T) {
	bought := map[string][]string{
		"pin": {"propeller-pin"}, "hose": {"gland-hose"}, "hoses": {"cooler-hose"}, "stops": {"folding-kit"}, "hub": {"damper-plate"}, "Bolts": {"damper-plate"},
		"bolts": {"strut-bolts", "damper-plate"}, "fluid": {"gearbox-fluid"}, "filter": {"fluid-filter"}, "O-rings": {"fluid-filter"}, "anode": {"cooler-anode"},
		"nut": {"output-nut", "engine-mount"}, "lock": {"output-nut"}, "screws": {"seal-screws"}, "seal": {"fitting-seals"}, "keys": {"key-steel", "coupling-key"}, "rubber": {"engine-mount"},
	}
	// Not bought: what is told of something fitted before, and what is only
	// wanted where a look says so.
	exempt := map[string]string{
		"set-drips packing": "tells how new packing behaves", "read-gland-again packing": "tells how new packing behaves",
		"trial-run knock": "a noise", "look-after-an-hour parts": "tells how new parts wear", "flush-cooler gearbox": "the one that the cooler serves",
		"retorque-coupling nylon-insert": "only where a nut turned: of the set with which the coupling was closed",
		"swap-coupling-insert one":       "the element, which is bought", "swap-output-seal one": "the seal, which is bought",
	}
	book := Standard()
	is := regexp.MustCompile(`(?i)\b(?:new|renew) ([a-zA-Z-]+)`)
	told := map[string]bool{}
	for _, s := range book.Steps().All() {
		var takes []string
		for _, p := range s.Parts.All() {
			takes = append(takes, p.Part)
		}
		for _, m := range is.FindAllStringSubmatch(s.Text, -1) {
			key := s.ID + " " + m[1]
			if exempt[key] != "" {
				told[key] = true
				continue
			}
			if !slices.ContainsFunc(bought[m[1]], func(part string) bool { return slices.Contains(takes, part) }) {
				t.Errorf("%s: %q, and it takes %v", s.ID, m[0], takes)
			}
		}
	}
	for key, why := range exempt {
		if !told[key] {
			t.Errorf("%s (%s) is no longer in the text", key, why)
		}
	}
	for _, part := range book.Parts().All() {
		used := false
		for _, s := range book.Steps().All() {
			for _, p := range s.Parts.All() {
				used = used || p.Part == part.ID
			}
		}
		if !used {
			t.Errorf("no step takes %s", part.ID)
		}
	}
}

// Nothing runs the shaft between the opening and the first start, whatever work
// is done together.
func TestNothingRunsAShaftThatIsOpen(t *testing.T) {
	for _, s := range Standard().Steps().All() {
		if Contains(s.Hazards, "turning-shaft") && slices.Contains([]string{"open", "work", "close"}, s.Phase) {
			t.Errorf("%s runs the shaft in the phase %s", s.ID, s.Phase)
		}
	}
}
