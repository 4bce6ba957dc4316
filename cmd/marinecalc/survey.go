package main

import (
	"errors"
	"flag"
	"fmt"
	"io"
	"slices"
	"strings"

	"example.org/driveline/cmd/marinecalc/disk"
	"example.org/driveline/cmd/marinecalc/plain"
	"example.org/driveline/marinecalc"
)

// boatsCommand reads what the commands on boat files share: the files' names,
// the flags and the options.
func (t *terminal) boatsCommand(name string, args []string, c *common, fs *flag.FlagSet) ([]string, marinecalc.Options, error) {
	c.define(fs)
	files, err := parse(fs, args)
	if err != nil {
		return nil, marinecalc.Options{}, badFlag(name, err, flagsOf(fs), "")
	}
	if len(files) == 0 {
		return nil, marinecalc.Options{}, marinecalc.Problems{{Where: name, What: "needs a boat file", Allowed: "marinecalc " + name + " BOATFILE [flags]"}}.Err()
	}
	o, err := c.options(t)
	return files, o, err
}

// survey works out everything a boat file allows.
func (t *terminal) survey(args []string) (int, error) {
	var c common
	fs := flag.NewFlagSet("survey", flag.ContinueOnError)
	page := fs.String("page", "", "")
	all := fs.Bool("all", false, "")
	files, o, err := t.boatsCommand("survey", args, &c, fs)
	if err != nil {
		return 0, err
	}
	if *page != "" && len(files) > 1 {
		return 0, marinecalc.Problems{{Where: "--page", What: fmt.Sprintf("is one file, and there are %d boats", len(files)), Allowed: "one boat file with --page FILE"}}.Err()
	}
	code := exitDone
	var faults marinecalc.Problems
	unread := false
	for i, file := range files {
		if i > 0 && !c.json {
			fmt.Fprint(t.out, "\n")
		}
		beyond, err := t.surveyOne(file, o, *page, c, *all || c.work)
		if err != nil && len(files) == 1 {
			return 0, err
		}
		faults = append(faults, marinecalc.ProblemsOf(err)...) // the other boats are surveyed all the same
		unread = unread || errors.As(err, &disk.Error{})
		code = max(code, codeFor(beyond))
	}
	if unread {
		return code, disk.Error{Err: faults.Err()}
	}
	return code, faults.Err()
}

func (t *terminal) surveyOne(file string, o marinecalc.Options, page string, c common, all bool) (beyond bool, err error) {
	b, err := t.readBoat("survey", file, o)
	if err != nil {
		return false, err
	}
	check := marinecalc.Check
	if page != "" {
		check = marinecalc.CheckToPrint
	}
	s, err := check(b, o)
	if err != nil {
		return false, err
	}
	if page != "" {
		if err := t.Save("--page", page, []byte(marinecalc.JobSheet(s))); err != nil {
			return false, err
		}
	}
	if c.json {
		return s.Beyond(), plain.JSON(t.out, s)
	}
	printSurvey(t.out, s, c.work, all)
	return s.Beyond(), nil
}

// printSurvey writes a survey as text: the whole boat in a dozen lines, what
// was found, what does not agree, what to measure next, what is close and what
// is outside a guide. What is OK is counted; all of it, the sheets and what they
// still need are written when asked for.
func printSurvey(out io.Writer, s *marinecalc.Survey, work, all bool) {
	tell := func(head, text string) { fmt.Fprintln(out, plain.Wrapped("  ", head+": "+text)) }
	fmt.Fprintf(out, "%s: the boat in short\n\n", s.Boat)
	for _, l := range s.Summary {
		fmt.Fprintln(out, plain.Wrapped("", l.Head+": "+l.Text))
	}
	fmt.Fprint(out, "\nFound\n\n")
	for _, f := range s.Faults {
		for _, p := range f.Problems {
			tell("TO PUT RIGHT", f.Title+" cannot be worked out. "+p.String())
		}
	}
	for _, w := range s.Warnings { // a report that is kept has to say so too, not the terminal alone
		tell("NOT USED OF THE BOAT FILE", w.String())
	}
	for _, f := range s.Found {
		switch f.Kind {
		case "still":
			tell("KEEP THE SHAFT STILL", f.Text)
		case "cause":
			tell("FAULT FOUND", f.Title+". "+f.Text)
		case "look", "wear":
			tell("SEEN", f.Title+" "+f.Text)
		default:
			tell("OVER THE LIMIT", f.Sheet+". "+f.Text)
		}
	}
	titles, conflicts := s.Conflicts()
	for i, c := range conflicts {
		tell("FIGURES THAT DO NOT AGREE", titles[i]+". "+c.Text)
	}
	if nothing := s.Nothing; nothing != "" {
		fmt.Fprintln(out, plain.Wrapped("  ", nothing))
	}
	for _, chain := range s.Chains {
		if what, ok := strings.CutPrefix(chain, "Look for "); ok {
			tell("Look for", what)
		} else {
			tell("Because", chain)
		}
	}
	if s.Choice != nil {
		tell("Work", s.Choice.Text)
	}
	if len(s.Measure) > 0 {
		fmt.Fprint(out, "\n", plain.Wrapped("", "Measure, look up or choose next"), "\n\n")
	}
	for i, m := range s.Measure {
		if i == mostMeasured && !all {
			fmt.Fprintf(out, "  and %d more: --all\n", len(s.Measure)-i)
			break
		}
		fmt.Fprintln(out, plain.Wrapped("  ", m.Text))
	}
	printFindings(out, s, all)
	if !all {
		fmt.Fprintln(out, plain.Wrapped("", "--all lists what is OK, what could not be judged, and every sheet."))
		return
	}
	fmt.Fprintln(out)
	for _, one := range s.Sheets {
		plain.Sheet(out, one, work)
		fmt.Fprintln(out)
	}
	for _, m := range s.Missing {
		fmt.Fprintf(out, "%s still needs:\n", m.Title)
		for _, n := range m.Needs {
			line := n.Title + ". " + n.How
			if n.Gauge != "" {
				line += " Gauge: " + n.Gauge + "."
			}
			fmt.Fprintln(out, plain.Wrapped("  ", line))
		}
	}
}

// mostMeasured is how much of what to measure is listed unless all is asked for.
const mostMeasured = 6

// printFindings writes what is close, then what is outside or about a guide.
// What waits is grouped above and what is OK is counted, unless all is asked for.
func printFindings(out io.Writer, s *marinecalc.Survey, all bool) {
	groups := []struct {
		head   string
		words  []string
		always bool
	}{
		{"Close", []string{"near the limit"}, true},
		{"Outside or about a guide", []string{"outside the guide", "about the guide"}, true},
		{"Not enough to tell", []string{"cannot tell"}, false},
		{"OK or inside the guide", []string{"within", "inside the guide"}, false},
	}
	for _, g := range groups {
		var lines []string
		for _, f := range s.Findings {
			if slices.Contains(g.words, string(f.Verdict.Word)) {
				lines = append(lines, plain.Wrapped("  ", strings.ToUpper(f.Verdict.Reads)+": "+f.Sheet+". "+f.Verdict.Sentence+" "+f.Verdict.Settle))
			}
		}
		if len(lines) == 0 {
			continue
		}
		fmt.Fprintf(out, "\n%s: %d\n", g.head, len(lines))
		if g.always || all {
			fmt.Fprintln(out, "\n"+strings.Join(lines, "\n"))
		}
	}
	if n := len(s.Open); n > 0 {
		fmt.Fprintf(out, "\nNot judged: %d\n", n)
	}
	fmt.Fprintln(out)
}

// compare holds two dated states of the boat side by side.
func (t *terminal) compare(args []string) error {
	out := t.out
	var c common
	fs := flag.NewFlagSet("compare", flag.ContinueOnError)
	before, after := fs.String("before", "", ""), fs.String("after", "", "")
	files, o, err := t.boatsCommand("compare", args, &c, fs)
	if err != nil {
		return err
	}
	if len(files) > 1 {
		return marinecalc.Problems{{Where: "compare", What: "holds one boat's days against each other", Allowed: "one boat file"}}.Err()
	}
	b, err := t.readBoat("compare", files[0], o)
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
		return plain.JSON(out, d)
	}
	fmt.Fprintf(out, "%s: %s and %s\n", d.Boat, d.Before, d.After)
	for i, list := range [][]marinecalc.Found{d.Came, d.Gone} {
		if len(list) > 0 {
			fmt.Fprintf(out, "\n%s\n", [...]string{"Found, and not before", "Found before, and no longer"}[i])
		}
		for _, f := range list {
			fmt.Fprintln(out, plain.Wrapped("  ", f.Sheet+". "+f.Title))
		}
	}
	fmt.Fprint(out, "\nMoved\n")
	for _, m := range d.Moved {
		fmt.Fprintln(out, plain.Wrapped("  ", m.Sheet+". "+m.Sentence))
	}
	fmt.Fprintln(out, "\nNot moved, as far as the gauges can tell")
	for _, m := range d.Still {
		fmt.Fprintln(out, plain.Wrapped("  ", m.Sheet+". "+m.Sentence))
	}
	fmt.Fprintln(out, "\nVerdicts that turned")
	for _, t := range d.Turned {
		fmt.Fprintln(out, plain.Wrapped("  ", fmt.Sprintf("%s. %s: from %s to %s (%s, %s).", t.Sheet, t.Title, t.Before, t.After, t.Value, t.Bound)))
	}
	return nil
}
