// Package published holds the published values that marinecalc is held
// against, for programs that compute them anew. The files are read by tests as
// they lie here, too.
package published

import (
	"embed"
	"encoding/json"
	"fmt"
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
// are of each chapter, and the shortest row of each, without its note.
func Digest(rows []Row) (counts []Count, some []json.RawMessage, err error) {
	at := map[string]int{}
	sources := map[[2]string]bool{}
	for i := range rows {
		row := &rows[i]
		name := row.Chapter()
		n, has := at[name]
		if !has {
			n = len(counts)
			at[name], counts, some = n, append(counts, Count{Chapter: name}), append(some, nil)
		}
		counts[n].Rows++
		if of := [2]string{name, row.Source}; !sources[of] {
			sources[of] = true
			counts[n].Sources++
		}
		var members map[string]json.RawMessage
		if err := json.Unmarshal(row.Text, &members); err != nil {
			return nil, nil, err
		}
		delete(members, "note")
		delete(members, "id")
		text, err := json.Marshal(members)
		if err != nil {
			return nil, nil, err
		}
		if some[n] == nil || len(text) < len(some[n]) {
			some[n] = text
		}
	}
	return counts, some, nil
}
