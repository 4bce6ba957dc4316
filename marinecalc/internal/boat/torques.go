package boat

import (
	"encoding/json"
	"fmt"
	"sort"
	"strings"

	"example.org/driveline/marinecalc/internal/contract"
	"example.org/driveline/marinecalc/quantity"
)

// Torque is a maker's torque of one joint, and what it holds for.
type Torque struct {
	Joint       string // by the table torque-joints
	Thread      string // "" where the maker's paper, or whoever read it, says none
	Lubrication string // likewise
	Text        string // as the maker prints it
	SI          float64
	Source      string // document and page
	Where       string // in the boat file
}

// Torques are the makers' torques that the boat file has of its joints, in an order
// of their own: by joint, thread, what is on it, and torque. How the file lists them
// means nothing.
func (b *Boat) Torques() (list []*Torque) {
	kind, _ := quantity.Lookup("torque")
	value, _, _, _ := b.Find("/torques")
	for i, entry := range Objects(value) {
		text := func(name string) string { t, _ := entry[name].(string); return strings.TrimSpace(t) }
		si, ok := Number(kind, entry["torque"])
		if !ok {
			continue // the schema lets none through
		}
		t := &Torque{text("joint"), text("thread"), text("lubrication"), text("torque"), si, text("source"), fmt.Sprintf("/torques/%d/torque", i)}
		if _, bare := entry["torque"].(json.Number); bare {
			t.Text = kind.In("N·m", "lbf·ft").Print(si, quantity.Metric)
		}
		list = append(list, t)
	}
	key := func(t *Torque) string {
		return fmt.Sprintf("%s\n%s\n%s\n%20f\n%s\n%s", t.Joint, Folded(t.Thread), Folded(t.Lubrication), t.SI, t.Text, t.Source)
	}
	sort.SliceStable(list, func(i, j int) bool { return key(list[i]) < key(list[j]) })
	return list
}

// TorquesOf are those of one joint; none of no boat.
func (b *Boat) TorquesOf(joint string) (list []*Torque) {
	if b == nil {
		return nil
	}
	for _, t := range b.Torques() {
		if t.Joint == joint {
			list = append(list, t)
		}
	}
	return list
}

// jointAt is whose torque stands at a pointer of the boat file.
var jointAt = map[string]string{"/coupling/bolts/torqueUsed": "coupling-bolts", "/outputFlange/nutTorque": "output-nut", "/propeller/nutTorque": "propeller-nut", "/coupling/bore/pinchTorque": "pinch-bolts"}

// OnlyTorqueAt is the maker's torque of the joint whose torque stands at a pointer, where
// the file has no other of it; of several none is taken.
func (b *Boat) OnlyTorqueAt(pointer string) *Torque {
	joint, is := jointAt[pointer]
	if !is || b == nil {
		return nil
	}
	if held, _ := contract.Resolve(b.document, []string{"coupling", "bore", "holdMethod"}); joint == "pinch-bolts" && held == "taper" {
		joint = "coupling-nut"
	}
	if list := b.TorquesOf(joint); len(list) == 1 {
		return list[0]
	}
	return nil
}

// Folded is a short text by which two of one meaning are alike: "M10 × 1.5" is "m10x1.5".
func Folded(text string) string {
	return strings.ReplaceAll(strings.ReplaceAll(strings.ToLower(text), " ", ""), "×", "x")
}
