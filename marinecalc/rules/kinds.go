package rules

import (
	"slices"
	"strings"
)

// kindTexts is the table of what reads otherwise on one kind of boat.
const kindTexts = "kind-texts"

// kindKey is under which a book keeps what it is for a kind of boat: the rows that apply.
type kindKey string

// For is the book as it reads on a boat that answers the questions of the fault finding
// so: the rows of the table kind-texts that are of her kind in place of their rows.
func (b *Book) For(said func(question string) string) *Book {
	if b = b.filled(); said == nil {
		return b
	}
	var rows []Row
	var key []string
	for _, r := range b.Table(kindTexts).Rows.All() {
		if said(r.Values.Of("question").Text) == r.Values.Of("answer").Text {
			rows, key = append(rows, r), append(key, r.ID)
		}
	}
	is := kindKey(strings.Join(key, " "))
	if is == b.kind {
		return b
	}
	return b.Derived(is, func() any { return b.forKind(is, rows) }).(*Book)
}

func (b *Book) forKind(kind kindKey, rows []Row) *Book {
	var file ruleFile
	var added []Row
	for _, r := range rows {
		text := r.Values.Of("text").Text
		switch r.Values.Of("of").Text {
		case "cautions":
			for _, c := range b.AllCautions().All() {
				if c.ID == r.ID {
					c.Text = text
					file.Cautions = append(file.Cautions, c)
				}
			}
		case "evidence":
			for _, e := range b.Evidence().All() {
				if e.ID == r.ID {
					e.Help = text
					file.Evidence = append(file.Evidence, e)
				}
			}
		case "limits":
			for _, l := range b.AllLimits().All() {
				if l.ID == r.ID {
					l.Calculation = "" // of none
					file.Limits = append(file.Limits, l)
				}
			}
		case "advice":
			for _, a := range b.AllAdvice().All() {
				if a.ID == r.ID {
					a.Calculation = "" // of none
					file.Advice = append(file.Advice, a)
				}
			}
		case "steps":
			added = append(added, r)
		}
	}
	for _, r := range b.Remedies().All() {
		steps := slices.Clone(r.Steps.items)
		for _, a := range added {
			for _, with := range strings.Fields(a.Values.Of("text").Text) {
				if Contains(r.Steps, with) && !slices.Contains(steps, a.ID) {
					steps = append(steps, a.ID)
				}
			}
		}
		r.Steps.items = steps
		if len(added) > 0 {
			file.Remedies = append(file.Remedies, r)
		}
	}
	next := b.with(&file)
	next.overlays, next.kind = b.overlays, kind
	return next
}
