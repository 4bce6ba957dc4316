package workplan_test

import (
	"fmt"
	"slices"
	"strings"
	"testing"

	"example.org/driveline/marinecalc"
	"example.org/driveline/marinecalc/internal/testboat"
	"example.org/driveline/marinecalc/rules"
)

// sickGearbox is a boat whose gearbox bearing was found worn behind mounts that
// were found settled.
const sickGearbox = `{"name": "Test", "engine": {"hoursPerSeason": "100 h"}, "fluid": {"volume": "2.2 L", "leftVolume": "0.7 L"},
	"symptoms": [{"evidence": "gearbox-whine", "answer": "yes"}, {"evidence": "output-flange-play", "answer": "yes"}, {"evidence": "mount-rubber", "answer": "yes"}, {"evidence": "fluid-metal", "answer": "yes"}],
	"prices": {"yardHour": "85 EUR", "ownHour": "20 EUR", "dayOfUse": "120 EUR"}, "choice": {%s}, "work": {%s},
	"mounts": [{"name": "a", "forward": "700 mm", "starboard": "-200 mm"}, {"name": "b", "forward": "700 mm", "starboard": "200 mm"}, {"name": "c", "forward": "400 mm", "starboard": "-200 mm"}, {"name": "d", "forward": "400 mm", "starboard": "200 mm"}, {"name": "e", "forward": "150 mm", "starboard": "-200 mm"}, {"name": "f", "forward": "150 mm", "starboard": "200 mm"}]}`

const dearRepair = `"seasons": 8, "repairParts": "900 EUR", "replaceParts": "1100 EUR", "repairYardTime": "6 h", "replaceYardTime": "2 h", "failureCost": "900 EUR", "failureDays": "10 days"`

func sick(t *testing.T, choice, work string) *marinecalc.Boat {
	t.Helper()
	return testboat.Read(t, fmt.Sprintf(sickGearbox, choice, work))
}

func works(s *marinecalc.Sheet) []string {
	var list []string
	if table := s.Table("work"); table != nil {
		for _, r := range table.Rows {
			list = append(list, table.Reader(r)("work"))
		}
	}
	return list
}

// Bolts that worked, with red dust to show for it, are changed; bolts that are
// only loose are tightened (remedies.json, onceSeen).
func TestFrettedBoltsAreChanged(t *testing.T) {
	for dust, want := range map[string]string{"yes": "Change the coupling bolts", "no": "Tighten the coupling bolts"} {
		b := testboat.Read(t, `{"name":"Tern","symptoms":[{"evidence":"coupling-bolt-turns","answer":"yes"},{"evidence":"red-dust","answer":"`+dust+`"}]}`)
		if got := works(testboat.Run(t, "work-plan", `{"today":"2026-03-02"}`, marinecalc.Options{Boat: b, NoRanges: true})); !slices.Equal(got, []string{want}) {
			t.Errorf("red dust %s: %q, want %q", dust, got, want)
		}
	}
}

// The plan takes what was decided: typed work, then the decision, then what
// clearly costs least, then the first cure; and cures what killed the part first.
func TestDecisionAndPlanAreOneChoice(t *testing.T) {
	const overhaul, change, mounts, align = "Have the gearbox overhauled", "Change the gearbox", "Change the engine mounts", "Bring the coupling into line"
	leave := dearRepair + `, "decided": "leave"`
	for _, c := range []struct {
		name, choice, work string
		want               []string
		takes              string
	}{
		{"what clearly costs least", dearRepair, "", []string{mounts, change, align}, change},
		{"decided against the money", dearRepair + `, "decided": "repair"`, "", []string{mounts, overhaul, align}, overhaul},
		{"decided without prices", `"decided": "replace", "replaceWork": "replace-gearbox"`, "", []string{mounts, change, align}, ""},
		{"too close to tell", `"seasons": 1, "repairParts": "1000 EUR", "replaceParts": "1220 EUR", "repairYardTime": "1 h", "replaceYardTime": "1 h"`, "", []string{mounts, overhaul, align}, "first cure"},
		{"left as it is", leave, "", []string{mounts, align}, "no work on it"},
		{"typed work", dearRepair, `"remedies": [{"remedy": "overhaul-gearbox"}]`, []string{overhaul}, overhaul},
		{"no work at all", dearRepair, `"remedies": []`, nil, "empty"},
	} {
		b := sick(t, c.choice, c.work)
		o := marinecalc.Options{Boat: b, NoRanges: true}
		s := testboat.Run(t, "work-plan", `{"today": "2026-03-02"}`, o)
		if got := works(s); !slices.Equal(got, c.want) {
			t.Errorf("%s: planned %q, want %q", c.name, got, c.want)
		}
		if c.takes == "" {
			continue
		}
		if got := testboat.Run(t, "repair-or-replace", `{}`, o).Result("takes").Text; !strings.Contains(got, c.takes) {
			t.Errorf("%s: the decision says that the plan takes %q, want %q", c.name, got, c.takes)
		}
	}
	s := testboat.Run(t, "work-plan", `{"today": "2026-03-02"}`, marinecalc.Options{Boat: sick(t, leave, ""), NoRanges: true})
	if text := s.Result("trouble").Text; !strings.Contains(text, "is left as it is") {
		t.Errorf("what is left is not said: %q", text)
	}
}

// A step that the cures of several causes share is done once.
func TestTheWholeCureOrderIsPlanned(t *testing.T) {
	b := sick(t, dearRepair, "")
	s := testboat.Run(t, "work-plan", `{"today": "2026-03-02"}`, marinecalc.Options{Boat: b, NoRanges: true})
	fault := testboat.Run(t, "fault-finding", `{}`, marinecalc.Options{Boat: b, NoRanges: true})
	order := fault.Table("cureOrder")
	if order == nil || len(order.Rows) < 2 {
		t.Fatalf("the fault finding says: %+v", order)
	}
	because := testboat.Column(t, s, "work", "because", "work")
	for _, r := range order.Rows {
		name := order.Reader(r)("name")
		if !slices.ContainsFunc(slicesOf(because), func(text string) bool { return strings.Contains(text, name) }) {
			t.Errorf("%s is to be cured and is not planned: %v", name, because)
		}
	}
	seen := map[string]int{}
	for _, r := range s.Table("schedule").Rows {
		seen[r.Cells[0].Text]++
	}
	for step, n := range seen {
		if n > 1 {
			t.Errorf("%s stands in the plan %d times", step, n)
		}
	}
}

func slicesOf(m map[string]string) (keys []string) {
	for k := range m {
		keys = append(keys, k)
	}
	return keys
}

// In no survey do decision and plan contradict: what the decision takes is
// planned, and what it does not take is not.
func TestSurveysAgreeWithThemselves(t *testing.T) {
	title := map[string]string{}
	for _, r := range rules.Standard().Remedies().All() {
		title[r.ID] = r.Title
	}
	boats := map[string]*marinecalc.Boat{"kittiwake": testboat.Demo(t, "kittiwake"), "juniper": testboat.Demo(t, "juniper")}
	for _, decided := range []string{"", "repair", "replace", "leave"} {
		for _, seasons := range []int{1, 3, 8} {
			choice := strings.Replace(dearRepair, `"seasons": 8`, fmt.Sprintf(`"seasons": %d`, seasons), 1)
			if decided != "" {
				choice += fmt.Sprintf(`, "decided": %q`, decided)
			}
			boats[fmt.Sprintf("gearbox, %s, %d seasons", decided, seasons)] = sick(t, choice, "")
		}
	}
	agreed := 0
	for name, b := range boats {
		o := marinecalc.Options{Boat: b, NoRanges: true}
		choice := testboat.Run(t, "repair-or-replace", `{}`, o)
		plan := testboat.Run(t, "work-plan", `{"today": "2026-11-01"}`, o)
		code := func(result string) string {
			if r := choice.Result(result); r != nil {
				return r.Text
			}
			return ""
		}
		has := func(id string) bool { return id != "" && slices.Contains(works(plan), title[id]) }
		switch repairs, replaces := has(code("repairs")), has(code("replaces")); code("taken") {
		case "repair":
			if agreed++; !repairs || replaces {
				t.Errorf("%s: decided to repair, planned %q", name, works(plan))
			}
		case "replace":
			if agreed++; repairs || !replaces {
				t.Errorf("%s: decided to replace, planned %q", name, works(plan))
			}
		case "leave":
			if agreed++; repairs || replaces {
				t.Errorf("%s: decided to leave it, planned %q", name, works(plan))
			}
		}
	}
	if agreed < 8 {
		t.Fatalf("only %d surveys decide anything", agreed)
	}
}

// Whatever the fault finding puts into its order of cure is planned or is named
// with why not. Where mounts or gearbox were out the coupling is set anyway, so
// its suspicion is planned; where bolts alone are changed it is read, not set.
func TestNothingOfTheCureOrderIsPassedOver(t *testing.T) {
	for _, one := range []struct {
		yes        string
		suspected  bool // that the coupling is misaligned
		alignsToo  bool
		leavesSome bool // suspicions to be looked for first
	}{
		{"gearbox-whine output-flange-play mount-rubber fluid-metal", true, true, false},
		{"gearbox-whine output-flange-play fluid-metal shake-grows", true, true, true},
		{"coupling-bolt-turns red-dust shake-grows", true, false, true},
		{"mount-rubber shake-grows", false, false, false},
	} {
		var answers []string
		for _, id := range strings.Fields(one.yes) {
			answers = append(answers, `{"evidence":"`+id+`","answer":"yes"}`)
		}
		b := testboat.Read(t, `{"name":"Tern","readings":[{"date":"2026-05-01","symptoms":[`+strings.Join(answers, ",")+`]}]}`)
		o := marinecalc.Options{Boat: b, NoRanges: true}
		order := testboat.Run(t, "fault-finding", `{}`, o).Table("cureOrder")
		plan := testboat.Run(t, "work-plan", `{"today":"2026-05-02"}`, o)
		left := plan.Result("suspected")
		told := strings.Join(slicesOf(testboat.Column(t, plan, "work", "because", "work")), "; ")
		if left != nil {
			told += " " + left.Text
		}
		suspected := false
		for _, r := range order.Rows {
			at := order.Reader(r)
			suspected = suspected || at("cause") == "coupling-misaligned" && at("known") != "found"
			if !strings.Contains(told, at("name")) {
				t.Errorf("%s: %s (%s) is passed over: %s", one.yes, at("name"), at("known"), told)
			}
		}
		if suspected != one.suspected || slices.Contains(works(plan), "Bring the coupling into line") != one.alignsToo || (left != nil) != one.leavesSome {
			t.Errorf("%s: suspected %t, planned %q, left %+v", one.yes, suspected, works(plan), left)
		}
	}
}

// Bolts that are only suspected, but likelier loose than not, are changed as well
// once red dust was seen.
func TestDustDecidesBeforeTheBoltsAreFound(t *testing.T) {
	for dust, want := range map[string]string{"yes": "Change the coupling bolts", "no": "nothing yet: what is suspected is looked for first"} {
		symptoms := `{"evidence":"red-dust","answer":"` + dust + `"}`
		for _, id := range []string{"knock-into-gear", "gone-in-neutral", "after-work", "grip-calculated"} {
			symptoms += `,{"evidence":"` + id + `","answer":"yes"}`
		}
		for _, id := range []string{"play-on-turning", "key-seen", "clatter-at-idle"} {
			symptoms += `,{"evidence":"` + id + `","answer":"no"}`
		}
		s := testboat.RunOn(t, `{"name":"Tern","readings":[{"date":"2026-05-01","symptoms":[`+symptoms+`]}]}`, "work-plan", `{}`)
		if r := s.Result("planned"); r == nil || r.Text != want {
			t.Errorf("dust %s: %+v", dust, r)
		}
	}
}

// A list of work goes before what was found and decided, and the plan says what it
// leaves out; not what something on the list cures, and no suspicion.
func TestAListOfWorkSaysWhatItLeavesOut(t *testing.T) {
	const list = `"remedies": [%s]`
	for _, c := range []struct {
		name, choice, work string
		says               []string
	}{
		{"an empty list, and what was found", dearRepair, fmt.Sprintf(list, ""), []string{"“Change the engine mounts”", "“Have the gearbox overhauled”"}},
		{"an empty list, and a decision", dearRepair + `, "decided": "replace"`, fmt.Sprintf(list, ""), []string{"“Change the gearbox” is not on the list of work, which goes before what was found and decided (Gearbox bearing worn: decided)"}},
		{"one of them is on it", dearRepair, fmt.Sprintf(list, `{"remedy": "replace-mounts"}`), []string{"“Have the gearbox overhauled”"}},
		{"another cure is on it", dearRepair, fmt.Sprintf(list, `{"remedy": "replace-mounts"}, {"remedy": "overhaul-gearbox"}`), nil},
		{"no list", dearRepair, "", nil},
	} {
		s := testboat.Run(t, "work-plan", `{"today":"2026-03-02"}`, marinecalc.Options{Boat: sick(t, c.choice, c.work), NoRanges: true})
		told := ""
		if r := s.Result("trouble"); r != nil {
			told = r.Text
		}
		if n := strings.Count(told, "is not on the list of work"); n < len(c.says) || (c.says == nil) != (n == 0) {
			t.Errorf("%s: %s", c.name, told)
		}
		for _, say := range c.says {
			if !strings.Contains(told, say) {
				t.Errorf("%s: %q is not in %s", c.name, say, told)
			}
		}
	}
	b := testboat.Read(t, `{"name": "Tern", "work": {"remedies": []}, "choice": {"decided": "repair", "repairWork": "repack-gland", "replaceWork": "replace-shaft"}}`)
	if s := testboat.Run(t, "work-plan", `{"today":"2026-03-02"}`, marinecalc.Options{Boat: b, NoRanges: true}); s.Result("trouble") == nil || !strings.Contains(s.Result("trouble").Text, "(decided") {
		t.Errorf("a decision without a cause is not told: %v", s.Result("trouble"))
	}
	b = testboat.Read(t, `{"name": "Tern", "work": {"remedies": [{"remedy": "repack-gland"}]}, "readings": [{"date": "2026-02-01", "work": {"remedies": []}}],
		"choice": {"decided": "repair", "repairWork": "repack-gland", "replaceWork": "replace-shaft"}}`)
	if s := testboat.Run(t, "work-plan", `{"today":"2026-03-02"}`, marinecalc.Options{Boat: b, NoRanges: true}); s.Result("trouble") != nil {
		t.Errorf("a decision that was done is told: %s", s.Result("trouble").Text)
	}
}
