package procedure

import (
	"fmt"
	"math"
	"strings"

	"example.org/driveline/marinecalc/fastener"
	"example.org/driveline/marinecalc/internal/calc/inputs"
	"example.org/driveline/marinecalc/internal/setting"
	"example.org/driveline/marinecalc/internal/workplan"
)

// tightening is how the coupling bolts are tightened: in passes, crosswise.
// Where the sheet of the bolt's fit cannot be worked out, the count of bolts
// and the usual passes are enough.
func (m *maker) tightening() *Tightening {
	t := &Tightening{Passes: []string{}, Order: m.order()}
	order := "Crosswise, each bolt after the one opposite; the number of bolts is not known."
	if len(t.Order) > 0 {
		order = "Number the bolts round the circle and go over them in the order " + fastener.BoltOrder(len(t.Order)).String() + "."
	}
	s := setting.Standing{}
	if joint := m.jointOf(wrenchSetting); joint != nil {
		s = joint.Standing()
	}
	passes := ""
	switch first, second := m.figureText("bolt-fit/firstTorque"), m.figureText("bolt-fit/secondTorque"); {
	case s.Why != "":
		passes = "The torque is not settled: " + s.Why + ": settle that, or ask the maker, before a wrench goes on."
	case s.Text == "":
		passes = "The torque is not known: do not tighten by a guess."
	case !s.Listed && first != "" && second != "": // passes up to the sheet's own torque
		t.Passes = []string{first, second, s.Text}
	default:
		t.Passes = append(m.usualPasses(s.SI), s.Text)
	}
	if len(t.Passes) > 0 {
		last := len(t.Passes) - 1
		passes = fmt.Sprintf("First pass %s, then %s. Last, go once round at %s until no nut moves.",
			strings.Join(t.Passes[:last], ", then "), t.Passes[last], t.Passes[last])
		if s.Maker {
			order += " The torque is the maker's."
		}
	}
	t.Text = order + " " + passes
	return t
}

func (m *maker) figureText(of string) string {
	text, _ := workplan.FigureOf(m.session, of)
	return text
}

// usualPasses are the torques of the usual passes up to a full one.
func (m *maker) usualPasses(full float64) (out []string) {
	row, property := m.session.Property("bolt-fit/passes"), m.session.Property(wrenchSetting)
	usual, _ := row.Default.(string)
	if in := m.sheetOf("bolt-fit").Input("passes"); in != nil {
		usual = in.Word
	}
	passes := m.session.Book.Table(row.Rows).Find(usual, nil)
	if passes == nil {
		return nil
	}
	for _, column := range []string{"firstPass", "secondPass"} {
		if share := passes.Values.Of(column).SI; share > 0 {
			out = append(out, inputs.Show(property, share*full, m.session.Units))
		}
	}
	return out
}

// order is the order of tightening, by the boat's count of bolts where the sheet
// of their fit cannot be worked out; none where they are not counted.
func (m *maker) order() []int {
	if r := m.sheetOf("bolt-fit").Result("tighteningOrder"); r != nil {
		return r.Sequence
	}
	none := []int{}
	p := m.session.Property("bolt-fit/boltCount")
	raw, _, _, ok := m.session.Boat.Find(p.Boat)
	if !ok {
		return none
	}
	n, _, err := inputs.Numeric(p, raw)
	if err != nil || n < 2 || n > 48 || n != math.Trunc(n) {
		return none
	}
	return fastener.TighteningOrder(int(n))
}
