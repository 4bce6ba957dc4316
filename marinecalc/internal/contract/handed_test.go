package contract

import (
	"strings"
	"testing"

	"example.org/driveline/schemas"
)

// What the texts say is handed on is what the opened schemas take, and no more.
func TestHandedOnIsWhatSchemasTake(t *testing.T) {
	taken := map[string]bool{}
	var results []string
	for _, id := range schemas.Names() {
		k, err := OpenCalculation(id)
		if err != nil {
			continue // no calculation
		}
		for _, p := range k.Input.Properties {
			for source := range strings.SplitSeq(p.After, "|") {
				taken[source] = true
			}
		}
		for _, p := range k.Result.Properties {
			results = append(results, id+"/"+p.Name)
			if p.Path != id+"/"+p.Name {
				t.Errorf("%s/%s has the path %s", id, p.Name, p.Path)
			}
		}
	}
	handed := 0
	for _, r := range results {
		if HandedOn(r) != taken[r] {
			t.Errorf("%s is handed on: %v, taken: %v", r, HandedOn(r), taken[r])
		}
		if taken[r] {
			handed++
		}
	}
	if handed < 20 || handed > len(results)/4 {
		t.Errorf("%d of %d results are handed on", handed, len(results))
	}
}
