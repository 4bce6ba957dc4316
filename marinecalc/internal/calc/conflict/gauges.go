package conflict

import (
	"strings"

	"example.org/driveline/marinecalc/internal/contract"
	"example.org/driveline/marinecalc/problem"
	"example.org/driveline/marinecalc/sheet"
)

// One thing read by two gauges, each with a sheet of its own.

// The sheets on which the same is read by two gauges, with the reading of each, and
// the one that goes by either.
const (
	byFeeler, feelerRead = "coupling-alignment", "readings"
	byDial, dialRead     = "dial-alignment", "dialReadings"
	goesByEither         = "mount-moves"
)

var readTwice = []struct{ result, read string }{{"offset", "rimReadings"}, {"gapPerDiameter", feelerRead}}

// ByTwoGauges finds readings of one day, by two gauges, whose ranges lie apart:
// one of the two was read wrong, and no verdict here rests on either.
func (r *Finder) ByTwoGauges() {
	if r.In.Request.Boat == nil || r.In.Request.OtherSheet == nil {
		return
	}
	switch r.In.Form.ID {
	case byFeeler:
		r.besideTheDial()
	case goesByEither:
		for _, p := range r.In.Form.Input.Properties {
			if k := &r.In.Values[p.Index]; k.Known && k.Origin == sheet.Earlier && strings.Contains(p.After, byDial) {
				r.asTheFeelersSheet()
				return
			}
		}
	}
}

func (r *Finder) besideTheDial() {
	dial := r.In.Request.OtherSheet(byDial)
	if dial == nil || dial.Sheet == nil {
		return
	}
	otherBy := dial.Sheet.Input(dialRead)
	for _, twice := range readTwice {
		p, by := r.Property(twice.result), r.In.At(twice.read)
		if p == nil || by == nil || !by.Known || otherBy == nil || by.Source == "" || by.Source != otherBy.Source {
			continue
		}
		x, y := r.Of(p), dial.Sheet.Result(twice.result)
		if x == nil || x.Span == nil || !x.Span.Usable || y == nil || y.Low == nil || y.High == nil || y.SI == nil || x.Low <= *y.High && *y.Low <= x.High {
			continue
		}
		values := []sheet.ConflictValue{
			{Input: twice.read, Title: r.In.Form.Input.Child(twice.read).Title, Text: x.Text, SI: x.Si, Origin: by.Origin, Date: by.Date},
			{Input: dialRead, Title: otherBy.Title, Text: y.Text, SI: *y.SI, Origin: otherBy.Origin, Date: by.Date},
		}
		t := Twice{Moved: r.In.Form.Result.Properties, Remedy: "Neither sheet's OK counts, and no mount is moved, before both are read again."}
		t.Doubt = problem.MidSentence(p.Title) + ", by two gauges on one day, disagrees: " + x.Text + " by " + problem.MidSentence(values[0].Title) + ", " + y.Text + " by " + problem.MidSentence(otherBy.Title)
		r.contradict(sheet.TwoFigures, p, t, values)
	}
}

// asTheFeelersSheet takes over what the sheet of the feelers tells of the dial's.
func (r *Finder) asTheFeelersSheet() {
	feelers := r.In.Request.OtherSheet(byFeeler)
	if feelers == nil || feelers.Sheet == nil {
		return
	}
	for _, c := range feelers.Sheet.Conflicts {
		if len(c.Values) != 2 || c.Values[1].Input != dialRead {
			continue
		}
		r.Twice = append(r.Twice, Twice{Doubt: c.Doubt, Remedy: c.Remedy, Moved: append([]*contract.Property(nil), r.In.Form.Result.Properties...)})
		r.Conflicts = append(r.Conflicts, c)
	}
}
