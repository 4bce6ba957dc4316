package rules

import (
	"slices"
	"strings"
	"testing"
)

// notOfTheTorque are the limits of the sheets that a joint's clamp rests on that no
// row of the torque card names, each with why.
var notOfTheTorque = map[string]string{
	"bolt-preload/torque-in-question-too-loose":      "of the torque that is asked about, not the card's",
	"bolt-preload/torque-in-question-needed":         "of the torque that is asked about, not the card's",
	"bolt-preload/bolt-shrunk":                       "two lengths of which one is read wrong: of the reading, not of the bolt",
	"bolt-fit/head-room":                             "room for the work, not what the bolt clamps",
	"bolt-fit/nut-room":                              "room for the work, not what the bolt clamps",
	"bolt-fit/socket-room":                           "room for the work, not what the bolt clamps",
	"coupling-grip/grip-clamp-proof":                 "of a clamp that was typed; that of the torque is bolt-proof-load",
	"coupling-grip/grip-one-loose":                   "of a bolt that is loose: what if, not the torque as set",
	"coupling-grip/grip-lower-grade":                 "of other bolts: what if, not the torque as set",
	"coupling-grip/bolts-in-shear":                   "of bolts in shear once it slips; that it slips is grip-ahead to grip-peak",
	"coupling-grip/fitted-bolts-abs":                 "the diameter of fitted bolts by a class rule: no torque",
	"coupling-grip/fitted-bolts-gl":                  "the diameter of fitted bolts by a class rule: no torque",
	"coupling-bore/bore-taper-bare":                  "with the nut lost: what if, not the torque as set",
	"coupling-bore/bore-heat":                        "of warming the flange: no torque",
	"output-flange/flange-flanks":                    "of the spline's or key's flanks: no clamp",
	"output-flange/flange-lasts-season":              "how long what is left lasts; that it is low or gone is flange-clamp-loose and flange-clamp-gone",
	"output-flange/flange-wear-grows-back":           "two readings of which one is wrong: of the reading",
	"output-flange/flange-hold-bolts":                "of the bar that holds the flange meanwhile: told at its own step",
	"output-flange/flange-hold-bar":                  "of the bar that holds the flange meanwhile: told at its own step",
	"propeller-taper/taper-hub-class":                "a class rule's reserve, as a guide; that the hub yields is taper-hub-yields",
	"propeller-taper/taper-holds-bare":               "with the nut lost: what if, not the torque as set",
	"thread-engagement/thread-bolt-breaks-first":     "which gives way first past the clamp; that the clamp strips the thread is thread-strips",
	"thread-engagement/thread-rule-of-thumb":         "a rule of thumb beside thread-strips",
	"thread-engagement/thread-stud-rule":             "a rule of thumb beside thread-strips",
	"key-strength/key-at-peak":                       "of the key alone: cone and key are taper-torque-ahead to taper-torque-peak, and where the card leaves the rest to the key it reads this itself",
	"key-strength/key-itself-at-peak":                "as key-at-peak",
	"key-strength/key-shaft-at-peak":                 "as key-at-peak",
	"key-strength/key-hub-at-peak":                   "as key-at-peak",
	"key-strength/key-at-full-power":                 "as key-at-peak",
	"key-strength/key-yields-at-full-power":          "as key-at-peak",
	"key-strength/key-known-yields":                  "as key-at-peak",
	"coupling-key/coupling-key-at-peak":              "of the key alone: friction and key are bore-torque-ahead to bore-torque-peak",
	"coupling-key/coupling-key-itself-at-peak":       "as coupling-key-at-peak",
	"coupling-key/coupling-key-shaft-at-peak":        "as coupling-key-at-peak",
	"coupling-key/coupling-key-hub-at-peak":          "as coupling-key-at-peak",
	"coupling-key/coupling-key-at-full-power":        "as coupling-key-at-peak",
	"coupling-key/coupling-key-known-yields":         "as coupling-key-at-peak",
	"coupling-key/coupling-key-yields-at-full-power": "as coupling-key-at-peak",
	"backlash/backlash-allowed":                      playAlone,
	"backlash/backlash-doubled":                      playAlone,
	"backlash/backlash-grows-back":                   playAlone,
	"backlash/backlash-coupling-key":                 playAlone,
	"backlash/backlash-propeller-key":                playAlone,
	"backlash/backlash-coupling-free-unsaid":         "of a coupling that is not said: backlash-coupling-free is of one that is",
	"backlash/backlash-hub-free-unsaid":              "of a nut whose torque is not known, which the card has none for",
	"output-flange/flange-friction-steady":           "a guide on what spline or key rub, of which the maker's torque, and no other, decides",
	"backlash/backlash-coupling-free-screws":         playAlone,
	"backlash/backlash-coupling-key-unsized":         playAlone,
	"backlash/backlash-hub-negative":                 noPlay,
	"backlash/backlash-coupling-negative":            noPlay,
	"backlash/backlash-propeller-negative":           noPlay,
	"backlash/backlash-total-negative":               noPlay,
}

const (
	playAlone = "play of the whole line, or of a key beside a joint that holds by friction: backlash-hub-free, -coupling-free and -taper-free say that a joint turns"
	noPlay    = "a reading that cannot be: it takes its own verdict back"
)

// Every limit of the sheets that a joint's clamp rests on is heeded by a row of the
// torque card, or left out for a reason: those that its torques and verdicts are of,
// those that these hang on, and the keys.
func TestTorqueCardHeedsEveryLimitOfItsJoints(t *testing.T) {
	book := Standard()
	heeded, sheets := map[string]bool{}, map[string]bool{"key-strength": true, "coupling-key": true}
	of := func(at string) {
		id, _, _ := strings.Cut(at, "/")
		sheets[id] = true
	}
	for _, row := range book.Table("torque-joints").Rows.All() {
		of(row.Values.Of("torque").Text)
		for _, column := range []string{"heeds", "asks", "holds", "cures"} {
			for _, at := range strings.Fields(row.Values.Of(column).Text) {
				heeded[at] = true
				of(at)
			}
		}
		found := row.Values.Of("found").Text
		if (row.Values.Of("cures").Text+found == "") != (row.Values.Of("first").Text == "") {
			t.Errorf("%s: what a wrench cures says what comes first", row.ID)
		}
		is := found == ""
		for _, c := range book.Causes().All() {
			is = is || c.ID == found
		}
		if !is {
			t.Errorf("%s: there is no cause %s", row.ID, found)
		}
	}
	var known []string
	for _, l := range book.AllLimits().All() {
		at := l.Calculation + "/" + l.ID
		known = append(known, at)
		if heeded[at] {
			for _, hangs := range l.While.All() {
				of(hangs)
			}
		}
	}
	for _, at := range known {
		id, _, _ := strings.Cut(at, "/")
		switch why := notOfTheTorque[at]; {
		case !sheets[id]:
		case !heeded[at] && why == "":
			t.Errorf("no joint of the torque card heeds %s, and there is no reason", at)
		case heeded[at] && why != "":
			t.Errorf("%s is heeded and left out", at)
		}
	}
	for at := range notOfTheTorque {
		if !slices.Contains(known, at) {
			t.Errorf("there is no limit %s", at)
		}
	}
}
