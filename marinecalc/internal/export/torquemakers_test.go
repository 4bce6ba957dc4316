package export_test

import (
	"context"
	"fmt"
	"slices"
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"

	"example.org/driveline/marinecalc"
	"example.org/driveline/marinecalc/internal/testboat"
)

// Of several torques that makers give for one joint the card prints the one for what is
// on the thread, one line a thread, or none with all of them named; never that which the
// file happens to have last.
func TestCardOfSeveralMakersTorques(t *testing.T) {
	e, err := marinecalc.New()
	if err != nil {
		t.Fatal(err)
	}
	entry := func(joint, thread, lubrication, torque string) string {
		return fmt.Sprintf(`{"joint": %q, "thread": %q, "lubrication": %q, "torque": %s, "source": "Book (invented), p. %d"}`, joint, thread, lubrication, torque, len(thread+lubrication))
	}
	const oiled, unsaid = `"coupling": {"bolts": {"thread": "M10x1.5", "grade": "iso-8.8", "finish": "oiled"}}`, `"coupling": {"bolts": {"thread": "M10x1.5", "grade": "iso-8.8"}}`
	both := "NOT SETTLED: 60 N·m (M10 x 1.5; dry; Book (invented), p. 12) or 40 N·m (M10x1.5; oiled; Book (invented), p. 12)"
	for name, c := range map[string]struct {
		boat    string
		torques []string
		lines   []string // thread, what is on it, and what stands
	}{
		"the finish is known":        {oiled, []string{entry("coupling-bolts", "M10 x 1.5", "dry", `"60 N·m"`), entry("coupling-bolts", "M10x1.5", "oiled", `"40 N·m"`)}, []string{"M10x1.5|oiled|40 N·m"}},
		"the finish is not known":    {unsaid, []string{entry("coupling-bolts", "M10 x 1.5", "dry", `"60 N·m"`), entry("coupling-bolts", "M10x1.5", "oiled", `"40 N·m"`)}, []string{"M10 x 1.5|dry or oiled|" + both}},
		"a thread that is another":   {oiled, []string{entry("coupling-bolts", "M12x1.75", "", `"80 N·m"`), entry("coupling-bolts", "M10x1.5", "", `"40 N·m"`)}, []string{"M10x1.5|*|40 N·m"}},
		"two threads, none known":    {unsaid, []string{entry("mount-nuts", "M16", "", `"110 N·m"`), entry("mount-nuts", "M12", "dry", `"60 N·m"`)}, []string{"M12|dry|60 N·m", "M16||110 N·m"}},
		"a thread and none":          {unsaid, []string{entry("mount-nuts", "M16", "", `"110 N·m"`), entry("mount-nuts", "", "", `"60 N·m"`)}, []string{"M16||NOT SETTLED: 60 N·m (Book (invented), p. 0) or 110 N·m (M16; Book (invented), p. 3)"}},
		"alike but for the torque":   {unsaid, []string{entry("mount-nuts", "M12", "", `"60 N·m"`), entry("mount-nuts", "M12", "", `"90 N·m"`)}, []string{"M12||NOT SETTLED: 60 N·m (M12; Book (invented), p. 3) or 90 N·m (M12; Book (invented), p. 3)"}},
		"two that one wrench covers": {unsaid, []string{entry("mount-nuts", "M12", "", `"61 N·m"`), entry("mount-nuts", "M12", "", `"60 N·m"`)}, []string{"M12||60 N·m"}},
		"a bare number":              {unsaid, []string{entry("mount-nuts", "M12", "", `60`)}, []string{"M12||60 N·m"}},
	} {
		t.Run(name, func(t *testing.T) {
			var first []marinecalc.TorqueJoint
			for range 2 { // and the other way round
				b := testboat.Read(t, `{"name": "Tern", `+c.boat+`, "torques": [`+strings.Join(c.torques, ", ")+`]}`)
				card, err := e.TorqueCard(context.Background(), b, marinecalc.Options{NoRanges: true})
				if err != nil {
					t.Fatal(err)
				}
				var lines []string
				for _, j := range card.Joints {
					if j.Maker {
						lines = append(lines, j.Thread+"|"+j.Lubrication+"|"+j.Stands())
						if (j.Unsettled == "") == strings.Contains(j.Range, "take the other out") {
							t.Errorf("%+v", j)
						}
					}
				}
				for i := range lines {
					if i < len(c.lines) && strings.Contains(c.lines[i], "*") {
						c.lines[i] = strings.Replace(c.lines[i], "*", card.Joints[0].Lubrication, 1)
					}
				}
				if !slices.Equal(lines, c.lines) {
					t.Errorf("%q, want %q", lines, c.lines)
				}
				if first == nil {
					first = card.Joints
				} else if diff := cmp.Diff(first, card.Joints); diff != "" {
					t.Errorf("the order of entries decides: %s", diff)
				}
				slices.Reverse(c.torques)
			}
		})
	}
}

// Nor does the order decide of every joint at once, by the card, the sheets and what
// of the boat file disagrees.
func TestTheOrderOfTorquesMeansNothing(t *testing.T) {
	var entries []string
	for _, joint := range []string{"coupling-bolts", "output-nut", "propeller-nut", "pinch-bolts", "set-screws", "mount-nuts", "gearbox-bolts"} {
		for i, on := range []string{"", "dry", "oiled"} {
			entries = append(entries, fmt.Sprintf(`{"joint": %q, "lubrication": %q, "torque": "%d N·m", "source": "Book (invented)"}`, joint, on, 60-15*i))
		}
	}
	page := func() string {
		b := testboat.Read(t, `{"name": "Tern", "outputFlange": {"nutTorque": "200 N·m"}, "propeller": {"nutTorque": "75 N·m"},
			"makersFigures": [{"of": "bolt-preload/wrenchSetting", "value": "90 N·m", "source": {"document": "Leaflet (invented)"}}], "torques": [`+strings.Join(entries, ", ")+`]}`)
		s, err := marinecalc.Check(b, marinecalc.Options{NoRanges: true})
		if err != nil {
			t.Fatal(err)
		}
		e, _ := marinecalc.New()
		card, err := e.TorqueCard(context.Background(), b, marinecalc.Options{NoRanges: true})
		if err != nil {
			t.Fatal(err)
		}
		said := ""
		for _, d := range s.Disagree {
			said += d.Conflict.Text + "\n"
		}
		return said + marinecalc.TorquePage(card)
	}
	one := page()
	slices.Reverse(entries)
	if diff := cmp.Diff(one, page()); diff != "" {
		t.Error(diff)
	}
	if n := strings.Count(one, "<b>NOT SETTLED: "); n != 7 {
		t.Errorf("%d joints of 7 not settled:\n%s", n, one)
	}
}

// A maker's figure and a maker's torque that are further apart than a wrench are not
// settled, of every joint that has both places.
func TestCardOfTwoMakersTorques(t *testing.T) {
	for joint, of := range map[string]string{"output-nut": "output-flange/nutTorque", "coupling-bolts": "bolt-preload/wrenchSetting"} {
		joints, _ := cardOf(t, testboat.Read(t, fmt.Sprintf(`{"name": "Tern", "torques": [{"joint": %q, "torque": "40 N·m", "source": "Gearbox book"}], "makersFigures": [{"of": %q, "value": "55 N·m", "source": {"document": "Leaflet"}}]}`, joint, of)))
		if j := joints[joint]; j.Torque != "" || j.Unsettled != "NOT SETTLED: 55 N·m (Leaflet) or 40 N·m (Gearbox book)" {
			t.Errorf("%+v", j)
		}
	}
}
