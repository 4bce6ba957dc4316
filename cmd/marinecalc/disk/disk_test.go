package disk

import (
	"os"
	"path/filepath"
	"strings"
	"testing"
)

// What another program wrote after the file was read is not lost, and nothing is
// left beside it.
func TestWhatAnotherHandWroteStays(t *testing.T) {
	name := filepath.Join(t.TempDir(), "tern.json")
	write := func(text string) {
		t.Helper()
		if err := os.WriteFile(name, []byte(text), 0o600); err != nil {
			t.Fatal(err)
		}
	}
	write(`{"name": "Tern"}`)
	var f Files
	if _, err := f.Load("log", name); err != nil {
		t.Fatal(err)
	}
	write(`{"name": "Tern of another hand"}`)
	err := f.Save("--out", name, []byte(`{"name": "Tern"}`))
	there, _ := os.ReadFile(name)
	if err == nil || !strings.Contains(err.Error(), "changed by another program") || !strings.Contains(string(there), "another hand") {
		t.Errorf("%v: %s", err, there)
	}
	if list, err := os.ReadDir(filepath.Dir(name)); err != nil || len(list) != 1 {
		t.Errorf("left beside it: %v, %v", list, err)
	}
}

// Standard input is read once.
func TestStandardInputOnce(t *testing.T) {
	f := Files{In: strings.NewReader("{}")}
	if text, err := f.Load("--input", Standard); err != nil || string(text) != "{}" {
		t.Errorf("%q, %v", text, err)
	}
	if _, err := f.Load("--boat", Standard); err == nil || !strings.Contains(err.Error(), "read for something else already") {
		t.Error(err)
	}
}

// What is longer than may be is refused before it is read to its end.
func TestTooMuchIsNotReadToItsEnd(t *testing.T) {
	in := strings.NewReader(strings.Repeat(" ", 1<<20))
	f := Files{In: in}
	if _, err := f.LoadUpTo(1000, "--input", Standard); err == nil || !strings.Contains(err.Error(), "at most 1000 bytes") {
		t.Error(err)
	}
	if in.Len() == 0 {
		t.Error("all of it was read")
	}
	name := filepath.Join(t.TempDir(), "long.json")
	if err := os.WriteFile(name, make([]byte, 1001), 0o600); err != nil {
		t.Fatal(err)
	}
	if _, err := f.LoadUpTo(1000, "survey", name); err == nil || !strings.Contains(err.Error(), "at most 1000 bytes") {
		t.Error(err)
	}
	if text, err := f.LoadUpTo(1001, "survey", name); err != nil || len(text) != 1001 {
		t.Errorf("%d bytes, %v", len(text), err)
	}
}

// Of several files all are written or none: the old one stays, and nothing lies
// beside it.
func TestSeveralFilesOrNone(t *testing.T) {
	folder := t.TempDir()
	name := filepath.Join(folder, "plan.csv")
	if err := os.WriteFile(name, []byte("a,b\n"), 0o600); err != nil {
		t.Fatal(err)
	}
	var f Files
	one := Output{"--csv", name, []byte("a,c\n")}
	if err := f.SaveAll(one, Output{"--calendar", filepath.Join(folder, "none", "plan.ics"), []byte("BEGIN:VCALENDAR")}); err == nil {
		t.Error("was written into a folder that is not there")
	}
	there, err := os.ReadFile(name)
	list, _ := os.ReadDir(folder)
	if err != nil || string(there) != "a,b\n" || len(list) != 1 {
		t.Errorf("%q, %v, %v", there, err, list)
	}
	if err := f.SaveAll(one, Output{"--calendar", filepath.Join(folder, "plan.ics"), []byte("BEGIN:VCALENDAR")}); err != nil {
		t.Error(err)
	}
	there, err = os.ReadFile(name)
	list, _ = os.ReadDir(folder)
	if err != nil || string(there) != "a,c\n" || len(list) != 2 {
		t.Errorf("%q, %v, %v", there, err, list)
	}
}
