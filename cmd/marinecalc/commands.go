package main

import (
	"fmt"
	"io"
	"slices"
	"strings"

	"example.org/driveline/cmd/marinecalc/plain"
	"example.org/driveline/marinecalc"
	"example.org/driveline/marinecalc/notices"
)

// command is one thing that the program does. Help, manual and completion are
// made of these.
type command struct {
	name string
	run  func(t *terminal, args []string) (int, error)
	uses []use
	// flags are those that it takes beside the ones of its uses, "+" standing
	// for those of a run.
	flags []string
	takes string // what may stand for itself: "calculation", "boat", "remedy", "file"
}

// use is one way to call a command, and what that does.
type use struct{ call, does string }

var commands []command

func init() {
	commands = []command{
		{name: "index", run: only((*terminal).index), uses: []use{{"index", "what can be worked out"}}, flags: []string{"json"}},
		{name: "find", run: only((*terminal).find), uses: []use{{"find WORDS …", "what these words lead to: clunk, drips, 3/8-24"}}},
		{name: "blank", run: only((*terminal).blank), uses: []use{{"blank CALCULATION [flags]", "the inputs of one, with help and choices, those first that go with what is given"}}, flags: []string{"rules", "units", "boat", "input"}, takes: "calculation"},
		{name: "fill", run: (*terminal).fill, uses: []use{{"fill CALCULATION [flags]", "work one out from flags, a file or standard input"}}, flags: []string{"+", "boat", "input", "calendar", "csv", "table"}, takes: "calculation"},
		{name: "survey", run: (*terminal).survey, uses: []use{{"survey BOATFILE … [flags]", "everything a boat file allows, and what it lacks"}}, flags: []string{"+", "all", "page"}, takes: "boat"},
		{name: "torques", run: only((*terminal).torques), uses: []use{{"torques BOATFILE [flags]", "the torques of all the boat's joints on one card; --page FILE writes it to print"}}, flags: []string{"+", "page"}, takes: "boat"},
		{name: "compare", run: only((*terminal).compare), uses: []use{{"compare BOATFILE --before DAY --after DAY [flags]", "two dated states side by side, and what moved"}}, flags: []string{"+", "before", "after"}, takes: "boat"},
		{name: "log", run: only((*terminal).log), uses: []use{{`log BOATFILE --reading NAME --value "6 drips/min" --date DAY [flags]`,
			"the boat file with one reading put into its log"}}, flags: []string{"reading", "value", "date", "time", "source", "gauge", "baseline", "note", "out"}, takes: "boat"},
		{name: "readings", run: only((*terminal).readings), uses: []use{{"readings BOATFILE [--list] [--add FILE [--engine NAME] [--every TIME]] [--out FILE]",
			"the dated readings as CSV for a spreadsheet; with --list what can be followed and logged; with --add the boat file with the readings of a CSV file added, or with samples of Signal K, an entry for each hour or other time"}}, flags: []string{"list", "add", "engine", "every", "out"}, takes: "boat"},
		{name: "procedure", run: only((*terminal).procedure), uses: []use{
			{"procedure [WORK …] [--boat FILE] [flags]", "work to go by, step by step, with this boat's figures and boxes to tick; without WORK the work that there is"},
			{"procedure WORK … --boat FILE --tick STEP --date DAY [--out FILE]", `the boat file with that step ticked off, or with --untick the tick taken back, or with --end the work closed`},
		}, flags: []string{"+", "boat", "tick", "untick", "date", "time", "note", "record", "end", "out"}, takes: "remedy"},
		{name: "lines", run: (*terminal).lines, uses: []use{{"lines [FILE] [--rules FILE] [--at-once N]", "a request in JSON a line, on all processors: a reply a line, in their order"}}, flags: []string{"rules", "at-once"}, takes: "file"},
		{name: "rules", run: only((*terminal).checkRules), uses: []use{{"rules FILE …", "check rule files: what is wrong, what they replace and add"}}, flags: []string{"json"}, takes: "file"},
		{name: "limits", run: only((*terminal).limits), uses: []use{{"limits [CALCULATION] [flags]", "what results are held against, and who says so"}}, flags: []string{"rules", "json"}, takes: "calculation"},
		{name: "tables", run: only((*terminal).tables), uses: []use{{"tables [TABLE] [flags]", "what is picked from: threads, gauges, alloys"}}, flags: []string{"rules", "json"}},
		{name: "convert", run: only((*terminal).convert), uses: []use{{"convert QUANTITY UNIT [--kind KIND]", "a quantity in another unit"}}, flags: []string{"kind", "json"}},
		{name: "form", run: only((*terminal).form), uses: []use{{"form CALCULATION [--boat FILE]", "its inputs as a JSON Schema, for a program that draws forms"}}, flags: []string{"boat", "rules"}, takes: "calculation"},
		{name: "schemas", run: only((*terminal).schemas), uses: []use{{"schemas [NAME]", "the schemas of all inputs, or one of them"}}},
		{name: "checks", run: (*terminal).checks, uses: []use{{"checks [CALCULATION … | TABLE … | shared] [flags]", "every published value beside what is computed now, with source and difference; exit code 1 where one is not met"}}, flags: []string{"short", "rows", "json"}},
		{name: "manual", run: only((*terminal).manual), uses: []use{{"manual", "all of this as a manual page, for man"}}},
		{name: "completion", run: only((*terminal).completion), uses: []use{{"completion SHELL", "what bash, zsh or fish needs to complete these commands"}}},
		{name: "version", run: only((*terminal).version), uses: []use{{"version", "the version of marinecalc and its standard rules"}}},
		{name: "licence", run: only((*terminal).licence), uses: []use{{"licence", "terms, and those of what it is built with"}}},
		{name: "help", run: only((*terminal).help), uses: []use{{"help [COMMAND]", "this"}}},
	}
}

// only is a command that has no exit code of its own.
func only(do func(*terminal, []string) error) func(*terminal, []string) (int, error) {
	return func(t *terminal, args []string) (int, error) { return exitDone, do(t, args) }
}

func commandNames() (names []string) {
	for i := range commands {
		names = append(names, commands[i].name)
	}
	return names
}

// flagOf is a flag as help, manual and completion tell of it; one without an of
// takes no value.
type flagOf struct{ name, of, does string }

// ofRuns are the flags of whatever works something out.
var ofRuns = []flagOf{
	{"rules", "FILE", "rule data applied over the standard rows, such as a maker's figures; may be repeated"},
	{"units", "CHOICE", "metric, us or both"},
	{"trials", "N", "Monte Carlo trials (default 1024)"},
	{"no-ranges", "", "no trials: estimates without ranges"},
	{"seed", "N", "seed of the trials (default 1)"},
	{"work", "", "show the worked lines and where each input came from"},
	{"json", "", "print the result as JSON, and what is wrong too"},
}

// ofSome are the other flags, with the commands that take them.
var ofSome = []flagOf{
	{"boat", "FILE", "boat file that supplies what is not given (fill, blank, procedure)"},
	{"input", "FILE", "the inputs as a JSON object (fill, blank)"},
	{"calendar", "FILE", "also write the dates of a work plan or service schedule as iCalendar (fill)"},
	{"csv", "FILE", "also write a list of the sheet as CSV (fill)"},
	{"table", "NAME", "which list of the sheet that is (fill)"},
	{"all", "", "also what is OK, what could not be judged, and every sheet (survey)"},
	{"page", "FILE", "also write the job sheet (survey of one boat) or the card (torques) as one HTML file to print"},
	{"before", "DAY", "the last day of the first state (compare)"},
	{"after", "DAY", "the last day of the second state (compare)"},
	{"reading", "NAME", "what was read; readings --list names them (log)"},
	{"value", "QUANTITY", "what it read, with its unit (log)"},
	{"date", "DAY", "the day, year-month-day (log, procedure)"},
	{"time", "TIME", "of the day, such as 14:05 (log, procedure)"},
	{"source", "TEXT", "who read it, or what (log)"},
	{"gauge", "GAUGE", "what it was read with, of the table gauges (log)"},
	{"baseline", "", "all was well then (log)"},
	{"note", "TEXT", "what was noticed (log, procedure)"},
	{"out", "FILE", "write there and not to standard output; the boat file itself is allowed (log, readings, procedure)"},
	{"list", "", "what can be followed and logged (readings)"},
	{"add", "FILE", "readings as CSV, or Signal K, to put into the boat file (readings)"},
	{"engine", "NAME", "which engine of several, by its name in the Signal K paths (readings)"},
	{"every", "TIME", "of how long a time of samples one entry is made, 1 min to 24 h (readings; default 1 h)"},
	{"tick", "STEP", "tick that step off (procedure)"},
	{"untick", "STEP", "take that tick back (procedure)"},
	{"record", "WHAT=VALUE", "what was written down at the step; may be repeated (procedure)"},
	{"end", "", "the work is done: its ticks go, an event stays (procedure)"},
	{"kind", "KIND", "what kind of quantity it is, such as temperature-difference (convert)"},
	{"short", "", "one line a calculation (checks)"},
	{"rows", "", "the published values alone, as a file that the page opens (checks)"},
	{"at-once", "N", "how many requests are worked on at a time (lines; default: as many as there are processors)"},
}

const (
	about    = "marinecalc works out a boat's line from engine to propeller."
	moreFill = `fill also takes every input as a flag, such as --shaft-diameter "32 mm"; a list is given as JSON. "marinecalc blank CALCULATION" names them all.`
	files3   = "A file named - is standard input. A file is written as a whole or not at all, never over another kind of file, and never over what another program wrote meanwhile."
	codes    = "Exit codes: 0 done, 1 a limit is beyond or a check not met, 2 bad input, 3 a file cannot be read or written."
)

// help prints how to use the program, or one command of it.
func (t *terminal) help(args []string) error {
	list := commands
	if len(args) > 0 {
		i := slices.Index(commandNames(), args[0])
		if i < 0 {
			_, err := t.command(args[:1])
			return err
		}
		list = commands[i : i+1]
	} else {
		fmt.Fprint(t.out, about, "\n\n")
	}
	for i := range list {
		for _, u := range list[i].uses {
			column(t.out, "marinecalc "+u.call, u.does)
		}
	}
	wanted := func(f flagOf, of string) bool {
		return len(args) == 0 || slices.Contains(list[0].flags, f.name) || slices.Contains(list[0].flags, of)
	}
	told := false
	for _, group := range []struct {
		list []flagOf
		of   string
	}{{ofSome, ""}, {ofRuns, "+"}} {
		for _, f := range group.list {
			if !wanted(f, group.of) {
				continue
			}
			if !told {
				fmt.Fprintln(t.out, "\nFlags:")
			}
			told = true
			column(t.out, strings.TrimSpace("--"+f.name+" "+f.of), f.does)
		}
	}
	for i, text := range []string{moreFill, files3, codes} {
		if i > 0 || len(args) == 0 || args[0] == "fill" {
			fmt.Fprintf(t.out, "\n%s\n", plain.Wrapped("", text))
		}
	}
	return nil
}

// column prints what something is called and, in a column or below it, what it
// does.
func column(w io.Writer, called, does string) { plain.Column(w, "  ", 26, called, does) }

func (t *terminal) index(args []string) error {
	switch {
	case len(args) == 1 && args[0] == "--json":
		return plain.JSON(t.out, marinecalc.Calculations())
	case len(args) > 0:
		return marinecalc.Problems{{Where: "index", What: fmt.Sprintf("does not take %q", args[0]), Allowed: "--json"}}.Err()
	}
	for _, c := range marinecalc.Calculations() {
		plain.Column(t.out, "", 23, c.ID, c.Answers)
	}
	return nil
}

func (t *terminal) version([]string) error {
	fmt.Fprintln(t.out, "marinecalc", marinecalc.Version)
	return nil
}

func (t *terminal) licence([]string) error {
	fmt.Fprint(t.out, notices.Own(), "\nBuilt with:\n\n", notices.Third())
	return nil
}
