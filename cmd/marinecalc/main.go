// Command marinecalc works out a boat's line from engine to propeller at the
// command line: one calculation at a time, or everything a boat file allows.
package main

import (
	"cmp"
	"errors"
	"io"
	"os"
	"slices"
	"strings"

	"example.org/driveline/cmd/marinecalc/disk"
	"example.org/driveline/cmd/marinecalc/plain"
	"example.org/driveline/marinecalc"
	"example.org/driveline/marinecalc/problem"
)

// The exit codes.
const (
	exitDone   = 0 // worked out, nothing beyond its limit
	exitBeyond = 1 // worked out, and a limit is beyond
	exitBad    = 2 // the input cannot be used
	exitFile   = 3 // a file cannot be read or written
)

func main() {
	plain.Narrow(os.Stdout)
	os.Exit(run(os.Args[1:], os.Stdin, os.Stdout, os.Stderr))
}

func run(args []string, in io.Reader, out, errs io.Writer) int {
	to := &plain.Checked{Writer: out}
	t := &terminal{Files: disk.Files{In: in}, out: plain.Tame{Writer: to}, errs: plain.Tame{Writer: errs}}
	code, err := t.command(args)
	if to.Err != nil && (err == nil || errors.Is(err, to.Err)) {
		err = disk.Unwritable("standard output", to.Err)
	}
	if err != nil {
		return t.complain(err, args)
	}
	return code
}

// command runs the command that is named first.
func (t *terminal) command(args []string) (int, error) {
	if len(args) == 0 {
		return exitBad, marinecalc.Problems{{Where: "marinecalc", What: "was not told what to do", Allowed: strings.Join(commandNames(), ", "), Hint: `see "marinecalc help"`}}.Err()
	}
	name, rest := args[0], args[1:]
	switch name {
	case "-h", "--help", "-help":
		name = "help"
	case "--version", "-version":
		name = "version"
	case "license":
		name = "licence"
	case "candidates":
		t.printCandidates(rest)
		return exitDone, nil
	}
	i := slices.IndexFunc(commands, func(c command) bool { return c.name == name })
	if i < 0 {
		return 0, marinecalc.Problems{{Where: name, What: "is not a command", Allowed: strings.Join(commandNames(), ", "), Hint: cmp.Or(problem.DidYouMean(name, commandNames()), `see "marinecalc help"`), Kind: problem.Unknown}}.Err()
	}
	if asksHelp(rest) {
		return 0, t.help(args[:1])
	}
	return commands[i].run(t, rest)
}

// asksHelp tells whether help is among the arguments, which then do nothing.
func asksHelp(args []string) bool {
	for _, arg := range args {
		switch arg {
		case "--":
			return false
		case "--help", "-help", "-h":
			return true
		}
	}
	return false
}
