package workplan_test

import (
	"os"
	"strings"
	"testing"

	"example.org/driveline/marinecalc"
	"example.org/driveline/marinecalc/internal/testboat"
	"example.org/driveline/marinecalc/rules"
)

const readRunning = "Read her once more as she runs"

// planOf is the plan by the fault finding on what was noticed.
func planOf(t *testing.T, symptoms, more string) *marinecalc.Sheet {
	t.Helper()
	b := testboat.Read(t, `{"name": "Snipe", "lies": "afloat", "fluid": {"grade": "iso-vg-46", "volume": "1.1 L", "leftVolume": "0.2 L"}, "symptoms": [`+symptoms+`]}`)
	return testboat.Run(t, "work-plan", `{"today": "2026-03-02", "lies": "afloat"`+more+`}`, marinecalc.Options{Boat: b, NoRanges: true})
}

func hasStep(s *marinecalc.Sheet, title string) bool {
	for _, r := range s.Table("schedule").Rows {
		if r.Cells[0].Text == title {
			return true
		}
	}
	return false
}

func textOf(s *marinecalc.Sheet, name string) string {
	if r := s.Result(name); r != nil {
		return r.Text
	}
	return ""
}

// What the fault finding keeps still is not run for a reading as found.
func TestAShaftKeptStillIsNotReadRunning(t *testing.T) {
	const leak, grounded = `{"evidence": "output-seal-seen", "answer": "yes"}`, `{"evidence": "after-touching", "answer": "yes"}`
	for _, c := range []struct {
		symptoms, more string
		runs           bool
	}{
		{leak, "", true},
		{leak + ", " + grounded, "", false},
		{leak + ", " + grounded, `, "remedies": [{"remedy": "align-coupling"}]`, false},
		{leak, `, "remedies": [{"remedy": "align-coupling"}]`, true},
	} {
		s := planOf(t, c.symptoms, c.more)
		if got := hasStep(s, readRunning); got != c.runs {
			t.Errorf("%s%s: she is run: %v, want %v", c.symptoms, c.more, got, c.runs)
		}
		if told := strings.Contains(textOf(s, "trouble"), readRunning); told == c.runs {
			t.Errorf("%s%s: what is left out is told: %v", c.symptoms, c.more, told)
		}
		if !hasStep(s, "First start") {
			t.Error("the first start after the cure is left out too")
		}
	}
}

// Work for a suspicion is told to be one, and is not opened beside what was
// found; what was found is planned without a word of that.
func TestASuspicionIsNotTakenForAFinding(t *testing.T) {
	const clatter = `{"evidence": "clatter-at-idle", "answer": "yes"}, {"evidence": "knock-into-gear", "answer": "yes"}`
	s := planOf(t, clatter, "")
	if text := textOf(s, "suspected"); !strings.Contains(text, "Change the damper plate") || !strings.Contains(text, "suspected, ") || !strings.Contains(text, "order or open nothing") {
		t.Errorf("a suspicion: %q", text)
	}
	next := ""
	for _, a := range s.Next {
		next += a.Text
	}
	if strings.Contains(next, "Order what has the first date now") || !strings.Contains(next, "only suspected") {
		t.Errorf("parts are ordered on a suspicion: %s", next)
	}
	if text := textOf(planOf(t, clatter+`, {"evidence": "damper-seen", "answer": "yes"}`, ""), "suspected"); text != "" {
		t.Errorf("found, and told to be a suspicion: %q", text)
	}
	s = planOf(t, `{"evidence": "fluid-low", "answer": "yes"}, {"evidence": "fluid-leaks", "answer": "yes"}, {"evidence": "late-engage", "answer": "yes"}, {"evidence": "worse-warm", "answer": "yes"}`, "")
	if planned := textOf(s, "planned"); planned != "Find the leak and fill the gearbox" {
		t.Errorf("beside the low fluid that was found: %s", planned)
	}
	if text := textOf(s, "suspected"); !strings.Contains(text, "“Output seal leaks by itself” (suspected, ") || !strings.Contains(text, "look for it first") {
		t.Errorf("what may lie behind it: %q", text)
	}
}

// A litre to top up beside a sump to fill is two amounts of one fluid, and no
// step without a date stands before what it comes after.
func TestALitreBesideASump(t *testing.T) {
	s := planOf(t, "", `, "remedies": [{"remedy": "replace-output-seal"}, {"remedy": "fill-gearbox-fluid"}]`)
	amount := testboat.Column(t, s, "shopping", "part", "amount")["Gearbox fluid, as the maker names it"]
	// The sump and what is left for topping up stay under twice its 1.1 L, and 1 L more is for the leak.
	if litres := 1000 * testboat.Amount(t, amount, nil); litres < 1.9 || litres > 3.2 {
		t.Errorf("%s of fluid", amount)
	}
	s = planOf(t, "", `, "remedies": [{"remedy": "repair-propeller"}, {"remedy": "fill-gearbox-fluid"}]`)
	at := map[string]int{}
	for n, r := range s.Table("schedule").Rows {
		at[r.Cells[0].Text] = n
	}
	if at["Top the fluid up"] > at["First start"] || at["Pull the propeller"] > at["Fit the propeller"] {
		t.Errorf("out of order: %v", at)
	}
	if text := textOf(s, "trouble"); !strings.Contains(text, "after “Propeller to the workshop”)") && !strings.Contains(text, "Pull the propeller") {
		t.Errorf("why it has no date: %s", text)
	}
}

// A plan that leaves standing what keeps the shaft still says so.
func TestWorkThatLeavesTheShaftStillSaysSo(t *testing.T) {
	for work, left := range map[string]bool{"replace-damper-plate": false, "align-coupling": true} {
		s := planOf(t, `{"evidence": "damper-seen", "answer": "yes"}`, `, "remedies": [{"remedy": "`+work+`"}]`)
		if told := strings.Contains(textOf(s, "trouble"), "no first start and no trial"); told != left {
			t.Errorf("%s: %q", work, textOf(s, "trouble"))
		}
		stops := false
		for _, r := range s.Table("dangers").Rows {
			stops = stops || strings.HasPrefix(s.Table("dangers").Reader(r)("text"), "The shaft stays still")
		}
		if stops != left {
			t.Errorf("%s: the caution stands: %v", work, stops)
		}
	}
}

// The cautions in front of a plan are of the plan in hand: that the shaft stays
// still before all, nothing about an open line where none is opened, nothing at
// all where nothing is to be done.
func TestPlanCautionsAreOfThePlanInHand(t *testing.T) {
	for _, c := range []struct {
		symptoms, work string
		first          string
		open, none     bool
	}{
		{`{"evidence": "damper-seen", "answer": "yes"}`, `, "remedies": [{"remedy": "replace-damper-plate"}]`, "The shaft stays still", true, false},
		{`{"evidence": "damper-seen", "answer": "no"}`, `, "remedies": [{"remedy": "replace-damper-plate"}]`, "A plan is not a permit", true, false},
		{`{"evidence": "damper-seen", "answer": "no"}`, `, "remedies": [{"remedy": "set-fluid-level"}]`, "A plan is not a permit", true, false},
		{`{"evidence": "damper-seen", "answer": "no"}`, `, "remedies": []`, "", false, true},
	} {
		s := planOf(t, c.symptoms, c.work)
		switch {
		case c.none != (len(s.Cautions) == 0):
			t.Errorf("%s: %d cautions", c.work, len(s.Cautions))
		case !c.none && !strings.HasPrefix(s.Cautions[0].Text, c.first):
			t.Errorf("%s%s: %q is first", c.symptoms, c.work, s.Cautions[0].Text)
		}
		open := false
		for _, one := range s.Cautions {
			open = open || strings.HasPrefix(one.Text, "Afloat with the line open")
		}
		if open != c.open {
			t.Errorf("%s: an open line is warned of: %v", c.work, open)
		}
	}
}

// What runs the shaft is either on the calendar or forbidden, never both: where the
// chosen work cures what forbids power it has its day and the condition that this is
// put right and read again; where it does not it has no day, nor has what comes after
// it, nothing says that it can be done now, and no date is called kept.
func TestWhatIsForbiddenHasNoDay(t *testing.T) {
	weak, err := os.ReadFile(testboat.Root("testdata", "cases", "weak-split-clamp.json"))
	if err != nil {
		t.Fatal(err)
	}
	const damper = `{"name": "Snipe", "lies": "afloat", "fluid": {"grade": "iso-vg-46", "volume": "1.1 L"}, "symptoms": [{"evidence": "damper-seen", "answer": "yes"}]}`
	for _, c := range []struct {
		boat, work string
		cures      bool
		after      string // a step after the first start
	}{
		{strings.Replace(string(weak), "6 N·m", "4 N·m", 1), "refit-coupling", true, "Trial under way"}, {strings.Replace(string(weak), "6 N·m", "4 N·m", 1), "align-coupling", false, "Trial under way"},
		{damper, "replace-damper-plate", true, "Trial under way"}, {damper, "align-coupling", false, "Trial under way"},
		{damper, "flush-gearbox-fluid", false, "Drain the gearbox again"},
	} {
		s := testboat.Run(t, "work-plan", `{"today": "2026-06-02", "lies": "afloat", "readyBy": "2026-12-01", "remedies": [{"remedy": "`+c.work+`"}],
			"windows": [{"from": "2026-06-05", "to": "2026-11-20", "kind": "afloat"}, {"from": "2026-06-15", "to": "2026-07-30", "kind": "haul-out"}]}`, marinecalc.Options{Boat: testboat.Read(t, c.boat), NoRanges: true})
		table, met := s.Table("schedule"), 0
		for _, r := range table.Rows {
			at := table.Reader(r)
			switch step := at("step"); step {
			case "First start", "Trial under way", c.after:
				met++
				if dated := at("start") != ""; dated != c.cures || (at("waits") == "") != c.cures {
					t.Errorf("%s, %s: on %q, waits %q", c.work, step, at("start"), at("waits"))
				}
				if (at("once") != "") != c.cures || c.cures && !strings.Contains(at("once"), "read again: ") {
					t.Errorf("%s, %s: once %q", c.work, step, at("once"))
				}
				if !c.cures && strings.Contains(textOf(s, "now"), step) {
					t.Errorf("%s: %s can be done now: %s", c.work, step, textOf(s, "now"))
				}
			default:
				if at("phase") == "afterwards" && !c.cures && at("start") != "" {
					t.Errorf("%s: %s is due on %s after a trial that has no day", c.work, step, at("start"))
				}
			}
		}
		if met < 2 {
			t.Errorf("%s: %d steps", c.work, met)
		}
		if kept := !strings.HasPrefix(textOf(s, "inTime"), "Not by any date"); kept != c.cures {
			t.Errorf("%s: %s; done on %s", c.work, textOf(s, "inTime"), textOf(s, "finish"))
		}
		if strings.Contains(textOf(s, "finish"), "without first start and trial") == c.cures {
			t.Errorf("%s: done on %s", c.work, textOf(s, "finish"))
		}
	}
}

// Work on what the boat file says is not there is not planned, cures nothing, and is
// told.
func TestNoKeyIsPlannedWhereThereIsNone(t *testing.T) {
	weak, err := os.ReadFile(testboat.Root("testdata", "cases", "weak-split-clamp.json"))
	if err != nil {
		t.Fatal(err)
	}
	for _, c := range []struct{ works, planned string }{
		{`{"remedy": "replace-key"}`, "nothing is planned"}, {`{"remedy": "replace-key"}, {"remedy": "align-coupling"}`, "Bring the coupling into line"},
	} {
		s := testboat.Run(t, "work-plan", `{"today": "2026-06-02", "lies": "afloat", "remedies": [`+c.works+`]}`, marinecalc.Options{Boat: testboat.Read(t, strings.Replace(string(weak), "6 N·m", "4 N·m", 1)), NoRanges: true})
		trouble := textOf(s, "trouble")
		if textOf(s, "planned") != c.planned || !strings.Contains(trouble, "“Fit a new key” is no work of this boat") {
			t.Errorf("%s: %s; %s", c.works, textOf(s, "planned"), trouble)
		}
		if c.planned != "nothing is planned" && !strings.Contains(trouble, "does not end what keeps the shaft still") {
			t.Errorf("%s: a key that is not fitted cures: %s", c.works, trouble)
		}
	}
}

// What is suspected under even odds is looked for: no bearing, no gearbox and no
// trying of a nut is planned on it, with days and a list to buy, and the plan says so.
// What is likelier there than not is planned as a suspicion.
func TestSuspicionUnderEvenOddsIsNotPlanned(t *testing.T) {
	for answers, planned := range map[string]bool{
		`{"evidence": "peak-blade-rate", "answer": "yes"}`:                                                   false,
		`{"evidence": "clatter-at-idle", "answer": "yes"}, {"evidence": "knock-into-gear", "answer": "yes"}`: false,
		`{"evidence": "gland-no-drip", "answer": "yes"}, {"evidence": "gland-hot", "answer": "no"}`:          false,
		`{"evidence": "gearbox-whine", "answer": "yes"}, {"evidence": "fluid-metal", "answer": "yes"}`:       false,
		`{"evidence": "knock-into-gear", "answer": "yes"}, {"evidence": "clatter-at-idle", "answer": "yes"}, {"evidence": "bell-dust", "answer": "yes"}, {"evidence": "came-suddenly", "answer": "yes"}, {"evidence": "gone-in-neutral", "answer": "no"}`: true,
	} {
		s := planOf(t, answers, "")
		nothing := strings.HasPrefix(textOf(s, "planned"), "nothing yet")
		if nothing == planned || nothing == (s.Table("schedule") != nil) || nothing && !strings.Contains(textOf(s, "suspected"), "make its look first") {
			t.Errorf("%s: %q; %q", answers, textOf(s, "planned"), textOf(s, "suspected"))
		}
	}
}

// No step that runs the shaft is what cures that for which it stands still: it would wait
// for itself. Work at rest comes before the first run in each cure of such a cause.
func TestNoCureWaitsForItself(t *testing.T) {
	book := rules.Standard()
	stops := map[string]string{}
	add := func(by string, ids rules.List[string]) {
		for _, id := range ids.All() {
			stops[id] = by
		}
	}
	for _, l := range book.AllLimits().All() {
		add("limit "+l.ID, l.Stops)
	}
	for _, a := range book.AllAdvice().All() {
		add("advice "+a.ID, a.Stops)
	}
	still := map[string]bool{} // questions
	for _, e := range book.Evidence().All() {
		still[e.ID] = e.KeepStill != ""
	}
	for _, c := range book.Causes().All() {
		if c.KeepStill != "" || still[c.Confirm] {
			stops[c.ID] = "the cause"
		}
	}
	for _, s := range book.Signs().All() {
		if still[s.Evidence] && (s.Weight == "strong" || s.Weight == "certain") {
			stops[s.Cause] = "sign " + s.ID
		}
	}
	steps, met := map[string]rules.Step{}, 0
	for _, s := range book.Steps().All() {
		steps[s.ID] = s
	}
	for _, r := range book.Remedies().All() {
		for _, c := range r.Cures.All() {
			if stops[c] == "" {
				continue
			}
			met++
			works := false
			for _, id := range r.Steps.All() {
				s := steps[id]
				runs := rules.Contains(s.Hazards, "turning-shaft") && s.Phase != "as-found"
				works = works || !runs && (s.Phase == "work" || s.Phase == "close")
				if runs && !works {
					t.Errorf("%s, cure of %s, which keeps the shaft still by %s: “%s” runs it before anything is done", r.ID, c, stops[c], s.Title)
					break
				}
			}
		}
	}
	if met < 30 {
		t.Errorf("%d cures of what keeps the shaft still", met)
	}
}
