package marinecalc_test

import (
	"encoding/json"
	"errors"
	"flag"
	"maps"
	"os"
	"path/filepath"
	"slices"
	"strings"
	"testing"

	"example.org/driveline/marinecalc"
	"example.org/driveline/marinecalc/internal/catalogue"
	"example.org/driveline/marinecalc/internal/testboat"
	"example.org/driveline/marinecalc/problem"
	"example.org/driveline/marinecalc/sample"
	"example.org/driveline/marinecalc/sheet"
)

// odd is an input that nobody means: what is given instead of, or beside, what
// a person would type; null takes one away. It is refused at these places, or
// its verdicts read so.
type odd struct {
	What    string            `json:"what"`
	Give    map[string]any    `json:"give"`
	Refused []string          `json:"refused,omitempty"`
	Reads   map[string]string `json:"reads,omitempty"`
}

var updateOdd = flag.Bool("odd", false, "write what odd inputs come to into testdata/odd, to be read")

// TestOddInputs gives every calculation at least ten inputs that cannot be, or
// hardly: what comes of each was read, and stands in testdata/odd.
func TestOddInputs(t *testing.T) {
	alone(t)
	for _, c := range catalogue.Calculations {
		f, err := c.Form()
		if err != nil {
			t.Fatal(err)
		}
		path := testboat.Root("testdata", "odd", f.ID+".json")
		text, err := os.ReadFile(path)
		if err != nil {
			t.Errorf("%s has no odd inputs: %v", f.ID, err)
			continue
		}
		var rows []odd
		if err := json.Unmarshal(text, &rows); err != nil || len(rows) < 10 {
			t.Errorf("%s: %d odd inputs, %v", f.ID, len(rows), err)
		}
		for i := range rows {
			refused, reads := come(t, f.ID, &rows[i])
			if *updateOdd {
				rows[i].Refused, rows[i].Reads = refused, reads
			} else if !slices.Equal(refused, rows[i].Refused) || !maps.Equal(reads, rows[i].Reads) {
				t.Errorf("%s, %s: refused at %v, reads %v, want %v, %v", f.ID, rows[i].What, refused, reads, rows[i].Refused, rows[i].Reads)
			}
		}
		if *updateOdd {
			writeOdd(t, path, rows)
		}
	}
}

// come tells what an odd input comes to. A refusal says what may stand there,
// or how to mend it, in words that people read.
func come(t *testing.T, id string, o *odd) (refused []string, reads map[string]string) {
	input, err := sample.Typed(id)
	if err != nil {
		t.Fatal(err)
	}
	input = maps.Clone(input)
	for name, v := range o.Give {
		if input[name] = v; v == nil {
			delete(input, name)
		}
	}
	text, err := json.Marshal(input)
	if err != nil {
		t.Fatal(err)
	}
	s, err := marinecalc.Run(id, text, marinecalc.Options{Brief: true, Trials: 1000})
	var bad *problem.Error
	if errors.As(err, &bad) {
		for _, p := range bad.Problems {
			refused = append(refused, p.Where)
			if p.Allowed+p.Hint == "" {
				t.Errorf("%s, %s: nothing says how to mend %s: %s", id, o.What, p.Where, p.What)
			}
			for _, not := range []string{"in SI", "NaN", "+Inf", "-Inf", "%!", "<nil>"} {
				if strings.Contains(p.String(), not) {
					t.Errorf("%s, %s: %q in %s", id, o.What, not, p.String())
				}
			}
		}
		slices.Sort(refused)
		return refused, nil
	}
	if err != nil {
		t.Fatalf("%s, %s: %v", id, o.What, err)
	}
	for _, v := range s.Verdicts {
		if v.Word == sheet.NotMeasured {
			continue
		}
		if reads == nil {
			reads = map[string]string{}
		}
		reads[v.Limit] = v.Reads
		if strings.Contains(v.Sentence, "NaN") || strings.Contains(v.Sentence, "Inf") {
			t.Errorf("%s, %s: %s", id, o.What, v.Sentence)
		}
	}
	return nil, reads
}

func writeOdd(t *testing.T, path string, rows []odd) {
	var b strings.Builder
	b.WriteString("[\n")
	for i := range rows {
		e := json.NewEncoder(&b)
		e.SetEscapeHTML(false)
		b.WriteString("  ")
		if err := e.Encode(rows[i]); err != nil {
			t.Fatal(err)
		}
		if i < len(rows)-1 {
			text := strings.TrimSuffix(b.String(), "\n")
			b.Reset()
			b.WriteString(text + ",\n")
		}
	}
	b.WriteString("]\n")
	if err := os.MkdirAll(filepath.Dir(path), 0o755); err != nil {
		t.Fatal(err)
	}
	if err := os.WriteFile(path, []byte(b.String()), 0o644); err != nil {
		t.Fatal(err)
	}
}
