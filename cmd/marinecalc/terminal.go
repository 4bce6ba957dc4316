package main

import (
	"errors"
	"fmt"
	"io"
	"slices"

	"example.org/driveline/cmd/marinecalc/disk"
	"example.org/driveline/cmd/marinecalc/plain"
	"example.org/driveline/marinecalc"
)

// terminal is where a run reads from and writes to.
type terminal struct {
	disk.Files
	out  io.Writer
	errs io.Writer
}

// complain says what is wrong, for programs where JSON was asked for, and gives
// the exit code.
func (t *terminal) complain(err error, args []string) int {
	list := marinecalc.ProblemsOf(err)
	if slices.Contains(args, "--json") || slices.Contains(args, "-json") {
		_ = plain.JSON(t.errs, map[string]marinecalc.Problems{"problems": list}) // there is no other place to complain
	} else {
		for _, p := range list {
			fmt.Fprintln(t.errs, p)
		}
	}
	if file := (disk.Error{}); errors.As(err, &file) {
		return exitFile
	}
	return exitBad
}
