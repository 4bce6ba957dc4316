// Command marinecalc works out a boat's line from engine to propeller at the
// command line: one calculation at a time, or everything a boat file allows.
package main

import (
	"fmt"
	"io"
	"os"

	"example.org/driveline/marinecalc"
	"example.org/driveline/marinecalc/notices"
)

// The exit codes.
const (
	exitDone   = 0 // worked out, nothing beyond its limit
	exitBeyond = 1 // worked out, and a limit is beyond
	exitBad    = 2 // the input cannot be used
)

const usage = `marinecalc works out a boat's line from engine to propeller.

  marinecalc index                       what can be worked out
  marinecalc blank CALCULATION           the inputs of one, with help and choices
  marinecalc fill CALCULATION [flags]    work one out from flags, a file or standard input
  marinecalc survey BOATFILE [flags]     everything the boat file allows, and what it lacks
  marinecalc compare BOATFILE --before DAY --after DAY [flags]
                                         two dated states side by side, and what moved
  marinecalc log BOATFILE --reading NAME --value "6 drips/min" --date DAY [flags]
                                         the boat file with one reading put into its log; --time,
                                         --source, --gauge, --baseline (all was well), --note, --out
  marinecalc readings BOATFILE [--list] [--add FILE] [--out FILE]
                                         the dated readings as CSV for a spreadsheet; with --list
                                         what can be followed and logged; with --add the boat file
                                         with the readings of a CSV file added

  marinecalc procedure [WORK …] [--boat FILE] [flags]
                                         work to go by, step by step, with this boat's figures and
                                         boxes to tick; without WORK the work that there is
  marinecalc procedure WORK … --boat FILE --tick STEP --date DAY [--out FILE]
                                         the boat file with that step ticked off, or with --untick
                                         the tick taken back; --note and --record "WHAT=VALUE" too;
                                         --end --date DAY clears the ticks and keeps an event
  marinecalc rules FILE …                check rule files: what is wrong, what they replace and add
  marinecalc version                     the version of marinecalc and its standard rules
  marinecalc licence                     terms, and those of what it is built with

Flags of fill, survey, compare and procedure:
  --boat FILE      boat file that supplies what is not given (fill, procedure)
  --input FILE     the inputs as a JSON object; - is standard input (fill)
  --calendar FILE  also write the dates of a work plan or service schedule as iCalendar (fill)
  --csv FILE       also write a list of the sheet as CSV; --table NAME says which (fill)
  --all            also what is OK, what is not measured, and every sheet (survey)
  --page FILE      also write the job sheet as one HTML file to print (survey)
  --rules FILE     rule data applied over the standard rows, such as a maker's figures; may be repeated
  --units CHOICE   metric, us or both
  --trials N       Monte Carlo trials (default 4096)
  --no-ranges      no trials: estimates without ranges
  --seed N         seed of the trials (default 1)
  --work           show the worked lines and where each input came from
  --json           print the sheet as JSON
fill also takes every input as a flag, such as --shaft-diameter "32 mm";
a list is given as JSON. "marinecalc blank CALCULATION" names them all.

Exit codes: 0 done, 1 a limit is beyond, 2 bad input.
`

func main() { os.Exit(run(os.Args[1:], os.Stdin, os.Stdout, os.Stderr)) }

func run(args []string, in io.Reader, out, errs io.Writer) int {
	if len(args) == 0 {
		fmt.Fprint(errs, usage)
		return exitBad
	}
	var code int
	var err error
	switch args[0] {
	case "index":
		err = index(out)
	case "blank":
		err = blank(args[1:], out)
	case "fill":
		code, err = fill(args[1:], in, out, errs)
	case "survey":
		code, err = survey(args[1:], out, errs)
	case "compare":
		err = compare(args[1:], out, errs)
	case "log":
		err = log(args[1:], out, errs)
	case "readings":
		err = readings(args[1:], out, errs)
	case "procedure":
		err = procedure(args[1:], out, errs)
	case "rules":
		err = checkRules(args[1:], out, errs)
	case "help", "-h", "--help":
		fmt.Fprint(out, usage)
	case "version", "--version":
		fmt.Fprintln(out, "marinecalc", marinecalc.Version)
	case "licence", "license":
		fmt.Fprint(out, notices.Own(), "\nBuilt with:\n\n", notices.Third())
	default:
		err = marinecalc.Problems{{Where: args[0], What: "is not a command", Allowed: "index, blank, fill, survey, compare, log, readings, procedure, rules, version, licence", Hint: `see "marinecalc help"`}}.Err()
	}
	if err != nil {
		complain(errs, err)
		return exitBad
	}
	return code
}

func complain(w io.Writer, err error) {
	for _, p := range marinecalc.ProblemsOf(err) {
		fmt.Fprintln(w, p)
	}
}

func index(out io.Writer) error {
	for _, c := range marinecalc.Calculations() {
		fmt.Fprintf(out, "%-22s %s\n", c.ID, c.Answers)
	}
	return nil
}
