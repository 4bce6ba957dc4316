package inputs

import (
	"fmt"
	"math"
	"slices"
	"strings"
	"unicode"

	"example.org/driveline/marinecalc/internal/contract"
	"example.org/driveline/marinecalc/internal/spread"
	"example.org/driveline/marinecalc/problem"
	"example.org/driveline/marinecalc/rules"
	"example.org/driveline/marinecalc/sheet"
)

// pickRows looks up every picked row, in the order of the schema, and lets
// its values stand in for inputs that nobody gave.
func (in *Inputs) pickRows() {
	for i, p := range in.Form.Input.Properties {
		k := &in.Values[i]
		if p.Rows == "" || !k.Known {
			continue
		}
		table := in.Request.Book.Table(p.Rows)
		if table == nil {
			in.Problems.Add(k.blameAt, "there is no table "+p.Rows, strings.Join(in.Request.Book.Tables(), ", "), "")
			continue
		}
		row := table.Find(k.Word, in.lookupOf(p))
		if row == nil {
			row = in.alike(p, k.Word, table)
		}
		if row == nil {
			if !table.Open {
				in.noRow(p, k, table)
			}
			continue
		}
		if row.Short(k.Word) {
			in.Notes = append(in.Notes, fmt.Sprintf("%s: %q says no more, and is read as %s. Make sure of it before the wrench.", p.Title, k.Word, row.Name))
		}
		k.Word, k.Text = row.Pick, row.Name
		if k.Source == "" {
			k.Source, k.Authority = row.Source.String(), row.Basis.Authority()
		}
		for _, v := range row.Values.All() {
			if name, ok := p.FilledBy(v.Column); ok {
				in.standIn(name, v, row, sheet.HandbookRow)
			}
		}
	}
}

// alike is a row of a pick whose rows go by sizes that this calculation does not
// ask for, and all give it the same: naval brass of any diameter has one
// stiffness. It is nil where there is none.
func (in *Inputs) alike(p *contract.Property, pick string, table *rules.Table) *rules.Row {
	var first *rules.Row
	for i := range table.Rows.Len() {
		row := table.Rows.At(i)
		if row.Pick != pick {
			continue
		}
		for name := range row.Valid.Names() {
			if in.Form.Input.Child(p.Here(name)) != nil {
				return nil
			}
		}
		if first == nil {
			first = &row
			continue
		}
		for _, v := range row.Values.All() {
			if name, ok := p.FilledBy(v.Column); ok && in.Form.Input.Child(name) != nil {
				if was, has := first.Values.Find(v.Column); !has || was.Text != v.Text || was.SI != v.SI || was.Low != v.Low || was.High != v.High {
					return nil
				}
			}
		}
	}
	return first
}

// lookupOf is what is known for the conditions of a pick's rows, by the names
// that its inputs have here.
func (in *Inputs) lookupOf(p *contract.Property) rules.Known {
	return func(name string) (si float64, word string, ok bool) { return in.Lookup(p.Here(name)) }
}

// standIn lets a row's value stand for an input that is not known yet.
func (in *Inputs) standIn(name string, v rules.Cell, row *rules.Row, origin sheet.Origin) {
	p := in.Form.Input.Child(name)
	if p == nil || in.Values[p.Index].Known {
		return
	}
	k := Known{Known: true, Origin: origin, Source: row.Source.String(), Authority: row.Basis.Authority(), blameAt: p.Pointer, Confirmed: row.Confirms(v.Column)}
	if v.IsText {
		k.Word, k.Text = v.Text, v.Text
	} else {
		k.Si = v.SI
		k.Factor = spread.Factor{Estimate: v.SI, Low: v.SI, High: v.SI}
		if v.Ranged() {
			k.Factor.Low, k.Factor.High, k.Factor.Shape = v.Low, v.High, shapes[v.Shape]
		}
	}
	in.Values[p.Index] = k
}

// takeUsual takes usual values and number defaults for what is still open.
func (in *Inputs) takeUsual() {
	usual := in.Request.Book.Usual(in.Form.ID)
	for i, p := range in.Form.Input.Properties {
		if in.Values[i].Known {
			continue
		}
		if row, v, ok := in.likeRow(p); ok {
			in.standIn(p.Name, v, &row, sheet.UsualValue)
			continue
		}
		if p.Typical != "" {
			table, pick := usual, p.Typical
			if name, row, elsewhere := strings.Cut(p.Typical, "/"); elsewhere { // of a table of picks, where the figures stand once
				table, pick = in.Request.Book.Table(name), row
			}
			if table == nil {
				continue
			}
			if row := table.Named(pick, in.Lookup); row != nil {
				if v, ok := row.Values.Find(p.Name); ok {
					in.standIn(p.Name, rules.Cell{Column: p.Name, Value: v}, row, sheet.UsualValue)
					continue
				}
			}
		}
		if p.Default != nil {
			k := &in.Values[i]
			*k = Known{Known: true, Raw: p.Default, Origin: sheet.Default, blameAt: p.Pointer, Confirmed: true}
			in.readValue(p, k)
		}
	}
}

const sameFigure = 0.005 // by which a figure read with a calliper may differ from that of its row: 8 mm is not 5/16 in

// likeRow is the value that the one row of a pick nobody chose has for an input,
// where that row applies and all it fills that is known is as it says. Two rows that
// say otherwise tell nothing.
func (in *Inputs) likeRow(p *contract.Property) (found rules.Row, value rules.Cell, ok bool) {
	pick := in.Form.Input.Child(p.LikeRow)
	if pick == nil || in.Values[pick.Index].Known {
		return found, value, false
	}
	table := in.Request.Book.Table(pick.Rows)
	if table == nil {
		return found, value, false
	}
	for _, row := range table.Rows.All() {
		if !row.Valid.Meets(in.lookupOf(pick)) {
			continue
		}
		v, has, alike := in.compare(pick, &row, p.Name)
		if !has || !alike {
			continue
		}
		if ok && v.SI != value.SI {
			return found, value, false
		}
		found, value, ok = row, v, true
	}
	return found, value, ok
}

// compare tells what a row has for an input, and whether one of its figures at
// least is known and each that is known is as the row has it.
func (in *Inputs) compare(pick *contract.Property, row *rules.Row, name string) (value rules.Cell, has, alike bool) {
	for _, v := range row.Values.All() {
		fills, _ := pick.FilledBy(v.Column)
		q := in.Form.Input.Child(fills)
		switch {
		case q == nil:
		case fills == name:
			value, has = v, true
		case !in.Values[q.Index].Known:
		case v.IsText || math.Abs(in.Values[q.Index].Si-v.SI) > sameFigure*math.Abs(v.SI):
			return value, has, false
		default:
			alike = true
		}
	}
	return value, has, alike
}

// noRow says why a pick finds no row; where only a size is not known yet,
// the missing size is named instead, by needs. What the row would have filled
// may be known without it: then it hinders nothing, and the sheet says so.
func (in *Inputs) noRow(p *contract.Property, k *Known, table *rules.Table) {
	picks, _ := table.Picks()
	what, hint := fmt.Sprintf("%s: %q is not in the table of %s", p.Title, k.Word, table.Title), ""
	if there := slices.Contains(picks, k.Word); there {
		misfit, waits := in.misfit(p, k.Word, table)
		if waits {
			return
		}
		what = fmt.Sprintf("%s: no row of %s covers this size or use", p.Title, named(k.Word, table))
		if misfit != "" {
			what = fmt.Sprintf("%s: %s does not go with the rest%s", p.Title, named(k.Word, table), misfit)
		}
		picks = in.fitting(p, picks, table)
		if len(picks) <= mostNamed {
			for i := range picks {
				picks[i] = named(picks[i], table)
			}
		}
	} else {
		hint = meant(k.Word, picks, table)
	}
	without, figures := in.knownWithout(p, table)
	if without {
		in.Notes = append(in.Notes, what+". The figures that are known without it are used.")
		return
	}
	if figures != "" {
		hint = strings.TrimSpace(hint + " choose another, or type the " + figures)
	}
	in.Problems.Add(k.blameAt, what, strings.Join(picks, ", "), hint)
}

// meant asks for the rows that a text which is no pick may stand for: those whose
// name and pick have each of its words, few enough to choose from, or else the
// pick that is written most alike.
func meant(text string, picks []string, table *rules.Table) string {
	words := wordsOf(text)
	var like []string
	for _, row := range table.Rows.All() {
		has := wordsOf(row.Name + " " + row.Pick)
		missing := func(word string) bool { return !slices.Contains(has, word) }
		if len(words) > 0 && !slices.ContainsFunc(words, missing) && slices.Contains(picks, row.Pick) {
			like = append(like, named(row.Pick, table))
		}
	}
	if like = slices.Compact(like); 0 < len(like) && len(like) <= mostNamed {
		return "did you mean " + strings.Join(like, " or ") + "?"
	}
	return problem.DidYouMean(text, picks)
}

// wordsOf are the words and figures of a text; a point stays in a figure.
func wordsOf(text string) []string {
	return strings.FieldsFunc(strings.ToLower(text), func(r rune) bool { return !unicode.IsLetter(r) && !unicode.IsDigit(r) && r != '.' })
}

// mostNamed is how many picks are named in full; more are listed as they are
// written.
const mostNamed = 4

// named is a pick as people know it and as it is written.
func named(pick string, table *rules.Table) string {
	for _, row := range table.Rows.All() {
		if row.Pick == pick && row.Name != "" && row.Name != pick {
			return fmt.Sprintf("%s (%q)", row.Name, pick)
		}
	}
	return fmt.Sprintf("%q", pick)
}

// fitting are the picks of a table that cover this size and use, or all of
// them where none does.
func (in *Inputs) fitting(p *contract.Property, picks []string, table *rules.Table) []string {
	var fit []string
	for _, pick := range picks {
		if table.Find(pick, in.lookupOf(p)) != nil {
			fit = append(fit, pick)
		}
	}
	if fit == nil {
		return picks
	}
	return fit
}

// misfit says what the rows of a pick ask that is not so. It waits while
// something that they ask is not known.
func (in *Inputs) misfit(picked *contract.Property, pick string, table *rules.Table) (misfit string, waits bool) {
	var asked []string
	known := in.lookupOf(picked)
	for _, row := range table.Rows.All() {
		if row.Pick != pick {
			continue
		}
		for name := range row.Valid.Names() {
			if _, _, ok := known(name); !ok {
				return "", true
			}
		}
		for of, asks := range row.Valid.Misses(known) {
			of = picked.Here(of)
			p := in.Form.Input.Child(of)
			if p == nil {
				continue
			}
			here := in.At(of)
			text := problem.MidSentence(p.Title) + " " + in.asked(p, asks) + ", here " + here.Word
			if p.Kind != nil {
				text += in.Show(p, here.Si) + in.ofPick(of)
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

// ofPick names the choice by which an input is known, if it is: “ of 3/8-24 UNF”.
func (in *Inputs) ofPick(name string) string {
	if in.At(name).Origin == sheet.Typed {
		return ""
	}
	for _, pick := range in.Form.Input.Properties {
		k := &in.Values[pick.Index]
		if pick.Rows == "" || !k.Known {
			continue
		}
		table := in.Request.Book.Table(pick.Rows)
		if !in.fills(pick, table, name) {
			continue
		}
		if row := table.Find(k.Word, in.lookupOf(pick)); row != nil {
			return " of " + row.Name
		}
	}
	return ""
}

// asked words a condition of a row.
func (in *Inputs) asked(p *contract.Property, asks rules.Asked) string {
	switch {
	case asks.Words != nil:
		return strings.Join(asks.Words, " or ")
	case math.IsInf(asks.Low, -1):
		return "up to " + in.Show(p, asks.High)
	case math.IsInf(asks.High, 1):
		return "from " + in.Show(p, asks.Low)
	}
	return in.Show(p, asks.Low) + " to " + in.Show(p, asks.High)
}

// knownWithout tells whether all is known that a calculation needs, or would
// take a default for, of what a row of the table fills. figures names those
// that are not.
func (in *Inputs) knownWithout(p *contract.Property, table *rules.Table) (yes bool, figures string) {
	var lacking []string
	for _, other := range in.Form.Input.Properties {
		if !in.fills(p, table, other.Name) {
			continue
		}
		needed := slices.Contains(in.Form.Input.Needs, other.Name) || other.Default != nil || other.Typical != ""
		switch {
		case in.Values[other.Index].Known:
			yes = true
		case needed:
			lacking = append(lacking, problem.MidSentence(other.Title))
		}
	}
	return yes && lacking == nil, strings.Join(lacking, " and the ")
}
