package upkeep_test

import (
	"fmt"
	"strings"
	"testing"

	"example.org/driveline/marinecalc"
	"example.org/driveline/marinecalc/internal/boat"
	"example.org/driveline/marinecalc/internal/testboat"
	"example.org/driveline/marinecalc/rules"
)

// Rows of care name readings that there are, and every row has an interval;
// rows of stranding name causes.
func TestRowsOfCarePointSomewhere(t *testing.T) {
	form, err := boat.Contract()
	if err != nil {
		t.Fatal(err)
	}
	book := rules.Standard()
	follow := map[string]bool{}
	for _, r := range book.Table("trend-readings").Rows.All() {
		follow[r.Pick] = true
	}
	steps := map[string]bool{}
	for _, s := range book.Steps().All() {
		steps[s.ID] = true
	}
	for _, r := range book.Table("service-intervals").Rows.All() {
		for _, name := range strings.Fields(r.Values.Of("readings").Text) {
			if form.Root.Child("readings").Items.Child(name) == nil {
				t.Errorf("%s: the boat has no reading %s", r.ID, name)
			}
		}
		for _, trend := range strings.Fields(r.Values.Of("trend").Text) {
			if !follow[trend] {
				t.Errorf("%s: %s is not followed", r.ID, trend)
			}
		}
		for _, id := range strings.Fields(r.Values.Of("steps").Text) {
			if !steps[id] {
				t.Errorf("%s: there is no step %s", r.ID, id)
			}
		}
		_, hours := r.Values.Find("hours")
		_, within := r.Values.Find("within")
		if kind := r.Values.Of("kind").Text; !hours && !within || kind != "read" && kind != "look" && kind != "renew" {
			t.Errorf("%s has no interval, or is no care", r.ID)
		}
	}
	causes := map[string]bool{}
	for _, c := range book.Causes().All() {
		causes[c.ID] = true
	}
	for _, r := range book.Table("stranding").Rows.All() {
		if !causes[r.ID] {
			t.Errorf("there is no cause %s", r.ID)
		}
	}
}

func TestScheduleIsDrawn(t *testing.T) {
	for _, name := range []string{"kittiwake", "juniper"} {
		s := testboat.Run(t, "service-schedule", `{}`, marinecalc.Options{Boat: testboat.Demo(t, name)})
		if len(s.Drawings) != 1 || testboat.WellFormed(s.Drawings[0].SVG) != "" {
			t.Errorf("%s: %v", name, s.Drawings)
		}
	}
}

// Any reading that has a limit brings the day forward as its own trend does:
// of a row of care, and of the boat's own list.
func TestReadingsLeadToALimit(t *testing.T) {
	const boat = `{"name":"Tern","ownReadings":[{"name":"oil","title":"Oil pressure","kind":"pressure","unit":"bar","side":"least"}],
		"follow":{"limits":[{"reading":"%s","limit":"%s"}]},"readings":[%s]}`
	for _, c := range []struct{ reading, limit, form, what string }{
		{"own/oil", "2 bar", `{"date":"2026-0%d-01","engineHours":"%d h","own":[{"reading":"oil","value":"%.2f bar"}]}`, "Oil pressure"},
		{"gearboxTemperature", "90 °C", `{"date":"2026-0%d-01","engineHours":"%d h","gearboxTemperature":"%.2f °C"}`, "Gearbox temperature"},
		{"wearIron", "200 ppm", `{"date":"2026-0%d-01","engineHours":"%d h","wearIron":"%.2f ppm"}`, "Gearbox fluid: metal"},
	} {
		var rows []string
		for i := range 6 {
			value := map[string]float64{"own/oil": 3.5 - 0.2*float64(i), "gearboxTemperature": 60 + 4*float64(i), "wearIron": 40 + 25*float64(i)}[c.reading]
			rows = append(rows, fmt.Sprintf(c.form, 1+i, 1000+10*i, value+0.01*float64(i%2)))
		}
		file := fmt.Sprintf(boat, c.reading, c.limit, strings.Join(rows, ","))
		want := testboat.RunOn(t, file, "reading-trend", `{"reading":"`+c.reading+`"}`).Result("sureDate")
		if want == nil {
			t.Fatalf("%s leads nowhere", c.reading)
		}
		if got := lineOf(t, testboat.RunOn(t, file, "service-schedule", `{}`), c.what); got["by"] != "her readings" || got["due"] != want.Text {
			t.Errorf("%s: %v, the trend says %s", c.reading, got, want.Text)
		}
		slack := strings.NewReplacer(`"2 bar"`, `"0.1 bar"`, `"90 °C"`, `"150 °C"`, `"200 ppm"`, `"9000 ppm"`).Replace(file)
		if s := testboat.RunOn(t, slack, "service-schedule", `{}`); c.reading == "gearboxTemperature" && lineOf(t, s, c.what)["by"] == "her readings" {
			t.Errorf("%s far from its limit: %v", c.reading, lineOf(t, s, c.what))
		}
	}
}

// What is overdue stands behind its number, the first few by name.
func TestOverdueIsNamed(t *testing.T) {
	done := `{"item":"mounts-renew","date":"2010-01-01"},{"item":"gland-hose-renew","date":"2010-01-01"},{"item":"control-cable","date":"2010-01-01"}`
	s := testboat.RunOn(t, tern(`"service":{"done":[`+done+`]},`), "service-schedule", `{}`)
	if got := s.Verdict("service-overdue-guide").Sentence; !strings.Contains(got, ": 3 (control cable; gland hose and clamps, renewed; engine mounts, renewed), ") {
		t.Error(got)
	}
	done += `,{"item":"alignment","date":"2010-01-01"},{"item":"propeller","date":"2010-01-01"}`
	s = testboat.RunOn(t, tern(`"service":{"done":[`+done+`]},`), "service-schedule", `{}`)
	if got := s.Verdict("service-overdue-guide").Sentence; !strings.Contains(got, ": 5 (") || !strings.Contains(got, "; 2 more), ") {
		t.Error(got)
	}
}

// In front stand the cautions of what is due now, beside each row its own; what
// is read under way has none while the shaft stands.
func TestCautionsAreOfWhatIsDue(t *testing.T) {
	in := func(s *marinecalc.Sheet, words string) bool {
		for _, c := range s.Cautions {
			if strings.Contains(c.Text, words) {
				return true
			}
		}
		return false
	}
	zinc := `"service":{"done":[{"item":"heat-exchanger-zinc","date":"2020-06-01","engineHours":"780 h"}]},`
	if s := testboat.RunOn(t, tern(zinc), "service-schedule", `{}`); !in(s, "plug at hand") || !strings.Contains(lineOf(t, s, "Zincs of engine and gearbox cooler")["hazard"], "WARNING: The boat can fill through the hole of a zinc") {
		t.Errorf("zincs overdue: %+v", s.Cautions)
	}
	s := testboat.RunOn(t, tern(""), "service-schedule", `{}`)
	if in(s, "plug at hand") || len(s.Cautions) > 6 {
		t.Errorf("zincs at the end of the list: %+v", s.Cautions)
	}
	if !strings.Contains(lineOf(t, s, "Zincs of engine and gearbox cooler")["hazard"], "WARNING: The boat can fill through the hole of a zinc") {
		t.Error("the row does not tell its own")
	}
	s = testboat.RunOn(t, `{"name":"Tern","readings":[{"date":"2026-05-01","symptoms":[{"evidence":"coupling-bolt-turns","answer":"yes"}]}]}`, "service-schedule", `{}`)
	if how := s.Cell("schedule", 1, "how").Text; s.Cell("schedule", 0, "what").Text != "Coupling bolts" || !strings.HasPrefix(how, "It waits until the shaft may turn. Under way") {
		t.Errorf("what is read under way: %s", how)
	}
	if !in(s, "The shaft stays still") || in(s, "winds in sleeves") {
		t.Errorf("the shaft stands: %+v", s.Cautions)
	}
	if !strings.HasPrefix(s.Cautions[0].Text, "The shaft stays still") {
		t.Errorf("before it stands %q", s.Cautions[0].Text)
	}
}

// What is overdue leads the list, and in front stand the cautions of the first
// of it alone: one that waits its turn has its own.
func TestOverdueLeads(t *testing.T) {
	s := testboat.RunOn(t, tern(`"service":{"done":[{"item":"coupling-bolts","date":"2020-06-01"}]},`), "service-schedule", `{}`)
	if first := s.Cell("schedule", 0, "what").Text; first != "Coupling bolts" {
		t.Errorf("%q leads", first)
	}
	for _, c := range s.Cautions {
		if strings.HasPrefix(c.Text, "A turning shaft") {
			t.Error("the caution of a reading under way stands before bolts that are overdue")
		}
	}
}

// Bolts that worked loose are changed and not drawn up again: a set is a spare.
func TestCouplingBoltsAreSpares(t *testing.T) {
	s := testboat.RunOn(t, tern(""), "service-schedule", `{}`)
	if i := testboat.Column(t, s, "sparesBy", "part", "for"); i["Coupling bolts"] != "Coupling bolts loose" {
		t.Errorf("%+v", i)
	}
}

// A spare for what she has not is not carried: a packed gland has no face seal.
func TestNoSpareForAFaceSealWherePackingRuns(t *testing.T) {
	for boat, carried := range map[string]bool{`{"name": "Tern"}`: true, `{"name": "Tern", "gland": {"packing": "flax"}}`: false} {
		has := testboat.Column(t, testboat.RunOn(t, boat, "service-schedule", `{"today": "2026-04-11"}`), "sparesBy", "part", "for")["Collar screws of the face seal"] != ""
		if has != carried {
			t.Errorf("%s: screws of a face seal are carried: %v", boat, has)
		}
	}
}
