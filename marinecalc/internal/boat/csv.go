package boat

import (
	"bytes"
	"encoding/csv"
	"encoding/json"
	"errors"
	"fmt"
	"io"
	"slices"
	"strconv"
	"strings"
	"unicode/utf8"

	"example.org/driveline/marinecalc/internal/boat/cell"
	"example.org/driveline/marinecalc/internal/contract"
	"example.org/driveline/marinecalc/problem"
)

// ReadingsCSV writes the dated readings of a boat as a table (RFC 4180): a
// column for the date and one for each reading that any row has, a row for
// each dated entry, with its time, its source and the gauges. Values keep
// their units. A list of names and values, such as the gaps round a coupling,
// stands in one cell; sections of the boat do not fit one and are left out.
func ReadingsCSV(b *Boat) []byte {
	columns := []*contract.Property{}
	for _, p := range columnsOfReadings() {
		if p.Name == "date" || slices.ContainsFunc(b.entries, func(e *Entry) bool { _, has := e.Value(p.Name); return has }) {
			columns = append(columns, p)
		}
	}
	var out bytes.Buffer
	w := csv.NewWriter(&out) // writing to memory does not fail
	w.UseCRLF = true
	header := make([]string, len(columns))
	for i, p := range columns {
		header[i] = p.Name
	}
	_ = w.Write(header)
	for e := range b.Readings() {
		cells := make([]string, len(columns))
		filled := 0
		for i, p := range columns {
			if cells[i] = cell.Text(p, e.values[p.Name]); cells[i] != "" {
				filled++
			}
		}
		if filled > 1 {
			_ = w.Write(cells)
		}
	}
	w.Flush()
	return out.Bytes()
}

// columnsOfReadings are the readings that fit a cell, the date first.
func columnsOfReadings() []*contract.Property {
	boat, err := Contract()
	if err != nil {
		return nil // a test opens the boat's schema
	}
	var list []*contract.Property
	for _, p := range boat.Root.Child("readings").Items.Properties {
		if cell.Fits(p) {
			list = append(list, p)
		}
	}
	return list
}

// AddReadingsCSV returns a boat with the readings of a table added after its
// own. The first row names the columns as ReadingsCSV does, in any order;
// commas or semicolons part the cells. An empty cell is no reading. A row
// that says no more than an entry of the boat says already is not added
// again; everything else is kept, whatever its date or value.
//
// The error is a *problem.Error with a place "/csv/<line>/<column>" for each
// cell that cannot be read; nothing is added then.
func AddReadingsCSV(b *Boat, text []byte) (*Boat, error) {
	text = bytes.TrimPrefix(text, []byte("\ufeff"))
	if len(text) > contract.MaxBytes {
		return nil, problem.List{{Where: "/csv", What: "the table is too large", Allowed: fmt.Sprintf("up to %d bytes", contract.MaxBytes), Kind: problem.TooLarge}}.Err()
	}
	if !utf8.Valid(text) {
		line := 1
		for _, l := range bytes.SplitAfter(text, []byte("\n")) {
			if !utf8.Valid(l) {
				break
			}
			line++
		}
		return nil, problem.List{{Where: fmt.Sprintf("/csv/%d", line), What: "the table is not valid UTF-8", Allowed: "a table in UTF-8", Hint: "save it as CSV UTF-8"}}.Err()
	}
	if r, is := contract.Unclean(string(text)); is {
		line := 1 + strings.Count(string(text[:bytes.IndexRune(text, r)]), "\n")
		return nil, problem.List{{Where: fmt.Sprintf("/csv/%d", line), What: fmt.Sprintf("it holds the control character %U", r), Allowed: "letters, signs and ends of lines", Hint: "take it out"}}.Err()
	}
	rows, err := readTable(text)
	if err != nil {
		return nil, err
	}
	if len(rows) == 0 {
		return nil, problem.List{{Where: "/csv", What: "the table has no rows below its head", Allowed: "a row for each dated reading", Kind: problem.Missing}}.Err()
	}
	after, _, err := b.withRows(rows)
	return after, err
}

// withRows returns the boat with entries after its own, and how many these
// are: one that says no more than an entry of the boat, or the same as a row
// before it, is left out.
func (b *Boat) withRows(rows []map[string]any) (after *Boat, added int, err error) {
	if len(rows) == 0 {
		return b, 0, nil
	}
	old, err := b.MarshalJSON()
	if err != nil {
		return nil, 0, err
	}
	said := map[string]bool{}
	whole, err := withReadings(old, func(list []json.RawMessage) ([]json.RawMessage, error) {
		for _, row := range rows {
			if slices.ContainsFunc(b.entries, func(e *Entry) bool { return says(e, row) }) {
				continue
			}
			text, err := json.Marshal(row)
			if err != nil {
				return nil, err
			}
			if said[string(text)] {
				continue
			}
			said[string(text)] = true
			list = append(list, text)
			added++
		}
		return list, nil
	})
	if err != nil {
		return nil, 0, err
	}
	after, err = Read(whole)
	return after, added, err
}

// says tells whether an entry of the boat has everything that a row has.
func says(e *Entry, row map[string]any) bool {
	for _, p := range columnsOfReadings() {
		if v, has := row[p.Name]; has && cell.Text(p, v) != cell.Text(p, e.values[p.Name]) {
			return false
		}
	}
	return true
}

// readTable reads the rows and holds them against the boat's schema.
func readTable(text []byte) ([]map[string]any, error) {
	r := csv.NewReader(bytes.NewReader(text))
	head, _, _ := bytes.Cut(text, []byte("\n"))
	if bytes.ContainsRune(head, ';') && !bytes.ContainsRune(head, ',') {
		r.Comma = ';'
	}
	r.TrimLeadingSpace = true
	header, err := r.Read()
	if err != nil {
		return nil, notATable(err).Err()
	}
	var bad problem.List
	columns := make([]*contract.Property, len(header))
	known := columnsOfReadings()
	var names []string
	for _, p := range known {
		names = append(names, p.Name)
	}
	for i, name := range header {
		at := slices.Index(names, strings.TrimSpace(name))
		if at < 0 {
			bad.Add("/csv/1/"+name, fmt.Sprintf("%q is not a column known here", name), strings.Join(names, ", "), "")
			continue
		}
		if slices.Contains(columns, known[at]) {
			bad.Add("/csv/1/"+name, fmt.Sprintf("the column %q stands there twice", name), "each column once", "")
		}
		columns[i] = known[at]
	}
	if !slices.ContainsFunc(columns, func(p *contract.Property) bool { return p != nil && p.Name == "date" }) {
		bad.Add("/csv/1", "there is no column for the date", "a column named date", "")
	}
	if len(bad) > 0 {
		return nil, bad.Err()
	}
	var rows []map[string]any
	var lines []int
	for {
		cells, err := r.Read()
		if errors.Is(err, io.EOF) {
			break
		}
		if err != nil {
			return nil, notATable(err).Err()
		}
		line, _ := r.FieldPos(0)
		row := map[string]any{}
		for i, text := range cells {
			if text = strings.TrimSpace(text); text != "" {
				row[columns[i].Name] = cell.Value(columns[i], text)
			}
		}
		if len(row) > 0 {
			rows, lines = append(rows, row), append(lines, line)
		}
	}
	return rows, blameRows(rows, lines)
}

// blameRows holds the rows against the boat's schema and moves each problem
// to its line and column.
func blameRows(rows []map[string]any, lines []int) error {
	c, err := Contract()
	if err != nil {
		return err
	}
	list := make([]any, len(rows))
	for i, row := range rows {
		list[i] = row
	}
	problems := c.Check(map[string]any{"name": "-", "readings": list})
	for i, p := range problems {
		if tokens := contract.Tokens(p.Where); len(tokens) > 1 {
			if n, err := strconv.Atoi(tokens[1]); err == nil && n < len(lines) {
				problems[i].Where = contract.Pointer(append([]string{"csv", strconv.Itoa(lines[n])}, tokens[2:]...))
				if column, whole := c.Root.At(tokens); whole && cell.Pairs(column) {
					problems[i].Allowed = cell.AsPairs(column)
				}
			}
		}
	}
	return problems.Err()
}

// notATable puts what is wrong with the form of the table into words.
func notATable(err error) problem.List {
	where := "/csv"
	if p := (*csv.ParseError)(nil); errors.As(err, &p) {
		where += "/" + strconv.Itoa(p.Line)
		err = p.Err
	}
	if errors.Is(err, io.EOF) {
		err = errors.New("it is empty")
	}
	return problem.List{{Where: where, What: "the table cannot be read: " + err.Error(), Allowed: "rows of cells parted by commas or semicolons, as many in each row as in the first", Hint: `put a cell that holds a comma between " and "`}}
}
