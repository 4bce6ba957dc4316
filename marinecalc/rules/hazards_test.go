package rules

import (
	"regexp"
	"slices"
	"strings"
	"testing"
)

// A step says by its words what it is about, and its hazards must follow from
// them: the words without the caution are a danger that is not told, the
// caution without the words one that is not of the work in hand. Steps named
// in except say so for another reason, which is given.
var hazardsByWords = []struct {
	hazards []string
	words   string
	both    bool // no other step has the first hazard
	place   string
	except  map[string]string
}{
	{hazards: []string{"stop-the-engine"}, words: `gland nuts?|both nuts|follower`},
	{hazards: []string{"flooding-at-the-gland"}, words: `gland nuts?|both nuts|follower`},
	{hazards: []string{"carbon-monoxide", "turning-shaft"}, both: true,
		words:  `in neutral: start|minutes in gear|full revolutions again|at the maker's speeds|engine warm, in neutral|once more as she runs|under way|at idle|at cruising|throttle|sea trial once more|run, stop`,
		except: map[string]string{"refill-gearbox": "said of the first start, which is a step of its own"}},
	{hazards: []string{"engine-running-in-closed-space"}, words: `once more as she runs|at cruising|sea trial once more|water from the exhaust`},
	{hazards: []string{"help-at-hand"}, words: `first start\. tools|two aboard|once more as she runs|fuel|slings on its eyes`},
	{hazards: []string{"vapour-before-spark"}, both: true, words: `battery|blower|drill|grinder|fuel`},
	{hazards: []string{"lifting-gear"}, both: true, words: `\bslings?\b|hoist|slung|jacks`, except: map[string]string{"launch-check": "the yard's lift, with a caution of its own"}},
	{hazards: []string{"under-the-slings"}, both: true, words: `still in the slings`},
	{hazards: []string{"heavy-part"}, words: `pull the gearbox|fit the gearbox|compare the new gearbox|gearbox to the workshop|new gearbox ready|pull the propeller|propeller to the|new propeller|propeller on |fit the propeller|lap the propeller|withdraw the shaft|fit the shaft|shaft to the machinist|new shaft|look over shaft`},
	{hazards: []string{"rudder-and-prop-fall"}, words: `pull the propeller|propeller on |fit the propeller|lap the propeller|withdraw the shaft|fit the shaft`},
	{hazards: []string{"fault-boat-on-stands"}, place: "ashore", words: `pull the propeller|propeller on |fit the propeller|lap the propeller|scrape|stern bearing|withdraw|straight aft on blocks|intermediate bearing|water ways|shaft and tube`},
	{hazards: []string{"flooding-when-parting"}, words: `part the coupling|part the faces|slide aft|sliding out`},
	{hazards: []string{"never-crank-parted"}, words: `part the coupling|part the faces|pull the gearbox`},
	{hazards: []string{"boat-without-drive"}, words: `part the coupling|part the faces|cannot run until|clear rope`},
	{hazards: []string{"asbestos"}, words: `old packing|every one out with a packing hook|damper plate change|change the damper plate`},
	{hazards: []string{"packing-hook"}, words: `packing hook|rings cut|sharp knife`},
	{hazards: []string{"packing-out-afloat"}, words: `every one out with a packing hook`},
	{hazards: []string{"solvents"}, both: true, words: `solvent|penetrant|flushing (oil|fluid)|taper and bore clean`},
	{hazards: []string{"mild-acid"}, both: true, words: `vinegar|\bacid\b`},
	{hazards: []string{"heated-hub"}, both: true, words: `warmed|heated|\boven\b`},
	{hazards: []string{"lock-wire-ends"}, both: true, words: `lock wire|locking wire|wired`},
	{hazards: []string{"raw-water-open"}, words: `seacock (closed|open)|close the seacock|cooler and switches off`},
	{hazards: []string{"hot-fluid"}, both: true, words: `sample|dipstick|drain|level,|find where the fluid|top the fluid up|pump it out|fluid at its mark|strainer and|fluid side`,
		except: map[string]string{
			"compare-gearbox": "a new gearbox, dry", "swap-gearbox": "drained and cold by then", "send-gearbox": "drained and cold by then"}},
	{hazards: []string{"fluid-not-overboard"}, words: `drain the|drain both|drained|pump it out|back-flushed|bleed`},
	{hazards: []string{"sharp-debris"}, words: `magnet below|plug magnet|and a magnet|magnet and|splinter|old metal|how it came out`},
	{hazards: []string{"right-fluid"}, words: `fluid on the maker's plate|with new fluid|fill to the mark`},
	{hazards: []string{"bolt-can-break", "wrench-slips"}, words: `wrench setting`},
	{hazards: []string{"wrench-slips"}, words: `wrench setting|torque of the nut|break-away;|whole torque of the nut|to the propeller maker's torque|read the break-away|nuts off in their order|lock by the gearbox`},
	{hazards: []string{"propeller-swimmers"}, words: `turn the shaft|shaft turned by hand|turn its output|turn both shafts|turn(ed)? (it )?by hand|flange held by|shaft (held|end held)|slide aft`,
		except: map[string]string{
			"swap-gearbox": "its own shafts, on the bench", "fit-gearbox": "the coupling is parted: its output is free of the shaft", "lap-taper": "the propeller is turned on a shaft that is held",
			"first-start": "the engine turns it then: the turning shaft's caution leads"}},
	{hazards: []string{"mounts-engine-falls"}, words: `one mount at a time|foot at a time|weight held|engine's weight|after end blocked`},
	{hazards: []string{"mounts-whole-thread"}, words: `stud's whole thread|flats counted`},
	{hazards: []string{"fault-injection"}, both: true, words: `injectors`},
	{hazards: []string{"fault-diver"}, words: `diver`},
	{hazards: []string{"antifouling-dust"}, words: `sand blades|slit it`},
	{hazards: []string{"mounts-levering"}, words: `\bbar\b.*mount|set the mounts|lock the mounts|change the mounts|feet, brackets|mounts' feet`},
	{hazards: []string{"fault-runs-off"}, words: `lines doubled, ahead|at idle ahead and astern`},
}

func wordsOf(s Step) string {
	return strings.ToLower(s.Title + ". " + s.Text + " " + s.Note + " " + strings.Join(s.Tools.items, ", "))
}

func TestHazardsFollowTheWords(t *testing.T) {
	b := Standard()
	for _, h := range hazardsByWords {
		re, met, excepted := regexp.MustCompile(h.words), 0, 0
		for _, step := range b.Steps().All() {
			s := step.On(step.Cases.items)
			says := re.MatchString(wordsOf(s)) && (h.place == "" || h.place == s.Place)
			if says {
				met++
			}
			if why, is := h.except[s.ID]; is {
				excepted++
				if why == "" || !says && !Contains(s.Hazards, h.hazards[0]) {
					t.Errorf("step %s needs no exception from %s, or one with a reason", s.ID, h.hazards[0])
				}
				continue
			}
			for i, id := range h.hazards {
				has := Contains(s.Hazards, id)
				if says && !has {
					t.Errorf("step %s: %q, and no caution %s", s.ID, re.FindString(wordsOf(s)), id)
				}
				for _, c := range step.Cases.items { // each case by itself
					if alone := step.On([]StepCase{c}); says && re.MatchString(wordsOf(alone)) && !Contains(alone.Hazards, id) {
						t.Errorf("step %s, in a case of it: %q, and no caution %s", s.ID, re.FindString(wordsOf(alone)), id)
					}
				}
				if has && !says && h.both && i == 0 {
					t.Errorf("step %s: the caution %s is not of its work", s.ID, id)
				}
			}
		}
		if met == 0 || excepted != len(h.except) {
			t.Errorf("%s: %d steps have the words, %d of %d exceptions are steps", h.hazards[0], met, excepted, len(h.except))
		}
	}
}

// A question that is looked into beside a running engine warns of what it
// breathes out; one looked at from the helm needs none of it.
func TestQuestionsWarnBesideTheEngine(t *testing.T) {
	beside := regexp.MustCompile(`(?i)listen|watch it|where nothing can reach|keep (it )?clear of the shaft|at the shaft|bearers|test port|outside the guard|minutes in gear|ten minutes under way|cylinder by cylinder|down on the hull`)
	asked := 0
	for _, e := range Standard().Evidence().All() {
		if !e.RunsShaft && !Contains(e.Hazards, "turning-shaft") && !Contains(e.Hazards, "engine-running-in-closed-space") || !beside.MatchString(e.Help) {
			continue
		}
		asked++
		if !Contains(e.Hazards, "carbon-monoxide") {
			t.Errorf("question %s (%q) has no caution carbon-monoxide", e.ID, beside.FindString(e.Help))
		}
	}
	if asked < 15 {
		t.Errorf("only %d questions are looked into beside the engine", asked)
	}
}

// Every caution is shown somewhere: on a sheet, at a step or at a question.
func TestEveryCautionIsShown(t *testing.T) {
	b := Standard()
	shown := map[string]bool{}
	for _, s := range b.Steps().All() {
		for _, id := range s.On(s.Cases.items).Hazards.All() {
			shown[id] = true
		}
	}
	for _, e := range b.Evidence().All() {
		for _, id := range Join(Join(nil, e.Hazards), e.Dangers) {
			shown[id] = true
		}
	}
	for _, c := range b.Causes().All() {
		for _, id := range c.Dangers.All() {
			shown[id] = true
		}
	}
	shown[StopNow] = true
	var cautions []Caution
	for _, c := range b.AllCautions().All() {
		cautions = append(cautions, c)
	}
	for _, name := range b.Tables() {
		for _, r := range b.Table(name).Rows.All() {
			for _, id := range r.Hazards() {
				shown[id] = true
				if !slices.ContainsFunc(cautions, func(c Caution) bool { return c.ID == id }) {
					t.Errorf("%s of %s has the hazard %s, and there is no such caution", r.ID, name, id)
				}
			}
		}
	}
	for _, c := range b.AllCautions().All() {
		if c.Calculations.Len() == 0 && !shown[c.ID] {
			t.Errorf("nothing shows the caution %s", c.ID)
		}
	}
}

// A stage of the trial at which the engine runs or idles warns of carbon
// monoxide, each of the turning shaft, and a start or a move astern of who may
// be in the water; care read under way of the first two, and what opens the raw
// water of that.
func TestRowsWarnOfTheirWork(t *testing.T) {
	named := func(r Row, id string) bool { return slices.Contains(r.Hazards(), id) }
	for _, r := range Standard().Table("trial-stages").Rows.All() {
		do := r.Values.Of("do").Text
		runs := r.Values.Of("lever").Text != "stopped" || strings.Contains(do, "idling")
		if named(r, "trial-carbon-monoxide") != runs || !named(r, "trial-turning-shaft") {
			t.Errorf("stage %s: %v", r.ID, r.Hazards())
		}
		if astern := r.Values.Of("lever").Text == "astern"; astern && !named(r, "trial-swimmers") {
			t.Errorf("stage %s: %v", r.ID, r.Hazards())
		}
	}
	underWay := regexp.MustCompile(`(?i)under way|cruising speed|engine speeds`)
	rawWater := regexp.MustCompile(`Seacock shut`)
	for _, r := range Standard().Table("service-intervals").Rows.All() {
		how := r.Values.Of("how").Text
		if runs := underWay.MatchString(how); named(r, "carbon-monoxide") != runs || named(r, "turning-shaft") != runs {
			t.Errorf("care %s (%q): %v", r.ID, how, r.Hazards())
		}
		if named(r, "service-raw-water") != rawWater.MatchString(how) {
			t.Errorf("care %s (%q): %v", r.ID, how, r.Hazards())
		}
	}
}

// A question whose words run the engine says so, in gear or in neutral, or says
// what there is to see where it may not run: while the shaft must stand the
// first are not asked.
func TestQuestionsThatRunSaySo(t *testing.T) {
	runs := regexp.MustCompile(`(?i)\bidle\b|under way|cruising|throttle|\brevolutions|after a run|, run\b|minutes in gear|engine warm|cylinder by cylinder|test port|just after stopping|boat well made fast`)
	still := regexp.MustCompile(`where the shaft may|best right after`)
	met := 0
	for _, e := range Standard().Evidence().All() {
		text := e.Title + " " + e.Help
		if !runs.MatchString(text) {
			continue
		}
		met++
		if !e.Runs() && !still.MatchString(e.Help) {
			t.Errorf("question %s: %q, and neither runsShaft nor runsEngine", e.ID, runs.FindString(text))
		}
		if e.RunsShaft && e.RunsEngine {
			t.Errorf("question %s runs the shaft, and so the engine", e.ID)
		}
	}
	if met < 30 {
		t.Errorf("only %d questions run the engine", met)
	}
}
