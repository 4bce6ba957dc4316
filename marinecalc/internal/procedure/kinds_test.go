package procedure_test

import (
	"regexp"
	"slices"
	"strings"
	"testing"

	"example.org/driveline/marinecalc"
	"example.org/driveline/marinecalc/internal/testboat"
	"example.org/driveline/marinecalc/rules"
)

// sealed is a boat that answers so whether it is a face or lip seal; "" for no answer.
func sealed(t *testing.T, answer string) *marinecalc.Boat {
	said := ""
	if answer != "" {
		said = `, "symptoms": [{"evidence": "seal-kind", "answer": "` + answer + `"}]`
	}
	return testboat.Read(t, `{"name": "Merle", "shaft": {"diameter": "30 mm"}, "outputFlange": {"heldBy": "clip"}, "readings": [{"date": "2026-05-01", "glandTemperature": "40 °C", "waterTemperature": "14 °C"}]`+said+`}`)
}

// Whatever takes the line down on a boat with a face seal marks its squeeze first and
// checks it once the coupling is closed; where the shaft comes out, it is squeezed again
// before the launch. A boat with packing, or one that nobody told of, has no such step,
// and nothing is said of it.
func TestFaceSealIsMarkedAndSqueezed(t *testing.T) {
	want := map[string][]string{
		"replace-shaft":  {"mark-seal-squeeze", "part-coupling", "draw-shaft", "squeeze-face-seal", "launch-check", "close-coupling", "check-seal-squeeze", "first-start"},
		"align-coupling": {"mark-seal-squeeze", "part-coupling", "close-coupling", "check-seal-squeeze", "first-start"},
	}
	for work, order := range want {
		for _, answer := range []string{"yes", "no", ""} {
			p := made(t, sealed(t, answer), marinecalc.Options{NoRanges: true}, work)
			var has []string
			for _, phase := range p.Phases {
				for _, s := range phase.Steps {
					if slices.Contains(order, s.ID) {
						has = append(has, s.ID)
					}
				}
			}
			expected := slices.DeleteFunc(slices.Clone(order), func(id string) bool {
				return answer != "yes" && strings.HasSuffix(id, "-squeeze") || answer != "yes" && id == "squeeze-face-seal"
			})
			if !slices.Equal(has, expected) {
				t.Errorf("%s, %q: %q, want %q", work, answer, has, expected)
			}
			if told := strings.Join(p.LeftOut, " "); answer != "yes" && strings.Contains(told, "queeze") || answer == "yes" && work == "replace-shaft" && !strings.Contains(told, "Draw the old packing") {
				t.Errorf("%s, %q: left out %q", work, answer, told)
			}
		}
	}
}

// ofPacking is what no boat with a face seal has.
var ofPacking = regexp.MustCompile(`(?i)gland nut|the follower|\bpacking\b`)

// No procedure tells a boat with a face seal of packing, gland nuts or follower; on one
// with packing the same steps do.
func TestNoPackingOnAFaceSeal(t *testing.T) {
	about := regexp.MustCompile(`(?i)packing or seal|old packing, clutch linings|packing hooks`) // either, or of what else it names
	found := map[string]int{}
	for _, answer := range []string{"yes", "no"} {
		b := sealed(t, answer)
		for _, r := range rules.Standard().Remedies().All() {
			p := made(t, b, marinecalc.Options{NoRanges: true}, r.ID)
			for _, phase := range p.Phases {
				for _, s := range phase.Steps {
					text := s.Text
					for _, c := range s.Cautions {
						text += " " + c.Text
					}
					for _, r := range s.Records {
						text += " " + r.Title
						for _, l := range r.Limits {
							text += " " + l.Title
						}
					}
					if at := ofPacking.FindString(about.ReplaceAllString(text, "")); at != "" {
						found[answer]++
						if answer == "yes" {
							t.Errorf("%s, %s: %q in %s", r.ID, s.ID, at, text)
						}
					}
				}
			}
		}
	}
	if found["no"] < 10 {
		t.Errorf("of packing there are %d steps: nothing is looked for", found["no"])
	}
}
