package rules_test

import (
	"encoding/json"
	"io/fs"
	"os"
	"path/filepath"
	"regexp"
	"strings"
	"testing"

	"example.org/driveline/marinecalc/quantity"
)

// Texts that people read on a sheet or at a step.
var readTexts = map[string]bool{"text": true, "why": true, "how": true, "title": true, "help": true}

// What a lens or a counter sees is in µm in both systems (ISO 4406).
var (
	metricFigure = regexp.MustCompile(`\d ?(mm|cm|m|N·m|N|kN|MPa|bar|°C|kg|litres?)\b|\b(milli|centi)?(metre|litre|kilogram)s?\b|\bmicrons?\b`)
	usFigure     = regexp.MustCompile(`\d (in|ft|thou|lbf·ft|lbf|lb|psi|ksi|°F)\b|\binch(es)?\b|\bthou\b|\bgallons?\b`)
	inBraces     = regexp.MustCompile(`\{[^{}|]*\|[^{}|]*\}`)
)

// Texts that stay in one system, with the reason.
var oneSystem = map[string]string{
	"inch shafts and their keys, by the names they are sold under": "the tables disagree: SAE J755 cuts",
	"the pitch of a propeller is stamped in inches everywhere":     "one inch of pitch",
}

// A text of the rules with a figure says it in the units that are chosen, {metric|US}, or in
// both systems.
func TestTextsSayFiguresInBothSystems(t *testing.T) {
	used, texts := map[string]bool{}, 0
	var look func(where string, v any)
	look = func(where string, v any) {
		switch v := v.(type) {
		case []any:
			for _, e := range v {
				look(where, e)
			}
		case map[string]any:
			if id, is := v["id"].(string); is {
				where = where + " " + id
			}
			for key, e := range v {
				text, is := e.(string)
				if !is || !readTexts[key] {
					look(where, e)
					continue
				}
				texts++
				if got := quantity.Either(text, quantity.Metric); strings.ContainsAny(got, "{}") {
					t.Errorf("%s: braces that are no pair: %s", where, text)
				}
				rest := inBraces.ReplaceAllString(text, "")
				if metricFigure.MatchString(rest) == usFigure.MatchString(rest) {
					continue
				}
				named := false
				for _, part := range oneSystem {
					if strings.Contains(text, part) {
						named, used[part] = true, true
					}
				}
				if !named {
					t.Errorf("%s: %s in one system: write {metric|US}: %s", where, key, text)
				}
			}
		}
	}
	err := filepath.WalkDir("data", func(path string, d fs.DirEntry, err error) error {
		if err != nil || !strings.HasSuffix(path, ".json") {
			return err
		}
		raw, err := os.ReadFile(path)
		if err != nil {
			return err
		}
		var v any
		if err := json.Unmarshal(raw, &v); err != nil {
			return err
		}
		look(path, v)
		return nil
	})
	if err != nil || texts < 1000 {
		t.Fatalf("%d texts, %v", texts, err)
	}
	for reason, part := range oneSystem {
		if !used[part] {
			t.Errorf("no text is left that %q excuses", reason)
		}
	}
}
