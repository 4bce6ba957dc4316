package export_test

import (
	"encoding/csv"
	"strings"
	"testing"

	"example.org/driveline/marinecalc"
	"example.org/driveline/marinecalc/internal/calc/results"
	"example.org/driveline/marinecalc/internal/testboat"
	"example.org/driveline/marinecalc/sheet"
)

// RFC 4180, read by encoding/csv: every cell comes back as on the sheet.
func TestCSVReadsBack(t *testing.T) {
	s := testboat.Run(t, "work-plan", testboat.SpringWork, marinecalc.Options{NoRanges: true})
	for i := range s.Tables {
		list := &s.Tables[i]
		records, err := csv.NewReader(strings.NewReader(string(marinecalc.CSV(list)))).ReadAll()
		if err != nil {
			t.Fatal(err)
		}
		if len(records) != len(list.Rows)+1 || records[0][0] != list.Columns[0].Title {
			t.Fatalf("%s: %d lines for %d rows", list.Name, len(records), len(list.Rows))
		}
		for n, r := range list.Rows {
			for c := range r.Cells {
				if records[n+1][c] != r.Cells[c].Text {
					t.Errorf("%s: %q comes back as %q", list.Name, r.Cells[c].Text, records[n+1][c])
				}
			}
		}
	}
	var lines []sheet.Row
	for _, text := range []string{"=1+1", "-5 mm", "+cmd|' /C calc'!A0", "-2+3+cmd|' /C calc'!A0", "\t=1+1", "@SUM(A1)", "'", "-0.5 to 3 mm", "-3 %", "-1 mm+cmd|x", "port"} {
		lines = append(lines, sheet.Row{Cells: []sheet.Cell{{Text: text}, {Text: "x"}}})
	}
	odd := &results.Table{Columns: []sheet.Column{{Title: "a"}, {Title: `b, "c"`}}, Rows: lines}
	want := "a,\"b, \"\"c\"\"\"\r\n'=1+1,x\r\n-5 mm,x\r\n'+cmd|' /C calc'!A0,x\r\n'-2+3+cmd|' /C calc'!A0,x\r\n'\t=1+1,x\r\n'@SUM(A1),x\r\n'',x\r\n-0.5 to 3 mm,x\r\n-3 %,x\r\n'-1 mm+cmd|x,x\r\nport,x\r\n"
	if got := string(marinecalc.CSV(odd)); got != want {
		t.Errorf("got %q, want %q", got, want)
	}
}
