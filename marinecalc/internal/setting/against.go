// Package setting tells of the torque that a joint is set to whether it may be printed
// as it stands: what the verdicts of the joint's sheets say against it, from where on
// the joint gives way, and whether it is settled.
package setting

import (
	"slices"
	"sort"
	"strings"

	"example.org/driveline/marinecalc/internal/calc/verdict"
	"example.org/driveline/marinecalc/problem"
	"example.org/driveline/marinecalc/rules"
	"example.org/driveline/marinecalc/sheet"
)

// NotAsItStands marks a joint of which something is past a limit that no torque mends,
// or that its torque does: what it clamps is not what a sound one would.
const NotAsItStands = "not as it stands"

// Against is what verdicts say against a joint, with which its torque is not to
// be printed bare.
type Against struct {
	Word sheet.Word // the gravest; "" where nothing is against it
	Mark string     // of the torque: "not as it stands", "not sure", "loose", "holds too little" and their doubts
	Text string     // what is against it, and what comes first; a second mark stands in it
}

// Sentence is all of it, for a reader.
func (a Against) Sentence() string {
	if a.Text == "" {
		return ""
	}
	return strings.ToUpper(a.Mark) + ": " + a.Text
}

// And puts what is against the same torque for another reason behind it.
func (a Against) And(b Against) Against {
	switch {
	case b.Text == "":
		return a
	case a.Text == "":
		return b
	}
	if b.Word.Rank() < a.Word.Rank() {
		a.Word = b.Word
	}
	a.Text += ". " + b.Sentence()
	return a
}

// standAgainst are, of the verdicts that a row names in a column, those that are past
// and those that are not enough to tell.
func standAgainst(row rules.Row, column string, sheetOf func(id string) *sheet.Sheet) (list []*sheet.Verdict) {
	for _, at := range strings.Fields(row.Values.Of(column).Text) {
		id, limit, _ := strings.Cut(at, "/")
		v := sheetOf(id).Verdict(limit)
		if v == nil || v.Value == "" || v.Hangs && column == "heeds" { // what such a torque hangs on is told itself
			continue
		}
		if isPast(v) || v.Word == sheet.CannotTell {
			list = append(list, v)
		}
	}
	return list
}

// AgainstTorque reads, of a row of the table torque-joints, what is past and what
// is not enough to tell, by the verdicts that it names in its columns: "heeds" for
// those on what the torque does, "asks" for those on the joint as it stands, which
// no torque mends, "holds" for those on what the joint holds at that torque, which
// may be right in itself and too little, and "cures" for those of a nut found
// loose, which the wrench mends, with what a look found loose. sheetOf gives a sheet, nil where there is none.
func AgainstTorque(row rules.Row, sheetOf func(id string) *sheet.Sheet, columns ...string) Against {
	verdicts := func(column string) []*sheet.Verdict {
		if !slices.Contains(columns, column) {
			return nil
		}
		return standAgainst(row, column, sheetOf)
	}
	joint, loose := append(verdicts("asks"), verdicts("heeds")...), verdicts("cures")
	joint = slices.DeleteFunc(joint, func(v *sheet.Verdict) bool { // the least of several signs, and this is the one it comes from
		return slices.ContainsFunc(loose, func(l *sheet.Verdict) bool {
			return l.SI != nil && v.SI != nil && *l.SI == *v.SI && l.Kind == v.Kind && l.Side == v.Side
		})
	})
	const maker = ", or ask the maker, before a wrench goes on"
	var out Against
	if len(joint) > 0 {
		out = told(append(joint, loose...), NotAsItStands, "Put that right"+maker, "not sure", "Settle that"+maker)
	} else {
		first := row.Values.Of("first").Text
		out = told(loose, "loose", first, "may be loose", first)
	}
	if slices.Contains(columns, "cures") {
		out = out.afterLook(foundBy(row, sheetOf), row.Values.Of("first").Text)
	}
	return out.And(ofHolding(verdicts("holds")))
}

// foundBy is the cause that a row names as its joint found loose, where the fault
// finding says that it was found; else "".
func foundBy(row rules.Row, sheetOf func(id string) *sheet.Sheet) string {
	faults := sheetOf("fault-finding")
	if faults == nil {
		return ""
	}
	for n := 0; ; n++ {
		cause, known := faults.Cell("ranking", n, "cause"), faults.Cell("ranking", n, "known")
		switch {
		case cause == nil:
			return ""
		case cause.Text != "" && cause.Text == row.Values.Of("found").Text && known != nil && known.Text != "":
			return "“" + faults.Cell("ranking", n, "name").Text + "” was found"
		}
	}
}

// afterLook puts before what verdicts say that a look found the joint loose.
func (a Against) afterLook(found, first string) Against {
	switch {
	case found == "":
		return a
	case a.Text == "":
		return Against{Word: sheet.Beyond, Mark: "loose", Text: found + ". " + first}
	case a.Mark == "may be loose" || a.Mark == "loose":
		a.Mark, a.Text = "loose", found+"; "+a.Text
	case a.Mark == NotAsItStands: // no tightening mends it
		a.Text = found + ". " + problem.Capital(a.Text)
	default:
		a.Mark, a.Text = NotAsItStands, found+". "+first+". "+problem.Capital(a.Text)
	}
	a.Word = sheet.Beyond
	return a
}

// ofHolding tells what a clamp does not hold: all that is past, with what is not
// enough to tell by an estimate that is past, else one that is not enough to tell.
func ofHolding(list []*sheet.Verdict) Against {
	mark := "may hold too little" // by a guide, which compares and does not decide
	for _, v := range list {
		if isPast(v) && !v.Guide {
			mark = "holds too little"
		}
	}
	sort.SliceStable(list, func(i, j int) bool { return onRightSide(list[i]) < onRightSide(list[j]) })
	if !slices.ContainsFunc(list, isPast) {
		list = list[:min(len(list), 1)]
	} else if right := slices.IndexFunc(list, func(v *sheet.Verdict) bool { return onRightSide(v) == 1 }); right >= 0 {
		list = list[:right]
	}
	return told(list, mark, "Its sheet has what cures it: do that before it runs under power", "not sure that it holds", "Settle that before it runs under power")
}

// isPast tells whether a value is past its limit or guide.
func isPast(v *sheet.Verdict) bool { return v.Word.Plain() == sheet.Beyond }

// onRightSide is 0 for what is past and for an estimate on the wrong side of its
// limit, else 1.
func onRightSide(v *sheet.Verdict) int {
	if isPast(v) || v.EstimatePast() {
		return 0
	}
	return 1
}

// told puts verdicts into words, marked by whether one is past.
func told(list []*sheet.Verdict, past, cure, unsure, settle string) (out Against) {
	var texts []string
	for _, v := range list {
		if out.Word == "" {
			out.Mark = unsure
		}
		if isPast(v) {
			out.Mark, settle = past, cure
		}
		if out.Word == "" || v.Word.Rank() < out.Word.Rank() {
			out.Word = v.Word
		}
		texts = append(texts, verdict.Stands(v))
	}
	if len(list) > 1 && !slices.ContainsFunc(list, func(v *sheet.Verdict) bool { return !verdict.TellsTooLittle(v) }) {
		for i, v := range list { // all of one kind: said once
			texts[i] = verdict.Valued(v)
		}
		texts[len(texts)-1] += ": they may not meet their limits"
	}
	if len(texts) > 0 {
		out.Text = strings.Join(texts, "; ") + ". " + settle
	}
	return out
}
