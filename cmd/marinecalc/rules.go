package main

import (
	"context"
	"flag"
	"fmt"
	"io"

	"example.org/driveline/cmd/marinecalc/plain"
	"example.org/driveline/marinecalc"
)

// checkRules says what is wrong with rule files, each over those before it,
// and what they replace and add.
func (t *terminal) checkRules(args []string) error {
	fs := flag.NewFlagSet("rules", flag.ContinueOnError)
	fs.SetOutput(io.Discard)
	asJSON := fs.Bool("json", false, "")
	files, err := parse(fs, args)
	if err != nil {
		return badFlag("rules", err, flagsOf(fs), "")
	}
	if len(files) == 0 {
		return marinecalc.Problems{{Where: "rules", What: "needs a rule file", Allowed: "marinecalc rules [--json] FILE …"}}.Err()
	}
	reports, _, err := t.readRules("rules", files)
	if err != nil {
		return err
	}
	if *asJSON {
		return plain.JSON(t.out, reports)
	}
	for _, r := range reports {
		fmt.Fprintf(t.out, "%s: %s\n", r.File, r.Title)
		printChanges(t.out, "replaces", r.Replaces)
		printChanges(t.out, "adds", r.Adds)
	}
	return nil
}

func printChanges(out io.Writer, verb string, changes []marinecalc.RulesChange) {
	for _, c := range changes {
		text := fmt.Sprintf("line %d: %s %s %s", c.Line, verb, c.Kind, c.ID)
		if c.Title != "" {
			text += ", " + c.Title
		}
		if c.Now != "" {
			text += ": " + c.Now
		}
		if c.Was != "" {
			text += ", in place of " + c.Was + " [" + c.WasSource + "]"
		}
		fmt.Fprintln(out, plain.Wrapped("  ", text))
	}
}

// readRules reads rule files and checks each over those before it. What is
// probably not meant goes to errs, what is wrong into the error.
func (t *terminal) readRules(where string, names []string) ([]*marinecalc.RulesReport, [][]byte, error) {
	var texts [][]byte
	var reports []*marinecalc.RulesReport
	for _, name := range names {
		text, err := t.LoadUpTo(marinecalc.MaxBytes, where, name)
		if err != nil {
			return nil, nil, err
		}
		engine, err := marinecalc.New(marinecalc.WithOverlays(texts...))
		if err != nil {
			return nil, nil, err
		}
		report := engine.CheckRules(context.Background(), text, name)
		for _, w := range report.Warnings {
			fmt.Fprintln(t.errs, "warning:", w)
		}
		if err := report.Problems.Err(); err != nil {
			return nil, nil, err
		}
		texts, reports = append(texts, text), append(reports, report)
	}
	return reports, texts, nil
}
