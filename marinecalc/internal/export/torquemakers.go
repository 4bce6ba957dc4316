// What makers give for a joint, on the card: one torque, or several.

package export

import (
	"cmp"
	"slices"
	"strings"

	"example.org/driveline/marinecalc/internal/boat"
	"example.org/driveline/marinecalc/internal/boat/agree"
	"example.org/driveline/marinecalc/internal/setting"
	"example.org/driveline/marinecalc/rules"
	"example.org/driveline/marinecalc/sheet"
)

// as is what the sheets know of a joint by itself: its thread and what is on it, each
// by its pick and its name.
type as struct{ thread, finish []string }

// on reads that of the joint's own sheet; a default says nothing of this boat.
func on(joint string, sheets map[string]*sheet.Sheet) as {
	said := func(calculation, name string) []string {
		in := sheets[calculation].Input(name)
		if in == nil || in.Origin == sheet.Default || in.Origin == sheet.UsualValue {
			return nil
		}
		return []string{boat.Folded(in.Word), boat.Folded(in.Text)}
	}
	switch joint {
	case "coupling-bolts":
		return as{said("bolt-preload", "thread"), said("bolt-preload", "finish")}
	case "output-nut":
		return as{said("output-flange", "thread"), said("output-flange", "finish")}
	case "propeller-nut":
		return as{thread: said("propeller-taper", "nutThread")}
	case "pinch-bolts":
		return as{thread: said("coupling-bore", "pinchThread")}
	case "set-screws":
		return as{thread: said("coupling-bore", "setScrewSize")}
	}
	return as{}
}

// byThread are the makers' torques of a joint, those of one thread together, as each
// line of the card has them; one without any where there are none. Where the sheets
// know thread or finish and an entry names the same, those that name another are left
// out: they are of other bolts, or of bolts prepared otherwise.
func byThread(all []*boat.Torque, of as) (lines [][]*boat.Torque) {
	if len(all) == 0 {
		return [][]*boat.Torque{nil}
	}
	all = named(all, of.thread, func(t *boat.Torque) string { return boat.Folded(t.Thread) })
	all = named(all, of.finish, func(t *boat.Torque) string { return boat.Folded(t.Lubrication) })
	last := ""
	for i, t := range all { // sorted by thread, those without one first, which may be of any
		if i == 0 || all[0].Thread != "" && boat.Folded(t.Thread) != last {
			lines = append(lines, nil)
		}
		last = boat.Folded(t.Thread)
		lines[len(lines)-1] = append(lines[len(lines)-1], t)
	}
	return lines
}

// named are the entries that say what is known, or nothing; all where none says it.
func named(all []*boat.Torque, known []string, says func(*boat.Torque) string) (list []*boat.Torque) {
	found := false
	for _, t := range all {
		is := slices.Contains(known, says(t))
		found = found || is && says(t) != ""
		if is || says(t) == "" {
			list = append(list, t)
		}
	}
	if !found {
		return all
	}
	return list
}

// ofMakers takes the makers' torques of a line: one goes first, and what was there
// stands beside it. Of several that are no one setting of a wrench none is printed by
// itself: which of them stands last in the file says nothing.
func (j *TorqueJoint) ofMakers(list []*boat.Torque, book *rules.Book) {
	if len(list) == 0 {
		return
	}
	least, apart := list[0], false
	for _, t := range list {
		if t.SI < least.SI {
			least = t
		}
	}
	var sources, threads, finishes, all []string
	for _, t := range list {
		apart = apart || agree.TorquesApart(book, t.SI, least.SI)
		sources, threads, finishes = once(sources, t.Source), once(threads, t.Thread), once(finishes, t.Lubrication)
		all = once(all, t.Text+" ("+strings.Join(known(t.Thread, t.Lubrication, t.Source), "; ")+")")
	}
	if j.Torque != "" && j.Torque != least.Text {
		j.Range = "without it " + j.Torque + ", " + j.Source
	}
	j.Torque, j.Maker, j.Source = least.Text, true, strings.Join(sources, "; ")
	j.Thread = cmp.Or(strings.Join(threads, " or "), j.Thread)
	j.Lubrication = cmp.Or(strings.Join(finishes, " or "), j.Lubrication)
	if apart {
		j.Torque, j.Unsettled = "", setting.NotSettled(strings.Join(all, " or "))
		j.Range = strings.Join(known("Look which is for this thread and what is on it, and take the other out of the boat file, before a wrench goes on", j.Range), ". ")
	}
}

// once puts a text behind others where there is one and none is alike.
func once(texts []string, text string) []string {
	for _, had := range texts {
		if boat.Folded(had) == boat.Folded(text) {
			return texts
		}
	}
	return append(texts, known(text)...)
}

// disagree tells that the boat file has two torques of the joint, where these are not
// both makers' of its list, of which ofMakers tells. Of two by makers, one of them
// among the maker's figures, neither is printed by itself.
func (j *TorqueJoint) disagree(list []agree.Disagreement) {
	for _, d := range list {
		listed, figures := d.MakersIn()
		if d.Code != agree.TwoTorques+j.Joint || listed > 1 {
			continue
		}
		if listed+figures == 2 && j.Torque != "" {
			j.Torque, j.Unsettled = "", setting.NotSettled(d.Figures[0].Text+" or "+d.Figures[1].Text)
		}
		j.Range = strings.Join(known("NOT SURE: "+d.Text, j.Range), " ")
	}
}
