// Package cell writes a reading of the boat file into one cell of a table, and
// reads it from there: a value with its unit, or a short list of names and
// values.
package cell

import (
	"encoding/json"
	"slices"
	"strconv"
	"strings"

	"example.org/driveline/marinecalc/internal/contract"
)

// Fits tells whether a reading fits a cell; a section of the boat does not.
func Fits(p *contract.Property) bool {
	return p.Items == nil && p.Properties == nil || Pairs(p)
}

// Text writes one value. A bare number gets its unit, so that it cannot be
// read in another; free words that a spreadsheet would take for a formula get
// an apostrophe.
func Text(p *contract.Property, value any) string {
	switch v := value.(type) {
	case string:
		if p.Kind == nil && v != "" && strings.ContainsRune("=+-@\t'", rune(v[0])) {
			return "'" + v
		}
		return v
	case bool:
		return strconv.FormatBool(v)
	case json.Number:
		if f, err := v.Float64(); err == nil && p.Kind != nil {
			return p.Kind.Exact(f, p.Units[0])
		}
		return v.String()
	case []any:
		return pairsCell(p, v)
	}
	return ""
}

// Value reads one cell. What cannot be read comes back as the text, which the
// boat's schema refuses with what is allowed.
func Value(p *contract.Property, cell string) any {
	if slices.Contains(p.Types, "boolean") {
		switch strings.ToLower(cell) {
		case "true", "yes":
			return true
		case "false", "no":
			return false
		}
	}
	if slices.Contains(p.Types, "integer") {
		if _, err := strconv.Atoi(cell); err == nil {
			return json.Number(cell)
		}
		return cell // refused by the schema, with what is allowed
	}
	if p.Items != nil {
		return pairsOf(p, cell)
	}
	if p.Kind == nil {
		return strings.TrimPrefix(cell, "'")
	}
	return cell
}
