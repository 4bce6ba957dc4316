package marinecalc_test

import (
	"bytes"
	"encoding/json"
	"errors"
	"math"
	"slices"
	"strings"
	"testing"

	"github.com/santhosh-tekuri/jsonschema/v5"

	"example.org/driveline/marinecalc"
	"example.org/driveline/marinecalc/internal/testboat"
	"example.org/driveline/marinecalc/rules"
	"example.org/driveline/marinecalc/sample"
	"example.org/driveline/schemas"
)

// formFor compiles a form as another program would: by draft 7, alone.
func formFor(t *testing.T, id string, b *marinecalc.Boat) (text []byte, s *jsonschema.Schema) {
	t.Helper()
	text, err := new(marinecalc.Engine).Form(t.Context(), id, b)
	if err != nil {
		t.Fatal(err)
	}
	c := jsonschema.NewCompiler()
	c.Draft, c.AssertFormat = jsonschema.Draft7, true
	if err := c.AddResource("form.json", bytes.NewReader(text)); err != nil {
		t.Fatal(err)
	}
	if s, err = c.Compile("form.json"); err != nil {
		t.Fatalf("%s: %v", id, err)
	}
	return text, s
}

// Every form stands by itself, takes the examples of its inputs and refuses a
// name that is not in it. Its defaults are taken, and change nothing.
func TestFormsTakeWhatTheCalculationsTake(t *testing.T) {
	for _, e := range marinecalc.Calculations() {
		text, s := formFor(t, e.ID, nil)
		if bytes.Contains(text, []byte(`"$ref"`)) {
			t.Errorf("%s refers to something", e.ID)
		}
		input, err := sample.Every(e.ID)
		if err != nil {
			t.Fatal(err)
		}
		for name, v := range input {
			if n, is := v.(json.Number); is && bytes.Contains(property(t, text, name), []byte(`"quantity"`)) {
				input[name] = n.String() // a form takes texts there
			}
		}
		if err := s.Validate(plain(t, input)); err != nil {
			t.Errorf("%s: %#v", e.ID, err)
		}
		input["song"] = "la"
		if s.Validate(plain(t, input)) == nil {
			t.Errorf("%s takes a song", e.ID)
		}
		var form struct {
			Properties map[string]struct {
				Title, Description, Type string
				Default                  any
			}
		}
		if err := json.Unmarshal(text, &form); err != nil {
			t.Fatal(err)
		}
		defaults := map[string]any{}
		for name, p := range form.Properties {
			if p.Title == "" || p.Type == "" {
				t.Errorf("%s/%s has no title or no type", e.ID, name)
			}
			if p.Default != nil {
				defaults[name] = p.Default
			}
		}
		typed, _ := json.Marshal(defaults)
		_, err = marinecalc.Run(e.ID, typed, marinecalc.Options{NoRanges: true})
		for _, p := range marinecalc.ProblemsOf(err) {
			if p.Kind != "missing" {
				t.Errorf("defaults of %s: %v", e.ID, p)
			}
		}
	}
}

// property is the place of an input in a form.
func property(t *testing.T, form []byte, name string) []byte {
	t.Helper()
	var f struct{ Properties map[string]json.RawMessage }
	if err := json.Unmarshal(form, &f); err != nil {
		t.Fatal(err)
	}
	return f.Properties[name]
}

func plain(t *testing.T, v any) any {
	t.Helper()
	text, err := json.Marshal(v)
	if err != nil {
		t.Fatal(err)
	}
	var out any
	if err := json.Unmarshal(text, &out); err != nil {
		t.Fatal(err)
	}
	return out
}

// What the boat gives need not be typed, and what stands first is what the
// calculation asks for first.
func TestAFormKnowsTheBoat(t *testing.T) {
	b, err := marinecalc.ReadBoat([]byte(testboat.Logged))
	if err != nil {
		t.Fatal(err)
	}
	var without, with struct {
		Required   []string
		Properties json.RawMessage
	}
	for boat, to := range map[*marinecalc.Boat]any{nil: &without, b: &with} {
		text, _ := formFor(t, "gland-drip", boat)
		if err := json.Unmarshal(text, to); err != nil {
			t.Fatal(err)
		}
	}
	if !slices.Contains(without.Required, "dripRate") || slices.Contains(with.Required, "dripRate") || !bytes.Contains(with.Properties, []byte("The boat gives 6 drips/min.")) {
		t.Errorf("without the boat %v is needed, with it %v: %.600s", without.Required, with.Required, with.Properties)
	}
	whole, err := schemas.Read("gland-drip")
	if err != nil {
		t.Fatal(err)
	}
	var asks struct {
		Defs struct{ Input struct{ Asks []string } } `json:"$defs"`
	}
	if err := json.Unmarshal(whole, &asks); err != nil || len(asks.Defs.Input.Asks) == 0 {
		t.Fatal(err)
	}
	if first := asks.Defs.Input.Asks[0]; !strings.HasPrefix(string(without.Properties), `{"`+first+`":`) {
		t.Errorf("%q is asked for first, the form begins %.60s", first, without.Properties)
	}
}

// NIST SP 811 (2008), Appendix B.8: 1 lbf·ft = 1.355818 N·m, 1 in = 25.4 mm;
// B.9 has t/°C = (t/°F − 32)/1.8, a difference of 1.8 °F being one of 1 K.
func TestConvert(t *testing.T) {
	for _, c := range []struct {
		kind, text, to  string
		value, accuracy float64
		says            string
	}{
		{"", "45 lbf·ft ± 5 %", "N·m", 61.01181, 3.0505905, "61.01 N·m ± 3.051 N·m"},
		{"", "1-11/16 in", "mm", 42.8625, 0, "42.86 mm"},
		{"", "140 °F ± 1.8 °F", "°C", 60, 1, "60 °C ± 1 °C"},
		{"temperature-difference", "18 °F", "K", 10, 0, "10 K"},
		{"", "3 o'clock", "°", 90, 0, "90°"},
		{"", "75 %", "%", 75, 0, "75 %"},
		{"", "2400 rpm", "Hz", 40, 0, "40 rev/s"},
	} {
		got, err := marinecalc.Convert(c.kind, c.text, c.to)
		if err != nil {
			t.Errorf("%s: %v", c.text, err)
			continue
		}
		half := 0.0
		if got.Accuracy != nil {
			half = *got.Accuracy
		}
		if math.Abs(got.Value-c.value) > 1e-6*c.value || math.Abs(half-c.accuracy) > 1e-6*c.value || got.Text != c.says || got.Unit != c.to {
			t.Errorf("%s in %s is %+v ± %g", c.text, c.to, got, half)
		}
	}
	for _, c := range [][4]string{
		{"", "5 mm", "kg", "/to"}, {"length", "5 mm", "milimetre", "/to"}, {"length", "5 kg", "mm", "/text"}, {"", "five", "mm", "/text"}, {"", "", "mm", "/text"},
		{"songs", "5 mm", "in", "/quantity"}, {"money", "5 EUR", "GBP", "/to"}, {"", "10 N·m", "J", "/to"}, {"length", "1e308 km", "µm", "/text"}, {"", "5 mm", "", "/to"},
	} {
		_, err := marinecalc.Convert(c[0], c[1], c[2])
		if list := marinecalc.ProblemsOf(err); len(list) == 0 || list[0].Where != c[3] || list[0].What == "" {
			t.Errorf("%q as %q in %q: %v", c[1], c[0], c[2], list)
		}
	}
}

// What is told of the rules is what the book has, an overlay's rows too.
func TestRulesInForce(t *testing.T) {
	yard := []byte(`{"title": "Yard", "limits": [{"id": "yard-torque", "calculation": "shaft-torque", "on": "shaftTorque", "title": "Yard's limit", "max": "1 kN·m", "source": {"document": "Yard sheet"}, "basis": "maker", "how": "calculate it", "why": "the coupling slips"}]}`)
	e, err := marinecalc.New(marinecalc.WithOverlays(yard))
	if err != nil {
		t.Fatal(err)
	}
	all, err := e.InForce("", "")
	if err != nil || len(all.Limits) != rules.Standard().AllLimits().Len()+1 || len(all.Tables) != len(rules.Standard().Tables()) || len(all.Files) != 1 {
		t.Fatalf("%v: %d limits, %d tables, %v", err, len(all.Limits), len(all.Tables), all.Files)
	}
	of, err := e.InForce("shaft-torque", "threads")
	if err != nil {
		t.Fatal(err)
	}
	told := false
	for _, l := range of.Limits {
		if l.ID == "yard-torque" {
			told = l.Text == "at most 1 kN·m" && *l.SI == 1000 && l.Quantity == "torque" && l.Source == "Yard sheet" && !l.Guide
		}
	}
	if !told {
		t.Errorf("the yard's limit is not told: %+v", of.Limits)
	}
	// ASME B1.1: 7/16-14 UNC has 14 threads an inch.
	for _, r := range of.Table.Rows {
		if r.Pick == "7/16-14 UNC" && (math.Abs(*r.Values["pitch"].SI-0.0254/14) > 1e-12 || of.Table.Columns["pitch"] != "length") {
			t.Errorf("%+v", r)
		}
	}
	if n := of.Table.Count; n != len(of.Table.Rows) || n < 20 {
		t.Errorf("%d rows are told, %d given", n, len(of.Table.Rows))
	}
	if _, err := e.InForce("shaft-tork", ""); !errors.Is(err, marinecalc.ErrUnknown) {
		t.Errorf("no such calculation: %v", err)
	}
	if _, err := e.InForce("", "threds"); !errors.Is(err, marinecalc.ErrUnknown) || !strings.Contains(err.Error(), `"threads"`) {
		t.Errorf("no such table: %v", err)
	}
}
