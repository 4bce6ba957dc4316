package survey

import (
	"slices"

	"example.org/driveline/marinecalc/internal/calc"
	"example.org/driveline/marinecalc/line"
	"example.org/driveline/marinecalc/sheet"
)

// lineJoints is the calculation that ranks the joints of the line.
const lineJoints = "line-joints"

// rightFirst names the joints that were found moving, and then those that hold less
// than the torque, worst first. What was found moving has no margin.
func (s *Survey) rightFirst(session *calc.Session) (moving, failing []string) {
	one, p := s.sheet(lineJoints), session.Property(lineJoints+"/first")
	if one == nil || p == nil || p.Items == nil {
		return nil, nil
	}
	table := one.Table("first")
	if table == nil {
		return nil, nil
	}
	moves := p.Items.Child("how").Words(line.IsMoving)
	for _, row := range table.Rows {
		read := table.Reader(row)
		if read("how") == moves {
			moving = append(moving, read("joint"))
		} else {
			failing = append(failing, read("joint"))
		}
	}
	return moving, failing
}

// weakest names the weakest joint of the line in each case, with its margin:
// one item for each joint that is so somewhere, and then those that could be
// weaker or as weak. The head says how surely, since what follows may be cut. Where no
// joint is known there is nothing.
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
	open, alike, others := false, false, false
	for _, c := range [...][2]string{{"Shock", "shock"}, {"Ahead", "ahead"}, {"Astern", "astern"}} {
		joint := word("weakest" + c[0])
		if reads("weakest"+c[0], line.NoneKnown) {
			continue
		}
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
		alike = alike || reads("sure"+c[0], line.AlikeOfAll, line.AlikeOfKnown, line.AlikeOfOther)
		others = others || reads("sure"+c[0], line.OfOthers, line.AlikeOfOther)
	}
	if len(items) == 1 && (alike || items[0] == joints[0]+": shock, ahead, astern") {
		items[0] = joints[0] // the same in each, and no margin is told or no one is the weakest
	}
	head = "Weakest joint"
	switch {
	case open:
		head = "Weakest of those known"
		items = append(items, standing(session, one, line.CouldBe, "?")...)
	case alike:
		head = "Weakest, not told apart"
		items = append(items, standing(session, one, line.Alike, "")...)
	case others:
		head = "Weakest of the others"
	}
	return head, items
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
