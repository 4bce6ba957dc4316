package boat_test

import (
	"slices"
	"strings"
	"testing"

	"example.org/driveline/marinecalc"
	"example.org/driveline/marinecalc/internal/testboat"
	"example.org/driveline/marinecalc/problem"
	"github.com/google/go-cmp/cmp"
)

// What goes out comes in again unchanged: into an empty boat as it was, into
// the same boat as nothing new.
func TestReadingsGoOutAndIn(t *testing.T) {
	b := testboat.Read(t, testboat.Logged)
	table := marinecalc.ReadingsCSV(b)
	want := "date,engineHours,changed,note,couplingGaps,dripRate\r\n2026-05-02,1240 h,,\"'=cmd, \"\"quoted\"\"\",,6 drips/min\r\n2026-05-16,,true,,,6 drips/min\r\n" +
		"2026-05-20,,,,0°: 0.1 mm; 57.29577951308232°: 0.1 mm; 171.88733853924697°: 0.1 mm; 229.1831180523293°: 0.1 mm,\r\n"
	if diff := cmp.Diff(want, string(table)); diff != "" {
		t.Errorf("the table (-want +got):\n%s", diff)
	}
	empty, err := marinecalc.AddReadingsCSV(testboat.Read(t, `{"name":"Tern"}`), table)
	if err != nil {
		t.Fatal(err)
	}
	if again := marinecalc.ReadingsCSV(empty); string(again) != string(table) {
		t.Errorf("came back as\n%s", again)
	}
	same, err := marinecalc.AddReadingsCSV(b, table)
	if err != nil {
		t.Fatal(err)
	}
	if list := slices.Collect(same.Readings()); len(list) != 3 {
		t.Errorf("the boat has %d entries of its own table twice", len(list))
	}
}

// A row that stands in a table twice is one reading.
func TestTheSameRowTwiceIsOneReading(t *testing.T) {
	b, err := marinecalc.AddReadingsCSV(testboat.Read(t, `{"name":"Tern"}`), []byte("date,dripRate\n2027-01-02,7 drips/min\n2027-01-02,8 drips/min\n2027-01-02,7 drips/min\n"))
	if err != nil {
		t.Fatal(err)
	}
	if list := slices.Collect(b.Readings()); len(list) != 2 {
		t.Errorf("%d entries of three rows, two of them alike", len(list))
	}
}

// Every reading that fits a cell comes back: each demo boat's own log, into a
// boat without one.
func TestEveryColumnGoesOutAndIn(t *testing.T) {
	for _, name := range []string{"kittiwake", "juniper"} {
		table := marinecalc.ReadingsCSV(testboat.Demo(t, name))
		b, err := marinecalc.AddReadingsCSV(testboat.Read(t, `{"name":"Tern"}`), table)
		if err != nil {
			t.Fatal(err)
		}
		if diff := cmp.Diff(string(table), string(marinecalc.ReadingsCSV(b))); diff != "" {
			t.Errorf("%s (-out +back):\n%s", name, diff)
		}
	}
}

// A spreadsheet's own habits: a byte order mark, semicolons, empty cells,
// columns in another order. Two readings of one date are both kept.
func TestReadingsFromASpreadsheet(t *testing.T) {
	b, err := marinecalc.AddReadingsCSV(testboat.Read(t, testboat.Logged), []byte("\ufeffdripRate;date;changed\n7 drips/min;2026-05-02;\n;2026-06-01;yes\n"))
	if err != nil {
		t.Fatal(err)
	}
	list := slices.Collect(b.Readings())
	if len(list) != 5 || !list[4].Changed() {
		t.Errorf("%v", list)
	}
	if len(slices.Collect(testboat.Read(t, testboat.Logged).Readings())) != 3 {
		t.Error("the boat that came in was changed")
	}
}

func TestReadingsThatCannotBeRead(t *testing.T) {
	for _, c := range []struct{ name, text, where string }{
		{"an unknown column", "date,dripsRate\n2026-05-02,6 drips/min\n", "/csv/1/dripsRate"},
		{"no date column", "dripRate\n6 drips/min\n", "/csv/1"},
		{"no date", "date,dripRate\n2026-05-02,6 drips/min\n,7 drips/min\n", "/csv/3/date"},
		{"a date that is none", "date,dripRate\n02/05/2026,6 drips/min\n", "/csv/2/date"},
		{"no unit", "date,dripRate\n2026-05-02,6\n", "/csv/2/dripRate"},
		{"another quantity", "date,dripRate\n2026-05-02,6 mm\n", "/csv/2/dripRate"},
		{"too many cells", "date,dripRate\n2026-05-02,6 drips/min,x\n", "/csv/2"},
		{"nothing", "", "/csv"},
		{"a bare quote", "date,note\n2026-05-02,a\"b\n", "/csv/2"},
	} {
		_, err := marinecalc.AddReadingsCSV(testboat.Read(t, testboat.Logged), []byte(c.text))
		if list := problem.Of(err); len(list) != 1 || list[0].Where != c.where {
			t.Errorf("%s: %v", c.name, err)
		}
	}
	if _, err := marinecalc.AddReadingsCSV(testboat.Read(t, testboat.Logged), []byte(strings.Repeat("a,", 1<<20))); err == nil {
		t.Error("a table of two megabytes was taken")
	}
}
