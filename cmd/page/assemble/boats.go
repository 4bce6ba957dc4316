package assemble

import (
	"bytes"
	"encoding/json"
	"fmt"
	"os"
	"path/filepath"

	"example.org/driveline/marinecalc/notices"
	"example.org/driveline/testdata/published"
)

// readBoats gathers the demonstration boats of a folder, in the order of
// their names, into one JSON array. A folder that is not there has none.
func readBoats(folder string) (string, error) {
	files, err := filepath.Glob(filepath.Join(folder, "*.json"))
	if err != nil {
		return "", err
	}
	boats := []json.RawMessage{}
	for _, file := range files { // Glob sorts
		text, err := os.ReadFile(file)
		if err != nil {
			return "", err
		}
		var small bytes.Buffer
		if err := json.Compact(&small, text); err != nil {
			return "", fmt.Errorf("demonstration boat %s: %w", file, err)
		}
		boats = append(boats, small.Bytes())
	}
	list, err := json.Marshal(boats)
	return string(list), err
}

// digest is a published value of each calculation and table, how many there are
// of each, and the terms of marinecalc and of what it is built with.
func digest() (string, error) {
	rows, err := published.Rows()
	if err != nil {
		return "", err
	}
	counts, some, err := published.Digest(rows)
	if err != nil {
		return "", err
	}
	text, err := json.Marshal(map[string]any{"counts": counts, "rows": some, "terms": notices.Own() + "\nBuilt with:\n\n" + notices.Third()})
	return string(text), err
}

// readLine is title and purpose of each part of the line, by its id: what the
// page shows of a part before the calculator is there.
func readLine(root string) (string, error) {
	text, err := os.ReadFile(filepath.Join(root, "marinecalc", "rules", "data", "tables", "line-parts.json"))
	if err != nil {
		return "", err
	}
	var table struct {
		Rows []struct{ ID, Name, Note string }
	}
	if err := json.Unmarshal(text, &table); err != nil {
		return "", fmt.Errorf("line-parts: %w", err)
	}
	parts := map[string][2]string{}
	for _, row := range table.Rows {
		parts[row.ID] = [2]string{row.Name, row.Note}
	}
	list, err := json.Marshal(parts)
	return string(list), err
}
