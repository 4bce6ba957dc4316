package main

import (
	"os"
	"slices"
	"strings"
	"testing"
)

// The lines of the README work as they stand there, from the root of a clone.
func TestLinesOfTheReadme(t *testing.T) {
	text, err := os.ReadFile("../../README.md")
	if err != nil {
		t.Fatal(err)
	}
	t.Chdir("../..")
	tried := 0
	for line := range strings.Lines(string(text)) {
		call, is := strings.CutPrefix(strings.TrimSpace(line), "go run ./cmd/marinecalc ")
		if !is {
			continue
		}
		tried++
		// What stands in quotes is one argument.
		var args []string
		for i, part := range strings.Split(call, `"`) {
			if i%2 == 1 {
				args = append(args, part)
			} else {
				args = append(args, strings.Fields(part)...)
			}
		}
		if slices.Contains([]string{"survey", "compare"}, args[0]) {
			args = append(args, "--no-ranges")
		}
		if s := say("", args...); s.code > exitBeyond || s.errs != "" || len(s.out) < 100 {
			t.Errorf("%s: %d, %s", call, s.code, s.errs)
		}
	}
	if tried < 10 {
		t.Errorf("only %d lines were tried", tried)
	}
}
