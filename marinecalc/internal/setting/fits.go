package setting

import (
	"slices"
	"strings"

	"example.org/driveline/marinecalc/internal/boat"
	"example.org/driveline/marinecalc/rules"
)

// fit is how a maker's torque goes with what the boat file has of the joint.
type fit int

const (
	another fit = iota // it is for another thread, or one with something else on it
	unsaid             // one of the two says nothing, or nothing that is understood
	alike              // by the diameter, or by the kind of what is on it
	same               // word for word
)

// makers are the makers' torques of the joint. Where some go with what the boat file has
// of thread and finish, those that do not, or less so, are left out: they are of other
// bolts, or of bolts prepared otherwise.
func (j Joint) makers() []*boat.Torque {
	all := j.Boat.TorquesOf(j.Pick)
	for _, of := range []func(*boat.Torque) fit{j.byThread, j.byFinish} {
		best := unsaid
		for _, t := range all {
			best = max(best, of(t))
		}
		var kept []*boat.Torque
		for _, t := range all {
			if is := of(t); best == unsaid || is == unsaid || is == best {
				kept = append(kept, t)
			}
		}
		all = kept
	}
	return all
}

// inBoat is what the boat file has of the joint where a column of its row says.
func (j Joint) inBoat(column string) string {
	value, _, _, _ := j.Boat.Find(j.Values.Of(column).Text)
	text, _ := value.(string)
	return text
}

func (j Joint) byThread(t *boat.Torque) fit {
	has := j.inBoat("thread")
	is, of := diameter(t.Thread), diameter(has)
	switch {
	case is == "" || of == "":
		return unsaid
	case boat.Folded(has) == boat.Folded(t.Thread):
		return same
	case is == of:
		return alike
	}
	return another
}

// diameter is that of a thread as it is written: "M10 x 1.5" is "10", "7/16-14" "7/16".
func diameter(thread string) string {
	thread = strings.TrimLeft(strings.ToLower(thread), "m ")
	if end := strings.IndexFunc(thread, func(r rune) bool { return !strings.ContainsRune("0123456789/.", r) }); end >= 0 {
		thread = thread[:end]
	}
	return thread
}

// byFinish goes by the table finish-words: the first kind that has a word of the maker's
// is what the maker means.
func (j Joint) byFinish(t *boat.Torque) fit {
	has, written := j.inBoat("finish"), boat.Folded(t.Lubrication)
	if has == "" || written == "" {
		return unsaid
	}
	if boat.Folded(has) == written {
		return same
	}
	said, is, known := false, false, false
	for _, kind := range j.Book.Table("finish-words").Rows.All() {
		of := ofKind(kind, has)
		known = known || of
		if !said && slices.ContainsFunc(strings.Split(kind.Values.Of("words").Text, "|"), func(w string) bool { return strings.Contains(written, w) }) {
			said, is = true, of
		}
	}
	switch {
	case said && is:
		return alike
	case said && known:
		return another
	}
	return unsaid
}

// words are what the boat file has of the joint's thread and what is on it.
func (j Joint) words() string {
	finish := ""
	for _, kind := range j.Book.Table("finish-words").Rows.All() {
		if finish == "" && ofKind(kind, j.inBoat("finish")) {
			finish = kind.Name
		}
	}
	return strings.Join(known(j.inBoat("thread"), finish), ", ")
}

// ofKind tells whether a finish is of a kind.
func ofKind(kind rules.Row, finish string) bool {
	return slices.Contains(strings.Fields(kind.Values.Of("finishes").Text), finish)
}
