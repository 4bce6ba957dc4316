package contract

import (
	"encoding/json"
	"slices"
	"strings"
	"testing"
)

// A whole schema refers to nothing outside, keeps the order of its inputs and
// results, and says of each what its properties say.
func TestWholeSchemas(t *testing.T) {
	for _, id := range []string{"bolt-preload", "coupling-alignment", "dial-alignment", "mount-load", "fault-finding"} {
		text, err := Whole(id)
		if err != nil {
			t.Fatal(err)
		}
		if strings.Contains(string(text), `.schema.json#`) {
			t.Errorf("%s still refers to another document", id)
		}
		c, err := OpenCalculation(id)
		if err != nil {
			t.Fatal(err)
		}
		type object struct {
			Properties json.RawMessage `json:"properties"`
		}
		var whole struct {
			Defs struct {
				Input  object `json:"input"`
				Result object `json:"result"`
			} `json:"$defs"`
		}
		if err := json.Unmarshal(text, &whole); err != nil {
			t.Fatal(err)
		}
		for _, of := range []struct {
			text json.RawMessage
			list []*Property
		}{{whole.Defs.Input.Properties, c.Input.Properties}, {whole.Defs.Result.Properties, c.Result.Properties}} {
			members, err := MembersOf(of.text)
			if err != nil {
				t.Fatal(err)
			}
			if !slices.EqualFunc(members, of.list, func(m Member, p *Property) bool {
				var said struct{ Title, Description, Level string }
				if err := json.Unmarshal(m.Value, &said); err != nil {
					t.Error(err)
				}
				return m.Name == p.Name && said.Title == p.Title && said.Description == p.Description
			}) {
				t.Errorf("%s: its inputs or results are otherwise or in another order", id)
			}
		}
	}
	if _, err := Whole("boat"); err != nil {
		t.Error(err)
	}
	if _, err := Whole("no-such"); err == nil {
		t.Error("there is no such schema")
	}
}
