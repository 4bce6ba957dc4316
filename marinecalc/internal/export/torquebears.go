// What a joint bears, beside its torque on the card.

package export

import (
	"strings"

	"example.org/driveline/marinecalc/hub"
	"example.org/driveline/marinecalc/internal/calc/verdict"
	"example.org/driveline/marinecalc/internal/setting"
	"example.org/driveline/marinecalc/quantity"
	"example.org/driveline/marinecalc/sheet"
)

// bears warns of a torque on the card, whosever it is, that the joint's own sheet
// says it does not bear, or may not; told is whether its verdicts stand there.
func (j *TorqueJoint) bears(sheets map[string]*sheet.Sheet, told bool) {
	kind, _ := quantity.Lookup("torque")
	reading, err := kind.Parse(j.Torque)
	edge := setting.EdgeOf(j.Joint, of(sheets))
	if err != nil || edge == nil || told && j.Joint != "coupling-bolts" { // whose verdicts are of its yield, and the edge of its breaking
		return
	}
	word := "TOO MUCH"
	switch {
	case reading.SI >= edge.Most:
	case reading.SI >= edge.SI:
		word = "NOT SURE"
	default:
		return
	}
	j.Range = strings.Join(known(word+" by its own sheet: "+edge.What+" from "+edge.Text+". "+setting.Look, j.Range), "; ")
}

// of finds the sheets of a survey.
func of(sheets map[string]*sheet.Sheet) func(id string) *sheet.Sheet {
	return func(id string) *sheet.Sheet { return sheets[id] }
}

// ofCone tells from which torque on a propeller's cone holds by itself, and from which
// its hub or thread can yield.
func (j *TorqueJoint) ofCone(s, key *sheet.Sheet) {
	least, most := s.Result("leastNutTorque"), s.Result("mostNutTorque")
	if least == nil || most == nil || least.SI == nil || most.SI == nil {
		return
	}
	edge := setting.EdgeOf(j.Joint, func(string) *sheet.Sheet { return s })
	if *least.SI <= edge.SI {
		j.Range = "the cone alone holds from about " + least.Text + ", hub or thread can yield from " + edge.Text
		return
	}
	j.Range = "hub or thread can yield from " + edge.Text + ", before the cone alone holds (about " + least.Text + "): stay under it"
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
