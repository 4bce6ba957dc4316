package main

import (
	"flag"
	"fmt"
	"io"

	"example.org/driveline/marinecalc"
)

// survey works out everything a boat file allows.
func survey(args []string, out io.Writer) (int, error) {
	var c common
	fs := flag.NewFlagSet("survey", flag.ContinueOnError)
	c.define(fs)
	file := ""
	if len(args) > 0 {
		file = args[0]
		args = args[1:]
	}
	if err := fs.Parse(args); err != nil {
		return 0, marinecalc.Problems{{Where: "survey", What: err.Error(), Allowed: "--rules, --units, --trials, --seed, --work, --json"}}
	}
	if file == "" || fs.NArg() > 0 {
		return 0, marinecalc.Problems{{Where: "survey", What: "needs one boat file", Allowed: "marinecalc survey BOATFILE [flags]"}}
	}
	o, err := c.options()
	if err != nil {
		return 0, err
	}
	b, err := readBoat("survey", file)
	if err != nil {
		return 0, err
	}
	s, err := marinecalc.Check(b, o)
	if err != nil {
		return 0, err
	}
	if c.json {
		return codeFor(s.Beyond()), printJSON(out, s)
	}
	for _, one := range s.Sheets {
		printSheet(out, one, c.work)
		fmt.Fprintln(out)
	}
	for _, f := range s.Faults {
		fmt.Fprintf(out, "%s cannot be worked out:\n", f.Title)
		for _, p := range f.Problems {
			fmt.Fprintln(out, "  "+p.String())
		}
	}
	for _, m := range s.Missing {
		fmt.Fprintf(out, "%s still needs:\n", m.Title)
		for _, n := range m.Needs {
			fmt.Fprintf(out, "  %s. %s\n", n.Title, n.How)
		}
	}
	return codeFor(s.Beyond()), nil
}
