package rules

import (
	"regexp"
	"slices"
	"strings"
	"testing"
)

// The figures of a step are those of the part that it is on, and those that size a
// part to buy are that part's own: the key of the propeller says nothing of the
// coupling's. Which part of the line a calculation is on stands in the table
// line-parts; what a title is on, here.
func TestFiguresBelongToThePartOfTheStep(t *testing.T) {
	book := Standard()
	partOf := map[string]string{}
	for _, row := range book.Table("line-parts").Rows.All() {
		for _, id := range strings.Fields(row.Values.Of("calculations").Text) {
			partOf[id] = row.ID
		}
	}
	on := []struct {
		title string // first that matches
		parts string
	}{
		{"propeller shaft", "shaft"},
		{"output (flange|shaft|nut|seal)|gearbox|fluid", "gearbox"},
		{"mount", "mounts coupling"}, // set by what the coupling reads
		{"coupling|bolts", "coupling"},
		{"key of the propeller|propeller|hub seats", "propeller"},
		{"stern bearing|bearing or change", "bearing"},
		{"gland|packing|drips", "gland"},
		{"shaft|intermediate", "shaft"},
		{"engine", "mounts"},
	}
	// What a part needs of another part of the line.
	beside := map[string]string{
		"key-strength/keyWidth propeller": "the shaft's key in the propeller", "key-strength/keyHeight propeller": "the shaft's key in the propeller", "key-strength/keyLength propeller": "the shaft's key in the propeller",
		"shaft-droop/liftReading coupling": "the shaft's end is held up while the coupling is read", "shaft-withdrawal/workingClearance coupling": "how far the shaft slides back when it is parted",
		"shaft-withdrawal/workingClearance gearbox": "the same, for the flange to come off", "shaft-strength/shaftDiameter bearing": "the shaft that runs in it", "bearing-clearance/leastNewClearance shaft": "how tight its bearing is",
		"bearing-clearance/wornLimit shaft": "both are out together", "shaft-torque/gearRatioAhead gearbox": "the ratio that the shaft's torque rests on", "shaft-torque/shaftSpeed propeller": "what turns it",
		"alignment-target/setGapTop coupling": "the mounts' target is the coupling's gap", "alignment-target/setGapBottom coupling": "the same",
	}
	// Of the whole boat, or of the work itself.
	whole := []string{"torque-card", "trial-run", "start-the-watch", "sample-again", "read-as-found"}
	met, told := 0, map[string]bool{}
	hold := func(what, title, of string) {
		for _, o := range on {
			if !regexp.MustCompile(`(?i)` + o.title).MatchString(title) {
				continue
			}
			id, _, _ := strings.Cut(of, "/")
			met++
			for _, part := range strings.Fields(o.parts) {
				if partOf[id] == part {
					return
				}
				if _, is := beside[of+" "+part]; is {
					told[of+" "+part] = true
					return
				}
			}
			t.Errorf("%s (%s) is on %s, and has %s, which is on %s", what, title, o.parts, of, partOf[id])
			return
		}
		t.Errorf("%s: no part is known of “%s”, which has %s", what, title, of)
	}
	for _, s := range book.Steps().All() {
		if slices.Contains(whole, s.ID) {
			continue
		}
		for _, of := range s.Use.All() {
			hold(s.ID, s.Title, of)
		}
		for _, c := range s.Cases.All() {
			for _, of := range c.Use.All() {
				hold(s.ID, s.Title, of)
			}
		}
	}
	for _, p := range book.Parts().All() {
		for _, of := range p.Sizes.All() {
			hold(p.ID, p.Title, of)
		}
	}
	for key, why := range beside {
		if !told[key] {
			t.Errorf("nothing has %s any more (%s)", key, why)
		}
	}
	if met < 80 {
		t.Errorf("only %d figures held", met)
	}
}

// What ties a part, a step or a case of it to a choice names the choice's own
// words: one that is misspelt would tie it to nothing. A joint's torque is named
// once on the card, and its verdicts are limits that there are.
func TestChoicesAndJointsNameWhatThereIs(t *testing.T) {
	book := Standard()
	words := map[string][]string{
		"propeller-taper/keyed": {"yes", "no"}, "coupling-bore/keyed": {"yes", "no"},
		"backlash/flangeHeldBy": {"nut", "end-bolts", "clip"}, "fault-finding/seal-kind": {"yes", "no"},
		"coupling-bore/holdMethod": {"clamp", "set-screws", "interference", "taper"},
		"propeller-taper/nutLock":  {"cotter", "tab-washer", "nylon-insert", "second-nut", "makers-lock", "none", "not-known"},
	}
	for _, row := range book.Table("nut-orders").Rows.All() {
		words["propeller-taper/nutOrder"] = append(words["propeller-taper/nutOrder"], row.ID)
	}
	check := func(id string, ties ...OtherThan) {
		for _, w := range ties {
			if known := words[w.Of]; w.Of != "" && known != nil {
				for _, word := range w.Not.All() {
					if !slices.Contains(known, word) {
						t.Errorf("%s: %s is never %q", id, w.Of, word)
					}
				}
			}
		}
	}
	for _, s := range book.Steps().All() {
		check(s.ID, s.Unless)
		if (s.Unless.Of == "") != (s.Absent == "") {
			t.Errorf("%s: left out and why belong together", s.ID)
		}
		for _, c := range s.Cases.All() {
			check(s.ID, c.Only, c.Unless)
		}
	}
	for _, p := range book.Parts().All() {
		check(p.ID, p.Only, p.Unless)
	}
	limits := map[string]bool{}
	for _, l := range book.AllLimits().All() {
		limits[l.Calculation+"/"+l.ID] = true
	}
	said := map[string]bool{}
	for _, c := range book.AllCautions().All() {
		for _, of := range c.Calculations.All() {
			said[of+"/"+c.ID] = true
		}
	}
	for _, a := range book.AllAdvice().All() {
		said[a.Calculation+"/"+a.ID] = true
	}
	for _, row := range book.Table("torque-joints").Rows.All() {
		for _, at := range strings.Fields(row.Values.Of("minds").Text) {
			if !said[at] {
				t.Errorf("%s: no sheet says %s", row.ID, at)
			}
		}
		for _, column := range []string{"heeds", "asks", "holds", "cures"} {
			for _, at := range strings.Fields(row.Values.Of(column).Text) {
				if !limits[at] {
					t.Errorf("%s: there is no limit %s", row.ID, at)
				}
			}
		}
	}
}
