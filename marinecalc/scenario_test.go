package marinecalc_test

import (
	"slices"
	"strings"
	"testing"

	"example.org/driveline/marinecalc/internal/catalogue"
	"example.org/driveline/marinecalc/internal/diagnosis"
	"example.org/driveline/marinecalc/internal/survey"
	"example.org/driveline/marinecalc/sheet"

	"example.org/driveline/marinecalc"
	"example.org/driveline/marinecalc/internal/testboat"
)

// story is what one demo boat's file tells, from the first symptom to the
// proven repair.
type story struct {
	boat     string
	states   []string // the five days with a full set of readings
	troubled string   // the day of which the symptoms are
	cause    string   // that the fault finding puts first then
	limits   []turn
	moved    []string // calculation/result
	buys     []string // parts on the list of things to buy, by their titles
	remedies int
	outlook  string // of the reading that is followed, on the last day
}

// turn is one limit with its words on the troubled and on the last day.
type turn struct{ calculation, limit, troubled, cured string }

var stories = []story{
	{
		boat:     "kittiwake",
		states:   []string{"2025-10-04", "2025-11-08", "2026-03-28", "2026-04-18", "2026-06-20"},
		troubled: "2025-10-04", cause: "coupling-misaligned",
		limits: []turn{
			{"coupling-alignment", "rigid-gap-per-diameter", "beyond", "within"},
			{"gland-heat", "gland-rise-measured", "beyond", "within"},
			{"vibration-source", "vibration-long-running", "beyond", "within"},
			{"vibration-source", "vibration-damage", "beyond", "within"},
			{"shaft-strength", "shaft-yacht-rule", "beyond", "beyond"}, // a trouble of its own, that no aligning mends
		},
		moved:    []string{"coupling-alignment/gapPerDiameter", "gland-heat/measuredRise", "coupling-alignment/offset"},
		buys:     []string{"Coupling bolts", "Gland packing"},
		remedies: 4, outlook: "never reaches the limit",
	},
	{
		boat:     "juniper",
		states:   []string{"2025-04-19", "2025-10-11", "2026-02-14", "2026-04-18", "2026-10-10"},
		troubled: "2025-10-11", cause: "bearing-worn",
		limits: []turn{
			{"bearing-clearance", "worn-limit", "beyond", "within"},
			{"coupling-alignment", "speed-bands-acceptable-gap-1250", "beyond", "within"},
			{"coupling-alignment", "speed-bands-acceptable-offset-1250", "cannot tell", "within"},
			{"gland-heat", "gland-rise-measured", "within", "within"},
			{"fluid-cleanliness", "clean-6", "beyond", "within"},
			{"vibration-source", "vibration-growth", "beyond", "within"},
		},
		moved:    []string{"bearing-clearance/clearanceUse", "gland-drip/leakUnderWay", "gland-heat/measuredRise"},
		buys:     []string{"Stern bearing", "Gland packing", "Gearbox fluid"},
		remedies: 2, outlook: "toward the limit",
	},
}

// tell runs a test for each demo boat.
func tell(t *testing.T, test func(t *testing.T, s story, b *marinecalc.Boat)) {
	for _, s := range stories {
		t.Run(s.boat, func(t *testing.T) { test(t, s, testboat.Demo(t, s.boat)) })
	}
}

func (s *story) last() string { return s.states[len(s.states)-1] }

// No state of a demo boat has a fault, each full one has a note, and on the
// last day nothing is missing.
func TestDemoBoatsAreWhole(t *testing.T) {
	alone(t)
	tell(t, func(t *testing.T, s story, b *marinecalc.Boat) {
		for _, day := range b.Dates() {
			survey := testboat.CheckOn(t, b, day)
			if len(survey.Faults) > 0 {
				t.Errorf("%s: %+v", day, survey.Faults)
			}
			var lacking []string
			for _, m := range survey.Missing {
				if m.Calculation != "thread-engagement" { // their coupling bolts have nuts
					lacking = append(lacking, m.Calculation)
				}
			}
			if day == s.last() && (lacking != nil || len(survey.Sheets) != len(catalogue.Calculations)-1) {
				t.Errorf("%s: %d sheets of %d, missing %+v", day, len(survey.Sheets), len(catalogue.Calculations), survey.Missing)
			}
			if _, _, noted, _ := b.AsOf(day).Find("/readings/latest/note"); slices.Contains(s.states, day) && noted != day {
				t.Errorf("%s has no note", day)
			}
		}
	})
}

// What was wrong is seen on the troubled day and cured on the last.
func TestDemoBoatsAreCured(t *testing.T) {
	alone(t)
	tell(t, func(t *testing.T, s story, b *marinecalc.Boat) {
		before, after := testboat.CheckOn(t, b, s.troubled), testboat.CheckOn(t, b, s.last())
		for _, j := range s.limits {
			was, is := testboat.Page(t, before, j.calculation).Verdict(j.limit), testboat.Page(t, after, j.calculation).Verdict(j.limit)
			if was == nil || is == nil || string(was.Word.Plain()) != j.troubled || string(is.Word.Plain()) != j.cured {
				t.Errorf("%s: %+v, then %+v; want %s, then %s", j.limit, was, is, j.troubled, j.cured)
			}
		}
	})
}

// The fault finding names the story's cause on the troubled day; on the last
// one nothing points anywhere and nothing is planned.
func TestDemoBoatsFindTheirCause(t *testing.T) {
	alone(t)
	tell(t, func(t *testing.T, s story, b *marinecalc.Boat) {
		was := testboat.Page(t, testboat.CheckOn(t, b, s.troubled), diagnosis.FaultFinding)
		is := testboat.Page(t, testboat.CheckOn(t, b, s.last()), diagnosis.FaultFinding)
		if was.Result("cause").Text != s.cause || was.Result("known").Text != "found" || was.Result("cannotPart") != nil {
			t.Errorf("%s %s, %+v", was.Result("cause").Text, was.Result("known").Text, was.Result("cannotPart"))
		}
		if is.Result("cause") != nil || is.Result("leadingCause").Text != diagnosis.NothingPoints || is.Result("probability") != nil {
			t.Errorf("on the cured boat still %+v", is.Result("leadingCause"))
		}
		if planned := testboat.Page(t, testboat.CheckOn(t, b, s.last()), "work-plan").Result("planned").Text; planned != "no work is chosen" {
			t.Errorf("on the cured boat is planned: %s", planned)
		}
	})
}

// Side by side the two states show what moved by more than the gauges
// explain, and every verdict that turned.
func TestDemoBoatsCompare(t *testing.T) {
	alone(t)
	tell(t, func(t *testing.T, s story, b *marinecalc.Boat) {
		c, err := marinecalc.Compare(b, s.troubled, s.last(), marinecalc.Options{})
		if err != nil {
			t.Fatal(err)
		}
		for _, name := range s.moved {
			at := slices.IndexFunc(c.Moved, func(m survey.Moved) bool { return m.Calculation+"/"+m.Result == name })
			if at < 0 || c.Moved[at].Times <= 1 {
				t.Errorf("%s has not moved", name)
			}
		}
		for _, j := range s.limits {
			turned := slices.ContainsFunc(c.Turned, func(v survey.Turned) bool {
				return v.Calculation == j.calculation && string(v.Before.Plain()) == j.troubled && string(v.After.Plain()) == j.cured
			})
			if turned != (j.troubled != j.cured) {
				t.Errorf("%s turned: %v", j.limit, turned)
			}
		}
	})
}

// The reading that is followed has a run of five on the last day, which stays
// clear of its limit.
func TestDemoBoatsAreFollowed(t *testing.T) {
	alone(t)
	tell(t, func(t *testing.T, s story, b *marinecalc.Boat) {
		trend := testboat.Page(t, testboat.CheckOn(t, b, s.last()), "reading-trend")
		if basis := trend.Result("basis").Text; !strings.HasPrefix(basis, "5 readings since 2026-04-18") {
			t.Error(basis)
		}
		if outlook := trend.Result("outlook").Text; outlook != s.outlook || len(trend.Drawings) == 0 {
			t.Errorf("%s, %d drawings", outlook, len(trend.Drawings))
		}
		if day := trend.Result("limitDate"); day != nil && day.Text < "2030" {
			t.Errorf("the limit is met on %s", day.Text)
		}
	})
}

// In the summer before, three readings of the worn bearing's clearance give no
// date; in autumn the newest is over its limit.
func TestJunipersBearingComesToItsLimit(t *testing.T) {
	alone(t)
	on := func(day string) *sheet.Sheet {
		return testboat.Page(t, testboat.CheckOn(t, testboat.Demo(t, "juniper"), day), "reading-trend")
	}
	summer := on("2025-08-16")
	if v := summer.Verdict("trend-horizon"); summer.Result("limitDate") != nil || v.Word != sheet.NotMeasured {
		t.Errorf("%s, %+v", summer.Result("says").Text, v)
	}
	if v := on("2025-10-11").Verdict("trend-not-reached"); v.Word != sheet.Beyond {
		t.Errorf("%+v", v)
	}
}

// On the troubled day the work has dates up to the day it is wanted, a
// critical path, and its parts with their sizes.
func TestDemoBoatsPlanTheirWork(t *testing.T) {
	alone(t)
	tell(t, func(t *testing.T, s story, b *marinecalc.Boat) {
		plan := testboat.Page(t, testboat.CheckOn(t, b, s.troubled), "work-plan")
		if finish, want := plan.Result("finish").Text, plan.Input("readyBy").Text; finish <= s.troubled || finish > want {
			t.Errorf("done on %s, wanted on %s", finish, want)
		}
		if path := plan.Result("criticalPath"); path == nil || !strings.HasSuffix(path.Text, "→ Trial under way") {
			t.Errorf("the critical path is %+v", path)
		}
		if planned := plan.Result("planned").Text; strings.Count(planned, ";")+1 != s.remedies {
			t.Error(planned)
		}
		for _, part := range s.buys {
			if line := shoppingLine(t, plan, part); line == nil || strings.Contains(line["amount"], "not known") {
				t.Errorf("to buy, %s: %v", part, line)
			}
		}
	})
}

// shoppingLine is the line of one part by the names of its columns, or nil.
func shoppingLine(t *testing.T, plan *sheet.Sheet, part string) map[string]string {
	t.Helper()
	for _, table := range plan.Tables {
		if table.Name != "shopping" {
			continue
		}
		for _, row := range table.Rows {
			line := map[string]string{}
			for i, cell := range row.Cells {
				line[table.Columns[i].Name] = cell.Text
			}
			if strings.HasPrefix(line["part"], part) {
				return line
			}
		}
	}
	return nil
}

// What the maker says of a result goes on to the sheets that rest on it, and
// into the passes at the step that closes the coupling: Juniper's wrench
// setting is the maker's, and not the one that is calculated.
func TestMakersFigureIsHandedOn(t *testing.T) {
	s := testboat.Check(t, testboat.Demo(t, "juniper"), marinecalc.Options{NoRanges: true})
	setting := testboat.Page(t, s, "bolt-preload").Result("wrenchSetting")
	if setting == nil || setting.Maker == nil || setting.Maker.Text == setting.Text {
		t.Fatalf("%+v", setting)
	}
	in := testboat.Page(t, s, "bolt-fit").Input("wrenchSetting")
	if in == nil || in.Origin != sheet.MakersFigure || in.SI == nil || *in.SI != setting.Maker.SI {
		t.Errorf("%+v, want %s", in, setting.Maker.Text)
	}
}
