package export_test

import (
	"context"
	"maps"
	"os"
	"path/filepath"
	"regexp"
	"slices"
	"strings"
	"testing"

	"example.org/driveline/marinecalc"
	"example.org/driveline/marinecalc/internal/testboat"
	"example.org/driveline/marinecalc/quantity"
)

var givesWay = regexp.MustCompile(`can (?:yield|break) from ([\d.]+ (?:N·m|lbf·ft|lbf·in))`)

// No torque stands as a plain figure above what its own line says can yield or break:
// on no boat of testdata, and none of these with all its torques a wrench too long.
func TestNoPlainTorqueAboveWhatItsLineSaysCanYield(t *testing.T) {
	torque, _ := quantity.Lookup("torque")
	edges, unsettled := 0, map[string]bool{}
	e, err := marinecalc.New()
	if err != nil {
		t.Fatal(err)
	}
	boats, _ := filepath.Glob(testboat.Root("testdata", "boats", "*.json"))
	cases, _ := filepath.Glob(testboat.Root("testdata", "cases", "*.json"))
	for _, file := range slices.Concat(boats, cases) {
		text, err := os.ReadFile(file)
		if err != nil {
			t.Fatal(err)
		}
		card, err := e.TorqueCard(context.Background(), testboat.Read(t, string(text)), marinecalc.Options{Trials: 512})
		if err != nil {
			t.Fatalf("%s: %v", file, err)
		}
		marked := 0
		for _, j := range card.Joints {
			not := j.Unsettled != ""
			if not {
				marked++
				unsettled[j.Joint] = true
			}
			stands, err := torque.Parse(j.Torque)
			for _, at := range givesWay.FindAllStringSubmatch(j.Range, -1) {
				edge, bad := torque.Parse(at[1])
				if edges++; bad != nil || !not && (err != nil || stands.SI >= edge.SI) {
					t.Errorf("%s, %s: %q stands beside %q", file, j.Joint, j.Torque, j.Range)
				}
			}
		}
		if n := strings.Count(marinecalc.TorquePage(card), "<b>NOT SETTLED: "); n != marked {
			t.Errorf("%s: %d of %d not settled on the page", file, n, marked)
		}
	}
	if edges < 2 || !unsettled["propeller-nut"] {
		t.Errorf("%d edges read, %v not settled: the boats try nothing", edges, slices.Collect(maps.Keys(unsettled)))
	}
	for _, figures := range []map[string]any{
		{"torques": []any{map[string]any{"joint": "coupling-bolts", "torque": "200 N·m", "source": "own"}}, "outputFlange.nutTorque": "2000 N·m", "propeller.nutTorque": "150 N·m", "coupling.bore.pinchTorque": "150 N·m"},
		{"torques": []any{map[string]any{"joint": "pinch-bolts", "torque": "160 N·m", "source": "own"}}, "coupling.bore.pinchTorque": "150 N·m"},
	} {
		for id, j := range jointsWith(t, "boats/kittiwake", figures) {
			if stands, _ := torque.Parse(j.Torque); stands.SI > 120 && id != "output-nut" {
				t.Errorf("%s stands plainly: %+v", id, j)
			}
			if j.Unsettled != "" {
				unsettled[id] = true
			}
		}
	}
	for _, id := range []string{"coupling-bolts", "output-nut", "pinch-bolts", "propeller-nut"} {
		if !unsettled[id] {
			t.Errorf("%s is never told as not settled", id)
		}
	}
	if j := jointsWith(t, "boats/kittiwake", nil)["pinch-bolts"]; j.Torque != "36 N·m" {
		t.Errorf("a sound joint: %+v", j)
	}
}

// What a joint clamps is told as such of one that stands: of one that is worn, stretched or
// short what it would clamp, and nothing of a torque that is not to be set.
func TestCardTellsNoClampOfAJointThatDoesNotStand(t *testing.T) {
	for _, c := range []struct {
		boat        string
		figures     map[string]any
		joint       string
		would, will bool
	}{
		{"boats/kittiwake", nil, "output-nut", false, true},
		{"boats/kittiwake", nil, "coupling-bolts", false, true},
		{"cases/worn-flange-face", nil, "output-nut", true, false},
		{"cases/bolt-too-short", nil, "coupling-bolts", true, false},
		{"boats/kittiwake", map[string]any{"coupling.bolts.freeLength": "45.12 ± 0.005 mm", "coupling.bolts.freeLengthNew": "45 ± 0.005 mm"}, "coupling-bolts", true, false},
		{"boats/kittiwake", map[string]any{"coupling.bore.pinchTorque": "150 N·m"}, "pinch-bolts", false, false},
		{"boats/kittiwake", map[string]any{"outputFlange.nutTorque": "2000 N·m"}, "output-nut", false, false},
	} {
		r := jointsWith(t, c.boat, c.figures)[c.joint].Range
		if strings.Contains(r, "it would clamp ") != c.would || strings.Contains(r, "clamps ") != c.will {
			t.Errorf("%s of %s with %v: %s", c.joint, c.boat, c.figures, r)
		}
	}
}

// A sheet says of its own torque what the card says of it, for whoever prints that
// sheet alone; one that stands says nothing.
func TestSheetsSayThatTheirTorqueIsNotSettled(t *testing.T) {
	b := testboat.Demo(t, "juniper")
	e, err := marinecalc.New()
	if err != nil {
		t.Fatal(err)
	}
	card, err := e.TorqueCard(context.Background(), b, marinecalc.Options{})
	if err != nil {
		t.Fatal(err)
	}
	at := slices.IndexFunc(card.Joints, func(j marinecalc.TorqueJoint) bool { return j.Joint == "propeller-nut" })
	s, err := marinecalc.Run("propeller-taper", []byte(`{}`), marinecalc.Options{Boat: b})
	if err != nil {
		t.Fatal(err)
	}
	if got := s.Input("nutTorque").Unsettled; got == "" || got != card.Joints[at].Unsettled || card.Joints[at].Torque != "" {
		t.Errorf("the sheet has %q, the card %+v", got, card.Joints[at])
	}
	// Of three finishes of one bolt: one within all limits, one whose scatter alone
	// reaches over the proof load in few trials, one of high friction whose torque
	// twists the bolt to its yield in a third of them.
	for finish, stands := range map[string]bool{"oiled": true, "zinc-shigley": true, "zinc-bickford": false} {
		got := testboat.Run(t, "bolt-preload", `{"thread": "M10x1.5", "grade": "iso-8.8", "finish": "`+finish+`"}`, marinecalc.Options{}).Result("wrenchSetting").Unsettled
		if (got == "") != stands {
			t.Errorf("%s: %q", finish, got)
		}
	}
}
