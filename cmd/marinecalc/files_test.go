package main

import (
	"bytes"
	"errors"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"example.org/driveline/cmd/marinecalc/plain"
	"example.org/driveline/marinecalc"
)

const tern = `{"name": "Tern", "readings": [{"date": "2026-05-02", "dripRate": "6 drips/min"}]}`

func logged(boat, out string) []string {
	return []string{"log", boat, "--reading", "dripRate", "--value", "7 drips/min", "--date", "2026-06-01", "--out", out}
}

func contents(t *testing.T, name string) string {
	t.Helper()
	text, err := os.ReadFile(name)
	if err != nil {
		t.Fatal(err)
	}
	return string(text)
}

// alone fails where a folder holds more than the named files.
func alone(t *testing.T, folder string, names ...string) {
	t.Helper()
	there, err := os.ReadDir(folder)
	if err != nil || len(there) != len(names) {
		t.Errorf("in %s: %v, want %v (%v)", folder, there, names, err)
	}
}

func TestBoatIsWrittenInItsOwnPlace(t *testing.T) {
	boat := file(t, "tern.json", tern)
	link := filepath.Join(t.TempDir(), "link.json")
	if err := os.Symlink(boat, link); err != nil {
		t.Skip(err)
	}
	if s := say("", logged(link, link)...); s.code != exitDone {
		t.Fatal(s)
	}
	if info, err := os.Lstat(link); err != nil || info.Mode()&os.ModeSymlink == 0 {
		t.Error("the link is no link any more")
	}
	if info, err := os.Stat(boat); err != nil || info.Mode().Perm() != 0o600 {
		t.Errorf("mode %v, want that of before", info.Mode())
	}
	if !strings.Contains(contents(t, boat), "2026-06-01") {
		t.Error("the reading is not there")
	}
	alone(t, filepath.Dir(boat), "tern.json")
}

// What is in a file of another kind is not lost.
func TestOneKindIsNotWrittenOverAnother(t *testing.T) {
	kinds := map[string]string{
		"boat.json":    tern,
		"rules.json":   `{"title": "Yard", "limits": []}`,
		"plan.ics":     "BEGIN:VCALENDAR\r\nEND:VCALENDAR\r\n",
		"sheet.html":   "<!doctype html><title>Tern</title>",
		"list.csv":     "date,dripRate\r\n",
		"letter.txt":   "Dear Tern\n",
		"readings.txt": "date;dripRate\r\n",
	}
	boat := file(t, "tern.json", tern)
	for name, text := range kinds {
		to := file(t, name, text)
		s := say("", logged(boat, to)...)
		if want := map[bool]int{true: exitDone, false: exitBad}[name == "boat.json"]; s.code != want || want == exitBad && (contents(t, to) != text || !strings.Contains(s.errs, "would take its place")) {
			t.Errorf("a boat over %s: %v", name, s)
		}
		alone(t, filepath.Dir(to), name)
		to = file(t, name, text)
		s = say("", "readings", boat, "--out", to)
		if allowed := strings.HasPrefix(text, "date"); allowed != (s.code == exitDone) || !allowed && contents(t, to) != text {
			t.Errorf("a table over %s: %v", name, s)
		}
	}
	if s := say("", logged(boat, file(t, "empty.json", ""))...); s.code != exitDone {
		t.Errorf("over an empty file: %v", s)
	}
	if s := say("", logged(boat, os.DevNull)...); s.code != exitDone {
		t.Errorf("to a device: %v", s)
	}
}

func TestSecondWriterIsKeptOff(t *testing.T) {
	boat := file(t, "tern.json", tern)
	lock := file(t, "x", "")
	if err := os.Rename(lock, boat+".lock"); err != nil {
		t.Fatal(err)
	}
	if s := say("", logged(boat, boat)...); s.code != exitBad || contents(t, boat) != tern || !strings.Contains(s.errs, boat+".lock") {
		t.Errorf("beside another writer: %v", s)
	}
	if err := os.Remove(boat + ".lock"); err != nil {
		t.Fatal(err)
	}
	alone(t, filepath.Dir(boat), "tern.json")
}

// A disk that takes no more leaves what was there.
func TestFullDiskLeavesTheBoat(t *testing.T) {
	boat := file(t, "tern.json", tern)
	folder := filepath.Dir(boat)
	if err := os.Chmod(folder, 0o500); err != nil {
		t.Fatal(err)
	}
	defer os.Chmod(folder, 0o700)
	if os.Getuid() == 0 {
		t.Log("root may write anywhere: only the folder that is a file is tried")
	} else if s := say("", logged(boat, boat)...); s.code != exitFile || contents(t, boat) != tern {
		t.Errorf("into a folder that takes no more: %v", s)
	}
	if s := say("", logged(boat, filepath.Join(boat, "x.json"))...); s.code != exitFile || contents(t, boat) != tern {
		t.Errorf("into a file as if it were a folder: %v", s)
	}
}

// full takes so many bytes and then no more.
type full struct{ room int }

func (f *full) Write(p []byte) (int, error) {
	n := min(f.room, len(p))
	f.room -= n
	if n < len(p) {
		return n, errors.New("no space left on device")
	}
	return n, nil
}

func TestOutputThatTakesNoMoreIsToldOf(t *testing.T) {
	boat := file(t, "tern.json", tern)
	for _, args := range [][]string{{"index"}, {"help"}, {"version"}, {"licence"}, {"manual"}, {"blank", "shaft-torque"}, bolt, append(bolt, "--json"), {"survey", boat, "--no-ranges"}, {"readings", boat}, {"procedure"}, {"lines"}} {
		var errs bytes.Buffer
		in := strings.NewReader(`{"ask": "contents"}` + "\n")
		if code := run(args, in, &full{4}, &errs); code != exitFile || !strings.Contains(errs.String(), "no space left") {
			t.Errorf("%q: exit code %d, %q", args, code, errs.String())
		}
	}
}

func TestStandardInputInPlaceOfAFile(t *testing.T) {
	if s := say(tern, "readings", "-"); s.code != exitDone || s.out != "date,dripRate\r\n2026-05-02,6 drips/min\r\n" {
		t.Error(s)
	}
	if s := say(tern, "readings", "-", "--add", "-"); s.code != exitBad || !strings.Contains(s.errs, "standard input was read") {
		t.Errorf("read twice: %v", s)
	}
	rules := `{"title": "Yard", "limits": [{"id": "yard-x"}]}`
	if s := say(rules, "rules", "-"); s.code != exitBad || s.errs == "" {
		t.Error(s)
	}
}

func TestSignalKIsTakenIn(t *testing.T) {
	boat := file(t, "tern.json", tern)
	samples := file(t, "log.ndjson", `{"updates": [{"timestamp": "2026-06-01T10:20:30Z", "values": [{"path": "propulsion.main.revolutions", "value": 30}, {"path": "navigation.headingTrue", "value": 1}]}]}`)
	s := say("", "readings", boat, "--add", samples, "--out", boat)
	if s.code != exitDone || !strings.Contains(contents(t, boat), `"1800 rpm"`) || !strings.Contains(s.errs, "navigation.headingTrue") {
		t.Error(s)
	}
	spoilt := file(t, "log.ndjson", "{\"updates\": []}\n[")
	for want, args := range map[string][]string{"--engine: ": {samples, "--engine", "port"}, "--every: ": {samples, "--every", "2 mm"}, spoilt + "/2": {spoilt}} {
		if s := say("", append([]string{"readings", boat, "--add"}, args...)...); s.code != exitBad || !strings.Contains(s.errs, want) {
			t.Errorf("%q: %v", args, s)
		}
	}
}

// A calendar that cannot be had leaves no other file behind, and says what the
// plan lacks.
func TestAPlanWithoutDatesWritesNothing(t *testing.T) {
	name := filepath.Join(t.TempDir(), "plan.csv")
	s := say("", "fill", "work-plan", "--boat", "../../testdata/boats/juniper.json", "--csv", name, "--calendar", filepath.Join(t.TempDir(), "plan.ics"))
	if _, err := os.Stat(name); err == nil || s.code != exitBad || !strings.Contains(s.errs, "no work is chosen") {
		t.Errorf("%d, %s", s.code, s.errs)
	}
}

// What of a boat file is not used stands in the report, which may be kept
// without what stood on the terminal.
func TestASurveySaysWhatItDoesNotUse(t *testing.T) {
	boat := file(t, "tern.json", `{"name": "Tern", "makersFigures": [{"of": "gland-rise-mesured", "value": "5 °C", "source": {"document": "Gland leaflet (invented)"}}]}`)
	s := say("", "survey", boat)
	if text := strings.Join(strings.Fields(s.out), " "); !strings.Contains(text, `NOT USED OF THE BOAT FILE: /makersFigures/0/of: there is no "gland-rise-mesured"`) || !strings.Contains(text, `did you mean "gland-rise-measured"?`) {
		t.Errorf("%d, %s", s.code, s.out)
	}
}

// What stands in the form of a calculation fits the terminal: all but examples,
// which are there to be copied.
func TestABlankFitsTheTerminal(t *testing.T) {
	for _, e := range marinecalc.Calculations() {
		for line := range strings.Lines(say("", "blank", e.ID).out) {
			if letters := len([]rune(strings.TrimRight(line, "\n"))); letters > plain.Width && !strings.HasPrefix(line, "    for example ") {
				t.Errorf("%s: %d letters: %s", e.ID, letters, line)
			}
		}
	}
}
