package setting

import (
	"slices"
	"strings"

	"example.org/driveline/marinecalc/internal/calc/verdict"
	"example.org/driveline/marinecalc/quantity"
	"example.org/driveline/marinecalc/rules"
	"example.org/driveline/marinecalc/sheet"
)

// Torque is a torque that stands for a joint, as it is printed.
type Torque struct {
	Text   string // "110 lbf·ft"
	From   string // "typed", "given" by the maker, "calculated"; "" by a table
	Own    string // the torque that the joint's own sheets judge, "" where it is this
	Source string // the maker's document, or how it was found
	SI     float64
}

const typed, given, calculated = "typed", "given", "calculated"

// Edge is from which torque on a joint gives way.
type Edge struct {
	What string  // "hub or thread can yield"
	Text string  // of the lower end of its range
	SI   float64 // of it, in N·m, not above what Text reads
	Most float64 // the estimate, in N·m
}

// tooMuch is the result that a joint's torque must stay under, with what comes from
// its lower edge on.
var tooMuch = map[string]struct{ calculation, result, what string }{
	"coupling-bolts": {"bolt-preload", "breakingTorque", "this bolt can break"},
	"output-nut":     {"output-flange", "mostNutTorque", "the shaft's thread can yield"},
	"propeller-nut":  {"propeller-taper", "mostNutTorque", "hub or thread can yield"},
}

// EdgeOf finds the edge of a joint of the torque card on its own sheet, nil where
// that has none.
func EdgeOf(joint string, sheetOf func(id string) *sheet.Sheet) *Edge {
	at := tooMuch[joint]
	s := sheetOf(at.calculation)
	r := s.Result(at.result)
	if r == nil || r.SI == nil {
		return nil
	}
	e := &Edge{What: at.what, Text: r.Text, SI: *r.SI, Most: *r.SI}
	low, high, ok := r.Range()
	kind, known := quantity.Lookup(string(r.Kind))
	if units, err := quantity.ParseSystem(s.Made.Units); ok && known && err == nil {
		e.SI, e.Text = low, kind.In("N·m", "lbf·ft").PrintTo(low, (high-low)/2, units)
	}
	if read, ok := inNewtonMetres(e.Text); ok {
		e.SI = min(e.SI, read)
	}
	return e
}

// inNewtonMetres reads a torque as it is printed.
func inNewtonMetres(text string) (float64, bool) {
	kind, _ := quantity.Lookup("torque")
	reading, err := kind.Parse(text)
	return reading.SI, err == nil
}

// Mark says at the torques of a sheet, calculated and typed, what is to be
// printed in their place where the sheet itself shows that they are not to be set.
func Mark(s *sheet.Sheet, book *rules.Book) {
	own := func(id string) *sheet.Sheet {
		if id == s.Calculation {
			return s
		}
		return nil
	}
	for _, row := range book.Table("torque-joints").Rows.All() {
		calculation, name, _ := strings.Cut(row.Values.Of("torque").Text, "/")
		if calculation != s.Calculation {
			continue
		}
		if r := s.Result(name); r != nil {
			t := Torque{Text: r.Text, From: calculated}
			if r.Maker != nil {
				t = Torque{Text: r.Maker.Text, From: given, Own: r.Text}
			}
			r.Unsettled = NotSettled(Unsettled(row, t, own))
		}
		if i := s.Input(name); i != nil {
			t := Torque{Text: i.Text, From: typed}
			if i.Origin == sheet.MakersFigure {
				t.From = given
			}
			i.Unsettled = NotSettled(Unsettled(row, t, own))
		}
	}
}

// scatterStands is the chance of meeting a limit from which on the scatter of
// friction and wrench alone does not unsettle a torque: handbooks print such torques
// for dry bolts as they are. Common practice, no source.
const scatterStands = 0.9

// isScatter tells whether a verdict is untold by scatter alone, and most likely met:
// no figure behind it is waited for. It stands beside the torque, and not in its place.
func isScatter(v *sheet.Verdict) bool {
	return v.Word == sheet.CannotTell && len(v.Awaits) == 0 && v.Turns == nil && v.Probability != nil && *v.Probability >= scatterStands
}

// NotSettled is what is printed in place of an unsettled torque: never a plain figure,
// as the wrench hand sets the first one that stands. "" where nothing is against it.
func NotSettled(why string) string {
	if why == "" {
		return ""
	}
	return "NOT SETTLED: " + why
}

// Unsettled tells of a torque that reaches what its joint can give way from, or of
// which its sheets say that it is too much, or may be where no maker gives it, what stands
// against it. "" where it may stand.
func Unsettled(row rules.Row, t Torque, sheetOf func(id string) *sheet.Sheet) string {
	si, ok := inNewtonMetres(t.Text)
	if !ok {
		return ""
	}
	stands := strings.Join(strings.Fields(t.Text+" "+t.From), " ") + ", "
	if e := EdgeOf(row.Pick, sheetOf); e != nil && si >= e.SI {
		return stands + e.What + " from " + e.Text
	}
	if own, read := inNewtonMetres(t.Own); t.Own != "" && (!read || si < own*(1-1e-3)) { // what is too much at a greater one is not told of this
		return ""
	}
	against := slices.DeleteFunc(standAgainst(row, "heeds", sheetOf), func(v *sheet.Verdict) bool {
		return isScatter(v) || t.From == given && !isPast(v) // what nobody confirmed does not unsettle a maker's figure: it stands beside it
	})
	if len(against) == 0 {
		return ""
	}
	gravest := max(slices.IndexFunc(against, isPast), 0)
	return stands + verdict.Stands(against[gravest])
}
