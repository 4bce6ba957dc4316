package contract

import (
	"encoding/json"
	"strings"
	"testing"

	"example.org/driveline/marinecalc/problem"
)

func checked(t *testing.T, id, input string) problem.List {
	t.Helper()
	c, err := OpenCalculation(id)
	if err != nil {
		t.Fatal(err)
	}
	v, problems := Decode([]byte(input))
	if len(problems) > 0 {
		t.Fatal(problems)
	}
	return c.CheckInput(v)
}

// Every fault of an input is reported at once, at its place, with what is
// allowed and how to mend it.
func TestProblemsAreReportedTogether(t *testing.T) {
	list := checked(t, "gland-heat", `{
		"shaftDiameter": 32, "boxBore": "41", "packedLength": "2 m", "shaftSped": "1000 rpm",
		"dripRate": true, "waterTemperature": "5 kg"}`)
	want := []struct{ where, what, allowed, hint string }{
		{"/boxBore", "unit", "mm", `"41 mm"`},
		{"/dripRate", "yes or no", "drip rate with its unit", ""},
		{"/packedLength", "above what is allowed", "3 mm (0.1181 in) to 600 mm (23.62 in)", ""},
		{"/shaftDiameter", "32 m is above", "10 mm (0.3937 in) to 200 mm (7.874 in)", `"32 mm"`},
		{"/shaftSped", "not a name known here", "shaftDiameter", `"shaftSpeed"`},
		{"/waterTemperature", "mass", "", ""},
	}
	if len(list) != len(want) {
		t.Fatalf("got %d problems, want %d:\n%v", len(list), len(want), list)
	}
	for i, w := range want {
		p := list[i]
		if p.Where != w.where || !strings.Contains(p.What, w.what) || !strings.Contains(p.Allowed, w.allowed) || !strings.Contains(p.Hint, w.hint) {
			t.Errorf("want %+v, got %+v", w, p)
		}
	}
	if p := list[1]; p.Bare != "drips/s" || !strings.Contains(p.String(), "; allowed: a drip rate with its unit, or a bare number in drips/s") {
		t.Errorf("in what a bare number is read is not told: %+v", p)
	}
}

func TestProblemsInsideAList(t *testing.T) {
	list := checked(t, "coupling-alignment", `{"couplingKind": "rigit", "readings": [
		{"clock": "90°", "gap": "0.4 kg"}, {"clock": "180°"}]}`)
	var places []string
	for _, p := range list {
		places = append(places, p.Where)
	}
	got := strings.Join(places, " ")
	if got != "/couplingKind /readings /readings/0/gap /readings/1/gap" {
		t.Errorf("got places %s", got)
	}
	if !strings.Contains(list[0].Hint, `"rigid"`) {
		t.Errorf("no did-you-mean: %+v", list[0])
	}
}

func TestOrderOfProblemsIsFixed(t *testing.T) {
	const input = `{"a": 1, "b": 2, "c": 3, "shaftDiameter": 9, "boxBore": 9}`
	first := checked(t, "gland-heat", input).String()
	for range 20 {
		if again := checked(t, "gland-heat", input).String(); again != first {
			t.Fatalf("the same input gave\n%s\nand\n%s", first, again)
		}
	}
}

func TestABoundIsAllowedInEveryUnit(t *testing.T) {
	for _, v := range []string{`"200 mm"`, `0.2`, `"20 cm"`, `"10 mm"`, `0.01`} {
		for _, p := range checked(t, "gland-heat", `{"shaftDiameter": `+v+`}`) {
			t.Errorf("%s: %v", v, p)
		}
	}
	if len(checked(t, "gland-heat", `{"shaftDiameter": "200.001 mm"}`)) == 0 {
		t.Error("200.001 mm was let through")
	}
}

func TestClosest(t *testing.T) {
	names := []string{"shaftDiameter", "boxBore", "packing"}
	if best, ok := problem.Closest("shaftdiametre", names); !ok || best != "shaftDiameter" {
		t.Errorf("got %q", best)
	}
	if best, ok := problem.Closest("propeller", names); ok {
		t.Errorf("propeller is near nothing, got %q", best)
	}
}

func TestFormulaIsCutAtItsSymbols(t *testing.T) {
	c, err := OpenCalculation("bolt-preload")
	if err != nil {
		t.Fatal(err)
	}
	filled := string(c.Formulas.AppendFilled(nil, c.Result.Child("shortTorque"), func(p *Property, _ bool) string { return "<" + p.Name + ">" }))
	if filled != "T_S = <nutFactor> · <preload> · <nominalDiameter>" {
		t.Errorf("got %q", filled)
	}
}

// A constant stands with its unit, and a temperature that is divided by a kelvin is
// counted from absolute zero.
func TestConstantsHaveUnits(t *testing.T) {
	for _, c := range []struct{ calculation, result, formula, filled string }{
		{"backlash", "playGrowthPerThousand", "g_t = g_b·1000 h/t", "g_t = <playGrowth>·1000 h/<runningTime>"},
		{"fluid-settling", "warmViscosity", "ν_w = (10^(10^(A - B·log10(θ_w/1 K))) - 0.7)·1 mm²/s", "ν_w = (10^(10^(<interceptA> - <slopeB>·log10(K of <runningTemperature>/1 K))) - 0.7)·1 mm²/s"},
	} {
		k, err := OpenCalculation(c.calculation)
		if err != nil {
			t.Fatal(err)
		}
		p := k.Result.Child(c.result)
		if got := AsPrinted(p.Formula); got != c.formula {
			t.Errorf("%s: %s", c.result, got)
		}
		got := string(k.Formulas.AppendFilled(nil, p, func(of *Property, absolute bool) string {
			if absolute {
				return "K of <" + of.Name + ">"
			}
			return "<" + of.Name + ">"
		}))
		if got != c.filled {
			t.Errorf("%s: %s", c.result, got)
		}
	}
}

// A power is of number and unit together (SI Brochure, 9th edition, 5.4.1).
func TestAPowerIsOfTheWholeQuantity(t *testing.T) {
	c, err := OpenCalculation("shaft-strength")
	if err != nil {
		t.Fatal(err)
	}
	filled := string(c.Formulas.AppendFilled(nil, c.Result.Child("torsionStress"), func(p *Property, _ bool) string {
		if p.Name == "diameterUsed" {
			return "30 mm"
		}
		return ""
	}))
	if filled != "τ = 16·0·30 mm/(π·((30 mm)^4 - 0^4))" {
		t.Errorf("got %q", filled)
	}
}

// A text is told its length and what is allowed in words, on both sides of its
// limits.
func TestLengthsOfTextsAreToldInWords(t *testing.T) {
	d := openBoat(t)
	for _, c := range []struct {
		name          string
		length        int
		what, allowed string
	}{
		{"note", 2000, "", ""},
		{"note", 2001, "has 2001 characters", "at most 2000"},
		{"name", 0, "has 0 characters", "at least 1"},
		{"name", 1, "", ""},
		{"name", 80, "", ""},
		{"name", 81, "has 81 characters", "at most 80"},
	} {
		boat := map[string]any{"format": json.Number("1"), "name": "Wren"}
		boat[c.name] = strings.Repeat("é", c.length)
		problems := d.Check(boat)
		switch {
		case c.what == "":
			if len(problems) > 0 {
				t.Errorf("%s of %d characters: %v", c.name, c.length, problems)
			}
		case len(problems) != 1 || !strings.Contains(problems[0].What, c.what) || problems[0].Allowed != c.allowed:
			t.Errorf("%s of %d characters: %v", c.name, c.length, problems)
		}
	}
}

// A text of the wrong form is told in words, and not by the expression that it
// fails.
func TestWrongFormsAreToldInWords(t *testing.T) {
	for today, says := range map[string]string{"nodate": `Today: "nodate" is no date; allowed: year-month-day`, "2026-02-30": `"2026-02-30" is no date`, "2026-06-01T10:20:00Z": `write "2026-06-01"; a time of day`, "": `"" is no date`} {
		list := checked(t, "work-plan", `{"today": "`+today+`"}`)
		if len(list) == 0 || !strings.Contains(list[0].String(), says) {
			t.Errorf("%q: %v", today, list)
		}
	}
}
