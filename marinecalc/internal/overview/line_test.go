package overview

import (
	"context"
	"encoding/xml"
	"os"
	"slices"
	"strings"
	"testing"

	"example.org/driveline/marinecalc/internal/boat"
	"example.org/driveline/marinecalc/internal/calc"
	"example.org/driveline/marinecalc/internal/drawing"
	"example.org/driveline/marinecalc/internal/drawing/wholeline"
	"example.org/driveline/marinecalc/internal/survey"
)

const today = "2026-11-27"

func readBoat(t *testing.T, text string) *boat.Boat {
	t.Helper()
	if file := "../../../testdata/boats/" + text + ".json"; !strings.HasPrefix(text, "{") {
		raw, err := os.ReadFile(file)
		if err != nil {
			t.Fatal(err)
		}
		text = string(raw)
	}
	b, err := boat.Read([]byte(text))
	if err != nil {
		t.Fatal(err)
	}
	return b
}

// A part by itself stands as the whole survey has it, but for what the fault
// finding found.
func TestPartsStandAsInTheSurvey(t *testing.T) {
	for _, name := range []string{"kittiwake", "juniper"} {
		b := readBoat(t, name)
		o := calc.Options{Trials: 256}
		s, err := survey.Check(context.Background(), b, o)
		if err != nil {
			t.Fatal(err)
		}
		all, err := Parts(context.Background(), b, o)
		if err != nil {
			t.Fatal(err)
		}
		if !slices.Equal(all.Parts, s.Parts) || all.Still != s.Still {
			t.Errorf("%s: parts %v, in the survey %v; still %q, in the survey %q", name, all.Parts, s.Parts, all.Still, s.Still)
		}
		told := 0
		for _, p := range s.Parts {
			v, err := PartOf(context.Background(), b, o, p.Part, today)
			if err != nil {
				t.Fatal(err)
			}
			if v.State != p && p.Reads != "fault found" && p.Reads != "seen" {
				t.Errorf("%s: by itself %v, in the survey %v", name, v.State, p)
			}
			told += len(v.Findings)
			if len(v.Sheets) == 0 || len(v.Work) == 0 {
				t.Errorf("%s: %s has %d calculations and %d pieces of work", name, p.Part, len(v.Sheets), len(v.Work))
			}
		}
		if told < 30 {
			t.Errorf("%s: only %d verdicts stand with the parts", name, told)
		}
	}
	if _, err := PartOf(context.Background(), nil, calc.Options{}, "keel", today); err == nil || !strings.Contains(err.Error(), "propeller") {
		t.Errorf("a part that there is not: %v", err)
	}
}

// What was found at fault marks its part, and nothing is OK for want of a
// reading.
func TestFoundMarksItsPart(t *testing.T) {
	b := readBoat(t, `{"name": "Tern", "symptoms": [{"evidence": "blade-seen", "answer": "yes"}]}`)
	all, err := Parts(context.Background(), b, calc.Options{Trials: 256})
	if err != nil {
		t.Fatal(err)
	}
	for _, p := range all.Parts {
		switch {
		case p.Part == "propeller" && (p.Word != "beyond" || p.Short != "fault"):
			t.Errorf("a bent blade was seen, and the propeller is %v", p)
		case p.Part != "propeller" && (p.Word != "not measured" || p.Short != "no data"):
			t.Errorf("of %s nothing is known, and it is %v", p.Part, p)
		}
	}
}

// The drawing has a group for each part and is well formed, whatever is known.
func TestEveryPartIsDrawn(t *testing.T) {
	for _, b := range []*boat.Boat{nil, readBoat(t, "kittiwake"), readBoat(t, "juniper"), readBoat(t, `{"name": "Long", "shaft": {"inboard": "9 m", "diameter": "60 mm"}, "propeller": {"blades": 5}}`)} {
		l, err := Of(context.Background(), b, calc.Options{}, today)
		if err != nil {
			t.Fatal(err)
		}
		var any struct{}
		if err := xml.Unmarshal([]byte(l.Drawing.SVG), &any); err != nil {
			t.Error(err)
		}
		var ids []string
		for _, p := range l.Parts {
			ids = append(ids, p.ID)
			if !strings.Contains(l.Drawing.SVG, `id="part-`+p.ID+`"`) || p.Known > p.Asked || p.Asked == 0 {
				t.Errorf("%s is not drawn, or %d of %d known", p.ID, p.Known, p.Asked)
			}
		}
		if !slices.Equal(ids, wholeline.LineParts) {
			t.Errorf("the table has the parts %v, the drawing %v", ids, wholeline.LineParts)
		}
		if (b == nil) != (len(l.Due) == 0) {
			t.Errorf("%s: due %v", b.Name(), l.Due)
		}
	}
}

func TestAges(t *testing.T) {
	for read, want := range map[string]Newest{
		"":           {Age: "never", Ago: "never", Brief: "never", Fresh: FreshNever},
		"2026-11-27": {Age: "today", Ago: "today", Brief: "today", Fresh: FreshNow}, "2026-11-28": {Age: "today", Ago: "today", Brief: "today", Fresh: FreshNow},
		"2026-11-26": {Age: "1 day", Ago: "1 day ago", Brief: "1 d", Fresh: FreshNow}, "2026-11-14": {Age: "13 days", Ago: "13 days ago", Brief: "13 d", Fresh: FreshNow},
		"2026-11-13": {Age: "2 weeks", Ago: "2 weeks ago", Brief: "2 wk", Fresh: FreshNow}, "2026-11-12": {Age: "2 weeks", Ago: "2 weeks ago", Brief: "2 wk", Fresh: FreshSeason},
		"2026-05-28": {Age: "6 months", Ago: "6 months ago", Brief: "6 mo", Fresh: FreshSeason}, "2026-05-27": {Age: "6 months", Ago: "6 months ago", Brief: "6 mo", Fresh: FreshOld},
		"2020-01-01": {Age: "6 years", Ago: "6 years ago", Brief: "6 y", Fresh: FreshOld},
	} {
		want.Read = read
		if got := newest(read, today); got != want {
			t.Errorf("%s: %+v, want %+v", read, got, want)
		}
	}
}

// The newest of a series is the newest of the boat, its chart has every
// extreme, and a boat of thousands of readings has a small one.
func TestCharts(t *testing.T) {
	for _, c := range Charts(readBoat(t, "kittiwake"), calc.Options{}, today) {
		if (c.Chart == "") == (c.Readings > 1) {
			t.Errorf("%s: %d readings, chart %.40s", c.Reading, c.Readings, c.Chart)
		}
	}
	days, values := make([]float64, 5000), make([]float64, 5000)
	for i := range days {
		days[i] = float64(i)
	}
	values[2345] = 7
	svg := drawing.Spark(days, values, "Drips", "")
	if len(svg) > 3000 || !strings.Contains(svg, ",4 ") { // the top of the chart
		t.Errorf("%d bytes, or the one reading above the others is not in it", len(svg))
	}
	for _, name := range Daily(calc.Options{}) {
		if _, ok := readBoat(t, "kittiwake").Describe(name); !ok {
			t.Errorf("daily: the boat has no reading %s", name)
		}
	}
}
