package catalogue_test

import (
	"encoding/json"
	"fmt"
	"maps"
	"math"
	"strings"
	"testing"

	"example.org/driveline/marinecalc"
	"example.org/driveline/marinecalc/sheet"
)

// What of a key or its taper was not measured makes no verdict milder: flat keys are
// not taken for square ones, nor keyways for half as deep as the key is high, nor
// tapers for parallel. Keys are those of DIN 6885-1, of a shaft of another size, flat
// ones by ASME B17.1 and square ones.
func TestAKeyOfUnknownShapeIsNoStronger(t *testing.T) {
	keys := []map[string]any{
		{"shaftDiameter": "25 mm", "keyWidth": "8 mm", "keyHeight": "7 mm", "keySeat": "4 mm"},
		{"shaftDiameter": "40 mm", "keyWidth": "8 mm", "keyHeight": "7 mm", "keySeat": "4 mm"},
		{"shaftDiameter": "90 mm", "keyWidth": "25 mm", "keyHeight": "14 mm", "keySeat": "9 mm"},
		{"shaftDiameter": "80 mm", "keyWidth": "25 mm", "keyHeight": "14 mm", "keySeat": "9 mm"},
		{"shaftDiameter": "25 mm", "keyWidth": "4.7625 mm", "keyHeight": "3.175 mm", "keySeat": "1.59 mm"},
		{"shaftDiameter": "25.4 mm", "keyWidth": "6.35 mm", "keyHeight": "6.35 mm", "keySeat": "3.175 mm"},
		{"shaftDiameter": "30 mm", "keyWidth": "8 mm", "keyHeight": "8 mm", "keySeat": "4 mm"},
	}
	tapers := map[string][]map[string]any{
		"key-strength":  {{"taperStandard": "iso-4566", "taperLength": "62 mm"}, {"smallEndDiameter": "22.1 mm"}, {"taperRatio": 0.0625, "taperLength": "70 mm"}},
		"coupling-key":  {{"holdMethod": "taper", "taperRatio": 0.0833, "taperLength": "60 mm"}, {"smallEndDiameter": "22 mm"}, {"holdMethod": "set-screws"}},
		"coupling-bore": {{"holdMethod": "set-screws"}, {"holdMethod": "taper", "taperRatio": 0.0833, "engagedLength": "60 mm", "pinchClamp": "100 N", "boreFriction": 0.05, "thrustAstern": "1 N"}},
	}
	unmeasured := [][]string{{"keyHeight"}, {"keySeat"}, {"keyHeight", "keySeat"}, {"smallEndDiameter"}, {"taperStandard"}, {"taperLength"}, {"holdMethod"}, {"keyHeight", "taperLength"}}
	mild := map[sheet.Word]bool{sheet.Within: true, sheet.Inside: true}
	runs, settled := 0, 0
	for id, ends := range tapers {
		for _, key := range keys {
			for _, end := range ends {
				for use := 0.6; use < 1.5; use += 0.1 { // of the torque at which this key yields
					whole := map[string]any{"keyLength": "30 mm", "shaftTorque": "1000 N·m", "asternTorque": "10 N·m", "keyYieldStrength": "300 MPa", "shaftYieldStrength": "300 MPa", "hubYieldStrength": "300 MPa"}
					if id != "coupling-bore" {
						delete(whole, "asternTorque")
					}
					maps.Copy(whole, key)
					maps.Copy(whole, end)
					if d := whole["shaftDiameter"]; d != "25 mm" && whole["smallEndDiameter"] != nil {
						continue // not its taper
					}
					held := result(runInput(t, id, text(t, whole), "metric"), map[string]string{"key-strength": "torqueHeld", "coupling-key": "torqueHeld", "coupling-bore": "keyTorque"}[id])
					if math.IsNaN(held) {
						t.Fatalf("%s: %v holds nothing known", id, whole)
					}
					whole["shaftTorque"] = fmt.Sprintf("%.6g N·m", use*held)
					all := verdictsOf(runInput(t, id, text(t, whole), "metric"))
					for _, names := range unmeasured {
						less := maps.Clone(whole)
						for _, name := range names {
							delete(less, name)
						}
						if len(less) == len(whole) || id == "coupling-bore" && less["holdMethod"] == nil {
							continue // nothing left out, or what is asked for
						}
						without, err := marinecalc.Run(id, []byte(text(t, less)), marinecalc.Options{NoRanges: true})
						if err != nil && names[0] == "keyHeight" && strings.Contains(err.Error(), "not that of a square key") {
							continue // asks for it
						}
						if err != nil {
							t.Fatal(err)
						}
						for limit, v := range verdictsOf(without) {
							was, has := all[limit]
							if !has || was.Word == sheet.NotMeasured || v.Word == sheet.NotMeasured {
								continue
							}
							if runs++; mild[v.Word] {
								settled++
							}
							if mild[v.Word] && !mild[was.Word] && was.Word != sheet.NearLimit {
								t.Errorf("%s without %s of %v: %s; with it: %s", id, names, whole, v.Sentence, was.Sentence)
							}
						}
					}
				}
			}
		}
	}
	if runs < 1000 || settled < 100 {
		t.Errorf("%d verdicts, %d of them OK", runs, settled)
	}
}

func text(t *testing.T, input map[string]any) string {
	t.Helper()
	out, err := json.Marshal(input)
	if err != nil {
		t.Fatal(err)
	}
	return string(out)
}

// A key as wide as that of a standard for such a shaft is as high and sits as deep:
// 8 mm on 25 mm is 7 mm high, 4 mm of it in the shaft (DIN 6885-1), and 1/4 in on 1 in
// is square (ASME B17.1). One that no standard has for that shaft is not guessed.
func TestTheKeyOfAStandardIsKnownByItsWidth(t *testing.T) {
	for _, c := range []struct {
		diameter, width string
		height, seat    float64 // 0: a bracket
	}{{"25 mm", "8 mm", 0.007, 0.004}, {"25 mm", "7.98 mm", 0.007, 0.004}, {"25.4 mm", "1/4 in", 0.00635, 0.003175}, {"30.5 mm", "8 mm", 0, 0}, {"25 mm", "7.9375 mm", 0, 0}, {"58 mm", "16 mm", 0.010, 0.006}} {
		for _, id := range []string{"key-strength", "coupling-key"} {
			s := runInput(t, id, fmt.Sprintf(`{"shaftDiameter": %q, "keyWidth": %q, "shaftTorque": "100 N·m", "keyLength": "30 mm", "keyYieldStrength": "300 MPa"}`, c.diameter, c.width), "metric")
			height, seat := s.Input("keyHeight"), s.Input("keySeat")
			if c.height == 0 {
				if height != nil || seat != nil || s.Input("heightShare") == nil || s.Input("seatShare") == nil {
					t.Errorf("%s, %s on %s: %+v, %+v", id, c.width, c.diameter, height, seat)
				}
				continue
			}
			if height == nil || seat == nil || math.Abs(*height.SI-c.height) > 1e-9 || math.Abs(*seat.SI-c.seat) > 1e-9 || height.Source == "" || s.Input("heightShare") != nil {
				t.Errorf("%s, %s on %s: %+v, %+v", id, c.width, c.diameter, height, seat)
			}
		}
	}
}

// The key of a boat's propeller bears at the mean of its taper, as the sheet of the
// taper has it.
func TestKeyAndTaperHaveOneMeanDiameter(t *testing.T) {
	const taper = `"shaftDiameter": "25 mm", "taperStandard": "iso-4566", "taperLength": "54 mm"`
	key := runInput(t, "key-strength", `{`+taper+`, "shaftTorque": "170 N·m", "keyWidth": "8 mm", "keyLength": "45 mm", "keyYieldStrength": "205 MPa"}`, "metric")
	cone := runInput(t, "propeller-taper", `{`+taper+`, "hubDiameter": "52 mm", "hubLength": "85 mm", "hubMetal": "manganese-bronze", "taperSurfaces": "bronze-dry", "contactShare": 0.8, "nutForce": "20 kN", "shaftTorque": "170 N·m"}`, "metric")
	if a, b := result(key, "forceDiameter"), result(cone, "meanDiameter"); math.Abs(a-b) > 1e-12 || math.Abs(a-0.0223) > 1e-9 {
		t.Errorf("the key bears at %g, the cone at %g", a, b)
	}
}
