package verdict

import (
	"fmt"
	"math"
	"slices"
	"strings"

	"example.org/driveline/marinecalc/problem"
	"example.org/driveline/marinecalc/rules"
	"example.org/driveline/marinecalc/sheet"
)

// passedHere says that a limit of this sheet is passed, or that two readings of what
// it is on disagree and it is not known whether it is, or "". That one hangs on none itself: what is passed stays so,
// whatever it hangs on.
func (r *Judgement) passedHere(limit string) (doubt string, passed bool) {
	for i := range r.limits {
		h := &r.limits[i]
		if h.ID != limit {
			continue
		}
		if h.told == nil {
			var v sheet.Verdict
			r.judge(h, &v)
			h.told = &v
		}
		if h.told.Word.Plain() == sheet.Beyond {
			return putRight(h.told), true
		} else if t := r.contested(h); t != nil {
			return "only once this is settled: " + t.Doubt, false
		}
	}
	return "", false
}

// putRight says which limit must be met first.
func putRight(v *sheet.Verdict) string {
	return "only once this is put right: " + Stands(v)
}

// Stands says inside a sentence how a value stands to its limit.
func Stands(v *sheet.Verdict) string {
	switch {
	case v.Reads == noBound:
		return Valued(v) + ", has " + noBound + " yet"
	case v.Reads == metItself:
		return Valued(v) + ", has no OK yet"
	case TellsTooLittle(v):
		return Valued(v) + ", may not meet its limit"
	}
	return Valued(v) + ", is " + v.Reads
}

// noBound is what people read of a value whose limit is not known.
const noBound = "nothing to hold it against"

// TellsTooLittle is of a value that may be on either side of its limit.
func TellsTooLittle(v *sheet.Verdict) bool { return v.Reads == sheet.CannotTell.Reads(v.Side) }

// Valued names inside a sentence what a verdict is on, with its value.
func Valued(v *sheet.Verdict) string { return problem.MidSentence(v.Title) + ", " + v.Value }

// unreadEntries says which entries of a list lack a column that others have,
// without which the worst of these is not the worst of all, or "".
func (r *Judgement) unreadEntries(each rules.Each) string {
	var names []string
	for _, of := range each.All() {
		lack, entries := r.entriesLacking(of)
		if len(lack) == entries { // read of none: the value does without, or there is none
			continue
		}
		for _, name := range lack {
			if !slices.Contains(names, name) {
				names = append(names, name)
			}
		}
	}
	if len(names) == 0 {
		return ""
	}
	return "it is that of what was read, and nothing is known of " + strings.Join(names, ", ")
}

// leftOut is what the value was worked out without, or nil.
func (r *Judgement) leftOut(h *held) *rules.Lack {
	for _, one := range h.Lacks.All() {
		if one.Part != "" && r.lacking(one.Of) && one.Valid.Meets(r.LookupAny) {
			return &one
		}
	}
	return nil
}

// entriesLacking names the entries of a typed list that lack a column.
func (r *Judgement) entriesLacking(of string) (names []string, entries int) {
	input, column, _ := strings.Cut(of, "/")
	p, _ := r.In.Form.Named(input)
	if p == nil || p.Items == nil {
		return nil, 0
	}
	list, _ := r.In.Values[p.Index].Raw.([]any)
	for i, item := range list {
		entry, _ := item.(map[string]any)
		if entry[column] != nil {
			continue
		}
		name, _ := entry["name"].(string)
		if name == "" {
			name = fmt.Sprintf("no. %d", i+1)
		}
		names = append(names, name)
	}
	return names, len(list)
}

// lacking tells whether an input or result is not known, or a column of a list
// not of every entry.
func (r *Judgement) lacking(of string) bool {
	if strings.Contains(of, "/") {
		lack, entries := r.entriesLacking(of)
		return len(lack) > 0 || entries == 0
	}
	si, _, known := r.LookupAny(of)
	return !known || math.IsNaN(si)
}
