package catalogue_test

import (
	"math"
	"strings"
	"testing"

	"example.org/driveline/marinecalc"
	"example.org/driveline/marinecalc/sheet"
)

// The two key tables disagree for four sizes, and the sheet says so: 7/8, 1-3/4
// and 2-1/4 in, and 1-1/4 in, where the row of ASME B17.1 for 1/4 in keys ends.
func TestKeyTablesDisagree(t *testing.T) {
	for size, tells := range map[string]bool{"3/4": false, "7/8": true, "1": false, "1-1/8": false, "1-1/4": true, "1-3/8": false, "1-1/2": false, "1-3/4": true, "2": false, "2-1/4": true, "2-1/2": false, "2-3/4": false, "3": false} {
		height := ""
		if size == "3" {
			height = `"keyHeight":"1/2 in",` // whose keyway by J755 is not that of a square key
		}
		width := func(pick string) float64 {
			s := runInput(t, "key-strength", `{"shaftDiameter":"`+size+` in","shaftTorque":"100 N·m","keyLength":"50 mm","keyYieldStrength":"200 MPa",`+height+pick+`}`, "us")
			said := false
			for _, n := range s.Next {
				said = said || strings.Contains(n.Text, "the tables disagree")
			}
			if said != tells {
				t.Errorf("%s in: disagreement told: %v", size, said)
			}
			return *s.Input("keyWidth").SI
		}
		j755, b17 := width(`"shaftEndTable":"j755-`+size+`"`), width(`"keyTable":"b17.1-square"`)
		if (math.Abs(j755-b17) > 1e-9) != tells {
			t.Errorf("%s in: J755 %g, B17.1 %g", size, j755, b17)
		}
	}
}

// A hub whose metal nobody named is not unbreakable: its place is named and
// not measured, and with a bronze hub the same key is beyond.
func TestUnknownHubIsNotMeasured(t *testing.T) {
	const key = `{"shaftDiameter":"25 mm","shaftTorque":"170 N·m","peakTorque":"500 N·m","taperRatio":0,"keyWidth":"6 mm","keyHeight":"6 mm","keySeat":"3 mm","keyLength":"30 mm","keyYieldStrength":"1000 MPa"`
	s := runInput(t, "key-strength", key+`,"shaftYieldStrength":"1000 MPa"}`, "metric")
	v := verdictsOf(s)
	if v["key-hub-at-peak"].Word != "not measured" || v["key-at-full-power"].Word != "not measured" || !strings.Contains(v["key-hub-at-peak"].Sentence, "metal of the hub") {
		t.Errorf("hub not known: %+v, %+v", v["key-hub-at-peak"], v["key-at-full-power"])
	}
	if v["key-itself-at-peak"].Word != "within" || v["key-shaft-at-peak"].Word != "within" {
		t.Errorf("what is known is not judged: %+v, %+v", v["key-itself-at-peak"], v["key-shaft-at-peak"])
	}
	if r := s.Result("notJudged"); r == nil || !strings.Contains(r.Text, "hub") {
		t.Errorf("not judged: %+v", r)
	}
	s = runInput(t, "key-strength", key+`,"shaftYieldStrength":"1000 MPa","hubMetal":"manganese-bronze"}`, "metric")
	if v := verdictsOf(s)["key-at-peak"]; v.Word != "beyond" || !strings.Contains(s.Result("weakestPlace").Text, "hub") {
		t.Errorf("in bronze: %+v", v)
	}
	s = runInput(t, "key-strength", key+`,"shaftYieldStrength":"1000 MPa","hubYieldStrength":"900 MPa"}`, "metric")
	if v := verdictsOf(s)["key-at-peak"]; v.Word != "within" {
		t.Errorf("in hard steel: %+v", v)
	}
	s = runInput(t, "key-strength", key+`}`, "metric")
	if v := verdictsOf(s); v["key-shaft-at-peak"].Word != "not measured" || v["key-hub-at-peak"].Word != "not measured" || v["key-itself-at-peak"].Word != "within" {
		t.Errorf("neither known: %+v", v)
	}
	// A key that is itself too weak is beyond, whatever shaft and hub are.
	s = runInput(t, "key-strength", strings.Replace(key, "1000 MPa", "200 MPa", 1)+`}`, "metric")
	if v := verdictsOf(s)["key-itself-at-peak"]; v.Word != "beyond" {
		t.Errorf("a soft key: %+v", v)
	}
}

// DIN 6885-1, as an equipment maker's catalogue and a hardware table have it:
// 8 by 7 mm for a shaft of 25 mm, 4 mm of it in the shaft.
func TestMetricKeyFromTheTable(t *testing.T) {
	s := runInput(t, "key-strength", `{"shaftDiameter":"25 mm","shaftTorque":"100 N·m","keyLength":"35 mm","keyTable":"din-6885","keyYieldStrength":"300 MPa"}`, "metric")
	for name, want := range map[string]float64{"keyWidth": 0.008, "keyHeight": 0.007, "keySeat": 0.004} {
		if got := *s.Input(name).SI; math.Abs(got-want) > 1e-12 {
			t.Errorf("%s is %g", name, got)
		}
	}
	if r := s.Result("seatInHub"); math.Abs(*r.SI-0.003) > 1e-12 {
		t.Errorf("depth in the hub %g", *r.SI)
	}
}

// A taper of another shaft's size is refused, by the shaft's diameter.
func TestTaperOfAnotherShaftIsRefused(t *testing.T) {
	for diameter, refused := range map[string]bool{"32 mm": true, "30 mm": true, "25.4 mm": false, "25.2 mm": false} {
		_, err := marinecalc.Run("key-strength", []byte(`{"shaftDiameter":"`+diameter+`","shaftTorque":"100 N·m","keyLength":"35 mm","shaftEndTable":"j755-1","keyYieldStrength":"300 MPa"}`), marinecalc.Options{})
		if (err != nil) != refused || err != nil && !strings.Contains(err.Error(), "does not end in a taper") {
			t.Errorf("%s: %v", diameter, err)
		}
	}
}

// A key of 8 by 7 mm, 4 mm deep in a shaft of 30 mm, bears on 3 mm in its hub over 45 mm,
// one and a half diameters: at 500 N·m with 33.3 kN over 135 mm², 247 MPa. Its metal not
// being known, that is where the verdict turns; 148 MPa at 300 N·m any metal of a key
// bears, and 741 MPa at 1500 N·m none.
func TestKeyOfAnUnknownMetal(t *testing.T) {
	for peak, want := range map[string]sheet.Word{"300 N·m": sheet.Within, "500 N·m": sheet.CannotTell, "1500 N·m": sheet.Beyond} {
		for id, parallel := range map[string]string{"key-strength": `"taperRatio":0`, "coupling-key": `"holdMethod":"set-screws"`} {
			s := runInput(t, id, `{"shaftDiameter":"30 mm","shaftTorque":"170 N·m","peakTorque":"`+peak+` ± 0 %",`+parallel+`,"keyWidth":"8 mm","keyHeight":"7 mm","keySeat":"4 mm","keyLength":"50 mm","shaftYieldStrength":"1000 MPa","hubYieldStrength":"1000 MPa"}`, "metric")
			limit := map[string]string{"key-strength": "key-at-peak", "coupling-key": "coupling-key-at-peak"}[id]
			v := s.Verdict(limit)
			if v.Word != want {
				t.Errorf("%s, %s: %s", id, peak, v.Sentence)
			}
			if turns := v.Turns != nil && v.Turns.Figure == id+"/keyYieldStrength" && v.Turns.SI > 235e6 && v.Turns.SI < 275e6 && v.Turns.Side == "at least"; turns != (want == sheet.CannotTell) {
				t.Errorf("%s, %s: %s, %+v", id, peak, v.Sentence, v.Turns)
			}
		}
		bore := runInput(t, "coupling-bore", `{"holdMethod":"set-screws","setScrews":2,"setScrewSize":"3/8","keyed":"yes","shaftDiameter":"30 mm","engagedLength":"60 mm","hubDiameter":"65 mm","shaftTorque":"170 N·m","peakTorque":"`+peak+` ± 0 %","thrustAstern":"0.2 kN","keyWidth":"8 mm","keyHeight":"7 mm","keySeat":"4 mm","keyLength":"50 mm","shaftYieldStrength":"1000 MPa","hubYieldStrength":"1000 MPa"}`, "metric")
		if v := bore.Verdict("bore-torque-peak"); v.Word != want && !(want == sheet.Beyond && v.Word == sheet.CannotTell) {
			t.Errorf("coupling-bore, %s: %s", peak, v.Sentence)
		}
	}
}
