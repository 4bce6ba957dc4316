package main

import (
	"context"
	"encoding/json"
	"flag"
	"fmt"
	"io"
	"slices"
	"strings"

	"example.org/driveline/cmd/marinecalc/plain"
	"example.org/driveline/marinecalc"
)

// blank prints the inputs of a calculation, and of what can be picked first what goes
// with what is known.
func (t *terminal) blank(args []string) error {
	out := t.out
	id, args := takeCalculation(args)
	if id == "" {
		return marinecalc.Problems{{Where: "blank", What: "needs the name of one calculation", Allowed: `one of "marinecalc index"`}}.Err()
	}
	form, err := marinecalc.Open(id)
	if err != nil {
		return err
	}
	var c common
	fs := flag.NewFlagSet("blank", flag.ContinueOnError)
	fs.Var(&c.rules, "rules", "")
	fs.StringVar(&c.units, "units", "", "")
	o, input, _, err := t.known(fs, form, &c, args)
	if err != nil {
		return err
	}
	fits, err := new(marinecalc.Engine).Fits(context.Background(), form.ID, input, o)
	if err != nil {
		return err
	}
	fmt.Fprintf(out, "%s\n%s\n", form.Title, plain.Wrapped("", form.Answers))
	for _, in := range form.Inputs {
		mark := ""
		if in.Required {
			mark = "  (needed)"
		}
		fmt.Fprintln(out, "\n"+plain.Wrapped("", fmt.Sprintf("--%s: %s%s", flagName(in.Name), in.Title, mark)))
		if in.Help != "" {
			fmt.Fprintln(out, plain.Wrapped("    ", in.Help))
		}
		if len(in.Units) > 1 {
			fmt.Fprintln(out, plain.Wrapped("    ", "units: "+strings.Join(in.Units, ", ")))
		}
		printFitting(out, in.Choices, fits[in.Name])
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

// printFitting lists what can be picked: what does not go with the rest comes last,
// under what it does not go with.
func printFitting(out io.Writer, choices []marinecalc.Choice, fit marinecalc.Fit) {
	if fit.With == "" {
		printChoices(out, choices)
		return
	}
	goes, others := []marinecalc.Choice{}, []marinecalc.Choice{}
	for _, c := range choices {
		if slices.Contains(fit.Picks, c.Pick) {
			goes = append(goes, c)
		} else {
			others = append(others, c)
		}
	}
	printChoices(out, goes)
	fmt.Fprintln(out, plain.Wrapped("    ", "Not for "+fit.With+":"))
	printChoices(out, others)
}

// printChoices lists what can be picked.
func printChoices(out io.Writer, choices []marinecalc.Choice) {
	for _, c := range choices {
		plain.Column(out, "      ", 29, c.Pick, c.Name)
	}
}
