package marinecalc_test

import (
	"encoding/json"
	"math"
	"os"
	"path/filepath"
	"strconv"
	"strings"
	"testing"

	"example.org/driveline/marinecalc/fluid"
	"example.org/driveline/marinecalc/internal/contract"
	"example.org/driveline/marinecalc/internal/spread"
	"example.org/driveline/marinecalc/mount"
	"example.org/driveline/marinecalc/quantity"
	"example.org/driveline/marinecalc/rules"

	"example.org/driveline/marinecalc"
	"example.org/driveline/marinecalc/internal/calc/inputs"
	"example.org/driveline/marinecalc/internal/testboat"
)

// publishedRow is one published value and how close marinecalc must come.
type publishedRow struct {
	ID          string
	Calculation string
	Check       string
	Table       string
	Pick        string
	On          string
	Model       string
	At          map[string]any
	Input       map[string]any
	Expect      map[string]any
	Tolerance   float64 // relative
	Absolute    any     // where a relative one has no sense
	Source      string
	Note        string
}

func readPublished(t *testing.T) map[string][]publishedRow {
	t.Helper()
	files, err := filepath.Glob("../testdata/published/*.json")
	if err != nil || len(files) == 0 {
		t.Fatalf("no published values: %v", err)
	}
	topics := map[string][]publishedRow{}
	for _, name := range files {
		text, err := os.ReadFile(name)
		if err != nil {
			t.Fatal(err)
		}
		var topic struct {
			Topic string
			Rows  []publishedRow
		}
		if err := json.Unmarshal(text, &topic); err != nil {
			t.Fatalf("%s: %v", name, err)
		}
		topics[filepath.Base(name)] = topic.Rows
	}
	return topics
}

// TestPublished holds the code and its rule data against every published
// value of testdata/published. The same rows run in WASM too (wasm/).
func TestPublished(t *testing.T) {
	rows := 0
	for name, topic := range readPublished(t) {
		seen := map[string]bool{}
		for _, row := range topic {
			rows++
			if row.Source == "" || seen[row.ID] || len(row.Expect) == 0 || (row.Tolerance == 0 && row.Absolute == nil) {
				t.Errorf("%s: row %q has no source, expectation or tolerance, or its id twice", name, row.ID)
			}
			seen[row.ID] = true
			t.Run(name+"/"+row.ID, func(t *testing.T) { row.run(t) })
		}
	}
	if rows < 180 {
		t.Errorf("only %d published values; there were 180", rows)
	}
}

func (row *publishedRow) run(t *testing.T) {
	switch row.Check {
	case "":
		row.runCalculation(t)
	case "rule":
		row.runRule(t)
	case "limit":
		row.runLimit(t)
	case "spread":
		row.runSpread(t)
	case "conformity":
		row.runConformity(t)
	case "water-density", "water-specific-heat", "fresh-water":
		row.runWater(t)
	case "count", "student", "theil-sen":
		row.runStatistics(t)
	case "transmissibility":
		ratio, _ := row.Input["ratio"].(float64)
		damping, _ := row.Input["damping"].(float64)
		row.holds(t, "passed", float64(mount.Transmissibility(quantity.Ratio(ratio), quantity.Ratio(damping))), testboat.Amount(t, row.Expect["passed"], nil))
	default:
		t.Fatalf("there is no check %q", row.Check)
	}
}

// holds compares one value with what is published.
func (row *publishedRow) holds(t *testing.T, name string, got, want float64) {
	t.Helper()
	allowed := row.Tolerance * math.Abs(want)
	if row.Absolute != nil {
		allowed = max(allowed, testboat.Amount(t, row.Absolute, nil))
	}
	if !(math.Abs(got-want) <= allowed) {
		t.Errorf("%s is %.8g, published %.8g (allowed off by %.3g): %s", name, got, want, allowed, row.Source)
	}
}

func (row *publishedRow) runCalculation(t *testing.T) {
	input, err := json.Marshal(row.Input)
	if err != nil {
		t.Fatal(err)
	}
	s, err := marinecalc.Run(row.Calculation, input, marinecalc.Options{NoRanges: true})
	if err != nil {
		t.Fatal(err)
	}
	for name, want := range row.Expect {
		if place := strings.Split(name, "/"); len(place) == 3 {
			row.holdsCell(t, s, place, want)
			continue
		}
		if id, is := strings.CutPrefix(name, "limit/"); is { // the bound that a limit has here
			v := s.Verdict(id)
			if v == nil || v.BoundSI == nil {
				t.Errorf("there is no bound of %s", id)
				continue
			}
			row.holds(t, name, *v.BoundSI, testboat.Amount(t, want, nil))
			continue
		}
		r := s.Result(name)
		if r == nil {
			t.Errorf("there is no result %s", name)
			continue
		}
		if word, is := want.(string); is && r.Kind == "" {
			if r.Text != word {
				t.Errorf("%s is %q, published %q: %s", name, r.Text, word, row.Source)
			}
			continue
		}
		kind, _ := quantity.Lookup(string(r.Kind))
		row.holds(t, name, *r.SI, testboat.Amount(t, want, kind))
	}
}

// holdsCell compares one cell of a table: "moves/0/raise" is the raise of the
// first row of moves.
func (row *publishedRow) holdsCell(t *testing.T, s *marinecalc.Sheet, place []string, want any) {
	t.Helper()
	n, _ := strconv.Atoi(place[1])
	cell := s.Cell(place[0], n, place[2])
	if cell == nil || cell.Text == "" {
		t.Errorf("there is no %s", strings.Join(place, "/"))
		return
	}
	if cell.SI == nil {
		if cell.Text != want {
			t.Errorf("%s is %q, published %q: %s", place[2], cell.Text, want, row.Source)
		}
		return
	}
	row.holds(t, strings.Join(place, "/"), *cell.SI, testboat.Amount(t, want, nil))
}

// known gives what the row says about the case.
func (row *publishedRow) known(t *testing.T) rules.Known {
	return func(name string) (float64, string, bool) {
		switch v := row.At[name].(type) {
		case float64:
			return v, "", true
		case string:
			if r, _, err := quantity.Infer(v); err == nil {
				return r.SI, v, true
			}
			return 0, v, true
		}
		return 0, "", false
	}
}

func (row *publishedRow) runRule(t *testing.T) {
	table := rules.Standard().Table(row.Table)
	if table == nil {
		t.Fatalf("there is no table %s", row.Table)
	}
	found := table.Find(row.Pick, row.known(t))
	if found == nil {
		t.Fatalf("table %s has no row %s here", row.Table, row.Pick)
	}
	for column, want := range row.Expect {
		v, ok := found.Values.Find(column)
		if !ok {
			t.Errorf("row %s has no %s", found.ID, column)
			continue
		}
		if v.IsText {
			if v.Text != want {
				t.Errorf("%s is %q, published %q: %s", column, v.Text, want, row.Source)
			}
			continue
		}
		name, _ := table.Kind(column)
		kind, _ := quantity.Lookup(name)
		if ranged, is := want.(map[string]any); is {
			for part, got := range map[string]float64{"low": v.Low, "typical": v.SI, "high": v.High} {
				if w, has := ranged[part]; has {
					row.holds(t, column+" "+part, got, testboat.Amount(t, w, kind))
				}
			}
			continue
		}
		row.holds(t, column, v.SI, testboat.Amount(t, want, kind))
	}
}

// runLimit checks which bound the rules hold a result against in a case.
func (row *publishedRow) runLimit(t *testing.T) {
	found := 0
	for _, l := range rules.Standard().Limits(row.Calculation).All() {
		if l.On != row.On || !l.Valid.Meets(row.known(t)) {
			continue
		}
		for side, bound := range map[string]rules.Bound{"max": l.Max, "min": l.Min} {
			if want, has := row.Expect[side]; has && bound.Given() && bound.Of == "" {
				found++
				row.holds(t, l.ID, bound.SI, testboat.Amount(t, want, nil))
			}
		}
	}
	if found == 0 {
		t.Errorf("no limit on %s of %s applies here: %s", row.On, row.Calculation, row.Source)
	}
}

func (row *publishedRow) factors(t *testing.T) ([]spread.Factor, spread.Plan) {
	t.Helper()
	text, err := json.Marshal(row.Input)
	if err != nil {
		t.Fatal(err)
	}
	var in struct {
		Factors []struct {
			Estimate, Low, High float64
			Shape               string
		}
		Trials int
	}
	if err := json.Unmarshal(text, &in); err != nil {
		t.Fatal(err)
	}
	var list []spread.Factor
	for _, f := range in.Factors {
		list = append(list, spread.Factor{Estimate: f.Estimate, Low: f.Low, High: f.High, Shape: inputs.ShapeNamed(f.Shape)})
	}
	return list, spread.Plan{Trials: in.Trials}
}

// models are the functions of the JCGM 101 examples.
var models = map[string]func(x []float64) float64{
	"sum": func(x []float64) float64 {
		total := 0.0
		for _, v := range x {
			total += v
		}
		return total
	},
	"sum-of-squares": func(x []float64) float64 {
		total := 0.0
		for _, v := range x {
			total += v * v
		}
		return total
	},
	// JCGM 101:2008, 9.3.1.3: deviation from the nominal 100 g, in mg.
	"mass-calibration": func(x []float64) float64 {
		return (x[0]+x[1])*(1+(x[2]-1.2)*(1/x[3]-1/x[4])) - 100000
	},
}

func (row *publishedRow) runSpread(t *testing.T) {
	model, ok := models[row.Model]
	if !ok {
		t.Fatalf("there is no model %q", row.Model)
	}
	list, plan := row.factors(t)
	out, err := spread.Propagate(list, 1, plan, func(x, y []float64) bool { y[0] = model(x); return true })
	if err != nil {
		t.Fatal(err)
	}
	r := out.Results[0]
	got := map[string]float64{"mean": r.Mean, "standardDeviation": r.StdDev, "low": r.Low, "high": r.High}
	for name, want := range row.Expect {
		row.holds(t, name, got[name], testboat.Amount(t, want, nil))
	}
}

// runConformity draws a normal distribution and counts what meets the limit.
func (row *publishedRow) runConformity(t *testing.T) {
	get := func(name string) float64 {
		if v, ok := row.Input[name].(float64); ok {
			return v
		}
		return math.NaN()
	}
	y, u := get("estimate"), get("standardUncertainty")
	out, err := spread.Propagate([]spread.Factor{{Estimate: y, Low: y - 1.959963985*u, High: y + 1.959963985*u, Shape: spread.Normal}}, 1,
		spread.Plan{Trials: 200000}, func(x, y []float64) bool { y[0] = x[0]; return true })
	if err != nil {
		t.Fatal(err)
	}
	j := spread.Judge(y, &out.Results[0], spread.Limit{Max: get("max"), Min: get("min")})
	row.holds(t, "probability", j.Probability, testboat.Amount(t, row.Expect["probability"], nil))
}

func (row *publishedRow) runWater(t *testing.T) {
	number := func(name string) float64 { v, _ := row.Input[name].(float64); return v }
	got := map[string]float64{}
	if row.Check == "fresh-water" {
		temperature, _ := contract.Resolve(row.Input, []string{"temperature"})
		pressure, _ := contract.Resolve(row.Input, []string{"pressure"})
		w, err := fluid.Fresh(quantity.Temperature(testboat.Amount(t, temperature, nil)), quantity.Pressure(testboat.Amount(t, pressure, nil)))
		if err != nil {
			t.Fatal(err)
		}
		got["density"], got["specificHeat"] = float64(w.Density), float64(w.SpecificHeat)
	} else {
		t90 := number("t68")/1.00024 + 273.15 // Saunders 1990
		salinity := quantity.Ratio(number("practicalSalinity") / 1000)
		w, err := fluid.Sea(quantity.Temperature(t90), salinity)
		if err != nil {
			t.Fatal(err)
		}
		got["density"], got["specificHeat"] = float64(w.Density), float64(w.SpecificHeat)
	}
	for name, want := range row.Expect {
		row.holds(t, name, got[name], testboat.Amount(t, want, nil))
	}
}
