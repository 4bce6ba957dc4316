package survey

import (
	"slices"
	"strings"

	"example.org/driveline/marinecalc/internal/calc"
	"example.org/driveline/marinecalc/line"
	"example.org/driveline/marinecalc/sheet"
)

// lineJoints is the calculation that ranks the joints of the line.
const lineJoints = "line-joints"

// rightFirst names the joints that were found loose, and then those that hold less
// than the torque, worst first. What was found loose has no margin.
func (s *Survey) rightFirst(session *calc.Session) (loose, failing []string) {
	one, p := s.sheet(lineJoints), session.Property(lineJoints+"/first")
	if one == nil || p == nil || p.Items == nil {
		return nil, nil
	}
	table := one.Table("first")
	if table == nil {
		return nil, nil
	}
	code := p.Items.Child("how").Words(line.IsLoose)
	for _, row := range table.Rows {
		read := table.Reader(row)
		if read("how") == code {
			loose = append(loose, read("joint"))
		} else {
			failing = append(failing, read("joint"))
		}
	}
	return loose, failing
}

// weakest names the weakest joint of the line in each case, with its margin:
// one item for each joint that is so somewhere, and then those that could be
// weaker or as weak. The head says how surely, and in which cases two are alike
// where they are not in all, since what follows may be cut. Where no joint is known
// there is nothing.
func (s *Survey) weakest(session *calc.Session) (head string, items []string) {
	one := s.sheet(lineJoints)
	if one == nil {
		return "", nil
	}
	word := func(name string) (text string) {
		if r := one.Result(name); r != nil {
			text = r.Text
		}
		return text
	}
	reads := func(name string, codes ...string) bool {
		p := session.Property(lineJoints + "/" + name)
		return p != nil && slices.ContainsFunc(codes, func(code string) bool { return p.Words(code) == word(name) })
	}
	var joints []string
	open, others := false, false
	told, alike := 0, []string{} // cases of which the weakest is known, and those in which another is as weak
	for _, c := range [...][3]string{{"Shock", "shock", "in a shock"}, {"Ahead", "ahead", "ahead"}, {"Astern", "astern", "astern"}} {
		joint := word("weakest" + c[0])
		if reads("weakest"+c[0], line.NoneKnown) {
			continue
		}
		told++
		at := slices.Index(joints, joint)
		if at < 0 {
			joints, items = append(joints, joint), append(items, joint+":")
			at = len(joints) - 1
		} else {
			items[at] += ","
		}
		items[at] += " " + c[1]
		if margin := word("least" + c[0]); margin != "" {
			items[at] += " " + margin
		}
		open = open || reads("sure"+c[0], line.OfKnown, line.AlikeOfKnown)
		if reads("sure"+c[0], line.AlikeOfAll, line.AlikeOfKnown, line.AlikeOfOther) {
			alike = append(alike, c[2])
		}
		others = others || reads("sure"+c[0], line.OfOthers, line.AlikeOfOther)
	}
	if len(items) == 1 && (len(alike) > 0 || items[0] == joints[0]+": shock, ahead, astern") {
		items[0] = joints[0] // the same in each, and no margin is told or no one is the weakest
	}
	head = "Weakest joint"
	switch {
	case open:
		head = "Weakest of those known"
	case len(alike) > 0 && len(alike) == told:
		head = "Weakest, not told apart"
	case len(alike) > 0:
		head = "Weakest, alike " + strings.Join(alike, " and ")
	case others:
		head = "Weakest of the others"
	}
	if open {
		return head, append(items, standing(session, one, line.CouldBe, "?")...)
	}
	return head, append(items, standing(session, one, line.Alike, "")...)
}

// standing are the joints that stand so in any case, with what is put behind
// each.
func standing(session *calc.Session, one *sheet.Sheet, code, behind string) (names []string) {
	table, p := one.Table("joints"), session.Property(lineJoints+"/joints")
	if table == nil || p == nil || p.Items == nil {
		return nil
	}
	for _, row := range table.Rows {
		read := table.Reader(row)
		if slices.ContainsFunc([]string{"standShock", "standAhead", "standAstern"}, func(column string) bool {
			stand := p.Items.Child(column)
			return stand != nil && read(column) == stand.Words(code)
		}) {
			names = append(names, read("joint")+behind)
		}
	}
	return names
}
