// Package published holds the published values that marinecalc is held
// against, for programs that compute them anew. The files are read by tests as
// they lie here, too.
package published

import (
	"embed"
	"encoding/json"
	"fmt"
	"slices"
)

//go:embed *.json
var files embed.FS

// Row is one row, of which only what tells its chapter is taken out.
type Row struct {
	Calculation, Table, Check, Source string
	Text                              json.RawMessage
}

// Rows gives every row, in the order of the files' names.
func Rows() ([]Row, error) {
	names, err := files.ReadDir(".")
	if err != nil {
		return nil, err
	}
	var all []Row
	for _, f := range names {
		text, err := files.ReadFile(f.Name())
		if err != nil {
			return nil, err
		}
		var topic struct{ Rows []json.RawMessage }
		if err := json.Unmarshal(text, &topic); err != nil {
			return nil, fmt.Errorf("%s: %w", f.Name(), err)
		}
		for _, raw := range topic.Rows {
			row := Row{Text: raw}
			if err := json.Unmarshal(raw, &row); err != nil {
				return nil, fmt.Errorf("%s: %w", f.Name(), err)
			}
			row.Text = raw
			all = append(all, row)
		}
	}
	return all, nil
}

// Chapter names what a row is about: its calculation, or its table of the
// rules, or "shared".
func (row *Row) Chapter() string {
	switch {
	case row.Calculation != "":
		return row.Calculation
	case row.Table != "":
		return row.Table
	}
	return "shared"
}

// File writes rows as one file, without spaces.
func File(rows []Row) ([]byte, error) {
	texts := make([]json.RawMessage, len(rows))
	for i := range rows {
		texts[i] = rows[i].Text
	}
	return json.Marshal(map[string]any{"rows": texts})
}

// Count is how many rows a chapter has, and how many sources.
type Count struct {
	Chapter string `json:"chapter"`
	Rows    int    `json:"rows"`
	Sources int    `json:"sources"`
}

// Digest is what a page holds that has no space for all rows: how many there
// are of each chapter, and the first row of each of its first few sources.
func Digest(rows []Row) (counts []Count, some []Row) {
	const ofEach = 2
	seen := map[string]map[string]bool{}
	for _, row := range rows {
		name := row.Chapter()
		at := slices.IndexFunc(counts, func(c Count) bool { return c.Chapter == name })
		if at < 0 {
			at = len(counts)
			counts = append(counts, Count{Chapter: name})
			seen[name] = map[string]bool{}
		}
		c := &counts[at]
		if c.Rows++; !seen[name][row.Source] {
			seen[name][row.Source] = true
			if c.Sources++; c.Sources <= ofEach {
				some = append(some, row)
			}
		}
	}
	return counts, some
}
