package main

import (
	"strings"
	"testing"
)

// What a terminal would obey does not reach it, and files that others saved
// with a mark of the encoding are read.
func TestTextsAreClean(t *testing.T) {
	const escape = "\x1b[31m"
	for _, args := range [][]string{{"survey", escape + "x.json"}, {escape}, {"fill", escape}, {"fill", "shaft-torque", "--engine-power", "20" + escape + " kW"}, {"convert", "5" + escape, "mm"}, {"find", escape + "clunk"}, {"survey", "a\u202eb.json"}} {
		if s := say("", args...); strings.ContainsAny(s.out+s.errs, "\x1b\u202e") {
			t.Errorf("%q: %q", args, s.out+s.errs)
		}
	}
	marked := file(t, "tern.json", "\xef\xbb\xbf"+tern)
	if s := say("", "readings", marked); s.code != exitDone {
		t.Errorf("a boat with a mark: %v", s)
	}
	boat := file(t, "plover.json", `{"name":"Plover"}`)
	for name, want := range map[string]string{
		"date,note\n2026-01-01,m\xe4de\n":      "/2: the table is not valid UTF-8",
		"date,dripRate\n":                      "no rows",
		"date,note\n2026-01-01,a\x1b[31mred\n": "/2: it holds the control character U+001B",
	} {
		if s := say("", "readings", boat, "--add", file(t, "t.csv", name)); s.code != exitBad || !strings.Contains(s.errs, want) || s.out != "" {
			t.Errorf("%q: %v", name, s)
		}
	}
	for _, text := range []string{`{"name":"a\u001b[31m"}`, `{"name":"a\u0085"}`, `{"name":"a\u202eb"}`, "{\"name\":\"a\u009b\"}", `{"name":"x","so\u0007ng":1}`} {
		if s := say("", "survey", file(t, "x.json", text)); s.code != exitBad || !strings.Contains(s.errs, "control character") || strings.ContainsAny(s.errs, "\x1b\x07") {
			t.Errorf("%s: %v", text, s)
		}
	}
}
