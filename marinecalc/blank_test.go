package marinecalc_test

import (
	"encoding/json"
	"slices"
	"strings"
	"testing"

	"example.org/driveline/marinecalc"
	"example.org/driveline/marinecalc/internal/diagnosis"
	"example.org/driveline/marinecalc/rules"
	"example.org/driveline/schemas"
)

// A gauge is chosen among those that read the quantity in question.
func TestGaugesFitWhatTheyRead(t *testing.T) {
	for _, c := range []struct{ calculation, input, has, hasNot string }{
		{"gland-heat", "thermometer", "contact-thermometer", "feeler-gauge"},
		{"coupling-alignment", "gapGauge", "feeler-gauge", "torque-wrench"}, // it reads what stands in a list
		{"reading-trend", "readingGauge", "feeler-gauge", "nothing"},        // any kind of reading
	} {
		b, err := marinecalc.Open(c.calculation)
		if err != nil {
			t.Fatal(err)
		}
		blank, _ := json.Marshal(map[string]any{"ask": "blank", "calculation": c.calculation})
		var reply struct {
			Choices map[string][]marinecalc.Choice
		}
		if err := json.Unmarshal(marinecalc.Call(blank), &reply); err != nil {
			t.Fatal(err)
		}
		i := slices.IndexFunc(b.Inputs, func(in marinecalc.BlankInput) bool { return in.Name == c.input })
		for entry, list := range map[string][]marinecalc.Choice{"Go": b.Inputs[i].Choices, "the page": reply.Choices["gauges/"+c.input]} {
			picks := map[string]bool{}
			for _, choice := range list {
				picks[choice.Pick] = true
			}
			if !picks[c.has] || picks[c.hasNot] {
				t.Errorf("%s %s in %s: %v", c.calculation, c.input, entry, list)
			}
		}
	}
}

// Every member of the boat file that belongs to a part of the line gives the title of a
// group of inputs, and stands on the card of that part.
func TestMembersOfTheBoatHaveTheirGroups(t *testing.T) {
	boat, err := schemas.Read("boat")
	if err != nil {
		t.Fatal(err)
	}
	var described struct {
		Properties map[string]struct {
			Group string
			Card  any
		}
	}
	var reply struct{ Places map[string]string }
	if err := json.Unmarshal(boat, &described); err != nil {
		t.Fatal(err)
	}
	if err := json.Unmarshal(marinecalc.Call([]byte(`{"ask": "blank", "calculation": "gland-heat"}`)), &reply); err != nil {
		t.Fatal(err)
	}
	held := 0
	for _, row := range rules.Standard().Table("line-parts").Rows.All() {
		for _, pointer := range strings.Fields(row.Values.Of("holds").Text) {
			held++
			name := strings.TrimPrefix(pointer, "/")
			if p := described.Properties[name]; p.Group == "" || p.Card != nil || reply.Places[name] != p.Group {
				t.Errorf("%s: group %q, card %v, the page is told %q", name, p.Group, p.Card, reply.Places[name])
			}
		}
	}
	if held < 10 {
		t.Errorf("%d members were looked at", held)
	}
}

// What a row, a usual value or a default stands in for is not asked for; the
// pick that fills it is.
func TestOnlyWhatNothingStandsInForIsRequired(t *testing.T) {
	b, err := marinecalc.Open("shaft-droop")
	if err != nil {
		t.Fatal(err)
	}
	want := []string{"shaftDiameter", "freeLength", "couplingMass", "shaftAlloy"}
	var got []string
	for _, in := range b.Inputs {
		if in.Required {
			got = append(got, in.Name)
		}
	}
	if !slices.Equal(got, want) {
		t.Errorf("%v, want %v", got, want)
	}
}

// The form of the fault finding lists every question once, with its hazards.
func TestBlankListsTheQuestions(t *testing.T) {
	var r struct {
		OK        bool
		Questions []diagnosis.Question
		Choices   map[string][]marinecalc.Choice
	}
	if err := json.Unmarshal(marinecalc.Call([]byte(`{"ask": "blank", "calculation": "fault-finding"}`)), &r); err != nil || !r.OK {
		t.Fatal(err)
	}
	if n := rules.Standard().Evidence().Len(); len(r.Questions) != n || len(r.Choices["evidence"]) != n {
		t.Errorf("%d questions and %d choices of %d", len(r.Questions), len(r.Choices["evidence"]), n)
	}
	for _, q := range r.Questions {
		if q.GroupTitle == "" {
			t.Errorf("%s has no group", q.ID)
		}
	}
}
