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
