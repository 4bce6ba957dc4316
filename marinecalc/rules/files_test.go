package rules

import (
	"slices"
	"strings"
	"testing"

	"example.org/driveline/marinecalc/internal/contract"
	"example.org/driveline/marinecalc/internal/spread"
)

// schemaOf names the schema of a rule file by what the file holds.
var schemaOf = map[string]string{
	"rows": "rules-table", "limits": "rules-limits", "shared": "rules-limits", "cautions": "rules-cautions", "advice": "rules-advice",
	"causes": "rules-causes", "evidence": "rules-evidence", "signs": "rules-signs", "chains": "rules-chains",
	"remedies": "rules-remedies", "steps": "rules-steps", "parts": "rules-parts",
}

// jobSchemas are those of the files of the job, which lie by themselves.
var jobSchemas = []string{"rules-causes", "rules-evidence", "rules-signs", "rules-chains", "rules-remedies", "rules-steps", "rules-parts"}

// Every rule file that marinecalc brings keeps to the schema of its kind.
func TestFilesKeepToTheirSchemas(t *testing.T) {
	all := slices.Concat(filesIn("."), filesIn("tables"), filesIn("job"))
	if len(all) < 15 {
		t.Fatalf("%d files", len(all))
	}
	documents := map[string]*contract.Document{}
	for _, f := range all {
		text, err := files.ReadFile(f)
		if err != nil {
			t.Fatal(err)
		}
		value, problems := contract.Decode(text)
		if len(problems) > 0 {
			t.Errorf("%s: %v", f, problems)
			continue
		}
		name := ""
		for member := range value.(map[string]any) {
			if s, is := schemaOf[member]; is {
				name = s
			}
		}
		if strings.HasPrefix(f, "job/") != slices.Contains(jobSchemas, name) || strings.HasPrefix(f, "tables/") != (name == "rules-table") {
			t.Errorf("%s: what keeps to %s does not lie here", f, name)
		}
		if table, _ := value.(map[string]any)["table"].(string); strings.HasPrefix(f, "tables/") && (table == "" || tableIn(f) != table) {
			t.Errorf("%s does not begin with the name of its table", f)
		}
		if documents[name] == nil {
			d, err := contract.OpenDocument(name)
			if err != nil {
				t.Fatalf("%s: schema %q: %v", f, name, err)
			}
			documents[name] = d
		}
		for _, p := range documents[name].Check(value) {
			t.Errorf("%s: %v", f, p)
		}
	}
}

// Ids are unique within their kind, so that an overlay replaces one row.
func TestIDsAreUnique(t *testing.T) {
	b := Standard()
	once := func(kind string, ids ...string) {
		seen := map[string]bool{}
		for _, id := range ids {
			if seen[id] {
				t.Errorf("%s %s is there twice", kind, id)
			}
			seen[id] = true
		}
	}
	for _, name := range b.Tables() {
		var ids []string
		for _, r := range b.Table(name).Rows {
			ids = append(ids, r.ID)
		}
		once("row of "+name, ids...)
	}
	var limits, cautions, advice []string
	for _, l := range b.AllLimits() {
		limits = append(limits, l.ID)
	}
	for _, c := range b.AllCautions() {
		cautions = append(cautions, c.ID)
	}
	for _, a := range b.AllAdvice() {
		advice = append(advice, a.ID)
	}
	once("limit", limits...)
	once("caution", cautions...)
	once("advice", advice...)
}

// The names of the distributions are those of package spread.
func TestShapesAreKnown(t *testing.T) {
	known := map[string]bool{"": true}
	for _, s := range []spread.Shape{spread.Rectangular, spread.Triangular, spread.Normal} {
		known[s.String()] = true
	}
	for _, name := range Standard().Tables() {
		for _, r := range Standard().Table(name).Rows {
			for _, v := range r.Values {
				if !known[v.Shape] {
					t.Errorf("%s, row %s, %s: shape %q", name, r.ID, v.Column, v.Shape)
				}
			}
		}
	}
}

func TestOverlayLeavesTheStandardAlone(t *testing.T) {
	before := len(Standard().AllCautions())
	next, faults := Standard().Overlay([]byte(`{"title": "Yard", "cautions": [{"id": "yard-crane", "calculations": ["bolt-preload"], "signal": "WARNING", "text": "Stand clear of the crane.", "source": {"document": "Yard rules"}, "basis": "maker"}]}`))
	if len(faults) > 0 {
		t.Fatal(faults)
	}
	if len(Standard().AllCautions()) != before || len(next.AllCautions()) != before+1 {
		t.Errorf("%d before, %d and %d after", before, len(Standard().AllCautions()), len(next.AllCautions()))
	}
	if o := next.Overlays(); len(o) != 1 || o[0] != "Yard" {
		t.Errorf("overlays are named %v", o)
	}
}
