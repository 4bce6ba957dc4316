package calc

import (
	"example.org/driveline/marinecalc/rules"
	"example.org/driveline/marinecalc/sheet"
)

// ruled is what a book says of one calculation, taken out of it once, so that a
// run need not copy row after row. Nobody changes it.
type ruled struct {
	limits   []rules.Limit
	advice   []rules.Advice
	cautions []caution
}

// caution is one as it stands on a sheet, and when.
type caution struct {
	sheet.Caution
	valid rules.Valid
}

// ruledKey is the calculation's id.
type ruledKey string

// ruled is what the session's book says of a calculation.
func (s *Session) ruled(id string) *ruled {
	return s.Book.Derived(ruledKey(id), func() any {
		out := new(ruled)
		for _, l := range s.Book.Limits(id).All() {
			out.limits = append(out.limits, l)
		}
		for _, a := range s.Book.Advice(id).All() {
			out.advice = append(out.advice, a)
		}
		for _, c := range s.Book.Cautions(id).All() {
			out.cautions = append(out.cautions, caution{sheet.Caution{Signal: c.Signal, Text: c.Text, Source: c.Source.String()}, c.Valid})
		}
		return out
	}).(*ruled)
}
