package rules

import (
	"encoding/json"
	"testing"
)

// Of nothing nothing is known: a condition on it is not met, and one that asks for
// just that is.
func TestOfNothingNothingIsKnown(t *testing.T) {
	for text, want := range map[string]bool{
		`{}`:                             true,
		`{"packing": {"any": ["flax"]}}`: false,
		`{"boxBore": {"above": "0 mm"}}`: false,
		`{"packing": {"known": false}}`:  true,
		`{"packing": {"not": ["flax"]}}`: true,
	} {
		var v Valid
		if err := json.Unmarshal([]byte(text), &v); err != nil {
			t.Fatal(text, err)
		}
		if got := v.Meets(nil); got != want {
			t.Errorf("%s: %v", text, got)
		}
	}
}
