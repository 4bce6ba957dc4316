package rules

import (
	"regexp"
	"strings"
	"testing"
)

// mayDecide are the rows that rest on common practice or memory and decide all
// the same, by table or by table and row, each with its reason. Everything else
// of these two bases gives brackets.
var mayDecide = map[string]string{
	"usual-values/wanted-life":              aim,
	"usual-values/plan-reserve":             choiceOfPlan,
	"usual-values/time-away":                aim,
	"usual-values/most-drips":               aim,
	"usual-values/gland-rise":               aim,
	"usual-values/packing-over":             aim,
	"usual-values/packing-under":            aim,
	"usual-values/key-safety":               aim,
	"usual-values/coupling-key-safety":      aim,
	"usual-values/zones-to-15-kw":           ofGuides,
	"usual-values/zones-to-300-kw":          ofGuides,
	"vibration-classes":                     ofGuides,
	"boat-proportions":                      "what is told as a slip of the pen: nothing is under or over a limit by it",
	"boat-agreement":                        "what is told as a contradiction: nothing is under or over a limit by it",
	"fault-judgement":                       "how fault finding weighs: a choice of this library, and no figure of a machine",
	"sign-weights":                          "how fault finding weighs: what its words stand for",
	"ways-of-looking":                       "how fault finding weighs: how often answers are wrong",
	"particle-sizes":                        "what a person may ask about: a choice",
	"tightening-passes":                     "steps on the way to the torque: a choice",
	"frequency-meters":                      halfWidth,
	"speed-meters":                          halfWidth,
	"usual-values/mount-frequency-accuracy": halfWidth,
	"service-intervals":                     "when to look: what is overdue by such a row is so by a guide",
	"trend-readings":                        "how far the seasons alone move a reading: what is less is no jump, and it is under no limit by it",
	"trial-stages":                          choice,
	"trial-checks":                          "how far from a baseline is looked at again: a guide",
	"vibration-sources":                     "orders of the kinematics, whose hints are looked into and are under no limit",
}

const (
	aim          = "what is aimed at: its limit is as entered, and a guide until somebody types it"
	ofGuides     = "a bound of guides alone"
	choice       = "how a trial is run: a choice, and no figure of a machine"
	choiceOfPlan = "how much is kept free in a plan: a choice, and no figure of a machine"
	halfWidth    = "the half-width of a reading is a bracket itself"
)

// Memory never decides, and common practice is a guide: no row of these bases
// decides but those named above, nor does one whose source says that a figure
// is from memory. A row that does not decide brackets each of its numbers, or
// says that its source confirms it, and tells what the brackets rest on.
func TestMemoryAndCommonPracticeDecideNothing(t *testing.T) {
	b, met := Standard(), map[string]bool{}
	for _, name := range b.Tables() {
		for _, r := range b.Table(name).Rows.All() {
			numbers := 0
			for _, c := range r.Values.All() {
				if c.IsText {
					continue
				}
				numbers++
				if !r.Confirms(c.Column) && !c.Ranged() {
					t.Errorf("%s/%s: %s is unconfirmed and has no bracket", name, r.ID, c.Column)
				}
			}
			for _, column := range r.Sure.All() {
				if _, ok := r.Values.Find(column); !ok || r.Decides {
					t.Errorf("%s/%s: says that %s is sure, and has none or decides", name, r.ID, column)
				}
			}
			if !r.Decides && r.Bracket == "" {
				t.Errorf("%s/%s: nothing says what its brackets rest on", name, r.ID)
			}
			if !r.Decides || !r.Basis.Guides() || numbers == 0 {
				continue
			}
			switch key := name + "/" + r.ID; {
			case mayDecide[key] != "":
				met[key] = true
			case mayDecide[name] != "":
				met[name] = true
			default:
				t.Errorf("%s decides, and rests on %s (%s)", key, r.Basis, r.Source)
			}
		}
	}
	for key := range mayDecide {
		if !met[key] {
			t.Errorf("%s is not there, or needs no reason any more", key)
		}
	}
}

// Rows of aims bound limits that are as entered, and those of guides guides.
func TestAimsAndGuidesBoundNothingElse(t *testing.T) {
	want := map[string]func(Basis) bool{
		aim:      func(b Basis) bool { return b == AsEntered || b.Guides() },
		ofGuides: Basis.Guides,
	}
	b, held := Standard(), 0
	for key, reason := range mayDecide {
		may := want[reason]
		if may == nil {
			continue
		}
		name, id, _ := strings.Cut(key, "/")
		for _, r := range b.Table(name).Rows.All() {
			if id != "" && r.ID != id {
				continue
			}
			for _, c := range r.Values.All() {
				for _, l := range b.AllLimits().All() {
					if (l.Max.Of == c.Column || l.Min.Of == c.Column) && c.Column != "" {
						held++
						if !may(l.Basis) {
							t.Errorf("%s bounds %s, which is %s", key, l.ID, l.Basis)
						}
					}
				}
			}
		}
	}
	if held < 10 {
		t.Errorf("only %d bounds", held)
	}
}

// sayMemory are the rows and limits that decide although a word of their source
// or note is that something is from memory, each with the reason why no figure
// of theirs rests on it.
var sayMemory = map[string]string{
	"bolt-grades/iso-12.9":                         "its yield strength is nine tenths of the tensile strength by the class number itself",
	"gauges/drip-count":                            "the interval follows from the distribution, and a test holds it against gonum's",
	"gauges/drip-count-short":                      "the same",
	"gauges/drip-count-long":                       "the same",
	"hole-fits/fitted":                             "all bolts of reamed holes bear, by what fitted means; the clause alone is from memory",
	"thread-finishes/plain-cleaned-dry":            "the figure was read where it is quoted; the title alone is from memory",
	"thread-finishes/oiled":                        "the same",
	"shaft-diameter-rules/iacs-m68":                "bounds a guide alone, and class rules print the factor in worked examples",
	"shaft-diameter-rules/iacs-m68-slip-propeller": "the same",
	"waters/sea":                                   "the salinity is that of standard sea water; the range about it is a bracket itself",
	"limit gland-boils":                            "water boils at 100 °C at the pressure of the air: what the scale was made by",
}

// What says that it is from memory decides nothing but for those above, whatever
// basis it gives itself.
func TestWhatSaysMemoryDecidesNothing(t *testing.T) {
	met := map[string]bool{}
	look := func(key string, p Provenance, note string, decides bool) {
		if !decides || p.Basis.Guides() || !strings.Contains(p.Source.String()+note, "from memory") {
			return
		}
		if met[key] = true; sayMemory[key] == "" {
			t.Errorf("%s decides by its basis, %s, and says: %s; %s", key, p.Basis, p.Source, note)
		}
	}
	b := Standard()
	for _, name := range b.Tables() {
		for _, r := range b.Table(name).Rows.All() {
			look(name+"/"+r.ID, r.Provenance, r.Note, r.Decides)
		}
	}
	for _, l := range b.AllLimits().All() {
		look("limit "+l.ID, l.Provenance, l.Note, true)
	}
	for key := range sayMemory {
		if !met[key] {
			t.Errorf("%s is not there, or needs no reason any more", key)
		}
	}
}

// What decides names its source by a title: no "general texts", no "two makers".
func TestWhatDecidesNamesItsSource(t *testing.T) {
	vague := regexp.MustCompile(`(?i)general texts?|general practice|textbooks?$|^(two|several|various|some|most|many) (makers?|texts|handbooks|manuals)\b[^:]*$|^(handbooks?|makers?|manuals?|standards?|geometry|experience)$`)
	decides := 0
	look := func(id string, p Provenance) {
		if p.Basis == "common-practice" || p.Basis == "from-memory" || p.Basis == "calculated" || p.Basis == "as-entered" {
			return
		}
		decides++
		if p.Source.Document == "" || vague.MatchString(p.Source.Document) {
			t.Errorf("%s (%s): %q", id, p.Basis, p.Source.Document)
		}
	}
	b := Standard()
	for _, l := range b.AllLimits().All() {
		look(l.ID, l.Provenance)
	}
	for _, name := range b.Tables() {
		for _, r := range b.Table(name).Rows.All() {
			look(r.ID, r.Provenance)
		}
	}
	if decides < 200 {
		t.Errorf("only %d rows", decides)
	}
}
