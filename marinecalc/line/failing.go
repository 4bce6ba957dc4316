// The joints that are put right first: found loose, or with less than the torque
// asks.

package line

import (
	"math"

	"example.org/driveline/marinecalc/quantity"
)

// Loose says which joints were found loose, by the play that was read there or by a
// look. What is loose holds nothing that anybody can count on, whatever is calculated of it.
type Loose struct {
	Hub      bool // output flange on its shaft
	Coupling bool // between its faces or on its shaft: its play does not tell which
	Faces    bool // the coupling's bolts
	Bore     bool // the shaft in its coupling flange
	Taper    bool // propeller on its taper
	Looked   bool // a look found one of them, and not its play alone, of which the sheet of play has a verdict
}

// at tells whether a joint, from forward aft, is one of these or may be.
func (l Loose) at(joint int) bool { return l.named(joint) || l.Coupling && (joint == 1 || joint == 2) }

// named tells whether a joint is surely one of these.
func (l Loose) named(joint int) bool {
	return [Count]bool{l.Hub, l.Faces, l.Bore, l.Taper}[joint]
}

// untold tells whether the coupling is loose and nobody looked at which of its joints.
func (l Loose) untold() bool { return l.Coupling && !l.Faces && !l.Bore }

// code is that of what was found loose, or "".
func (l Loose) code() (code string) {
	if l.untold() {
		code = Coupling
	}
	for i, joint := range [Count]string{Hub, Faces, Bore, Taper} {
		switch {
		case !l.named(i):
		case code != "":
			return Several
		default:
			code = joint
		}
	}
	return code
}

const (
	Coupling = "coupling" // code of both joints of the coupling, of which one is loose
	Several  = "several"  // more than one joint was found loose
)

// The codes of how a joint fails, worst first.
const (
	IsLoose       = "loose"
	HoldsNothing  = "holds-nothing"  // neither ahead nor astern
	NothingAstern = "nothing-astern" // nor in a shock, which comes either way
	GivesAhead    = "gives-ahead"
	GivesAstern   = "gives-astern"
	GivesShock    = "gives-shock" // in a shock alone
)

// The codes of what is not done until a joint is put right.
const (
	NoPower  = "no-power"
	NoAstern = "no-astern"
	NoShock  = "no-shock"
)

// Failing is a joint that is put right first.
type Failing struct {
	Joint string
	How   string
	Until string // what is not done before
}

// grave puts the codes of how a joint fails in their order.
func grave(how string) int {
	for i, code := range [...]string{IsLoose, HoldsNothing, NothingAstern, GivesAhead, GivesAstern, GivesShock} {
		if how == code {
			return i
		}
	}
	return math.MaxInt
}

// failing is how a joint fails by its margins, "" where it does not or where that
// is not known.
func (j *Joint) failing() string {
	switch {
	case j.HeldAhead == 0:
		return HoldsNothing
	case j.HeldAstern == 0:
		return NothingAstern
	case j.Ahead < 1:
		return GivesAhead
	case j.Astern < 1:
		return GivesAstern
	case j.Shock < 1:
		return GivesShock
	}
	return ""
}

// until is what is not done before such a joint is put right: without clamp of the
// output flange only nut and lock hold flange and shaft astern, and so neither way
// counts; a joint that gives way astern leaves no way to stop her.
func until(joint, how string) string {
	switch {
	case how == GivesShock:
		return NoShock
	case how == GivesAstern, how == NothingAstern && joint != Hub:
		return NoAstern
	}
	return NoPower
}

// least is the lowest margin of a joint that is known, for the order of those that
// fail alike.
func (j *Joint) least() quantity.Ratio {
	least := quantity.Ratio(math.Inf(1))
	for _, m := range [...]quantity.Ratio{j.Ahead, j.Astern, j.Shock} {
		if m < least {
			least = m
		}
	}
	return least
}

// first lists the joints that are put right first, worst first; an entry without
// Joint is none. What a margin is by its range is left to the limits.
func (r *JointsResult) first(found Loose) (list [Count]Failing) {
	var margins [Count]quantity.Ratio
	n := 0
	add := func(joint, how string, least quantity.Ratio) {
		at := n
		for ; at > 0 && (grave(how) < grave(list[at-1].How) || how == list[at-1].How && least < margins[at-1]); at-- {
			list[at], margins[at] = list[at-1], margins[at-1]
		}
		list[at], margins[at] = Failing{joint, how, until(joint, how)}, least
		n++
	}
	if found.untold() {
		add(Coupling, IsLoose, 0)
	}
	for i := range r.Joints {
		j := &r.Joints[i]
		switch how := j.failing(); {
		case found.named(i):
			add(j.Joint, IsLoose, 0)
		case !found.at(i) && how != "":
			add(j.Joint, how, j.least())
		}
	}
	return list
}

// besideLoose takes back that a line holds of which a look found a joint loose: that
// the others hold is no more than known of these. What falls short stays so, and what
// is calculated of the loose joint counts where it falls short.
func besideLoose(least, ofKnown *quantity.Ratio, short quantity.Ratio) {
	switch {
	case short < 1 && !(*least <= short):
		*least, *ofKnown = short, quantity.Ratio(math.NaN())
	case *least >= 1:
		*least, *ofKnown = quantity.Ratio(math.NaN()), *least
	}
}
