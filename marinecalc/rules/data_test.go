package rules

import (
	"path"
	"slices"
	"testing"

	"example.org/driveline/marinecalc/internal/contract"
	"example.org/driveline/marinecalc/internal/spread"
	"example.org/driveline/marinecalc/sheet"
)

// ofTheJob are the members of the files of the job, which lie by themselves.
var ofTheJob = []string{"causes", "evidence", "signs", "chains", "remedies", "steps", "parts"}

// Every rule file that marinecalc brings keeps to the schema of rule files, and
// says what an overlay may leave out.
func TestFilesKeepToTheirSchema(t *testing.T) {
	all := slices.Concat(filesIn("data"), filesIn("data/tables"), filesIn("data/job"))
	if len(all) < 15 {
		t.Fatalf("%d files", len(all))
	}
	document, err := contract.OpenDocument("rules")
	if err != nil {
		t.Fatal(err)
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
		for _, p := range document.CheckStrict(value) {
			t.Errorf("%s: %v", f, p)
		}
		checkFile(t, f, value.(map[string]any))
	}
}

// checkFile holds a file to what only the standard rules must have.
func checkFile(t *testing.T, file string, value map[string]any) {
	t.Helper()
	lies, held := path.Dir(file), 0
	for member, rows := range value {
		list, is := rows.([]any)
		if !is {
			continue
		}
		held += len(list)
		if (lies == "data/job") != slices.Contains(ofTheJob, member) || lies == "data/tables" && member != "rows" {
			t.Errorf("%s: %s do not lie here", file, member)
		}
		for _, row := range list {
			r := row.(map[string]any)
			for _, name := range map[string][]string{"limits": {"how", "why"}, "rows": {"name"}, "steps": {"text", "phase", "after", "tools", "hazards"}, "signs": {"weight", "because"}}[member] {
				if r[name] == nil {
					t.Errorf("%s: row %v has no %s", file, r["id"], name)
				}
			}
		}
	}
	switch {
	case held == 0:
		t.Errorf("%s holds no rows", file)
	case lies == "data/tables" && (value["table"] != nameOf(file) || value["title"] == nil || value["about"] == nil || value["columns"] == nil):
		t.Errorf("%s holds the table %v", file, value["table"])
	case lies == "data" && value["rows"] != nil && value["table"] != usualValues:
		t.Errorf("%s holds the table %v", file, value["table"])
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

// Nearness that cannot come is waited for by no advice: of a limit of 0 no share
// can be left but of its scale, and of a probability none is looked at.
func TestNearnessThatIsAskedForCanCome(t *testing.T) {
	b := Standard()
	for _, a := range b.AllAdvice().All() {
		if !Contains(a.Words, sheet.NearLimit) {
			continue
		}
		for _, l := range b.AllLimits().All() {
			bound := l.Max
			if l.Min.Given() {
				bound = l.Min
			}
			if l.ID == a.Limit && (l.Chance || l.Near == 1 || bound.Of == "" && bound.SI == 0 && !l.Scale.Given()) {
				t.Errorf("%s waits for %s to be near its limit, which never is", a.ID, l.ID)
			}
		}
	}
}
