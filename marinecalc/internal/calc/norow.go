package calc

import (
	"fmt"
	"math"
	"slices"
	"strings"

	"example.org/driveline/marinecalc/internal/contract"
	"example.org/driveline/marinecalc/rules"
)

// noRow says why a pick finds no row; where only a size is not known yet,
// the missing size is named instead, by needs. What the row would have filled
// may be known without it: then it hinders nothing, and the sheet says so.
func (in *inputs) noRow(p *contract.Property, k *known, table *rules.Table) {
	picks, _ := table.Picks()
	what, hint := fmt.Sprintf("%s: %q is not in the table of %s", p.Title, k.word, table.Title), ""
	if there := slices.Contains(picks, k.word); there {
		misfit, waits := in.misfit(k.word, table)
		if waits {
			return
		}
		what = fmt.Sprintf("%s: no row of %q covers this size or use%s", p.Title, k.word, misfit)
	} else if best, ok := contract.Closest(k.word, picks); ok {
		hint = fmt.Sprintf("did you mean %q?", best)
	}
	without, figures := in.knownWithout(p, table)
	if without {
		in.notes = append(in.notes, what+". The figures that are known without it are used.")
		return
	}
	if figures != "" {
		hint = strings.TrimSpace(hint + " choose another, or type the " + figures)
	}
	in.problems.Add(k.blameAt, what, strings.Join(picks, ", "), hint)
}

// misfit says what the rows of a pick ask that is not so. It waits while
// something that they ask is not known.
func (in *inputs) misfit(pick string, table *rules.Table) (misfit string, waits bool) {
	var asked []string
	for _, row := range table.Rows.All() {
		if row.Pick != pick {
			continue
		}
		for name := range row.Valid.Names() {
			if _, _, ok := in.lookup(name); !ok {
				return "", true
			}
		}
		for of, asks := range row.Valid.Misses(in.lookup) {
			p := in.form.Input.Child(of)
			if p == nil {
				continue
			}
			here := in.at(of)
			text := strings.ToLower(p.Title) + " " + in.asked(p, asks) + ", here " + here.word
			if p.Kind != nil {
				text += in.show(p, here.si)
			}
			if !slices.Contains(asked, text) {
				asked = append(asked, text)
			}
		}
	}
	const most = 3 // rows of many sizes would fill a page
	if len(asked) == 0 || len(asked) > most {
		return "", false
	}
	return ": it is for " + strings.Join(asked, "; for "), false
}

// asked words a condition of a row.
func (in *inputs) asked(p *contract.Property, asks rules.Asked) string {
	switch {
	case asks.Words != nil:
		return strings.Join(asks.Words, " or ")
	case math.IsInf(asks.Low, -1):
		return "up to " + in.show(p, asks.High)
	case math.IsInf(asks.High, 1):
		return "from " + in.show(p, asks.Low)
	}
	return in.show(p, asks.Low) + " to " + in.show(p, asks.High)
}

// knownWithout tells whether all is known that a calculation needs, or would
// take a default for, of what a row of the table fills. figures names those
// that are not.
func (in *inputs) knownWithout(p *contract.Property, table *rules.Table) (yes bool, figures string) {
	var lacking []string
	for _, other := range in.form.Input.Properties {
		if !in.fills(p, table, other.Name) {
			continue
		}
		needed := slices.Contains(in.form.Input.Needs, other.Name) || other.Default != nil || other.Typical != ""
		switch {
		case in.values[other.Index].known:
			yes = true
		case needed:
			lacking = append(lacking, strings.ToLower(other.Title))
		}
	}
	return yes && lacking == nil, strings.Join(lacking, " and the ")
}
