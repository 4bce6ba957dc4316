package main

import (
	"context"
	"fmt"
	"strings"

	"example.org/driveline/cmd/marinecalc/plain"
	"example.org/driveline/marinecalc"
)

// find lists what the words lead to, each with how to go on from here.
func (t *terminal) find(args []string) error {
	text := strings.Join(args, " ")
	if strings.TrimSpace(text) == "" {
		return marinecalc.Problems{{Where: "find", What: "was not told what to find", Allowed: "words, such as: marinecalc find clunk"}}.Err()
	}
	hits, err := (&marinecalc.Engine{}).Find(context.Background(), text)
	if err != nil {
		return err
	}
	if len(hits) == 0 {
		fmt.Fprintln(t.out, "Nothing by these words. Try what it does, where it is, or a size.")
	}
	for _, h := range hits {
		fmt.Fprintf(t.out, "%s\n%s\n", plain.Wrapped("", titles(h)), plain.Wrapped("    ", wayTo(h)))
	}
	return nil
}

// titles are what a hit is, with the rows that go with it.
func titles(h marinecalc.Hit) string {
	all := h.Title
	for _, row := range h.With {
		if row.Title != "" {
			all += " + " + row.Title
		}
	}
	return all
}

// wayTo is the command that goes where a hit leads.
func wayTo(h marinecalc.Hit) string {
	switch h.Kind {
	case "sign", "look":
		return "marinecalc fill fault-finding, question " + h.ID
	case "calculation":
		return "marinecalc fill " + h.ID
	case "row":
		way := fmt.Sprintf("%s: marinecalc fill %s", h.Text, h.Calculation)
		way += fmt.Sprintf(" --%s %q", flagName(h.Input), h.ID)
		for _, row := range h.With {
			way += fmt.Sprintf(" --%s %q", flagName(row.Input), row.ID)
		}
		return way
	case "work":
		return "marinecalc procedure " + h.ID
	}
	return h.Text
}
