package main

import (
	"flag"
	"fmt"
	"io"
	"os"
	"strings"

	"example.org/driveline/marinecalc"
)

// boatCommand reads what the commands on a boat file share: the file, the
// flags and the options.
func boatCommand(name string, args []string, c *common, fs *flag.FlagSet, errs io.Writer) (*marinecalc.Boat, marinecalc.Options, error) {
	c.define(fs)
	files, err := parse(fs, args)
	if err != nil {
		var known []string
		fs.VisitAll(func(f *flag.Flag) { known = append(known, "--"+f.Name) })
		return nil, marinecalc.Options{}, marinecalc.Problems{{Where: name, What: err.Error(), Allowed: strings.Join(known, ", ")}}.Err()
	}
	if len(files) != 1 {
		return nil, marinecalc.Options{}, marinecalc.Problems{{Where: name, What: "needs one boat file", Allowed: "marinecalc " + name + " BOATFILE [flags]"}}.Err()
	}
	o, err := c.options(errs)
	if err != nil {
		return nil, o, err
	}
	b, err := readBoat(name, files[0], o, errs)
	return b, o, err
}

// survey works out everything a boat file allows.
func survey(args []string, out, errs io.Writer) (int, error) {
	var c common
	fs := flag.NewFlagSet("survey", flag.ContinueOnError)
	page := fs.String("page", "", "")
	b, o, err := boatCommand("survey", args, &c, fs, errs)
	if err != nil {
		return 0, err
	}
	s, err := marinecalc.Check(b, o)
	if err != nil {
		return 0, err
	}
	if *page != "" {
		if err := os.WriteFile(*page, []byte(marinecalc.JobSheet(s)), 0o644); err != nil {
			return 0, marinecalc.Problems{{Where: "--page", What: err.Error(), Allowed: "a file that can be written"}}.Err()
		}
	}
	if c.json {
		return codeFor(s.Beyond()), printJSON(out, s)
	}
	printSurvey(out, s, c.work)
	return codeFor(s.Beyond()), nil
}

// printSurvey writes a survey as text: figures to put right, what is urgent, how one thing leads to
// another, what is not measured, then every sheet.
func printSurvey(out io.Writer, s *marinecalc.Survey, work bool) {
	fmt.Fprintf(out, "%s: what was found, most urgent first\n\n", s.Boat)
	for _, f := range s.Faults {
		for _, p := range f.Problems {
			fmt.Fprintln(out, wrapped("  ", "TO PUT RIGHT: "+f.Title+" cannot be worked out. "+p.String()))
		}
	}
	titles, conflicts := s.Conflicts()
	for i, c := range conflicts {
		fmt.Fprintln(out, wrapped("  ", "FIGURES THAT DO NOT AGREE: "+titles[i]+". "+c.Text))
	}
	if len(s.Findings) == 0 {
		fmt.Fprintln(out, wrapped("  ", "No limit could be judged yet: the boat file lacks the readings listed below."))
	}
	for _, f := range s.Findings {
		fmt.Fprintln(out, wrapped("  ", strings.ToUpper(f.Verdict.Reads)+": "+f.Sheet+". "+f.Verdict.Sentence+" "+f.Verdict.Settle))
	}
	var awaited []string
	for _, a := range s.Awaited {
		awaited = append(awaited, fmt.Sprintf("%s (for %d, on %s)", strings.ToLower(a.Title), a.Verdicts, strings.Join(a.Sheets, ", ")))
	}
	if len(awaited) > 0 {
		fmt.Fprintln(out, wrapped("  ", "To tell more, type: "+strings.Join(awaited, "; ")+"."))
	}
	for _, chain := range s.Chains {
		fmt.Fprintln(out, wrapped("  ", "Because: "+chain))
	}
	fmt.Fprintln(out)
	for _, one := range s.Sheets {
		printSheet(out, one, work)
		fmt.Fprintln(out)
	}
	for _, m := range s.Missing {
		fmt.Fprintf(out, "%s still needs:\n", m.Title)
		for _, n := range m.Needs {
			line := n.Title + ". " + n.How
			if n.Gauge != "" {
				line += " Gauge: " + n.Gauge + "."
			}
			fmt.Fprintln(out, wrapped("  ", line))
		}
	}
}

// compare holds two dated states of the boat side by side.
func compare(args []string, out, errs io.Writer) error {
	var c common
	fs := flag.NewFlagSet("compare", flag.ContinueOnError)
	before, after := fs.String("before", "", ""), fs.String("after", "", "")
	b, o, err := boatCommand("compare", args, &c, fs, errs)
	if err != nil {
		return err
	}
	d, err := marinecalc.Compare(b, *before, *after, o)
	if err != nil {
		list := marinecalc.ProblemsOf(err)
		for i := range list {
			list[i].Where = strings.Replace(list[i].Where, "/", "--", 1)
		}
		return list.Err()
	}
	if c.json {
		return printJSON(out, d)
	}
	fmt.Fprintf(out, "%s: %s and %s\n\nMoved\n", d.Boat, d.Before, d.After)
	for _, m := range d.Moved {
		fmt.Fprintln(out, wrapped("  ", m.Sheet+". "+m.Sentence))
	}
	fmt.Fprintln(out, "\nNot moved, as far as the gauges can tell")
	for _, m := range d.Still {
		fmt.Fprintln(out, wrapped("  ", m.Sheet+". "+m.Sentence))
	}
	fmt.Fprintln(out, "\nVerdicts that turned")
	for _, t := range d.Turned {
		fmt.Fprintln(out, wrapped("  ", fmt.Sprintf("%s. %s: from %s to %s (%s, %s).", t.Sheet, t.Title, t.Before, t.After, t.Value, t.Bound)))
	}
	return nil
}
