package marinecalc_test

import (
	"context"
	"errors"
	"strings"
	"testing"

	"example.org/driveline/marinecalc"
)

// Whatever reads a text says of one that is empty, too long or of another form where,
// what and how to mend it, in words of its own; no text is no input for a calculation.
func TestTextsThatAreNone(t *testing.T) {
	reads := map[string]func([]byte) error{
		"Checks":     func(text []byte) error { _, err := marinecalc.Checks(context.Background(), text); return err },
		"Overlay":    func(text []byte) error { _, err := marinecalc.Overlay(text); return err },
		"New":        func(text []byte) error { _, err := marinecalc.New(marinecalc.WithOverlays(text)); return err },
		"CheckRules": func(text []byte) error { return marinecalc.CheckRules(text, "").Problems.Err() },
		"ReadBoat":   func(text []byte) error { _, err := marinecalc.ReadBoat(text); return err },
	}
	long := strings.Repeat(" ", marinecalc.MaxBytes) + "{"
	for name, read := range reads {
		for text, says := range map[string]string{"": "the text is empty", "\n ": "the text is empty", `{"rows": [`: "too early", "[]": "", `{"rows": [{"what": 1}]}`: "/rows", long: "bytes"} {
			err := read([]byte(text))
			problems := marinecalc.ProblemsOf(err)
			if len(problems) == 0 || !strings.Contains(err.Error(), says) || strings.Contains(err.Error(), "EOF") || strings.Contains(err.Error(), "unexpected end") || strings.Contains(err.Error(), "book.Row") {
				if name == "ReadBoat" && strings.Contains(text, "what") && len(problems) > 0 {
					continue // it has no rows
				}
				t.Errorf("%s of %.30q: %v", name, text, err)
				continue
			}
			if text == long && !errors.Is(err, marinecalc.ErrTooLarge) {
				t.Errorf("%s: %v", name, err)
			}
			if p := problems[0]; p.Allowed == "" && p.Hint == "" && name == "Checks" {
				t.Errorf("%s of %.30q does not say what is allowed: %+v", name, text, p)
			}
		}
	}
	_, none := marinecalc.Run("bolt-preload", nil, marinecalc.Options{})
	_, empty := marinecalc.Run("bolt-preload", []byte{}, marinecalc.Options{})
	if none == nil || empty == nil || none.Error() != empty.Error() {
		t.Errorf("no text: %v\nan empty one: %v", none, empty)
	}
}
