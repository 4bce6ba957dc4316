package marinecalc

import (
	"errors"
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"

	"example.org/driveline/marinecalc/problem"
)

const logged = `{"name":"Tern","readings":[
 {"date":"2026-05-02","engineHours":"1240 h","dripRate":"6 drips/min","note":"=cmd, \"quoted\""},
 {"date":"2026-05-16","dripRate":0.1,"changed":true},
 {"date":"2026-05-20","couplingGaps":[{"clock":0,"gap":0.0001},{"clock":1,"gap":0.0001},{"clock":3,"gap":0.0001},{"clock":4,"gap":0.0001}]}]}`

func boatOf(t *testing.T, text string) *Boat {
	t.Helper()
	b, err := ReadBoat([]byte(text))
	if err != nil {
		t.Fatal(err)
	}
	return b
}

// What goes out comes in again unchanged: into an empty boat as it was, into
// the same boat as nothing new.
func TestReadingsGoOutAndIn(t *testing.T) {
	b := boatOf(t, logged)
	table := ReadingsCSV(b)
	want := "date,engineHours,changed,note,dripRate\r\n2026-05-02,1240 h,,\"'=cmd, \"\"quoted\"\"\",6 drips/min\r\n2026-05-16,,true,,6 drips/min\r\n"
	if diff := cmp.Diff(want, string(table)); diff != "" {
		t.Errorf("the table (-want +got):\n%s", diff)
	}
	empty, err := AddReadingsCSV(boatOf(t, `{"name":"Tern"}`), table)
	if err != nil {
		t.Fatal(err)
	}
	if again := ReadingsCSV(empty); string(again) != string(table) {
		t.Errorf("came back as\n%s", again)
	}
	same, err := AddReadingsCSV(b, table)
	if err != nil {
		t.Fatal(err)
	}
	if list := same.document["readings"].([]any); len(list) != 3 {
		t.Errorf("the boat has %d entries of its own table twice", len(list))
	}
}

// Every reading that fits a cell comes back: each demo boat's own log, into a
// boat without one.
func TestEveryColumnGoesOutAndIn(t *testing.T) {
	for _, name := range []string{"kittiwake", "juniper"} {
		table := ReadingsCSV(demoBoat(t, name))
		b, err := AddReadingsCSV(boatOf(t, `{"name":"Tern"}`), table)
		if err != nil {
			t.Fatal(err)
		}
		if diff := cmp.Diff(string(table), string(ReadingsCSV(b))); diff != "" {
			t.Errorf("%s (-out +back):\n%s", name, diff)
		}
	}
}

func TestCallTakesReadings(t *testing.T) {
	for request, has := range map[string]string{
		`{"ask":"readings","boat":` + logged + `}`: `"csv":"date,engineHours,changed,note,dripRate\r\n`,
		`{"ask":"readings"}`:                       `this needs a boat`,
		`{"ask":"add-readings","boat":` + logged + `,"csv":"date,dripRate\n2026-06-01,7 drips/min\n"}`:               `"dripRate":"7 drips/min"`,
		`{"ask":"add-readings","boat":` + logged + `,"csv":"date,dripRate\n2026-06-01,7\n"}`:                         `"where":"/csv/2/dripRate"`,
		`{"ask":"add-readings","boat":` + logged + `,"csv":"date,count6\n2026-06-01,many\n"}`:                        `"where":"/csv/2/count6"`,
		`{"ask":"add-readings","boat":` + logged + `}`:                                                               `"where":"/csv"`,
		`{"ask":"add-readings","csv":"date,dripRate\n2026-06-01,7 drips/min\n"}`:                                     `this needs a boat`,
		`{"ask":"add-readings","boat":` + logged + `,"csv":7}`:                                                       `csv is not a text`,
		`{"ask":"add-readings","boat":{"name":"Tern","reading":[]},"csv":"date,dripRate\n2026-06-01,7 drips/min\n"}`: `"reading":[],"readings":[{`,
	} {
		if out := string(Call([]byte(request))); !strings.Contains(out, has) {
			t.Errorf("%s gives %.400s", request, out)
		}
	}
}

// A spreadsheet's own habits: a byte order mark, semicolons, empty cells,
// columns in another order. Two readings of one date are both kept.
func TestReadingsFromASpreadsheet(t *testing.T) {
	b, err := AddReadingsCSV(boatOf(t, logged), []byte("\ufeffdripRate;date;changed\n7 drips/min;2026-05-02;\n;2026-06-01;yes\n"))
	if err != nil {
		t.Fatal(err)
	}
	list := b.document["readings"].([]any)
	if len(list) != 5 || list[4].(map[string]any)["changed"] != true {
		t.Errorf("%v", list)
	}
	if len(boatOf(t, logged).document["readings"].([]any)) != 3 {
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
		_, err := AddReadingsCSV(boatOf(t, logged), []byte(c.text))
		var list problem.List
		if !errors.As(err, &list) || len(list) != 1 || list[0].Where != c.where {
			t.Errorf("%s: %v", c.name, err)
		}
	}
	if _, err := AddReadingsCSV(boatOf(t, logged), []byte(strings.Repeat("a,", 1<<20))); err == nil {
		t.Error("a table of two megabytes was taken")
	}
}
