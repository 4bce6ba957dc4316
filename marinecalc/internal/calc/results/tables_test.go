package results_test

import (
	"encoding/json"
	"testing"

	"example.org/driveline/marinecalc/internal/testboat"
)

// The shape of a table in JSON, as hosts read it.
func TestTableInJSON(t *testing.T) {
	text, err := json.Marshal(testboat.Page(t, testboat.Mounted(t, "0.42", "9 mm"), "mount-moves").Tables[0])
	if err != nil {
		t.Fatal(err)
	}
	var table struct {
		Name, Title, Level string
		Columns            []struct{ Name, Title, Kind, Level string }
		Rows               []struct {
			Cells []struct {
				Text          string
				SI, Low, High *float64
			}
		}
	}
	if err := json.Unmarshal(text, &table); err != nil {
		t.Fatal(err)
	}
	if table.Name != "moves" || table.Level != "main" || len(table.Rows) != 4 || len(table.Columns) != len(table.Rows[0].Cells) ||
		table.Columns[1].Kind != "length" || table.Columns[0].Kind != "" || table.Rows[2].Cells[0].Text != "aft port" {
		t.Errorf("%s", text)
	}
}
