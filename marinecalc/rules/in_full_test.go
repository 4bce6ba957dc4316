package rules

import (
	"encoding/json"
	"slices"
	"testing"
)

// Our own files name id, source and basis of every row: only the module of the page has
// them in short, so what is put back there hides no row that names none.
func TestOwnFilesAreWrittenInFull(t *testing.T) {
	met := 0
	for _, file := range slices.Concat(filesIn("data"), filesIn("data/job"), filesIn("data/tables")) {
		text, _ := files.ReadFile(file)
		var kinds map[string]json.RawMessage
		if err := json.Unmarshal(text, &kinds); err != nil {
			t.Fatal(file, err)
		}
		for _, kind := range []string{"rows", "limits", "cautions", "advice", "causes", "evidence", "signs", "chains", "remedies", "steps", "parts"} {
			var rows []map[string]any
			if json.Unmarshal(kinds[kind], &rows) != nil {
				continue
			}
			for i, row := range rows {
				met++
				for _, member := range []string{"id", "source", "basis"} {
					if row[member] == nil {
						t.Errorf("%s/%s/%d names no %s", file, kind, i, member)
					}
				}
			}
		}
	}
	if met < 3000 {
		t.Errorf("%d rows", met)
	}
}
