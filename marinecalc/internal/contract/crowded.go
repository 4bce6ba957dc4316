package contract

import (
	"slices"
	"strconv"

	"example.org/driveline/marinecalc/problem"
)

// isCrowded tells whether crowded has anything to say.
func isCrowded(p *Property, value any, open bool) bool {
	switch v := value.(type) {
	case map[string]any:
		if len(p.Properties) > 0 && len(v) > len(p.Properties)+mostProblems && !open {
			return true
		}
		for _, child := range p.Properties {
			if child.Items == nil && len(child.Properties) == 0 {
				continue
			}
			if member, has := v[child.Name]; has && isCrowded(child, member, open) {
				return true
			}
		}
	case []any:
		if p.MaxItems > 0 && len(v) > p.MaxItems {
			return true
		}
		if p.Items == nil || len(p.Items.Properties) == 0 {
			return false
		}
		for _, entry := range v {
			if isCrowded(p.Items, entry, open) {
				return true
			}
		}
	}
	return false
}

// crowded finds the lists that are too long and the objects with many more
// names than are known. The validator would write an error for every entry of
// them, for which a WASM host has no memory.
func crowded(path []string, p *Property, value any, open bool) problem.List {
	w := wording{open: open}
	switch v := value.(type) {
	case map[string]any:
		if len(p.Properties) > 0 && len(v) > len(p.Properties)+mostProblems && !open {
			w.unknownNames(Pointer(path), p, value)
		}
		for i := range p.Properties {
			child := p.Properties[i]
			if child.Items == nil && len(child.Properties) == 0 {
				continue
			}
			if member, has := v[child.Name]; has {
				w.list = append(w.list, crowded(append(slices.Clip(path), child.Name), child, member, open)...)
			}
		}
	case []any:
		if p.MaxItems > 0 && len(v) > p.MaxItems {
			w.tooMany(Pointer(path), p)
			return w.list
		}
		if p.Items == nil || len(p.Items.Properties) == 0 {
			break
		}
		for i, entry := range v {
			if len(w.list) < mostProblems {
				w.list = append(w.list, crowded(append(slices.Clip(path), strconv.Itoa(i)), p.Items, entry, open)...)
			}
		}
	}
	return w.list
}
