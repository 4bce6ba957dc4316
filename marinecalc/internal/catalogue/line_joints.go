package catalogue

import (
	"math"
	"slices"

	"example.org/driveline/marinecalc/internal/calc"
	"example.org/driveline/marinecalc/internal/drawing/wholeline"
	"example.org/driveline/marinecalc/line"
	"example.org/driveline/marinecalc/quantity"
	"example.org/driveline/marinecalc/sheet"
)

// lineJoints asks for what a joint holds, rather than name the weakest of none. A
// margin that the estimates tell is told in every trial: left out where a trial has
// it at 1 or more and an unknown joint could be weaker, its range would end at 1
// while its probability goes on.
func lineJoints(s *calc.Session) calc.PerRun[line.JointsInput, line.JointsResult] {
	first := true
	var told, toldOfKnown [3]bool
	var found line.Loose
	var withheld [line.Count]bool
	return calc.PerRun[line.JointsInput, line.JointsResult]{Compute: func(in line.JointsInput) (line.JointsResult, error) {
		if first {
			found = foundLoose(s)
		}
		out, err := line.JointsFound(in, found)
		if first {
			withheld = ownSheetWants(s, &out)
		}
		for i := range out.Joints {
			if withheld[i] {
				out.Joints[i].Wanted = line.WantsRight
			}
		}
		for i, at := range [...]struct{ least, known *quantity.Ratio }{{&out.LeastAhead, &out.LeastKnownAhead}, {&out.LeastAstern, &out.LeastKnownAstern}, {&out.LeastShock, &out.LeastKnownShock}} {
			if first {
				told[i], toldOfKnown[i] = !math.IsNaN(float64(*at.least)), !math.IsNaN(float64(*at.known))
				continue
			}
			if told[i] && math.IsNaN(float64(*at.least)) {
				*at.least = weakest(&out, i)
			}
			if *at.known = quantity.Ratio(math.NaN()); toldOfKnown[i] {
				*at.known = weakest(&out, i)
			}
		}
		first = false
		if err == nil && out.First[0].Joint == "" && out.SureAhead == line.NothingKnown && out.SureAstern == line.NothingKnown {
			return line.JointsResult{}, calc.Lacking{Input: "facesAhead", What: "of no joint is known what it holds", Hint: "coupling bolts, coupling bore, propeller taper or output flange"}
		}
		return out, err
	}, Draw: wholeline.LineJoints}
}

// LooseJoints are the limits of backlash past which a joint moves that should not,
// by the joint. A hub of which nobody said whether a nut clamps it is not among them:
// one that slides on its spline has play.
var LooseJoints = struct{ Hub, Coupling, Taper []string }{
	Hub: []string{"backlash-hub-free"}, Coupling: []string{"backlash-coupling-free", "backlash-coupling-free-unsaid"}, Taper: []string{"backlash-taper-free"},
}

// LooseCauses are the causes of the fault finding that are a loose joint, once found.
var LooseCauses = map[string]line.Loose{
	"output-nut-loose": {Hub: true}, "coupling-bolts-loose": {Faces: true}, "coupling-bore-loose": {Bore: true}, "propeller-loose": {Taper: true},
}

// foundLoose is which joints are loose by the play that was read on the boat, or by
// what the fault finding says was found.
func foundLoose(s *calc.Session) (l line.Loose) {
	if s.Boat == nil {
		return l
	}
	if out := s.Earlier("backlash"); out != nil {
		past := func(limits []string) bool {
			return slices.ContainsFunc(limits, func(limit string) bool {
				v := out.Sheet.Verdict(limit)
				return v != nil && v.Word.Plain() == sheet.Beyond
			})
		}
		l = line.Loose{Hub: past(LooseJoints.Hub), Coupling: past(LooseJoints.Coupling), Taper: past(LooseJoints.Taper)}
	}
	out := s.Earlier("fault-finding")
	if out == nil {
		return l
	}
	for n := 0; out.Sheet.Cell("ranking", n, "cause") != nil; n++ {
		cause := out.Sheet.Cell("ranking", n, "cause").Text
		if known := out.Sheet.Cell("ranking", n, "known"); known == nil || known.Text == "" || !looked(s, out.Sheet, cause) {
			continue
		}
		by := LooseCauses[cause]
		l.Looked = l.Looked || by != (line.Loose{})
		l.Hub, l.Faces, l.Bore, l.Taper = l.Hub || by.Hub, l.Faces || by.Faces, l.Bore || by.Bore, l.Taper || by.Taper
	}
	return l
}

// looked tells whether the look that finds a cause was answered by a person, and not by
// the verdict of a sheet, which has its own say on the line.
func looked(s *calc.Session, faults *sheet.Sheet, cause string) bool {
	for _, c := range s.Book.Causes().All() {
		for n := 0; c.ID == cause && faults.Cell("weights", n, "evidence") != nil; n++ {
			if faults.Cell("weights", n, "evidence").Text == c.Confirm && faults.Cell("weights", n, "limit").Text == "" {
				return true
			}
		}
	}
	return false
}

// ownSheetWants tells of which joints a figure is not known for what stands on their
// own sheet, to be put right or told there.
func ownSheetWants(s *calc.Session, out *line.JointsResult) (list [line.Count]bool) {
	if s.Boat == nil {
		return list
	}
	from := [line.Count][]string{nil, {"facesAhead", "facesAstern"}, {"boreAhead", "boreAstern"}, {"taperAhead", "taperAstern"}}
	for i, names := range from {
		j := &out.Joints[i]
		for n, name := range names {
			if held := [...]quantity.Torque{j.HeldAhead, j.HeldAstern}[n]; j.Wanted != line.WantsTight && math.IsNaN(float64(held)) && s.WhyNone(s.Property("line-joints/"+name)) != "" {
				list[i] = true
			}
		}
	}
	return list
}

// weakest is the margin of the weakest joint known: ahead, astern or in a shock.
func weakest(out *line.JointsResult, which int) quantity.Ratio {
	for i := range out.Joints {
		j := &out.Joints[i]
		if [...]string{j.StandAhead, j.StandAstern, j.StandShock}[which] == line.Weakest {
			return [...]quantity.Ratio{j.Ahead, j.Astern, j.Shock}[which]
		}
	}
	return quantity.Ratio(math.NaN())
}
