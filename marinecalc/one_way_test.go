package marinecalc_test

import (
	"fmt"
	"regexp"
	"strings"
	"testing"

	"example.org/driveline/marinecalc"
	"example.org/driveline/marinecalc/internal/testboat"
	"example.org/driveline/marinecalc/sheet"
)

// ways are the ways in which a thing can be turned or left, as advice words them.
var ways = map[string]map[string]*regexp.Regexp{
	"gland nuts": {
		"in":   regexp.MustCompile(`tighten both gland nuts|both gland nuts tightened`),
		"out":  regexp.MustCompile(`back both gland nuts off`),
		"stay": regexp.MustCompile(`Leave the nuts alone|: leave the nuts as they are`),
	},
	"mount nuts": {
		"turn": regexp.MustCompile(`turn the lower one by the flats given|Turn the nuts of one pair alike`),
		"stay": regexp.MustCompile(`Leave every nut as it is|[Tt]urn no nut (yet|for alignment)|Move nothing by this table`),
	},
	"coupling": {
		"bolt":  regexp.MustCompile(`good enough to bolt up|then bolt up, run`),
		"leave": regexp.MustCompile(`Bolt nothing up`),
	},
	"propeller's nut": {
		"further": regexp.MustCompile(`draw it further, or shim|draw the nut home`),
		"stay":    regexp.MustCompile(`Do not draw it up further|nor, here, draw it further`),
	},
	"stern bearing": {
		"now":   regexp.MustCompile(`Order the bearing now`),
		"later": regexp.MustCompile(`new bearing at the next haul-out|again at the next haul-out`),
	},
}

// waysOf says which ways the advice of some sheets names, by thing.
func waysOf(sheets ...*marinecalc.Sheet) map[string]map[string]string {
	said := map[string]map[string]string{}
	for _, s := range sheets {
		for _, n := range s.Next {
			if strings.HasPrefix(n.Text, "Newly packed: ") {
				continue // of another day
			}
			for thing, all := range ways {
				for way, text := range all {
					if text.MatchString(n.Text) {
						if said[thing] == nil {
							said[thing] = map[string]string{}
						}
						said[thing][way] += s.Calculation + ": " + n.Text + "\n"
					}
				}
			}
		}
	}
	return said
}

func oneWay(t *testing.T, where string, sheets ...*marinecalc.Sheet) (told int) {
	t.Helper()
	for thing, said := range waysOf(sheets...) {
		if told++; len(said) > 1 {
			t.Errorf("%s: %s are turned in %d ways: %q", where, thing, len(said), said)
		}
	}
	return told
}

// No boat is told to turn one thing two ways, nor to turn it and to leave it, on one
// sheet or on two.
func TestOneThingIsTurnedOneWay(t *testing.T) {
	told := 0
	boats, err := testBoats()
	if err != nil {
		t.Fatal(err)
	}
	for _, b := range boats {
		told += oneWay(t, b.name, testboat.Check(t, b.boat, marinecalc.Options{Trials: 128}).Sheets...)
	}
	if told < 10 {
		t.Errorf("only %d boats are told to turn anything", told)
	}
}

// The gland in every state that can be read of it: how warm, how many drips under way
// and at rest, which packing, with limits of the owner's and without.
func TestGlandNutsAreTurnedOneWay(t *testing.T) {
	count := map[string]int{}
	for _, warm := range []string{``, `"glandTemperature": "20 °C"`, `"glandTemperature": "30 °C"`, `"glandTemperature": "32 °C"`, `"glandTemperature": "40 °C"`, `"glandTemperature": "70 °C"`} {
		for _, sea := range []string{``, `"waterTemperature": "15 °C"`} {
			for _, drips := range []string{``, `"dripRate": "0 drips/min"`, `"dripRate": "8 drips/min"`, `"dripRate": "25 drips/min"`, `"dripRate": "90 drips/min"`} {
				for _, rest := range []string{``, `"dripRateAtRest": "0 drips/min"`, `"dripRateAtRest": "14 drips/min"`, `"dripRateAtRest": "30 drips/min"`} {
					for _, packing := range []string{"flax", "graphite"} {
						for _, own := range []string{``, `"follow": {"reading": "dripRate", "limit": "20 drips/min"},`} {
							var read []string
							for _, one := range []string{warm, sea, drips, rest} {
								if one != "" {
									read = append(read, one)
								}
							}
							if warm+drips+rest == "" {
								continue // nothing was read of it
							}
							entry := strings.Join(append([]string{`"date": "2026-06-01"`}, read...), ", ")
							boat := fmt.Sprintf(`{"name": "Plover", %s "shaft": {"diameter": "32 mm", "alloy": "s31600-annealed"}, "gland": {"boxBore": "50 mm", "packedLength": "36 mm", "packing": "%s"},
								"bilge": {"floodVolume": "40 L", "switchVolume": "5 L", "pumpFlow": "20 L/min", "pumpPower": "40 W"}, "battery": {"energy": "0.2 kWh"}, "readings": [{%s}]}`, own, packing, entry)
							where := own + packing + ": " + entry
							var sheets []*marinecalc.Sheet
							heat, err := marinecalc.Run("gland-heat", []byte(`{"shaftSpeed": "1200 rpm"}`), marinecalc.Options{Boat: testboat.Read(t, boat), Trials: 128})
							if err != nil && drips == "" {
								continue // the sheet wants a count, or nothing of the gland
							} else if err != nil {
								t.Fatal(where, err)
							}
							sheets = append(sheets, heat)
							if rest != "" && drips != "" {
								sheets = append(sheets, testboat.RunOn(t, boat, "gland-drip", `{"timeAway": "60 day"}`))
							}
							oneWay(t, where, sheets...)
							for way := range waysOf(sheets...)["gland nuts"] {
								count[way]++
							}
							if v := heat.Verdict("own-drip-rate"); (v != nil) != (own != "" && drips != "") {
								t.Errorf("%s: own limit %v", where, v)
							} else if v != nil && (v.Word == sheet.Beyond) != (strings.Contains(drips, "25") || strings.Contains(drips, "90")) {
								t.Errorf("%s: %s", where, v.Sentence)
							}
						}
					}
				}
			}
		}
	}
	for _, way := range []string{"in", "out", "stay"} {
		if count[way] < 10 {
			t.Errorf("%d states of %v say %s", count[way], count, way)
		}
	}
}
