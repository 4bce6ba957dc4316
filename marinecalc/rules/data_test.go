package rules

import (
	"path"
	"slices"
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
	all := slices.Concat(filesIn("data"), filesIn("data/tables"), filesIn("data/job"))
	if len(all) < 15 {
		t.Fatalf("%d files", len(all))
	}
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
		checkFile(t, f, value.(map[string]any))
	}
}

// checkFile holds each kind of rows in a file against its schema, with what
// the file says of itself and of its table.
func checkFile(t *testing.T, file string, value map[string]any) {
	t.Helper()
	lies, parts := path.Dir(file), map[string]map[string]any{}
	for member, rows := range value {
		name, is := schemaOf[member]
		if !is {
			continue
		}
		if parts[name] == nil {
			parts[name] = map[string]any{"title": value["title"]}
		}
		parts[name][member] = rows
		if (lies == "data/job") != slices.Contains(jobSchemas, name) || lies == "data/tables" && name != "rules-table" {
			t.Errorf("%s: what keeps to %s does not lie here", file, name)
		}
	}
	if table := parts["rules-table"]; table != nil {
		table["table"], table["columns"], table["about"] = value["table"], value["columns"], value["about"]
		switch lies {
		case "data/tables":
			if table["table"] != nameOf(file) {
				t.Errorf("%s holds the table %v", file, table["table"])
			}
		case "data":
			if table["about"] = "The usual values of one calculation."; table["table"] != usualValues {
				t.Errorf("%s holds the table %v", file, table["table"])
			}
		}
	}
	if len(parts) == 0 {
		t.Errorf("%s holds no rows", file)
	}
	for name, part := range parts {
		document, err := contract.OpenDocument(name)
		if err != nil {
			t.Fatalf("%s: schema %q: %v", file, name, err)
		}
		for _, p := range document.Check(part) {
			t.Errorf("%s: %v", file, p)
		}
	}
}

// Every row of a calculation lies in the file of its id; what several have
// lies in common.json, and nothing else does.
func TestRowsLieWithTheirCalculation(t *testing.T) {
	for _, f := range filesIn("data") {
		s := readOwn(f)
		for _, l := range s.Limits {
			if l.Calculation != nameOf(f) {
				t.Errorf("%s: limit %s is of %s", f, l.ID, l.Calculation)
			}
		}
		for _, o := range s.Shared {
			if o.Calculation != nameOf(f) {
				t.Errorf("%s: limits shared by %s", f, o.Calculation)
			}
		}
		for _, a := range s.Advice {
			if a.Calculation != nameOf(f) {
				t.Errorf("%s: advice %s is of %s", f, a.ID, a.Calculation)
			}
		}
		for _, c := range s.Cautions {
			if lone := c.Calculations.Len() == 1; lone == (nameOf(f) == common) || lone && c.Calculations.At(0) != nameOf(f) {
				t.Errorf("%s: caution %s is of %v", f, c.ID, c.Calculations.items)
			}
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
		for _, r := range b.Table(name).Rows.All() {
			ids = append(ids, r.ID)
		}
		once("row of "+name, ids...)
	}
	var limits, cautions, advice []string
	for _, l := range b.AllLimits().All() {
		limits = append(limits, l.ID)
	}
	for _, c := range b.AllCautions().All() {
		cautions = append(cautions, c.ID)
	}
	for _, a := range b.AllAdvice().All() {
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
		for _, r := range Standard().Table(name).Rows.All() {
			for _, v := range r.Values.All() {
				if !known[v.Shape] {
					t.Errorf("%s, row %s, %s: shape %q", name, r.ID, v.Column, v.Shape)
				}
			}
		}
	}
}
