package marinecalc_test

import (
	"encoding/json"
	"path/filepath"
	"regexp"
	"slices"
	"strings"
	"testing"

	"example.org/driveline/marinecalc"
	"example.org/driveline/marinecalc/internal/survey"
	"example.org/driveline/marinecalc/internal/testboat"
	"example.org/driveline/marinecalc/sheet"
)

// surveyed is an invented boat with one fault of the drive line in its
// figures, and what a survey of it must say.
type surveyed struct {
	boat  string            // file in testdata/cases
	finds map[string]string // the limits that speak of the fault ("calculation/limit"), and how they read
	about []string          // the calculations that may be over a limit or outside a guide; no other may
	cause string            // that the fault finding puts first, where somebody looked
	says  []string          // words that must stand on the sheets of the fault: what to do
	first string            // the limit that must stand first, where the order of the sheet decides
	not   string            // what no chain may begin with
	never string            // words that no sheet may say
	still bool              // the survey begins with why the shaft must not run
	fault string            // the calculation whose figures contradict each other
}

// What these boats have was put into them, so what the survey must find is
// known beforehand: by the fault alone, not by what the program says of it.
var cases = []surveyed{
	{boat: "crooked-flange", cause: "coupling-crooked", about: []string{"coupling-alignment"}, says: []string{"have the flange faced on its shaft"},
		finds: map[string]string{"coupling-alignment/face-run-out": "over the limit", "coupling-alignment/rigid-gap-per-diameter": "over the limit", "coupling-alignment/rim-run-out": "OK"}, not: "Coupling misaligned"},
	{boat: "misaligned-coupling", cause: "coupling-misaligned", about: []string{"coupling-alignment"},
		finds: map[string]string{"coupling-alignment/rigid-gap-per-diameter": "over the limit"}},
	{boat: "offset-only", about: []string{"coupling-alignment"},
		finds: map[string]string{"coupling-alignment/rigid-flange-offset": "over the limit", "coupling-alignment/rigid-gap-per-diameter": "OK"}},
	{boat: "sagged-mount", about: []string{"mount-load"}, says: []string{"Renew the mounts as a set"},
		finds: map[string]string{"mount-load/mount-settled": "outside the guide"}},
	{boat: "soft-foot", about: []string{"mount-moves"},
		finds: map[string]string{"mount-moves/soft-foot": "outside the guide", "coupling-alignment/rigid-gap-per-diameter": "OK"}},
	{boat: "loose-bolts", about: []string{"bolt-preload", "coupling-grip"}, cause: "coupling-bolts-loose",
		finds: map[string]string{"bolt-preload/torque-in-question-too-loose": "under the minimum"}},
	{boat: "stretched-bolt", about: []string{"bolt-preload"}, first: "bolt-breaks",
		finds: map[string]string{"bolt-preload/bolt-breaks": "over the limit", "bolt-preload/bolt-torque-in-question": "over the limit"}},
	{boat: "wrong-lock-nut", fault: "bolt-fit", says: []string{`Nut: Nylon-insert lock nut 3/8-16, ASME B18.16.6 style NE ("ne-3/8-16") does not go with the rest: it is for pitch`, "of 3/8-24 UNF", `style NE ("ne-3/8-24")`}},
	{boat: "dry-gland", about: []string{"gland-heat"}, says: []string{"count for five minutes", "10 years or more"},
		finds: map[string]string{"gland-heat/gland-drips": "under the minimum"}}, // none in one minute: a slow one may be missed, and the advice counts again first
	{boat: "leaking-gland", about: []string{"gland-heat"},
		finds: map[string]string{"gland-heat/gland-leaks": "outside the guide", "gland-heat/gland-rise-measured": "inside the guide"}},
	{boat: "hot-gland", about: []string{"gland-heat"}, first: "gland-rise-measured", says: []string{"stop the shaft"},
		finds: map[string]string{"gland-heat/gland-too-hot-to-hold": "outside the guide", "gland-heat/gland-rise-measured": "outside the guide"}},
	{boat: "cold-gland", fault: "gland-heat"},
	{boat: "grooved-shaft", about: []string{"gland-packing"}, says: []string{"no full power"},
		finds: map[string]string{"gland-packing/neck-strength": "outside the guide"}},
	{boat: "worn-bearing", about: []string{"bearing-clearance"},
		finds: map[string]string{"bearing-clearance/worn-share": "outside the guide", "bearing-clearance/clearance-tight": "OK"}},
	{boat: "tight-bearing", about: []string{"bearing-clearance"}, says: []string{"the bearing is swollen"},
		finds: map[string]string{"bearing-clearance/not-tighter-than-new": "not enough to tell"}}, // a flat blade bridges in a small bearing
	{boat: "bent-shaft", about: []string{"shaft-strength", "coupling-alignment", "vibration-source"}, cause: "shaft-bent", not: "Coupling misaligned",
		finds: map[string]string{"shaft-strength/shaft-run-out": "over the limit", "shaft-strength/shaft-yield-at-peak": "OK"}},
	{boat: "undersized-shaft", about: []string{"shaft-strength"},
		finds: map[string]string{"shaft-strength/shaft-yield-at-peak": "over the limit", "shaft-strength/shaft-yacht-rule": "over the limit"}},
	{boat: "long-span", about: []string{"shaft-whirl"},
		finds: map[string]string{"shaft-whirl/whirl-below-critical": "over the limit", "shaft-whirl/whirl-40-diameters": "outside the guide"}},
	{boat: "short-key", about: []string{"key-strength"},
		finds: map[string]string{"key-strength/key-at-peak": "over the limit", "key-strength/key-at-full-power": "outside the guide"}},
	{boat: "gearbox-metal", about: []string{"wear-debris", "fluid-cleanliness"},
		finds: map[string]string{"wear-debris/wear-depth": "over the limit", "fluid-cleanliness/clean-14": "over the limit"}},
	{boat: "drips-rising", about: []string{"reading-trend"},
		finds: map[string]string{"reading-trend/trend-horizon": "past the limit"}, says: []string{"no, the chance is less than 1 %"}},
	{boat: "blade-rate", about: []string{"vibration-source"},
		finds: map[string]string{"vibration-source/vibration-long-running": "outside the guide"}},
	{boat: "bilge-pump", about: []string{"gland-drip"},
		finds: map[string]string{"gland-drip/battery-outlasts-absence": "outside the guide"}},
	{boat: "steel-twelve-metres", about: []string{"shaft-strength"},
		finds: map[string]string{"shaft-strength/shaft-run-out": "over the limit", "shaft-strength/shaft-yacht-rule": "OK", "shaft-strength/shaft-yield-at-peak": "OK"}},
	{boat: "eighteen-horsepower", about: []string{"bolt-preload", "coupling-grip"},
		finds: map[string]string{"bolt-preload/torque-in-question-too-loose": "under the minimum", "shaft-strength/shaft-yield-at-peak": "OK"}},
	{boat: "ice-cold-water", about: []string{"gland-heat"}, // 26 K over the sea, and cool to the hand
		finds: map[string]string{"gland-heat/gland-rise-measured": "outside the guide", "gland-heat/gland-too-hot-to-hold": "inside the guide"}},
	{boat: "slow-three-to-one", about: []string{"key-strength", "shaft-whirl"},
		finds: map[string]string{"key-strength/key-yields-at-full-power": "under the minimum", "key-strength/key-at-peak": "over the limit", "shaft-whirl/whirl-below-critical": "OK"}},
	{boat: "folding-propeller", about: []string{"bearing-clearance"},
		finds: map[string]string{"bearing-clearance/worn-share": "outside the guide", "bearing-clearance/worn-groove": "inside the guide"}},
	{boat: "mounts-too-small", about: []string{"mount-load"},
		finds: map[string]string{"mount-load/mount-rest-load": "over the limit", "mount-load/mount-compression": "OK"}},
	{boat: "warm-water", about: []string{"gland-heat", "gland-drip"},
		finds: map[string]string{"gland-heat/gland-leaks": "outside the guide", "gland-heat/gland-rise-measured": "inside the guide"}},
	{boat: "flexible-over-its-maker", about: []string{"coupling-alignment"},
		finds: map[string]string{"coupling-alignment/flexible-gap": "over the limit"}},
	{boat: "inch-bolts-broken", about: []string{"bolt-preload"}, first: "bolt-breaks",
		finds: map[string]string{"bolt-preload/bolt-breaks": "over the limit"}, says: []string{"not to be counted on, that torque breaks the weakest bolt of the grade"}},
	{boat: "deep-neck", about: []string{"gland-packing"}, says: []string{"no full power"},
		finds: map[string]string{"gland-packing/neck-strength": "outside the guide"}},
	{boat: "worn-flange-face", about: []string{"output-flange"}, first: "flange-clamp-gone", says: []string{"Leave the lever in neutral until the nut is tight"},
		finds: map[string]string{"output-flange/flange-clamp-gone": "over the limit", "output-flange/flange-clamp-loose": "under the minimum"}},
	{boat: "short-thread", about: []string{"thread-engagement", "coupling-grip"}, says: []string{"A longer bolt where the hole is deep enough"},
		finds: map[string]string{"thread-engagement/thread-strips": "under the minimum", "thread-engagement/thread-bottoms": "inside the guide"}},
	{boat: "backlash-doubled", about: []string{"backlash"}, says: []string{"wears or works loose"},
		finds: map[string]string{"backlash/backlash-doubled": "outside the guide"}},
	{boat: "idle-resonance", about: []string{"mount-load"}, says: []string{"Raise the idle speed a little"},
		finds: map[string]string{"mount-load/isolation-at-idle": "over the limit", "mount-load/mount-rest-load": "OK"}},
	{boat: "no-room-aft", about: []string{"shaft-withdrawal"}, says: []string{"Tell the yard before the haul-out"},
		finds: map[string]string{"shaft-withdrawal/withdrawal-room": "under the minimum"}},
	{boat: "bolt-too-short", about: []string{"bolt-fit"}, says: []string{"Take the next longer length that goes"},
		finds: map[string]string{"bolt-fit/threads-beyond-nut": "under the minimum", "bolt-preload/bolt-too-loose": "OK"}},
	{boat: "crooked-output-flange", about: []string{"flange-run-out"}, says: []string{"Before anything is machined, turn the flange on its spline"},
		finds: map[string]string{"flange-run-out/flange-face-run-out": "over the limit", "flange-run-out/flange-rim-run-out": "OK"}},
	{boat: "weak-split-clamp", about: []string{"coupling-bore", "line-joints"}, says: []string{"Do not run under power"},
		finds: map[string]string{"coupling-bore/bore-torque-ahead": "under the minimum", "coupling-bore/bore-torque-peak": "under the minimum"}},
	{boat: "vibration-grown", about: []string{"vibration-source"}, says: []string{"find the cause before the next long run"},
		finds: map[string]string{"vibration-source/vibration-growth": "outside the guide"}},
	{boat: "overloaded-bearing", about: []string{"bearing-life"}, says: []string{"nothing to judge, above half of the dynamic rating"},
		finds: map[string]string{"bearing-life/bearing-static": "under the minimum", "bearing-life/bearing-load-share": "outside the guide"}},
	{boat: "broken-damper", still: true, cause: "damper-worn",
		finds: map[string]string{"shaft-strength/shaft-yield-at-peak": "OK but close"}, not: "Coupling misaligned"},
	{boat: "rope-round-shaft", still: true, cause: "propeller-rope",
		finds: map[string]string{"shaft-strength/shaft-yield-at-peak": "OK but close"}},
	{boat: "milky-fluid", cause: "gearbox-fluid-water", not: "Gearbox overfilled", says: []string{"What was found is to be cured, and what made it fail before it", "Fluid with water in it lubricates badly"}, never: "Does the gearbox run hotter",
		finds: map[string]string{"shaft-strength/shaft-yield-at-peak": "OK but close"}},
	{boat: "shallow-box", about: []string{"gland-packing"}, says: []string{"A thinner follower can win a ring"},
		finds: map[string]string{"gland-packing/packing-rings": "outside the guide", "gland-packing/packing-over": "inside the guide"}},
	{boat: "crushed-aluminium", about: []string{"bolt-preload"}, says: []string{"Put a thick hardened washer under head and nut"},
		finds: map[string]string{"bolt-preload/head-bearing-stress": "over the limit", "bolt-preload/bolt-proof-load": "OK"}},
	{boat: "slipped-dial-bar", about: []string{"dial-alignment"}, says: []string{"Clamp the bar anew", "nothing to judge, the readings contradict each other"},
		finds: map[string]string{"dial-alignment/dial-closes": "over the limit"}},
	{boat: "opened-since-april", about: []string{"coupling-alignment", "alignment-change"}, says: []string{"Find what moved before any nut is turned"},
		finds: map[string]string{"coupling-alignment/rigid-gap-per-diameter": "over the limit", "alignment-change/coupling-stands": "outside the guide"}},
	{boat: "unlocked-propeller-nut", still: true, about: []string{"propeller-taper", "key-strength"}, says: []string{"Do not move her before the nut is locked"},
		finds: map[string]string{"propeller-taper/taper-nut-locked": "under the minimum", "propeller-taper/taper-torque-ahead": "OK"}},
	{boat: "shaft-lifts-behind", about: []string{"shaft-droop"}, says: []string{"Support the shaft near the coupling"},
		finds: map[string]string{"shaft-droop/droop-bearing-behind": "under the minimum"}},
	{boat: "hot-gearbox", about: []string{"reading-trend", "service-schedule"}, says: []string{"Stop using it as before", "(gearbox temperature, at its limit)"}, never: "Bring the work forward",
		finds: map[string]string{"reading-trend/trend-not-reached": "past the limit", "service-schedule/service-overdue": "over the limit"}},
	{boat: "nothing-wrong",
		finds: map[string]string{"gland-heat/gland-rise-measured": "inside the guide", "coupling-alignment/rigid-gap-per-diameter": "OK"}},
	{boat: "hardly-measured"},
}

// restsOn are the limits that nothing but a reading can meet, by the member of
// the boat file that holds it.
var restsOn = map[string][]string{
	"glandTemperature":   {"gland-rise-measured", "gland-boils", "gland-too-hot-to-hold"},
	"dripRate":           {"gland-drips", "gland-drips-kind-unknown", "gland-drips-seal-unknown", "gland-leaks", "pump-keeps-up"},
	"dripRateAtRest":     {"battery-outlasts-absence", "no-flood-in-absence", "flood-with-dead-pump"},
	"bearingClearance":   {"worn-limit", "worn-share", "clearance-none", "clearance-tight", "shell-lasts-to-haul-out", "not-tighter-than-new", "not-tighter-than-before"},
	"bearingGrooveDepth": {"worn-groove"},
	"couplingGaps":       {"rigid-gap-per-diameter", "flexible-gap", "face-run-out", "engine-bulletin-gap", "army-feeler-gap"},
	"couplingSteps":      {"rigid-flange-offset", "flexible-offset", "rim-run-out"},
	"footGap":            {"soft-foot"},
	"vibrationVelocity":  {"vibration-long-running", "vibration-damage", "vibration-growth"},
	"count6":             {"clean-6"},
	"count14":            {"clean-14"},
	"grooveDiameter":     {"neck-strength"},
	"torqueUsed":         {"bolt-torque-in-question", "torque-in-question-too-loose", "bolt-breaks"},
	"flangeMaterial":     {"head-bearing-stress"},
	"hubYieldStrength":   {"key-at-peak", "key-at-full-power"},
	"alloy":              {"shaft-yield-at-peak", "shaft-yacht-rule"},
	"wornPart":           {"wear-depth", "hard-skin"},
	"deflectionNew":      {"mount-settled"},
	"shaftRunOut":        {"shaft-run-out"},
	"deflectionNow":      {"mount-compression", "mount-lifts-at-rest"},
	"roomAft":            {"withdrawal-room"},
	"follow":             {"trend-horizon", "trend-not-reached"},
	"sections":           {"whirl-below-critical"},
}

// TestCases surveys the invented boats, one fault each.
func TestCases(t *testing.T) {
	alone(t)
	files, err := filepath.Glob(testboat.Root("testdata", "cases", "*.json"))
	if err != nil || len(files) != len(cases) {
		t.Fatalf("%d boats in testdata/cases, %d in the table: %v", len(files), len(cases), err)
	}
	for _, c := range cases {
		t.Run(c.boat, func(t *testing.T) {
			text := testboat.File(t, "testdata", "cases", c.boat+".json")
			s := testboat.Check(t, testboat.Read(t, string(text)), marinecalc.Options{Brief: true, Trials: 1000})
			c.findings(t, s)
			c.silence(t, s, string(text))
			c.cured(t, s)
			signed(t, s)
			for _, f := range s.Findings {
				sound(t, f)
			}
		})
	}
}

// findings holds the verdicts against the fault: those that speak of it read
// as they must, the worst comes first, and nothing else is over.
func (c *surveyed) findings(t *testing.T, s *marinecalc.Survey) {
	reads := map[string]string{}
	for i, f := range s.Findings {
		id := f.Calculation + "/" + f.Verdict.Limit
		reads[id] = f.Verdict.Reads
		bad := f.Verdict.Word.Plain() == sheet.Beyond
		if bad && !slices.Contains(c.about, f.Calculation) {
			t.Errorf("%s: %s", id, f.Verdict.Sentence)
		}
		if i > 0 && s.Findings[i-1].Verdict.Word.Rank() > f.Verdict.Word.Rank() {
			t.Errorf("%s comes after what is less urgent", id)
		}
	}
	for id, want := range c.finds {
		if reads[id] != want {
			t.Errorf("%s reads %q, want %q", id, reads[id], want)
		}
	}
	if c.first != "" && s.Findings[0].Verdict.Limit != c.first {
		t.Errorf("the survey begins with %s, want %s", s.Findings[0].Verdict.Limit, c.first)
	}
	var faults []string
	for _, f := range s.Faults {
		faults = append(faults, f.Calculation)
	}
	if c.fault == "" && len(faults) > 0 || c.fault != "" && !slices.Contains(faults, c.fault) {
		t.Errorf("figures contradict each other in %v, want %q", faults, c.fault)
	}
}

// silence looks for an OK that nothing was read for.
func (c *surveyed) silence(t *testing.T, s *marinecalc.Survey, text string) {
	for member, limits := range restsOn {
		if strings.Contains(text, `"`+member+`"`) || strings.Contains(text, "/"+member+`"`) {
			continue
		}
		for _, f := range s.Findings {
			if w := f.Verdict.Word.Plain(); slices.Contains(limits, f.Verdict.Limit) && (w == sheet.Within || w == sheet.NearLimit) {
				t.Errorf("no %s stands in the boat file, but: %s", member, f.Verdict.Sentence)
			}
		}
	}
}

// cured looks for what the sheets say of the cause and of what to do.
func (c *surveyed) cured(t *testing.T, s *marinecalc.Survey) {
	next := strings.Builder{}
	for _, one := range s.Sheets {
		for _, a := range one.Next {
			next.WriteString(a.Text + "\n")
		}
		for _, v := range one.Verdicts {
			next.WriteString(v.Sentence + " " + v.Settle + "\n")
		}
		if r := one.Result("cause"); c.cause != "" && one.Calculation == "fault-finding" && (r == nil || r.Text != c.cause) {
			t.Errorf("fault finding puts %+v first, want %q", r, c.cause)
		}
	}
	for _, chain := range s.Chains {
		if c.not != "" && strings.HasPrefix(chain, c.not) {
			t.Errorf("blamed: %s", chain)
		}
	}
	for _, f := range s.Faults {
		for _, p := range f.Problems {
			next.WriteString(p.What + "\n" + p.Allowed + "\n")
		}
	}
	if c.never != "" && strings.Contains(next.String(), c.never) {
		t.Errorf("a sheet says %q", c.never)
	}
	c.leads(t, s)
	if leads := s.Summary[0].Code == "still"; c.still && !leads {
		t.Errorf("the survey begins with %+v", s.Summary[0])
	}
	for _, words := range c.says {
		if !strings.Contains(next.String(), words) {
			t.Errorf("no sheet says %q", words)
		}
	}
}

// leads holds that the first three lines of the survey name the fault, uncut: by its
// cause, by the sheet whose figures are wrong, or by a limit that speaks of it.
func (c *surveyed) leads(t *testing.T, s *marinecalc.Survey) {
	var names []string
	for _, f := range s.Found {
		if c.cause != "" && f.Row == c.cause || c.finds[f.Calculation+"/"+f.Limit] != "" {
			names = append(names, f.Title)
		}
	}
	for _, f := range s.Faults {
		if f.Calculation == c.fault {
			names = append(names, f.Title)
		}
	}
	for _, f := range s.Findings {
		switch told := c.finds[f.Calculation+"/"+f.Verdict.Limit] != ""; {
		case told && f.Verdict.Word == sheet.Outside:
			names = append(names, f.Verdict.Title)
		case told && f.Verdict.Word == sheet.CannotTell:
			names = append(names, f.Sheet)
		}
	}
	first := s.Summary[:min(3, len(s.Summary))]
	named := func(name string) bool {
		return slices.ContainsFunc(first, func(l survey.Line) bool { return strings.Contains(l.Text, name) })
	}
	if len(names) > 0 && !slices.ContainsFunc(names, named) {
		t.Errorf("none of %q is in the first three lines: %+v", names, first)
	}
	if nothing := s.Nothing; nothing != "" && len(names) > 0 && !strings.Contains(nothing, "outside a guide") && !slices.ContainsFunc(s.Findings, func(f survey.Finding) bool { return f.Verdict.Word == sheet.CannotTell }) {
		t.Errorf("a fault, and told: %s", nothing)
	}
}

// sound looks for figures that nobody would sign: an interval that leaves its
// estimate out, a number that is none, a verdict over the limit that is not
// worded as a sentence.
func sound(t *testing.T, f survey.Finding) {
	v := f.Verdict
	text, err := json.Marshal(f)
	if err != nil {
		t.Error(err)
	}
	for _, none := range []string{"NaN", "Inf", "  "} {
		if strings.Contains(string(text), none) {
			t.Errorf("%q in %s", none, text)
		}
	}
	if v.Word.Plain() == sheet.Beyond && !strings.HasSuffix(v.Sentence, ".") {
		t.Errorf("no full sentence: %s", v.Sentence)
	}
	if v.SI == nil {
		t.Errorf("judged without a value: %s", v.Sentence)
	}
}

// slips are what no reader signs: stops side by side, a standard's name in small
// letters, one of what is many, a range between two things that are not known.
var slips = regexp.MustCompile(`\.;|; \.| \.\.|\b(asme|sae|din|iso) [a-z]?\d| is not known; allowed: a list|\b1 (rings|steps)\b|not known to not known|to at \d`)

// signed looks for slips in all that a survey says, and for the id of a calculation
// where its name belongs.
func signed(t *testing.T, s *marinecalc.Survey) {
	text, err := json.Marshal(s)
	if err != nil {
		t.Fatal(err)
	}
	for _, at := range slips.FindAllIndex(text, 3) {
		t.Errorf("%q in …%s", text[at[0]:at[1]], text[max(0, at[0]-80):min(len(text), at[1]+40)])
	}
	for _, e := range marinecalc.Calculations() {
		if at := strings.Index(string(text), " "+e.ID+" "); at >= 0 && strings.Contains(e.ID, "-") {
			t.Errorf("the id of %s in …%s", e.Title, text[max(0, at-80):min(len(text), at+80)])
		}
	}
}

// Of the fuller demonstration boat at most five verdicts are left untold, each
// with the value at which it turns.
func TestLittleIsLeftUntoldOfTheDemonstrationBoat(t *testing.T) {
	untold := 0
	for _, f := range testboat.Check(t, testboat.Demo(t, "kittiwake"), marinecalc.Options{}).Findings {
		if f.Verdict.Word.Plain() != sheet.CannotTell {
			continue
		}
		if untold++; f.Verdict.Turns == nil {
			t.Errorf("turns nowhere: %s", f.Verdict.Sentence)
		}
	}
	if untold > 5 {
		t.Errorf("%d verdicts are left untold", untold)
	}
}

// The boat with nothing wrong is told so: nothing is over, little is left
// untold. Of the boat that was hardly measured nothing is called OK.
func TestCasesWithoutAFault(t *testing.T) {
	words := func(boat string) map[sheet.Word]int {
		text := testboat.File(t, "testdata", "cases", boat+".json")
		n := map[sheet.Word]int{}
		for _, f := range testboat.Check(t, testboat.Read(t, string(text)), marinecalc.Options{}).Findings {
			n[f.Verdict.Word]++
		}
		return n
	}
	whole := words("nothing-wrong")
	if whole[sheet.Beyond]+whole[sheet.Outside] > 0 || whole[sheet.CannotTell]+whole[sheet.About] > 5 || // two of them the cold target, as nobody weighed her engine; one the blades' whirl, as nobody knows how soft her bearings sit
		whole[sheet.Within] < 20 {
		t.Errorf("nothing is wrong with the boat, and its verdicts are %v", whole)
	}
	if bare := words("hardly-measured"); len(bare) > 0 {
		t.Errorf("hardly anything was measured, and the verdicts are %v", bare)
	}
}
