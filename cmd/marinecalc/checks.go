package main

import (
	"context"
	"flag"
	"fmt"
	"io"
	"slices"

	"example.org/driveline/cmd/marinecalc/plain"
	"example.org/driveline/marinecalc"
	"example.org/driveline/marinecalc/problem"
	"example.org/driveline/testdata/published"
)

// checks computes the published values anew and prints them beside what is
// published.
func (t *terminal) checks(args []string) (int, error) {
	fs := flag.NewFlagSet("checks", flag.ContinueOnError)
	fs.SetOutput(io.Discard)
	short, asJSON, asRows := fs.Bool("short", false, ""), fs.Bool("json", false, ""), fs.Bool("rows", false, "")
	names, err := parse(fs, args)
	if err != nil {
		return 0, badFlag("checks", err, flagsOf(fs), "")
	}
	rows, err := publishedOf(names)
	if err != nil {
		return 0, err
	}
	file, err := published.File(rows)
	if err != nil {
		return 0, err
	}
	if *asRows {
		_, err := t.out.Write(append(file, '\n'))
		return exitDone, err
	}
	chapters, err := marinecalc.Checks(context.Background(), file)
	if err != nil {
		return 0, err
	}
	code := exitDone
	for i := range chapters {
		if chapters[i].Off > 0 {
			code = exitBeyond
		}
	}
	if *asJSON {
		return code, plain.JSON(t.out, chapters)
	}
	t.printChecks(chapters, *short)
	return code, nil
}

// publishedOf are the published values of the calculations and tables that are
// named, or all of them.
func publishedOf(names []string) ([]published.Row, error) {
	all, err := published.Rows()
	if err != nil || len(names) == 0 {
		return all, err
	}
	var known []string
	for i := range all {
		if name := all[i].Chapter(); !slices.Contains(known, name) {
			known = append(known, name)
		}
	}
	slices.Sort(known)
	for _, name := range names {
		if !slices.Contains(known, name) {
			return nil, marinecalc.Problems{{Where: name, What: "has no published checks", Allowed: fmt.Sprintf("one of %q", known), Hint: problem.DidYouMean(name, known), Kind: problem.Unknown}}.Err()
		}
	}
	return slices.DeleteFunc(all, func(row published.Row) bool { return !slices.Contains(names, row.Chapter()) }), nil
}

func (t *terminal) printChecks(chapters []marinecalc.CheckChapter, short bool) {
	rows, off := 0, 0
	for _, c := range chapters {
		rows, off = rows+len(c.Checks), off+c.Off
		met := "all met"
		if c.Off > 0 {
			met = fmt.Sprintf("%d NOT MET", c.Off)
		}
		sources := "1 source"
		if c.Sources > 1 {
			sources = fmt.Sprintf("%d sources", c.Sources)
		}
		farthest := "none is off"
		if c.Farthest > 0 {
			farthest = fmt.Sprintf("the farthest is off by %.2g of what is allowed", c.Farthest)
		}
		fmt.Fprintln(t.out, plain.Wrapped("", fmt.Sprintf("%s (%s): %d from %s, %s; %s", c.Title, c.ID, len(c.Checks), sources, met, farthest)))
		if short {
			continue
		}
		source := ""
		for _, check := range c.Checks {
			if check.Source != source {
				source = check.Source
				fmt.Fprintln(t.out, plain.Wrapped("  ", source+":"))
			}
			if check.Problem != "" {
				fmt.Fprintln(t.out, plain.Wrapped("    ", "NOT MET: "+check.ID+" cannot be computed: "+check.Problem))
			}
			for _, v := range check.Values {
				line := fmt.Sprintf("%s: published %s, computed %s", v.Title, v.Published, v.Computed)
				if v.Difference != "" {
					line += fmt.Sprintf(", off by %s (allowed %s)", v.Difference, v.Allowed)
				}
				if !v.Holds {
					line = "NOT MET: " + line
				}
				fmt.Fprintln(t.out, plain.Wrapped("    ", line))
			}
		}
		fmt.Fprintln(t.out)
	}
	fmt.Fprintln(t.out, plain.Wrapped("", fmt.Sprintf("%d checks, %d not met, by the standard rules of version %s.", rows, off, marinecalc.Version)))
}
