package diagnosis_test

import (
	"context"
	"slices"
	"testing"

	"example.org/driveline/marinecalc"
	"example.org/driveline/marinecalc/internal/diagnosis"
)

// A line is brought into line when all that stands in it is back (common
// practice, no source): alignment comes last of mounts, gearbox, bearing and
// shaft, whatever brought on what.
func TestAlignmentIsCuredLast(t *testing.T) {
	s, err := marinecalc.Options{}.Session(context.Background(), nil)
	if err != nil {
		t.Fatal(err)
	}
	for name, found := range map[string][]string{
		"gearbox after tired mounts": {"output-flange-play", "mount-rubber", "coupling-gaps"},
		"stern bearing":              {"bearing-play", "coupling-gaps"},
		"loose mount":                {"mount-nut-turns", "coupling-gaps"},
		"bent shaft":                 {"shaft-runout", "coupling-gaps", "bearing-play"},
		"output nut":                 {"output-nut-turns", "coupling-gaps"},
		"elastic piece":              {"coupling-insert-seen", "coupling-gaps"},
	} {
		out, err := diagnosis.Find(s, diagnosis.Input{Answers: yes(found...), Lies: "ashore"})
		if err != nil {
			t.Fatal(err)
		}
		var order []string
		for _, c := range out.CureOrder {
			if c.Cause != "" && c.Known == "found" {
				order = append(order, c.Cause)
			}
		}
		if len(order) != len(found) || order[len(order)-1] != "coupling-misaligned" {
			t.Errorf("%s: cured in the order %v", name, order)
		}
	}
	// Where the work leaves it open what brings on the other comes first.
	out, err := diagnosis.Find(s, diagnosis.Input{Answers: yes("idle-read", "damper-seen"), Lies: "afloat"})
	if err != nil {
		t.Fatal(err)
	}
	order := []string{out.CureOrder[0].Cause, out.CureOrder[1].Cause}
	if !slices.Equal(order, []string{"idle-low", "damper-worn"}) {
		t.Errorf("idle and damper plate: %v", order)
	}
}
