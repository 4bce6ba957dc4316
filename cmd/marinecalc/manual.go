package main

import (
	"fmt"
	"strings"

	"example.org/driveline/marinecalc"
)

// manual prints all of the help as a manual page in the macros of man(7), with
// the inputs of every calculation.
func (t *terminal) manual([]string) error {
	var b strings.Builder
	put := func(macro, text string) {
		if macro != "" {
			b.WriteString("." + macro + " ")
		}
		b.WriteString(roff(text, macro == "") + "\n")
	}
	item := func(called, does string) {
		b.WriteString(".TP\n")
		put("B", called)
		put("", does)
	}
	fmt.Fprintf(&b, ".TH MARINECALC 1 \"\" \"marinecalc %s\"\n", roff(marinecalc.Version, false))
	put("SH", "NAME")
	put("", "marinecalc - a boat's line from engine to propeller, worked out")
	put("SH", "SYNOPSIS")
	put("", "marinecalc COMMAND [arguments] [flags]")
	put("SH", "COMMANDS")
	for i := range commands {
		for _, u := range commands[i].uses {
			item(u.call, u.does)
		}
	}
	put("SH", "FLAGS")
	for _, list := range [][]flagOf{ofSome, ofRuns} {
		for _, f := range list {
			item(strings.TrimSpace("--"+f.name+" "+f.of), f.does)
		}
	}
	b.WriteString(".PP\n")
	put("", moreFill)
	put("SH", "CALCULATIONS")
	for _, c := range marinecalc.Calculations() {
		form, err := marinecalc.Open(c.ID)
		if err != nil {
			return err
		}
		put("SS", c.ID)
		put("", c.Answers)
		for _, in := range form.Inputs {
			text := in.Title + "."
			if in.Required {
				text = in.Title + " (needed)."
			}
			if len(in.Units) > 0 {
				text += " Units: " + strings.Join(in.Units, ", ") + "."
			}
			if n := len(in.Choices); n > 0 && n <= 12 {
				var picks []string
				for _, choice := range in.Choices {
					picks = append(picks, choice.Pick)
				}
				text += " One of " + strings.Join(picks, ", ") + "."
			}
			item("--"+flagName(in.Name), text)
		}
	}
	put("SH", "FILES")
	put("", files3)
	put("SH", "EXIT STATUS")
	put("", codes)
	_, err := fmt.Fprint(t.out, b.String())
	return err
}

// roff writes a text as a formatter takes it literally.
func roff(text string, line bool) string {
	text = strings.NewReplacer(`\`, `\e`, "-", `\-`, "\n", " ").Replace(text)
	if line && (strings.HasPrefix(text, ".") || strings.HasPrefix(text, "'")) {
		text = `\&` + text
	}
	return text
}
