package catalogue_test

import (
	"math"
	"regexp"
	"strings"
	"testing"

	"example.org/driveline/marinecalc"
	"example.org/driveline/marinecalc/internal/catalogue"
	"example.org/driveline/marinecalc/internal/testboat"
	"example.org/driveline/marinecalc/rules"
	"example.org/driveline/marinecalc/sheet"
)

// byItsFigure is the advice that goes by a figure alone, whatever the verdict on
// it, and why.
var byItsFigure = map[string]string{
	"wear-turn-by-hand":          look,
	"life-dented":                look,
	"read-the-thermometer-again": look,
	"droop-check-by-hand":        look,
	"packing-fewer":              look,
	"shaft-law-thicker":          look,
	"backlash-hub-clip":          look,
	"whirl-close-bearings":       look,
	"whirl-thin-margin":          look,
	"packing-too-thick":          "what is done with the packing that there is",
	"stop-the-hot-gland":         danger,
	"ease-the-follower":          danger,
	"gland-is-dry":               danger,
	"warm-though-it-leaks":       danger,
	"no-drip-holds-it":           danger,
	"rise-asked-is-small":        danger,
	"hotter-than-computed":       danger,
	"watch-the-gland":            danger,
}

const (
	look   = "it asks for a look, a reading or a question, and no part is touched"
	danger = "a gland that runs hot or dry does not wait for a finer thermometer"
)

// Advice to do something does not follow from a figure of which the verdict is not
// told: where it goes by a number that has a limit, it asks for that limit's word.
func TestAdviceAsksForTheVerdictOnItsFigure(t *testing.T) {
	book := rules.Standard()
	seen := map[string]bool{}
	for _, c := range catalogue.Calculations {
		limited := map[string][]string{}
		for _, l := range book.Limits(c.ID).All() {
			limited[l.On] = append(limited[l.On], l.ID)
		}
		for _, a := range book.Advice(c.ID).All() {
			asks := a.Limit != ""
			for range a.OtherVerdicts.Limits() {
				asks = true
			}
			for name, wanted := range a.Valid.Misses(func(string) (float64, string, bool) { return math.NaN(), "", true }) {
				if asks || len(limited[name]) == 0 || math.IsInf(wanted.Low, -1) && math.IsInf(wanted.High, 1) { // no number
					continue
				}
				seen[a.ID] = true
				if byItsFigure[a.ID] == "" {
					t.Errorf("%s/%s goes by %s and asks for no verdict of %v: %s", c.ID, a.ID, name, limited[name], a.Text)
				}
			}
		}
	}
	for id := range byItsFigure {
		if !seen[id] {
			t.Errorf("%s is excepted for nothing", id)
		}
	}
}

// Where a cold target cannot be told nothing says to set it, and where it is surely
// needed, or surely not, it does.
func TestAColdTargetThatIsNotToldIsNotSet(t *testing.T) {
	const known = `, "expansion": 1.1e-5, "usualDeflection": "4 mm", "creepPerDecade": "4 %", "drivingShare": "0 %"`
	for _, c := range []struct{ rest, says, not string }{
		{``, "", "set it"},
		{known + `, "standing": "5 year", "frontRise": "20 K", "aftRise": "20 K", "setWhere": "ashore"`, "", "set it even and in line"},
		{known + `, "standing": "5 year", "frontRise": "5 K", "aftRise": "5 K"`, "", "set"},
		{known + `, "standing": "10 year", "frontRise": "1 K", "aftRise": "1 K"`, "Set it even and in line", "target"},
		{known + `, "standing": "5 year", "frontRise": "110 K", "aftRise": "5 K", "afloatGapVertical": "-0.2 mm"`, "set the target", "even and in line"},
	} {
		s := testboat.Run(t, "alignment-target", "{"+belowTheLine+c.rest+"}", marinecalc.Options{})
		told := false
		for _, id := range []string{"target-gap-needed", "target-offset-needed"} {
			told = told || s.Verdict(id).Word.Plain() == sheet.Beyond
		}
		all := s.Result("worth").Text
		for _, n := range s.Next {
			all += "\n" + n.Text
		}
		all = strings.ReplaceAll(all, "or set it even, run, and read it warm", "") // which is how to find out
		all = strings.ReplaceAll(all, "Set it afloat", "")
		if c.says != "" && !strings.Contains(all, c.says) || strings.Contains(strings.ToLower(all), c.not) {
			t.Errorf("%s (%v): %s", c.rest, told, all)
		}
	}
}

// What forbids power in words holds back the steps that run the shaft: its limit
// says so, or it does itself, and names causes that there are.
func TestWhatForbidsPowerStopsTheShaft(t *testing.T) {
	book := rules.Standard()
	forbids := regexp.MustCompile(`Do not run (astern )?under power|lever in neutral|[Nn]o power astern`)
	causes := map[string]bool{}
	for _, c := range book.Causes().All() {
		causes[c.ID] = true
	}
	found := 0
	stops := map[string]bool{} // by limit, and by calculation and limit
	for _, c := range catalogue.Calculations {
		for _, l := range book.Limits(c.ID).All() {
			for _, id := range l.Stops.All() {
				stops[l.ID], stops[c.ID+"/"+l.ID] = true, true
				if !causes[id] {
					t.Errorf("%s names no cause: %s", l.ID, id)
				}
			}
		}
	}
	for _, c := range catalogue.Calculations {
		for _, a := range book.Advice(c.ID).All() {
			if a.Limit != "" && rules.Contains(a.Words, sheet.Beyond) && forbids.MatchString(a.Text) {
				if found++; !stops[a.Limit] && a.Stops.Len() == 0 {
					t.Errorf("%s/%s forbids power, and neither it nor %s stops anything", c.ID, a.ID, a.Limit)
				}
			}
		}
	}
	if found < 5 {
		t.Errorf("only %d", found)
	}
}
