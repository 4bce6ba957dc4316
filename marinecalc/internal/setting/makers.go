// What stands for a joint by its own sheet and by the makers' torques of the boat file,
// in one place for the card's lines and for the steps.

package setting

import (
	"cmp"
	"slices"
	"strings"

	"example.org/driveline/marinecalc/internal/boat"
	"example.org/driveline/marinecalc/internal/boat/agree"
	"example.org/driveline/marinecalc/problem"
	"example.org/driveline/marinecalc/rules"
	"example.org/driveline/marinecalc/sheet"
)

// Joint is a row of the table torque-joints, with all that its torque is found by.
type Joint struct {
	rules.Row
	Boat    *boat.Boat
	Book    *rules.Book
	SheetOf func(id string) *sheet.Sheet // nil where there is none
	Absent  bool                         // she has none, and its sheet is of another joint
}

// Standing is the torque that stands for a joint: a maker's of the boat file's torques
// where there is one, else that of the joint's own sheet.
type Standing struct {
	Torque
	Maker       bool    // it is a maker's
	Listed      bool    // of the boat file's torques
	Judged      bool    // the joint's own sheets are of this torque
	Thread      string  // that it is for, as its maker writes
	Lubrication string  // likewise
	Without     *Torque // the joint's own, where that is calculated
	Why         string  // it is not to be set; "" where it is
	Do          string  // then, where the makers' torques are why
}

// Look is what comes before a torque is set of which something is not right.
const Look = "Look whether torque, thread, grade and what is on the thread are right, and ask the maker, before a wrench goes on"

// Standing is what stands for the joint as a whole.
func (j Joint) Standing() Standing { return j.beside(j.makers()) }

// Lines are the same for each thread that makers name by itself; one line where they
// name none.
func (j Joint) Lines() (lines []Standing) {
	all, first := j.makers(), 0
	for i := range all { // sorted by thread, those without one first, which may be of any
		if i+1 == len(all) || all[0].Thread != "" && boat.Folded(all[i+1].Thread) != boat.Folded(all[i].Thread) {
			lines, first = append(lines, j.beside(all[first:i+1])), i+1
		}
	}
	if lines == nil {
		lines = append(lines, j.beside(nil))
	}
	return lines
}

// beside puts makers' torques beside the joint's own. Of several that are no one
// setting of a wrench none stands by itself: which of them stands last in the file says
// nothing. One that was typed, or is a maker's figure, picks those that it agrees with,
// and a maker's torque for another thread or another finish is not this joint's.
func (j Joint) beside(list []*boat.Torque) Standing {
	own := j.own()
	own.Own = cmp.Or(own.Own, own.Text)
	if len(list) == 0 {
		return Standing{Torque: own, Maker: own.From == given, Judged: own.Own == own.Text, Why: Unsettled(j.Row, own, j.SheetOf)}
	}
	near := func(a, b float64) bool { return !agree.TorquesApart(j.Book, a, b) }
	said := own.From == typed || own.From == given
	if said && slices.ContainsFunc(list, func(t *boat.Torque) bool { return near(t.SI, own.SI) }) {
		list = slices.DeleteFunc(slices.Clone(list), func(t *boat.Torque) bool { return !near(t.SI, own.SI) })
	}
	least, apart := list[0], false
	for _, t := range list {
		if t.SI < least.SI {
			least = t
		}
	}
	var sources, threads, finishes, all []string
	if said && !near(least.SI, own.SI) {
		all, apart = append(all, own.Text+" ("+own.Source+")"), true
	}
	others := 0
	for _, t := range list {
		apart = apart || !near(t.SI, least.SI) && !(said && near(t.SI, own.SI))
		sources, threads, finishes = once(sources, t.Source), once(threads, t.Thread), once(finishes, t.Lubrication)
		all = once(all, t.Text+" ("+strings.Join(known(t.Thread, t.Lubrication, t.Source), "; ")+")")
		if j.byThread(t) == another || j.byFinish(t) == another {
			others++
		}
	}
	s := Standing{Torque: Torque{least.Text, given, own.Own, strings.Join(sources, "; "), least.SI}, Maker: true, Listed: true,
		Thread: strings.Join(threads, " or "), Lubrication: strings.Join(finishes, " or ")}
	s.Judged = s.Own == s.Text
	if own.Text != "" && !said {
		s.Without = &own
	}
	switch {
	case apart:
		s.Why = strings.Join(all, " or ")
		s.Do = "Look which is for this thread and what is on it, and take the other out of the boat file, before a wrench goes on"
	case others == len(list):
		s.Why = strings.Join(all, " or ") + ", and the boat file has the joint as " + j.words()
		s.Do = Look
	default:
		s.Why = Unsettled(j.Row, s.Torque, j.SheetOf)
	}
	return s
}

// Against is what the sheets say against the joint at the torque that stands, and of what
// its own sheet's torque does and holds. That is told apart where another stands.
func (j Joint) Against(s *Standing) (all, ofOwn Against) {
	if s.Judged {
		return AgainstTorque(j.Row, j.SheetOf, "asks", "cures", "heeds", "holds"), ofOwn
	}
	if s.Own != "" {
		ofOwn = AgainstTorque(j.Row, j.SheetOf, "heeds", "holds")
	}
	return AgainstTorque(j.Row, j.SheetOf, "asks", "cures"), ofOwn
}

// own is the torque on the joint's own sheet, or what the boat file has of it where that
// cannot be worked out; no text where nobody knows one.
func (j Joint) own() (t Torque) {
	if j.Absent {
		return t
	}
	of := j.Values.Of("torque").Text
	id, name, _ := strings.Cut(of, "/")
	s, at := j.SheetOf(id), (*float64)(nil)
	if in := s.Input(name); in != nil {
		t, at = Torque{Text: in.Text, From: typed, Source: cmp.Or(in.Source, "as entered")}, in.SI
		if in.Origin == sheet.MakersFigure {
			t.From = given
		} else if in.Origin == sheet.HandbookRow {
			t.From = ""
		}
	} else if r := s.Result(name); r != nil {
		t, at = Torque{Text: r.Text, From: calculated, Source: "calculated: " + problem.MidSentence(s.Title)}, r.SI
		if r.Maker != nil {
			t, at = Torque{Text: r.Maker.Text, From: given, Own: r.Text, Source: r.Maker.Source}, &r.Maker.SI
		}
	} else if g, from, has := agree.TorqueIn(j.Boat, j.Pick, of); s == nil && has {
		t, at = Torque{Text: g.Text, From: typed, Source: cmp.Or(from, "as entered")}, &g.SI
	}
	if at != nil {
		t.SI = *at
	}
	return t
}

// once puts a text behind others where there is one and none is alike.
func once(texts []string, text string) []string {
	if text == "" || slices.ContainsFunc(texts, func(had string) bool { return boat.Folded(had) == boat.Folded(text) }) {
		return texts
	}
	return append(texts, text)
}

// known are the texts that are not empty.
func known(texts ...string) []string {
	return slices.DeleteFunc(texts, func(t string) bool { return t == "" })
}
