package procedure

import (
	"math"
	"strings"

	"example.org/driveline/marinecalc/internal/boat"
	"example.org/driveline/marinecalc/internal/setting"
	"example.org/driveline/marinecalc/rules"
	"example.org/driveline/marinecalc/sheet"
)

// unsettled tells what stands against setting the torque of a joint's own sheet as it
// is, as the torque card does, else "".
func (m *maker) unsettled(joint *rules.Row) string {
	t, si := m.torqueOf(joint)
	if t.Text == "" {
		return ""
	}
	if why := setting.Unsettled(*joint, t, m.sheetOf); why != "" {
		return why
	}
	makers := m.session.Boat.TorquesOf(joint.Pick)
	for _, other := range makers {
		if math.Abs(other.SI-si) <= sameTorque*si {
			return ""
		}
	}
	if len(makers) == 0 {
		return ""
	}
	return t.Text + " " + t.From + ", and the boat file has the maker's " + listed(makers)
}

// sameTorque is how far apart one torque may stand in two units, each rounded.
const sameTorque = 0.02

// torqueOf is the torque that stands on a joint's own sheet; no text where there is none.
func (m *maker) torqueOf(joint *rules.Row) (t setting.Torque, si float64) {
	id, name, _ := strings.Cut(joint.Values.Of("torque").Text, "/")
	s := m.sheetOf(id)
	at := (*float64)(nil)
	if in := s.Input(name); in != nil {
		t, at = setting.Torque{Text: in.Text, From: "typed"}, in.SI
		if in.Origin == sheet.MakersFigure {
			t.From = "given"
		}
	} else if r := s.Result(name); r != nil {
		t = setting.Torque{From: "calculated", Own: r.Text}
		makers := false
		if t.Text, at, makers = r.Stands(); makers {
			t.From = "given"
		}
	}
	if at != nil {
		si = *at
	}
	return t, si
}

// byMaker prints the maker's torque where the joint's sheet has none; of several none
// is printed bare.
func (m *maker) byMaker(f *Figure, joint *rules.Row) {
	makers := m.session.Boat.TorquesOf(joint.Pick)
	switch {
	case len(makers) == 1:
		f.Text, f.Sentence = makers[0].Text, "The maker's: "+makers[0].Source+"."
	case len(makers) > 1:
		f.Text = setting.NotSettled("the boat file has the maker's " + listed(makers))
	}
}

// listed are torques with what each is for and who says so.
func listed(makers []*boat.Torque) string {
	var texts []string
	for _, t := range makers {
		text := t.Text
		for _, of := range []string{t.Thread, t.Lubrication} {
			if of != "" {
				text += " " + of
			}
		}
		texts = append(texts, text+" ("+t.Source+")")
	}
	return strings.Join(texts, ", ")
}
