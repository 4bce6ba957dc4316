package rules

import (
	"regexp"
	"slices"
	"strings"
	"testing"
)

var phasesInOrder = []string{"as-found", "open", "work", "close", "first-start", "trial", "afterwards"}

// workOf is the steps of a remedy, each with its place in it.
func workOf(t *testing.T, b *Book, r Remedy) (steps []Step, at map[string]int) {
	t.Helper()
	byID := map[string]Step{}
	for _, s := range b.Steps().All() {
		byID[s.ID] = s
	}
	at = map[string]int{}
	for _, id := range r.Steps.All() {
		if _, twice := at[id]; twice {
			t.Errorf("%s: %s twice", r.ID, id)
		}
		at[id] = len(steps)
		steps = append(steps, byID[id])
	}
	return steps, at
}

// The steps of a remedy are listed in the order in which they are done: none
// before one that it comes after, no phase before an earlier one; and what
// lays the boat up leads on to another step, so that nobody opens her for
// nothing.
func TestStepsOfARemedyAreInOrder(t *testing.T) {
	b := Standard()
	for _, r := range b.Remedies().All() {
		steps, at := workOf(t, b, r)
		followed := map[string]bool{}
		for i, s := range steps {
			for _, before := range s.After.All() {
				followed[before] = true
				if n, has := at[before]; has && n > i {
					t.Errorf("%s: %s stands before %s, which it comes after", r.ID, s.ID, before)
				}
			}
			if i > 0 && slices.Index(phasesInOrder, s.Phase) < slices.Index(phasesInOrder, steps[i-1].Phase) {
				t.Errorf("%s: %s (%s) after %s (%s)", r.ID, s.ID, s.Phase, steps[i-1].ID, steps[i-1].Phase)
			}
		}
		for _, s := range steps {
			if s.LaysUp && !followed[s.ID] && s.Phase != "afterwards" {
				t.Errorf("%s: nothing comes after %s, which lays the boat up", r.ID, s.ID)
			}
		}
	}
}

// What needs the engine warm or the shaft turning under power comes before she
// is made safe: nobody stops, cools and locks out an engine and then runs it
// for a reading.
func TestRunningReadingsComeBeforeMakeSafe(t *testing.T) {
	b := Standard()
	runs := regexp.MustCompile(`^Warm from the run|as she runs|[Ee]ngine warm`)
	met := 0
	for _, r := range b.Remedies().All() {
		steps, at := workOf(t, b, r)
		safe, is := at["make-safe"]
		started := slices.IndexFunc(steps, func(s Step) bool { return s.Phase == "first-start" || s.Phase == "trial" })
		for i, s := range steps {
			running := Contains(s.Hazards, "turning-shaft") || Contains(s.Hazards, "engine-running-in-closed-space") || runs.MatchString(s.Text) || runs.MatchString(s.Title)
			if !running || started >= 0 && i >= started || started < 0 && s.Phase == "afterwards" {
				continue
			}
			met++
			if is && i > safe {
				t.Errorf("%s: %s runs her after make-safe", r.ID, s.ID)
			}
			if Contains(s.After, "make-safe") {
				t.Errorf("%s comes after make-safe and runs her", s.ID)
			}
		}
	}
	if met < 20 {
		t.Errorf("only %d steps run her before the work", met)
	}
}

// What parts the line has been read as it was, and is read again, started with
// care, tried, and looked at afterwards.
func TestWhatIsOpenedIsProved(t *testing.T) {
	b := Standard()
	// needs says which steps a remedy must have that has one of them.
	needs := []struct {
		has, must []string
	}{
		{[]string{"part-coupling"}, []string{"make-safe", "as-found-line", "torque-card", "lash-shaft", "read-as-found", "read-coupling", "close-coupling", "first-start", "trial-run", "retorque-coupling", "start-the-watch"}},
		{[]string{"move-mounts"}, []string{"realign-coupling"}},
		{[]string{"swap-mounts"}, []string{"take-weight-of-engine", "realign-coupling"}},
		{[]string{"draw-gearbox"}, []string{"draw-fluid-sample", "write-evidence", "look-behind-gearbox", "fit-gearbox", "refill-gearbox", "first-start", "look-after-an-hour", "keep-evidence", "first-fluid-change"}},
		{[]string{"send-gearbox", "swap-gearbox"}, []string{"flush-cooler", "sample-again", "test-under-warranty"}},
		{[]string{"swap-gearbox"}, []string{"compare-gearbox"}},
		{[]string{"pull-coupling-flange", "draw-shaft"}, []string{"write-evidence"}},
		{[]string{"draw-propeller"}, []string{"bar-the-flange", "mark-propeller", "fit-propeller", "torque-card", "first-start"}},
		{[]string{"draw-old-packing"}, []string{"as-found-line", "pack-gland", "first-start", "set-drips", "read-gland-again"}},
		{[]string{"drain-gearbox"}, []string{"draw-fluid-sample", "refill-gearbox", "first-start", "look-after-an-hour", "first-fluid-change"}},
		{[]string{"ease-gland"}, []string{"set-drips", "read-gland-again"}},
		{[]string{"swap-gearbox-cooler"}, []string{"refill-gearbox", "run-flush", "drain-gearbox-again"}},
	}
	met := make([]bool, len(needs))
	for _, r := range b.Remedies().All() {
		steps, at := workOf(t, b, r)
		for i, n := range needs {
			if !slices.ContainsFunc(n.has, func(id string) bool { _, has := at[id]; return has }) {
				continue
			}
			met[i] = true
			for _, id := range n.must {
				if _, has := at[id]; !has {
					t.Errorf("%s: it has one of %v and not %s", r.ID, n.has, id)
				}
			}
		}
		opens := slices.ContainsFunc(steps, func(s Step) bool { return s.Phase == "open" && s.ID != "plug-and-pump-ready" })
		for _, phase := range []string{"as-found", "first-start", "trial", "afterwards"} {
			if opens && !slices.ContainsFunc(steps, func(s Step) bool { return s.Phase == phase }) {
				t.Errorf("%s opens the line and has no step %s", r.ID, phase)
			}
		}
	}
	for i, is := range met {
		if !is {
			t.Errorf("no remedy has one of %v", needs[i].has)
		}
	}
}

// A re-check is due at some hour or day, and nothing else is; what comes apart
// and what is read is written down; figures that are tightened to are at hand.
func TestStepsSayWhatTheyNeed(t *testing.T) {
	b := Standard()
	used := map[string]bool{}
	for _, r := range b.Remedies().All() {
		for _, id := range r.Steps.All() {
			used[id] = true
		}
	}
	for _, s := range b.Steps().All() {
		if due := s.DueHours > 0 || s.DueDays > 0; due != (s.Phase == "afterwards") {
			t.Errorf("%s (%s): due after %g h and %d days", s.ID, s.Phase, s.DueHours, s.DueDays)
		}
		if s.Record.Len() == 0 && slices.Contains([]string{"first-start", "trial", "afterwards"}, s.Phase) {
			t.Errorf("%s: nothing is read or written down", s.ID)
		}
		if strings.Contains(s.Text, "wrench setting") && !Contains(s.Use, "bolt-preload/wrenchSetting") {
			t.Errorf("%s: the wrench setting is not at hand", s.ID)
		}
		if Contains(s.Use, "bolt-preload/wrenchSetting") { // which is for one finish alone, and galls stainless that is dry
			for _, of := range []string{"bolt-preload/finish", "bolt-preload/prevailingTorqueAdded"} {
				if !Contains(s.Use, of) {
					t.Errorf("%s has the wrench setting and not %s", s.ID, of)
				}
			}
			for _, caution := range []string{"stainless-galls", "bolt-can-break", "wrench-slips"} {
				if !Contains(s.Hazards, caution) {
					t.Errorf("%s has the wrench setting and not the caution %s", s.ID, caution)
				}
			}
			if !strings.Contains(s.Text, "for the finish named beside it and no other") {
				t.Errorf("%s does not say that the setting is for one finish", s.ID)
			}
		}
		for _, reading := range s.Outdates.All() {
			if followed := b.Table("trend-readings").Find(reading, func(string) (float64, string, bool) { return 0, "", false }); followed == nil || s.Phase != "close" {
				t.Errorf("%s puts an end to %s, which is no reading to follow, or closes nothing", s.ID, reading)
			}
		}
		for _, before := range s.After.All() {
			if before == s.ID {
				t.Errorf("%s comes after itself", s.ID)
			}
		}
		if !used[s.ID] {
			t.Logf("%s is in no remedy", s.ID)
		}
	}
}
