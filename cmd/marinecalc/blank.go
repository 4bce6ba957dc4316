package main

import (
	"encoding/json"
	"fmt"
	"io"
	"strings"

	"example.org/driveline/cmd/marinecalc/plain"
	"example.org/driveline/marinecalc"
)

// blank prints the inputs of a calculation.
func (t *terminal) blank(args []string) error {
	out := t.out
	if len(args) != 1 {
		return marinecalc.Problems{{Where: "blank", What: "needs the name of one calculation", Allowed: `one of "marinecalc index"`}}.Err()
	}
	form, err := marinecalc.Open(args[0])
	if err != nil {
		return err
	}
	fmt.Fprintf(out, "%s\n%s\n", form.Title, form.Answers)
	for _, in := range form.Inputs {
		mark := ""
		if in.Required {
			mark = "  (needed)"
		}
		fmt.Fprintf(out, "\n--%s  %s%s\n", flagName(in.Name), in.Title, mark)
		if in.Help != "" {
			fmt.Fprintln(out, plain.Wrapped("    ", in.Help))
		}
		if len(in.Units) > 1 {
			fmt.Fprintln(out, plain.Wrapped("    ", "units: "+strings.Join(in.Units, ", ")))
		}
		printChoices(out, in.Choices)
		for _, part := range in.Parts {
			fmt.Fprintln(out, plain.Wrapped("    ", fmt.Sprintf("each with %q: %s. %s", part.Name, part.Title, part.Help)))
			printChoices(out, part.Choices)
		}
		if in.Example != nil {
			if text, err := json.Marshal(in.Example); err == nil {
				fmt.Fprintln(out, "    for example "+string(text))
			}
		}
	}
	return nil
}

// printChoices lists what can be picked.
func printChoices(out io.Writer, choices []marinecalc.Choice) {
	for _, c := range choices {
		plain.Column(out, "      ", 29, c.Pick, c.Name)
	}
}
