package main

import (
	"errors"
	"fmt"
	"io"
	"os"
	"slices"
	"strconv"

	"golang.org/x/term"

	"example.org/driveline/marinecalc"
)

// terminal is where a run reads from and writes to.
type terminal struct {
	in   io.Reader
	out  io.Writer
	errs io.Writer

	inTaken bool              // standard input was read, which can be done once
	read    map[string][]byte // the files that were read, by their names
}

// lineWidth is how many letters a line has at the most.
var lineWidth = 96

// narrow makes lines no wider than the terminal. COLUMNS goes before what the
// terminal says of itself.
func narrow(out *os.File) {
	const least = 40
	columns, err := strconv.Atoi(os.Getenv("COLUMNS"))
	if err != nil {
		if columns, _, err = term.GetSize(int(out.Fd())); err != nil {
			return
		}
	}
	lineWidth = max(least, min(lineWidth, columns))
}

// checked remembers the first write that failed.
type checked struct {
	io.Writer
	err error
}

func (c *checked) Write(p []byte) (int, error) {
	n, err := c.Writer.Write(p)
	if c.err == nil {
		c.err = err
	}
	return n, err
}

// fileError is a file that could not be read or written, or standard output
// that took no more.
type fileError struct{ error }

func (e fileError) Unwrap() error { return e.error }

// complain says what is wrong, for programs where JSON was asked for, and gives
// the exit code.
func (t *terminal) complain(err error, args []string) int {
	list := marinecalc.ProblemsOf(err)
	if slices.Contains(args, "--json") || slices.Contains(args, "-json") {
		_ = printJSON(t.errs, map[string]marinecalc.Problems{"problems": list}) // there is no other place to complain
	} else {
		for _, p := range list {
			fmt.Fprintln(t.errs, p)
		}
	}
	if file := (fileError{}); errors.As(err, &file) {
		return exitFile
	}
	return exitBad
}
