package trend_test

import (
	"fmt"
	"math"
	"strings"
	"testing"

	"example.org/driveline/marinecalc"
	"example.org/driveline/marinecalc/internal/testboat"
	"example.org/driveline/marinecalc/problem"
	"example.org/driveline/marinecalc/quantity"
	"example.org/driveline/marinecalc/sheet"
)

// sump is an independent simulation, minute by minute: metal comes in at a
// steady pace, fluid leaks out at a steady pace with the metal that is in it.
type sump struct{ volume, full, metal, leak, wear float64 } // litres, mg, L/h, mg/h

func (s *sump) run(hours float64) {
	const step = 1.0 / 60
	for range int(math.Round(hours / step)) {
		s.metal += (s.wear - s.leak*s.metal/s.volume) * step
		s.volume -= s.leak * step
	}
}

func (s *sump) ppm() float64 { return s.metal / s.volume }

func (s *sump) topUp() (added float64) {
	added = s.full - s.volume
	s.volume = s.full
	return added
}

// What top-ups thinned is added back: the pace that comes out is the one that
// was simulated, and the one without the correction is not.
func TestWearIsThatOfAMassBalance(t *testing.T) {
	for _, leak := range []float64{0, 0.004, 0.012} {
		s := sump{volume: 2, full: 2, leak: leak, wear: 0.8} // 0.4 ppm an hour
		var rows []string
		hours := 100.0
		rows = append(rows, `{"date":"2026-01-01","engineHours":"100 h","fluidChanged":true}`)
		newest := 0.0
		for i := range 6 {
			if i == 3 { // topped up once between two samples
				s.run(8)
				hours += 8
				rows = append(rows, fmt.Sprintf(`{"date":"2026-%02d-20","engineHours":"%g h","fluidAdded":"%.5f L"}`, i+1, hours, s.topUp()))
			}
			s.run(15)
			hours += 15
			newest = s.ppm()
			rows = append(rows, fmt.Sprintf(`{"date":"2026-%02d-01","engineHours":"%g h","wearIron":"%.4f ppm","fluidAdded":"%.5f L"}`, i+2, hours, newest, s.topUp()))
		}
		boat := `{"name":"Tern","fluid":{"volume":"2 L"},"readings":[` + strings.Join(rows, ",") + `]}`
		out := testboat.RunOn(t, boat, "reading-trend", `{"reading":"wearIron","limit":"150 ppm"}`)
		kind, _ := quantity.Lookup("ratio")
		rate, err := kind.Parse(strings.TrimSuffix(out.Result("perHour").Text, " an hour"))
		if err != nil || math.Abs(rate.SI/0.4e-6-1) > 0.01 {
			t.Errorf("leak %g: %s an hour, simulated 0.4 ppm", leak, out.Result("perHour").Text)
		}
		plain := newest / (hours - 100) / 0.4
		if leak > 0.01 && plain > 0.85 {
			t.Errorf("leak %g: without the correction %g of it, so that nothing is tested", leak, plain)
		}
		if back := out.Result("addedBack"); (back != nil) != (leak > 0) {
			t.Errorf("leak %g: added back %+v", leak, back)
		}
	}
}

// Each change of the fluid begins a new run; the pace of one filling is held
// against that of those before. What no change takes out starts the next one.
func TestFillingsOfTheFluid(t *testing.T) {
	boat := func(last string) string {
		return `{"name":"Tern","fluid":{"volume":"2 L","leftVolume":"0.5 L"},"readings":[
		{"date":"2024-05-01","engineHours":"0 h","fluidChanged":true},
		{"date":"2024-10-01","engineHours":"100 h","wearIron":"20 ppm","fluidChanged":true},
		{"date":"2025-05-01","engineHours":"140 h","wearIron":"13 ppm"},
		{"date":"2025-08-01","engineHours":"180 h","wearIron":"21 ppm"},
		{"date":"2025-10-01","engineHours":"200 h","wearIron":"` + last + ` ppm"}]}`
	}
	s := testboat.RunOn(t, boat("25"), "reading-trend", `{"reading":"wearIron"}`)
	if got := s.Result("perHour").Text; got != "0.2 ppm an hour" { // (25 − 20·0.5/2)/100
		t.Error(got)
	}
	if v := s.Verdict("trend-rate"); v == nil || v.Word.Plain() != "within" || v.Guide == false {
		t.Errorf("a steady pace: %+v", v)
	}
	if n := len(s.Table("fillings").Rows); n != 2 {
		t.Errorf("%d fillings", n)
	}
	if basis := s.Result("basis").Text; !strings.HasPrefix(basis, "3 readings since 2025-05-01, over engine hours") {
		t.Error(basis)
	}
	s = testboat.RunOn(t, boat("47"), "reading-trend", `{"reading":"wearIron"}`) // 0.42 an hour
	if v := s.Verdict("trend-rate"); v == nil || v.Word.Plain() != "beyond" || v.Word == "beyond" {
		t.Errorf("double the pace is no limit but a guide: %+v", v)
	}
	// Without the volume nothing is added back, and that is said.
	dry := strings.Replace(boat("25"), `"volume":"2 L","leftVolume":"0.5 L"`, `"grade":"iso-vg-46"`, 1)
	dry = strings.Replace(dry, `"wearIron":"13 ppm"`, `"wearIron":"13 ppm","fluidAdded":"0.1 L"`, 1)
	if basis := testboat.RunOn(t, dry, "reading-trend", `{"reading":"wearIron"}`).Result("basis").Text; !strings.Contains(basis, "not added back") {
		t.Error(basis)
	}
}

// What was read while all was well is what the boat is held against, and it
// says so; a coarser gauge makes it no surer.
func TestTheBoatBesideItself(t *testing.T) {
	boat := func(newest, extra string) string {
		return `{"name":"Tern","readings":[
		{"date":"2025-05-01","gearboxTemperature":"52 °C","waterTemperature":"15 °C","baseline":true},
		{"date":"2025-06-01","gearboxTemperature":"54 °C","waterTemperature":"16 °C","baseline":true},
		{"date":"2025-07-01","gearboxTemperature":"57 °C","waterTemperature":"20 °C","baseline":true},
		{"date":"2026-05-01","gearboxTemperature":"` + newest + `","waterTemperature":"14 °C"` + extra + `}]}`
	}
	// risen 37, 38 and 37 K above the sea, s = 0.577 K and that of two thermometers 0.816 K: half = 4.303·0.816·√(4/3) = 4.06 K
	for newest, want := range map[string]string{"53 °C": "within", "55 °C": "within", "56 °C": "beyond", "44 °C": "within"} {
		s := testboat.RunOn(t, boat(newest, ""), "reading-trend", `{"reading":"gearboxTemperature"}`)
		v := s.Verdict("trend-baseline")
		if v == nil || v.Word.Plain() != sheet.Word(want) && !(want == "within" && v.Word.Plain() == "near the limit") || v.Authority != "this boat's baseline" {
			t.Errorf("%s: %+v", newest, v)
		}
	}
	if off := *testboat.RunOn(t, boat("56 °C", ""), "reading-trend", `{"reading":"gearboxTemperature"}`).Result("offBaseline").SI; math.Abs(off-(42-37.333)/4.057) > 0.005 {
		t.Errorf("off by %g", off)
	}
	s := testboat.RunOn(t, boat("56 °C", `,"gauges":[{"reading":"gearboxTemperature","gauge":"infrared-thermometer"}]`), "reading-trend", `{"reading":"gearboxTemperature"}`)
	if v := s.Verdict("trend-baseline"); v.Word.Plain() == "beyond" {
		t.Errorf("by a coarse gauge: %+v", v)
	}
	if v := testboat.RunOn(t, strings.ReplaceAll(boat("56 °C", ""), `,"baseline":true`, ""), "reading-trend", `{"reading":"gearboxTemperature"}`).Verdict("trend-baseline"); v != nil {
		t.Errorf("without a baseline: %+v", v)
	}
	_, err := marinecalc.Run("reading-trend", []byte(`{"reading":"gearboxTemperature"}`), marinecalc.Options{Boat: testboat.Read(t, boat("56 °C", `,"gauges":[{"reading":"gearboxTemperature","gauge":"steel-rule"}]`))})
	if p := problem.Of(err); len(p) != 1 || p[0].Where != "/boat/readings/3/gearboxTemperature" {
		t.Errorf("a rule for a temperature: %v", err)
	}
}

// Did the work hold: on the day, after hours, at the end of the season.
func TestWhetherTheWorkHeld(t *testing.T) {
	boat := func(newest string) string {
		return `{"name":"Tern","events":[{"date":"2026-04-10","what":"coupling aligned","renews":"vibrationVelocity"}],"readings":[
		{"date":"2025-08-01","engineHours":"100 h","vibrationVelocity":"8 mm/s"},{"date":"2025-10-01","engineHours":"120 h","vibrationVelocity":"8.4 mm/s"},
		{"date":"2026-04-10","engineHours":"121 h","vibrationVelocity":"2.2 mm/s"},{"date":"2026-04-20","engineHours":"132 h","vibrationVelocity":"2.3 mm/s"},
		{"date":"2026-09-20","engineHours":"190 h","vibrationVelocity":"` + newest + ` mm/s"}]}`
	}
	for newest, want := range map[string]string{"2.3": "It holds", "2.0": "nothing is lost again", "7.6": "It did not hold", "5": "cannot be told"} {
		s := testboat.RunOn(t, boat(newest), "reading-trend", `{"reading":"vibrationVelocity"}`)
		if says := s.Result("heldSays").Text; !strings.HasPrefix(says, "Coupling aligned (2026-04-10): from 8.2 mm/s before to 2.2 mm/s after it") || !strings.Contains(says, want) {
			t.Errorf("%s: %s", newest, says)
		}
		if table := s.Table("followUp"); table == nil || len(table.Rows) != 4 || !strings.HasPrefix(table.Rows[2].Cells[0].Text, "11 h later") {
			t.Errorf("%s: %+v", newest, table)
		}
		v := s.Verdict("trend-held")
		if good := want != "It did not hold" && want != "cannot be told"; v == nil || !v.Guide || good != (v.Word.Plain() == "within" || v.Word.Plain() == "near the limit") {
			t.Errorf("%s: %+v", newest, v)
		}
	}
	worse := strings.ReplaceAll(boat("9"), `"2.2 mm/s"`, `"11 mm/s"`)
	worse = strings.ReplaceAll(worse, `"2.3 mm/s"`, `"11 mm/s"`)
	if says := testboat.RunOn(t, worse, "reading-trend", `{"reading":"vibrationVelocity"}`).Result("heldSays").Text; !strings.Contains(says, "no cure, unless") {
		t.Error(says)
	}
}

// Any number of the boat can be followed: own readings, heights of mounts,
// members of sections; less another reading; only at one speed.
func TestAnyNumberIsFollowed(t *testing.T) {
	var rows []string
	for i := range 6 {
		rows = append(rows, fmt.Sprintf(`{"date":"2026-%02d-01","time":"10:30","own":[{"reading":"oil","value":"%g bar"}],"mountHeights":[{"mount":"aft","height":"%g mm"}],"gland":{"followerDepth":"%d mm"},
			"boatSpeed":"%g kn","engineSpeed":"%d rpm","dripRate":"%d drips/min","dripRateAtRest":"%d drips/min"}`, 1+i, 3-0.1*float64(i), 62-0.2*float64(i), 10-i, 6.2-0.1*float64(i), 1900+700*(i%2), 8+2*i, 2+i))
	}
	boat := `{"name":"Tern","ownReadings":[{"name":"oil","title":"Oil pressure","kind":"pressure","unit":"bar","side":"least","gauge":"pressure-gauge"}],"readings":[` + strings.Join(rows, ",") + `]}`
	for input, want := range map[string]string{
		`"reading":"own/oil","limit":"1.5 bar"`:                                "2.5 bar",
		`"reading":"mountHeights/aft","limitSide":"least"`:                     "60.99 mm",
		`"reading":"gland/followerDepth","limitSide":"least"`:                  "5 mm",
		`"reading":"boatSpeed","atReading":"engineSpeed","atValue":"1900 rpm"`: "5.8 kn",
		`"reading":"dripRate","surroundedBy":"dripRateAtRest"`:                 "11 drips/min",
	} {
		s := testboat.RunOn(t, boat, "reading-trend", "{"+input+"}")
		if now := s.Result("now").Text; !strings.HasPrefix(now, want) {
			t.Errorf("%s: %s, want %s (%s)", input, now, want, s.Result("basis").Text)
		}
	}
	s := testboat.RunOn(t, boat, "reading-trend", `{"reading":"boatSpeed","atReading":"engineSpeed","atValue":"1900 rpm"}`)
	if basis := s.Result("basis").Text; !strings.Contains(basis, "3 of 6 were read at engine speed 1900 rpm ± 5 %") {
		t.Error(basis)
	}
	if s := testboat.RunOn(t, boat, "reading-trend", `{"reading":"own/oil","limit":"2.6 bar"}`); s.Verdict("trend-not-reached").Word != "beyond" {
		t.Errorf("a pressure under its least: %+v", s.Verdicts)
	}
	for input, where := range map[string]string{
		`"reading":"own/oill"`: "/reading", `"reading":"note"`: "/reading", `"reading":"dripRate","surroundedBy":"boatSpeed"`: "/surroundedBy",
		`"reading":"dripRate","atReading":"enginSpeed"`: "/atReading", `"reading":"dripRate","atReading":"engineSpeed","atValue":"3 mm"`: "/atValue", `"reading":"dripRate","atReading":"waterTemperature"`: "/atReading",
	} {
		_, err := marinecalc.Run("reading-trend", []byte("{"+input+"}"), marinecalc.Options{Boat: testboat.Read(t, boat)})
		if p := problem.Of(err); len(p) == 0 || p[0].Where != where {
			t.Errorf("%s: %v", input, err)
		}
	}
}

// Two readings of one day are two where their times differ.
func TestReadingsOfOneDay(t *testing.T) {
	for times, flags := range map[[2]string]int{{"08:00", "18:00"}: 0, {"08:00", "08:00"}: 1} {
		s := testboat.RunOn(t, fmt.Sprintf(`{"name":"Tern","readings":[{"date":"2026-05-01","dripRate":"6 drips/min"},{"date":"2026-05-08","time":"%s","dripRate":"6 drips/min"},{"date":"2026-05-08","time":"%s","dripRate":"7 drips/min"},{"date":"2026-05-15","dripRate":"7 drips/min"}]}`, times[0], times[1]), "reading-trend", `{"reading":"dripRate"}`)
		n := 0
		if table := s.Table("flags"); table != nil {
			n = len(table.Rows)
		}
		if n != flags {
			t.Errorf("%v: %d flags", times, n)
		}
	}
}

// Readings of a few days tell that they are few, and where no limit is given the
// guide of the reading is named; neither where there is no call for it.
func TestFewDaysAndTheGuideAreTold(t *testing.T) {
	log := func(name string, days ...string) string {
		entries := make([]string, len(days))
		for i, d := range days {
			entries[i] = fmt.Sprintf(`{"date":%q,%q:"%d drips/min"}`, d, name, 5+i)
		}
		return `{"name":"Tern","readings":[` + strings.Join(entries, ",") + `]}`
	}
	says := func(boat, input string) string {
		return testboat.Run(t, "reading-trend", input, marinecalc.Options{Boat: testboat.Read(t, boat), NoRanges: true}).Result("says").Text
	}
	const few, guide = "tells little of a pace", "guide is at most 60 drips/min"
	short := log("dripRate", "2026-11-27", "2026-11-28", "2026-11-29")
	long := log("dripRate", "2026-08-27", "2026-09-28", "2026-11-29")
	for _, c := range []struct {
		boat, input string
		want, not   []string
	}{
		{short, `{"reading":"dripRate","today":"2026-11-29"}`, []string{few, guide, "2 days"}, nil},
		{long, `{"reading":"dripRate","today":"2026-11-29"}`, []string{guide}, []string{few}},
		{long, `{"reading":"dripRate","today":"2026-11-29","limit":"30 drips/min"}`, nil, []string{few, guide}},
		{log("dripRateAtRest", "2026-11-27", "2026-11-28", "2026-11-29"), `{"reading":"dripRateAtRest","today":"2026-11-29"}`, []string{few, "at most 10 drips/min"}, nil},
	} {
		got := says(c.boat, c.input)
		for _, want := range c.want {
			if !strings.Contains(got, want) {
				t.Errorf("%s says %q, nothing of %q", c.input, got, want)
			}
		}
		for _, not := range c.not {
			if strings.Contains(got, not) {
				t.Errorf("%s says %q", c.input, got)
			}
		}
	}
}
