// What a joint bears, beside its torque on the card.

package export

import (
	"math"
	"strings"

	"example.org/driveline/marinecalc/hub"
	"example.org/driveline/marinecalc/internal/calc/verdict"
	"example.org/driveline/marinecalc/internal/survey"
	"example.org/driveline/marinecalc/quantity"
	"example.org/driveline/marinecalc/rules"
	"example.org/driveline/marinecalc/sheet"
)

// tooMuch is the result that a joint's torque must stay under, with what comes from
// its lower edge on.
var tooMuch = map[string]struct{ calculation, result, what string }{
	"coupling-bolts": {"bolt-preload", "breakingTorque", "this bolt can break"},
	"output-nut":     {"output-flange", "mostNutTorque", "the shaft's thread can yield"},
	"propeller-nut":  {"propeller-taper", "mostNutTorque", "hub or thread can yield"},
}

// from is the lower edge of a torque's range, from which on what it names can come,
// or the estimate of one without a range.
func from(s *sheet.Sheet, r *sheet.Result) (si float64, text string) {
	low, high, ok := r.Range()
	kind, known := quantity.Lookup(string(r.Kind))
	units, err := quantity.ParseSystem(s.Made.Units)
	if !ok || !known || err != nil {
		return *r.SI, r.Text
	}
	return low, kind.In("N·m", "lbf·ft").PrintTo(low, (high-low)/2, units)
}

// bears warns of a torque on the card, whosever it is, that the joint's own sheet
// says it does not bear, or may not; told is whether its verdicts stand there.
func (j *TorqueJoint) bears(sheets map[string]*sheet.Sheet, told bool) {
	most := tooMuch[j.Joint]
	s := sheets[most.calculation]
	r := s.Result(most.result)
	kind, _ := quantity.Lookup("torque")
	reading, err := kind.Parse(j.Torque)
	if err != nil || r == nil || r.SI == nil {
		return
	}
	own := s.Input("nutTorque")
	if told && own != nil && own.SI != nil && math.Abs(*own.SI-reading.SI) < 1e-3*reading.SI {
		return
	}
	edge, text := from(s, r)
	word := "TOO MUCH"
	switch {
	case reading.SI >= *r.SI:
	case reading.SI >= edge:
		word = "NOT SURE"
	default:
		return
	}
	j.Range = strings.Join(known(word+" by its own sheet: "+most.what+" from "+text+". Look whether torque, thread and grade are right, and ask the maker, before a wrench goes on", j.Range), "; ")
}

// ofCone tells from which torque on a propeller's cone holds by itself, and from which
// its hub or thread can yield.
func (j *TorqueJoint) ofCone(s, key *sheet.Sheet) {
	least, most := s.Result("leastNutTorque"), s.Result("mostNutTorque")
	if least == nil || most == nil || least.SI == nil || most.SI == nil {
		return
	}
	edge, text := from(s, most)
	if *least.SI <= edge {
		j.Range = "the cone alone holds from about " + least.Text + ", hub or thread can yield from " + text
		return
	}
	j.Range = "hub or thread can yield from " + text + ", before the cone alone holds (about " + least.Text + "): stay under it"
	switch keyed := s.Input("keyed"); {
	case keyed != nil && keyed.Word == string(hub.WithKey):
		j.Range += keyCarries(s, key)
	case keyed != nil && keyed.Word == string(hub.NoKey):
		j.Range += "; there is no key to carry the rest: ask the maker"
	default:
		j.Range += "; look whether there is a key to carry the rest"
	}
}

// keyCarries tells whether a key that is fitted carries what a cone leaves it, by
// the margins of cone and key together and by the key's own sheet.
func keyCarries(cone, key *sheet.Sheet) string {
	unsure, carried := "", false
	for _, at := range []struct {
		of    *sheet.Sheet
		limit string
	}{{cone, "taper-torque-ahead"}, {cone, "taper-torque-astern"}, {cone, "taper-torque-peak"}, {key, "key-known-yields"}, {key, "key-yields-at-full-power"}, {key, "key-at-peak"}} {
		v := at.of.Verdict(at.limit)
		if v == nil || v.Value == "" {
			continue
		}
		said := " (" + verdict.Stands(v) + "): ask the maker"
		switch {
		case v.Word.Plain() == sheet.Beyond:
			return "; the key does not carry the rest" + said
		case v.Word == sheet.CannotTell && unsure == "":
			unsure = "; whether the key carries the rest is not sure" + said
		case v.Word.Plain() == sheet.Within || v.Word == sheet.NearLimit:
			carried = carried || at.limit == "key-at-peak" || at.limit == "taper-torque-peak"
		}
	}
	switch {
	case unsure != "":
		return unsure
	case carried:
		return ", the key carries"
	}
	return "; whether the key carries the rest is not known: calculate it"
}

// marks puts before what the torque gives what verdicts say against it. Those on
// what its own sheet's torque does and holds are of that torque alone: beside
// another that goes first, they are told of the own one.
func (j *TorqueJoint) marks(row rules.Row, own string, sheets map[string]*sheet.Sheet) {
	if j.Torque == "" {
		return
	}
	against := func(columns ...string) string {
		return survey.AgainstTorque(row, func(id string) *sheet.Sheet { return sheets[id] }, columns...).Sentence()
	}
	columns := []string{"asks", "cures"}
	told := false
	switch {
	case own == j.Torque:
		columns = append(columns, "heeds", "holds")
		told = against("heeds") != ""
	case own != "":
		j.Range = strings.Join(known(j.Range, against("heeds", "holds")), ": ")
	}
	j.bears(sheets, told)
	j.Range = strings.Join(known(against(columns...), j.Range), "; ")
}
