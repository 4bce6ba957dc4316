package survey

import (
	"example.org/driveline/marinecalc/problem"
	"example.org/driveline/marinecalc/sheet"
)

// alike are results of two sheets that are one thing by two gauges, with the input
// by whose reading each came.
var alike = []struct{ result, one, read, other, otherRead string }{
	{"offset", "coupling-alignment", "rimReadings", "dial-alignment", "dialReadings"},
	{"gapPerDiameter", "coupling-alignment", "readings", "dial-alignment", "dialReadings"},
}

// twoGauges finds readings of one day whose ranges lie apart: one of the two was
// read wrong, whichever sheet says OK.
func (s *Survey) twoGauges() (list []Disagreement) {
	for _, a := range alike {
		one, other := s.sheet(a.one), s.sheet(a.other)
		x, y := one.Result(a.result), other.Result(a.result)
		by, otherBy := one.Input(a.read), other.Input(a.otherRead)
		if x == nil || y == nil || by == nil || otherBy == nil || by.Source == "" || by.Source != otherBy.Source ||
			x.Low == nil || x.High == nil || y.Low == nil || y.High == nil || x.SI == nil || y.SI == nil || *x.Low <= *y.High && *y.Low <= *x.High {
			continue
		}
		list = append(list, Disagreement{Calculation: other.Calculation, Sheet: other.Title, Conflict: sheet.Conflict{Code: sheet.TwoFigures, On: a.result, Title: x.Title,
			Text: x.Title + ", by two gauges on one day, disagrees: " + x.Text + " by " + problem.MidSentence(by.Title) + ", " + y.Text + " by " + problem.MidSentence(otherBy.Title) +
				". Neither sheet's OK counts, and no mount is moved, before both are read again.",
			Values: []sheet.ConflictValue{
				{Input: a.read, Title: by.Title, Text: x.Text, SI: *x.SI, Origin: by.Origin}, {Input: a.otherRead, Title: otherBy.Title, Text: y.Text, SI: *y.SI, Origin: otherBy.Origin}}}})
	}
	return list
}
