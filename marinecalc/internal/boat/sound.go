package boat

import (
	"slices"
	"strconv"

	"example.org/driveline/marinecalc/internal/contract"
	"example.org/driveline/marinecalc/problem"
)

// rounds bounds how often a document is looked through: a member that is left
// out may leave a row without what it must have, which is then left out too.
const rounds = 8

// FromSound is [From] of what in a document can be used: a member that cannot
// be is left out, and told by its place among the warnings, before the others.
// The document is changed. A document that is no boat file at all, or of a
// later format, is refused as From refuses it.
func FromSound(value any) (*Boat, error) {
	var left problem.List
	var older contract.Alike
	value, _ = byNewNames(value, nil, &older)
	for round := 0; ; round++ {
		b, err := fromRenamed(value, &older)
		if err == nil {
			b.warnings = append(left, b.warnings...)
			return b, nil
		}
		problems := problem.Of(err)
		if round == rounds || !leaveOut(value, problems) {
			return nil, err
		}
		for _, p := range problems {
			p.What = "left out until it is mended: " + p.What
			left = append(left, p)
		}
	}
}

// leaveOut takes what the problems point at out of the document, or the row
// that lacks what it must have; ok is false where the whole document is meant.
func leaveOut(document any, problems problem.List) (ok bool) {
	root := map[string]any{"": document}
	seen := map[string]bool{}
	for _, p := range problems {
		if p.Where == "/format" {
			return false
		}
		if p.Where == "" || seen[p.Where] {
			continue
		}
		seen[p.Where] = true
		tokens := append([]string{""}, contract.Tokens(p.Where)...)
		if !takeOut(root, tokens) && (len(tokens) < 3 || !takeOut(root, tokens[:len(tokens)-1])) {
			return false
		}
	}
	compact(document)
	return len(seen) > 0
}

// takenOut stands in a list until all is taken out, so that places hold.
type takenOut struct{}

func takeOut(document any, tokens []string) bool {
	holder, found := contract.Resolve(document, tokens[:len(tokens)-1])
	if !found {
		return true // what it stood in is out already
	}
	last := tokens[len(tokens)-1]
	switch holder := holder.(type) {
	case map[string]any:
		_, found = holder[last]
		delete(holder, last)
		return found
	case []any:
		i, err := strconv.Atoi(last)
		if err != nil || i < 0 || i >= len(holder) {
			return false
		}
		holder[i] = takenOut{}
		return true
	case takenOut:
		return true
	}
	return false
}

// compact closes the gaps that were left in lists.
func compact(value any) any {
	switch value := value.(type) {
	case map[string]any:
		for name, v := range value {
			value[name] = compact(v)
		}
	case []any:
		kept := slices.DeleteFunc(value, func(v any) bool { return v == takenOut{} })
		for i := range kept {
			kept[i] = compact(kept[i])
		}
		return kept
	}
	return value
}
