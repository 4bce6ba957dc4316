package export

import (
	"bytes"
	"encoding/csv"
	"fmt"
	"strconv"
	"strings"

	"example.org/driveline/marinecalc/problem"
	"example.org/driveline/marinecalc/sheet"
)

// CSV writes a list of results as comma-separated values with a head line
// (RFC 4180): CRLF, fields quoted where they need it. A text that a
// spreadsheet would take for a formula gets an apostrophe before it.
func CSV(t *sheet.Table) []byte {
	var b bytes.Buffer
	w := csv.NewWriter(&b)
	w.UseCRLF = true
	head := make([]string, len(t.Columns))
	for i, c := range t.Columns {
		head[i] = c.Title
	}
	lines := [][]string{head}
	for _, r := range t.Rows {
		fields := make([]string, len(r.Cells))
		for i := range r.Cells {
			fields[i] = noFormula(r.Cells[i].Text)
		}
		lines = append(lines, fields)
	}
	_ = w.WriteAll(lines) // a buffer takes everything
	return b.Bytes()
}

// noFormula sets an apostrophe before what a spreadsheet would calculate. A
// plain number with its unit is no formula.
func noFormula(text string) string {
	if text == "" || !strings.ContainsRune("=+-@\t\r'", rune(text[0])) || isPlain(text) {
		return text
	}
	return "'" + text
}

// isPlain tells whether a text is a number with a sign, and words behind it.
func isPlain(text string) bool {
	number, words, _ := strings.Cut(text, " ")
	_, err := strconv.ParseFloat(strings.TrimRight(number, "%°"), 64)
	return err == nil && !strings.ContainsAny(words, "+*|!=@(")
}

// CSVOf writes the list of results of that name, or the sheet's first one
// where name is empty. The error is a
// *problem.Error that is problem.ErrUnknown: no such list.
func CSVOf(s *sheet.Sheet, name string) ([]byte, error) {
	var names []string
	for i := range s.Tables {
		if t := &s.Tables[i]; name == "" || t.Name == name {
			return CSV(t), nil
		}
		names = append(names, s.Tables[i].Name)
	}
	p := problem.Problem{Where: "/table", What: fmt.Sprintf("the sheet %q has no list %q", s.Title, name), Allowed: strings.Join(names, ", "), Kind: problem.Unknown}
	if len(names) == 0 && len(s.Tables) == 0 {
		p.What, p.Hint = fmt.Sprintf("the sheet %q has no list", s.Title), "ask for a calculation with a list, such as work-plan"
	}
	return nil, problem.List{p}.Err()
}
