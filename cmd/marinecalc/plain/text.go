// Package plain writes sheets, steps and texts in words, for a terminal.
package plain

import (
	"encoding/json"
	"fmt"
	"io"
	"os"
	"strconv"
	"strings"
	"unicode/utf8"

	"golang.org/x/term"
)

// Width is how many letters a line has at the most.
var Width = 96

// Narrow makes lines no wider than the terminal. COLUMNS goes before what the
// terminal says of itself.
func Narrow(out *os.File) {
	const least = 40
	columns, err := strconv.Atoi(os.Getenv("COLUMNS"))
	if err != nil {
		if columns, _, err = term.GetSize(int(out.Fd())); err != nil {
			return
		}
	}
	Width = max(least, min(Width, columns))
}

// Checked remembers the first write that failed.
type Checked struct {
	io.Writer
	Err error
}

func (c *Checked) Write(p []byte) (int, error) {
	n, err := c.Writer.Write(p)
	if c.Err == nil {
		c.Err = err
	}
	return n, err
}

// Tame keeps a terminal from obeying what stands in the name of a file or
// elsewhere in what is written: control characters become question marks.
type Tame struct{ io.Writer }

func (w Tame) Write(p []byte) (int, error) {
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

// Wrapped breaks a text into lines of Width letters at the most.
func Wrapped(indent, text string) string {
	var lines []string
	line := ""
	for _, word := range strings.Fields(text) {
		if line != "" && len([]rune(indent+line+" "+word)) > Width {
			lines, line = append(lines, indent+line), ""
		}
		if line != "" {
			line += " "
		}
		line += word
	}
	return strings.Join(append(lines, indent+line), "\n")
}

// hanging is a text behind a head, its further lines indented.
func hanging(head, text string) string {
	const indent = "       "
	behind := strings.TrimLeft(head, " ")
	return head[:len(head)-len(behind)] + strings.TrimPrefix(Wrapped(indent, behind+text), indent)
}

// Column writes a name, and what it does that far from the left, or half way where
// lines are short.
func Column(w io.Writer, indent string, at int, called, does string) {
	at = min(at, Width/2)
	left := strings.Repeat(" ", utf8.RuneCountInString(indent)+at)
	text := Wrapped(left, does)
	if letters := utf8.RuneCountInString(called); letters < at {
		text = indent + called + left[:at-letters] + strings.TrimPrefix(text, left)
	} else {
		text = Wrapped(indent, called) + "\n" + text
	}
	fmt.Fprintln(w, text)
}

// JSON writes a value as indented JSON.
func JSON(w io.Writer, v any) error {
	e := json.NewEncoder(w)
	e.SetIndent("", "  ")
	e.SetEscapeHTML(false)
	return e.Encode(v)
}
