package marinecalc_test

import (
	"bytes"
	"encoding/json"
	"flag"
	"fmt"
	"os"
	"slices"
	"strings"
	"testing"

	"example.org/driveline/marinecalc"
	"example.org/driveline/marinecalc/internal/contract"
	"example.org/driveline/marinecalc/internal/testboat"
	"example.org/driveline/marinecalc/quantity"
	"example.org/driveline/marinecalc/rules"
)

var rewrite = flag.Bool("malformed", false, "write testdata/malformed.jsonl anew, to be read by class")

// malformed is an input with one thing wrong, and what must be said of it: by
// the schema and by what was done to it, not by what came out.
type malformed struct {
	Class       string          `json:"class"`
	Calculation string          `json:"calculation"`
	Input       json.RawMessage `json:"input"`
	Where       string          `json:"where"`
	Says        string          `json:"says"`              // stands in what is wrong
	Allowed     string          `json:"allowed,omitempty"` // stands in what is allowed
}

// mutationsOf are the ways to write one input wrongly.
func mutationsOf(id string, p *contract.Property) []malformed {
	var list []malformed
	put := func(class string, value any, says, allowed string) {
		input, _ := json.Marshal(map[string]any{p.Name: value})
		list = append(list, malformed{class, id, input, p.Pointer, says, allowed})
	}
	text := slices.Contains(p.Types, "string")
	switch {
	case p.Kind != nil && p.Kind.Name != quantity.KindMoney:
		unit := p.Kind.SIUnit()
		put("an object for a quantity", map[string]any{}, p.Title, strings.ReplaceAll(p.Kind.Name, "-", " "))
		put("words for a quantity", "a good deal", p.Title, "")
		other, _ := quantity.Lookup(quantity.KindMass)
		if p.Kind.Is(other) {
			other, _ = quantity.Lookup(quantity.KindLength)
		}
		put("a unit of another kind", "5 "+other.SIUnit(), p.Title, "")
		if p.Minimum != nil {
			put("under the least", strings.TrimSpace(fmt.Sprintf("%v %s", *p.Minimum-1-abs(*p.Minimum), unit)), p.Title, "")
		}
		if p.Maximum != nil {
			put("over the most", strings.TrimSpace(fmt.Sprintf("%v %s", *p.Maximum+1+abs(*p.Maximum), unit)), p.Title, "")
		}
	case len(p.Enum) > 0:
		put("a word that is none of those", p.Enum[0]+"zzzzzzzzz", "not one of the words", p.Enum[0])
		put("a number for a word", 7, p.Title, "")
	case p.Rows != "" && text:
		put("a list for a pick", []any{}, p.Title, "a text")
	case slices.Contains(p.Types, "integer"):
		put("a part of a whole number", 1.5, p.Title, "a whole number")
		put("a text for a whole number", "many", p.Title, "a whole number")
		if p.Maximum != nil {
			put("over the most", *p.Maximum+1, p.Title, fmt.Sprint(*p.Maximum))
		}
	case slices.Contains(p.Types, "array"):
		put("an object for a list", map[string]any{}, p.Title, "a list")
		if p.MaxItems > 0 && p.MaxItems <= 50 {
			put("too many entries", slices.Repeat([]any{map[string]any{}}, p.MaxItems+1), "too many entries", fmt.Sprintf("at most %d", p.MaxItems))
		}
		if p.Items != nil && len(p.Items.Properties) > 0 {
			entry, _ := json.Marshal(map[string]any{p.Name: []any{map[string]any{"song": 1}}})
			list = append(list, malformed{"an unknown name in an entry", id, entry, p.Pointer + "/0/song", "not a name known here", p.Items.Properties[0].Name})
		}
	case text && !slices.Contains(p.Types, "number"):
		allowed := "a text"
		if p.Format == "date" {
			allowed = "year-month-day"
		}
		put("a number for a text", 7, p.Title, allowed)
		put("a control character", "a\x1b[31m", "U+001B", "")
	}
	return list
}

func abs(x float64) float64 { return max(x, -x) }

// mutations goes through all calculations, and takes of each class at most two
// of a calculation, and one for picks that no row has.
func mutations(t *testing.T) []malformed {
	t.Helper()
	var list []malformed
	for _, e := range marinecalc.Calculations() {
		c, err := contract.OpenCalculation(e.ID)
		if err != nil {
			t.Fatal(err)
		}
		seen := map[string]int{}
		for _, p := range c.Input.Properties {
			for _, m := range mutationsOf(e.ID, p) {
				if seen[m.Class]++; seen[m.Class] <= 2 {
					list = append(list, m)
				}
			}
		}
		for _, p := range c.Input.Properties {
			if table := rules.Standard().Table(p.Rows); table != nil && !table.Open && seen["a pick that no row has"] == 0 {
				seen["a pick that no row has"]++
				input, _ := json.Marshal(map[string]any{p.Name: "song"})
				list = append(list, malformed{"a pick that no row has", e.ID, input, p.Pointer, "song", ""})
			}
		}
		list = append(list, malformed{"an unknown name", e.ID, json.RawMessage(`{"song":1}`), "/song", "not a name known here", c.Input.Properties[0].Name},
			malformed{"a list for the input", e.ID, json.RawMessage(`[]`), "", "not an object", ""},
			malformed{"a name written twice", e.ID, json.RawMessage(`{"` + c.Input.Properties[0].Name + `":1,"` + c.Input.Properties[0].Name + `":1}`), c.Input.Properties[0].Pointer, "written twice", ""})
	}
	return list
}

// Inputs that are wrong at one place are refused at that place, with what is
// wrong and what is allowed. testdata/malformed.jsonl keeps them.
func TestMalformedInputsAreRefusedWhereTheyAreWrong(t *testing.T) {
	made := mutations(t)
	var text bytes.Buffer
	for _, m := range made {
		line, err := json.Marshal(m)
		if err != nil {
			t.Fatal(err)
		}
		text.Write(append(line, '\n'))
	}
	file := testboat.Root("testdata", "malformed.jsonl")
	if *rewrite {
		if err := os.WriteFile(file, text.Bytes(), 0o644); err != nil {
			t.Fatal(err)
		}
	}
	kept, err := os.ReadFile(file)
	if err != nil {
		t.Fatal(err)
	}
	if !bytes.Equal(kept, text.Bytes()) {
		t.Error("testdata/malformed.jsonl is not what the schemas give: go test ./marinecalc -run Malformed -malformed")
	}
	if len(made) < 500 {
		t.Errorf("only %d", len(made))
	}
	for _, m := range made {
		_, err := marinecalc.Run(m.Calculation, m.Input, marinecalc.Options{NoRanges: true})
		told := false
		for _, p := range marinecalc.ProblemsOf(err) {
			told = told || p.Where == m.Where && strings.Contains(p.What, m.Says) && strings.Contains(p.Allowed, m.Allowed)
		}
		if !told {
			t.Errorf("%s, %s %s: want %q with %q at %s, got %v", m.Class, m.Calculation, m.Input, m.Says, m.Allowed, m.Where, err)
		}
	}
}
