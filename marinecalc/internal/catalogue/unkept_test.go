package catalogue

import (
	"slices"
	"testing"

	"example.org/driveline/marinecalc/internal/contract"
)

// allKept are the calculations each of whose inputs has a place in the boat file,
// comes from another sheet, or says why it has none. What another calculation
// says of an input of its own is held to be no more than that.
var allKept = []string{"coupling-bore", "propeller-taper", "output-flange", "thread-engagement", "line-joints"}

// What an owner reads at either end of the shaft is kept with the boat.
func TestWhatIsReadAtTheShaftsEndsIsKept(t *testing.T) {
	for _, k := range openAll(t) {
		for _, p := range k.Input.Properties {
			where := k.ID + "/" + p.Name
			switch {
			case p.Boat != "" && p.Unkept != "":
				t.Errorf("%s has a place in the boat file and says why it has none", where)
			case p.Unkept != "" && kept(p):
				t.Errorf("%s is read or set by the owner, and has no place in the boat file (%s)", where, p.Unkept)
			case slices.Contains(allKept, k.ID) && p.Boat == "" && p.After == "" && p.Unkept == "":
				t.Errorf("%s has no place in the boat file, and does not say why", where)
			}
		}
	}
}

// kept tells that the owner takes a figure with a gauge, counts or sees it, or sets
// it, so that it stays with the boat, but for what is worked with that day.
func kept(p *contract.Property) bool {
	read := p.Setting || p.Seen || p.ReadBy != "" || slices.Contains([]string{"machined", "rule", "tape"}, p.Bare)
	return read && p.Unkept != "tool"
}
