package main

import (
	"flag"
	"slices"
	"strings"

	"example.org/driveline/marinecalc"
)

// parse reads flags wherever they stand, before, between or after the files,
// and gives the files. Behind "--" everything is a file.
func parse(fs *flag.FlagSet, args []string) (files []string, err error) {
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
