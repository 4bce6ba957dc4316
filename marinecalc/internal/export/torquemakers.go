// What makers give for a joint, on the card: one torque, or several.

package export

import (
	"cmp"
	"fmt"
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
func byThread(all []boat.Torque, joint string, of as) [][]boat.Torque {
	all = slices.DeleteFunc(slices.Clone(all), func(t boat.Torque) bool { return t.Joint != joint })
	all = named(all, of.thread, func(t boat.Torque) string { return boat.Folded(t.Thread) })
	all = named(all, of.finish, func(t boat.Torque) string { return boat.Folded(t.Lubrication) })
	if slices.ContainsFunc(all, func(t boat.Torque) bool { return t.Thread == "" }) { // which may be of any of them
		return [][]boat.Torque{all}
	}
	var lines [][]boat.Torque
	for _, t := range all { // sorted by thread
		if n := len(lines); n > 0 && boat.Folded(lines[n-1][0].Thread) == boat.Folded(t.Thread) {
			lines[n-1] = append(lines[n-1], t)
		} else {
			lines = append(lines, []boat.Torque{t})
		}
	}
	if lines == nil {
		lines = [][]boat.Torque{nil}
	}
	return lines
}

// named are the entries that say what is known, or nothing; all where none says it.
func named(all []boat.Torque, known []string, says func(boat.Torque) string) []boat.Torque {
	is := func(t boat.Torque) bool { return says(t) != "" && slices.Contains(known, says(t)) }
	if !slices.ContainsFunc(all, is) {
		return all
	}
	return slices.DeleteFunc(all, func(t boat.Torque) bool { return says(t) != "" && !is(t) })
}

// ofMakers takes the makers' torques of a line: one goes first, and what was there
// stands beside it. Of several that are no one setting of a wrench none is printed by
// itself: which of them stands last in the file says nothing.
func (j *TorqueJoint) ofMakers(list []boat.Torque, book *rules.Book) {
	if len(list) == 0 {
		return
	}
	least := slices.MinFunc(list, func(a, b boat.Torque) int { return cmp.Compare(a.SI, b.SI) })
	if j.Torque != "" && j.Torque != least.Text {
		j.Range = "without it " + j.Torque + ", " + j.Source
	}
	join := func(between string, says func(boat.Torque) string) string {
		var texts []string
		for _, t := range list {
			if s := says(t); s != "" && !slices.ContainsFunc(texts, func(had string) bool { return boat.Folded(had) == boat.Folded(s) }) {
				texts = append(texts, s)
			}
		}
		return strings.Join(texts, between)
	}
	j.Torque, j.Maker = least.Text, true
	j.Source = join("; ", func(t boat.Torque) string { return t.Source })
	j.Thread = cmp.Or(join(" or ", func(t boat.Torque) string { return t.Thread }), j.Thread)
	j.Lubrication = cmp.Or(join(" or ", func(t boat.Torque) string { return t.Lubrication }), j.Lubrication)
	if slices.ContainsFunc(list, func(t boat.Torque) bool { return agree.TorquesApart(book, t.SI, least.SI) }) {
		j.Torque = ""
		j.Unsettled = setting.NotSettled(join(" or ", func(t boat.Torque) string {
			return fmt.Sprintf("%s (%s)", t.Text, strings.Join(known(t.Thread, t.Lubrication, t.Source), "; "))
		}))
		j.Range = strings.Join(known("Look which is for this thread and what is on it, and take the other out of the boat file, before a wrench goes on", j.Range), ". ")
	}
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
