package main

import (
	"errors"
	"fmt"
	"io"
	"os"
	"slices"
	"strconv"
	"strings"
	"unicode/utf8"

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

// tame keeps a terminal from obeying what stands in the name of a file or
// elsewhere in what is written: control characters become question marks.
type tame struct{ io.Writer }

func (w tame) Write(p []byte) (int, error) {
	if !utf8.Valid(p) { // a piece of a long text, which is written by JSON or CSV and holds none
		return w.Writer.Write(p)
	}
	text := strings.Map(func(r rune) rune {
		if r < ' ' && r != '\n' && r != '\t' && r != '\r' || r >= 0x7f && r < 0xa0 || r >= 0x202a && r <= 0x202e || r >= 0x2066 && r <= 0x2069 {
			return '?'
		}
		return r
	}, string(p))
	if _, err := io.WriteString(w.Writer, text); err != nil {
		return 0, err
	}
	return len(p), nil
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
