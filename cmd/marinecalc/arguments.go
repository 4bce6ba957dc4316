package main

import (
	"flag"
	"fmt"
	"slices"
	"strings"

	"example.org/driveline/marinecalc"
	"example.org/driveline/marinecalc/problem"
)

// parse reads flags wherever they stand, before, between or after the files,
// and gives the files. Behind "--" everything is a file.
func parse(fs *flag.FlagSet, args []string) (files []string, err error) {
	onlyOnce(fs)
	for {
		if err := fs.Parse(args); err != nil {
			return nil, err
		}
		rest := fs.Args()
		if len(rest) == 0 {
			return files, nil
		}
		if ended := len(args) - len(rest); ended > 0 && args[ended-1] == "--" {
			return append(files, rest...), nil
		}
		files, args = append(files, rest[0]), rest[1:]
	}
}

// onlyOnce refuses a second value of a flag that is no list.
func onlyOnce(fs *flag.FlagSet) {
	fs.VisitAll(func(f *flag.Flag) {
		if _, list := f.Value.(*several); !list {
			f.Value = &once{Value: f.Value}
		}
	})
}

// badFlag says what is wrong with a flag, which there are, and which may have
// been meant.
func badFlag(command string, err error, flags []string, hint string) error {
	p := marinecalc.Problem{Where: command, What: err.Error(), Allowed: "--" + strings.Join(flags, ", --"), Hint: hint}
	if name, is := strings.CutPrefix(p.What, "flag provided but not defined: -"); is {
		name = strings.TrimPrefix(name, "-")
		p.Where, p.What, p.Kind = "--"+name, "is not a flag of "+command, problem.Unknown
		if meant, near := problem.Closest(name, flags); near {
			p.Hint = fmt.Sprintf("did you mean --%s?", meant)
		}
	}
	return marinecalc.Problems{p}.Err()
}

// flagsOf are the names of the flags that were defined.
func flagsOf(fs *flag.FlagSet) (names []string) {
	fs.VisitAll(func(f *flag.Flag) { names = append(names, f.Name) })
	return names
}

// takeCalculation gives the calculation that is named first of all, or behind
// flags, and the other arguments.
func takeCalculation(args []string) (id string, others []string) {
	at := 0
	if len(args) > 0 && strings.HasPrefix(args[0], "-") {
		at = slices.IndexFunc(args, func(arg string) bool {
			return slices.ContainsFunc(marinecalc.Calculations(), func(c marinecalc.Entry) bool { return c.ID == arg })
		})
	}
	if at < 0 || len(args) == 0 {
		return "", args
	}
	return args[at], slices.Concat(args[:at], args[at+1:])
}
