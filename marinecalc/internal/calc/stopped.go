package calc

import (
	"slices"
	"strings"

	"example.org/driveline/marinecalc/internal/calc/conflict"
	"example.org/driveline/marinecalc/internal/calc/inputs"
	"example.org/driveline/marinecalc/problem"
	"example.org/driveline/marinecalc/rules"
	"example.org/driveline/marinecalc/sheet"
)

// Stop is a verdict or advice of a sheet with which the shaft must not run under power.
type Stop struct {
	Why    string   // the verdict or advice, by its sheet
	On     string   // what it is of, and the sheet; "" of advice: its causes say what is to be cured
	Causes []string // ids of which one cured takes it away
	// Advised: no verdict is sure of it, the sheet's advice says so.
	Advised bool
	by      *sheet.Sheet
}

// EndsBy tells whether the cure of one of some causes takes it away.
func (k Stop) EndsBy(causes []string) bool {
	return slices.ContainsFunc(causes, func(cause string) bool { return slices.Contains(k.Causes, cause) })
}

// Stops are the limits of this boat that are past and stop the shaft: those that
// say so in their row, of sheets that the boat file allows; then what else such
// sheets advise and for which the shaft stands still, unless a verdict keeps it so
// for the same causes. A guide stops nothing.
func (s *Session) Stops() (list []Stop) {
	if s.Boat == nil {
		return nil
	}
	list = s.verdictsThatStop()
	for _, c := range s.Calculations {
		if !s.mayAdviseToStop(c.ID) {
			continue
		}
		made := s.Earlier(c.ID)
		if made == nil {
			continue
		}
		for _, n := range made.Sheet.Next {
			if len(n.Stops) > 0 && !slices.ContainsFunc(list, func(known Stop) bool { return known.EndsBy(n.Stops) }) {
				first, _, _ := strings.Cut(n.Text, ". ")
				list = append(list, Stop{made.Sheet.Title + ": " + problem.MidSentence(strings.TrimSuffix(first, ".")) + trialSince(made.Sheet) + ".", "", n.Stops, true, made.Sheet})
			}
		}
	}
	return list
}

// mayAdviseToStop tells whether a calculation has advice that keeps the shaft still.
func (s *Session) mayAdviseToStop(calculation string) bool {
	for _, a := range s.Book.Advice(calculation).All() {
		if a.Stops.Len() > 0 {
			return true
		}
	}
	return false
}

// verdictsThatStop are the limits that are past and keep the shaft still.
func (s *Session) verdictsThatStop() (list []Stop) {
	for _, c := range s.Calculations {
		for _, l := range s.Book.Limits(c.ID).All() {
			if l.Stops.Len() == 0 {
				continue
			}
			made := s.Earlier(c.ID)
			if made == nil {
				break
			}
			if v := made.Sheet.Verdict(l.ID); v != nil && v.Word == sheet.Beyond {
				on := problem.MidSentence(l.Title) + " (sheet “" + made.Sheet.Title + "”)"
				list = append(list, Stop{made.Sheet.Title + ": " + problem.MidSentence(v.Says) + trialSince(made.Sheet) + ".", on, rules.Join(nil, l.Stops), false, made.Sheet})
			}
		}
	}
	return list
}

// unasked is the fault finding with no question answered, where verdicts and readings
// of the boat alone point somewhere or keep the shaft still; nil where they do not:
// what a gauge found is a fault, whether or not anybody told of a trouble.
func (s *Session) unasked(c Calculation) *inputs.Outcome {
	out, _, _ := s.Run(c, map[string]any{"answers": []any{}})
	if out == nil {
		return nil
	}
	if holds := out.Sheet.Table("holds"); holds != nil && len(holds.Rows) > 0 {
		return out
	}
	weights := out.Sheet.Table("weights")
	if weights == nil || out.Sheet.Result("cause") == nil {
		return nil
	}
	for _, r := range weights.Rows {
		if at := weights.Reader(r); at("answer") == "yes" && at("from") != "boat file" { // what she has is no trouble
			return out
		}
	}
	return nil
}

const faultFinding = "fault-finding"

// trialSince names a sea trial that is newer than what a sheet goes by, and read
// otherwise; "" where there is none.
func trialSince(s *sheet.Sheet) string {
	for _, c := range s.Conflicts {
		if n := len(c.Values); n > 0 && c.Values[n-1].Title == conflict.SeaTrial {
			return "; the sea trial of " + c.Values[n-1].Date + " is newer and read otherwise: log it as a reading"
		}
	}
	return ""
}

// Still says why the shaft must not run: what the fault finding holds back, which
// has every verdict that stops it too, or where it tells nothing those; "" where it may.
func (s *Session) Still() string {
	if out := s.Earlier(faultFinding); out != nil {
		if r := out.Sheet.Result("heldBack"); r != nil {
			return r.Text
		}
	}
	var why []string
	for _, stop := range s.Stops() {
		why = append(why, stop.Why)
	}
	return strings.TrimSpace(strings.Join(why, " "))
}

// StillBy is the sheet that says first why the shaft must not run; nil where it may.
func (s *Session) StillBy() *sheet.Sheet {
	if out := s.Earlier(faultFinding); out != nil && out.Sheet.Result("heldBack") != nil {
		return out.Sheet
	}
	for _, stop := range s.Stops() {
		return stop.by
	}
	return nil
}

// held is where that comes from which holds the shaft still.
const held = "verdicts and findings of this boat"

// HoldStill lets a sheet that is done say first why the shaft must not run yet,
// where it advises something for which it does. It comes last: what forbids power
// stands on other sheets of the boat, which may take results from this one.
func (s *Session) HoldStill(done *sheet.Sheet) {
	if s.Boat == nil || len(done.Next) > 0 && done.Next[0].Source == held || !slices.ContainsFunc(done.Next, func(n sheet.Next) bool { return n.Runs }) {
		return
	}
	if why := s.Still(); why != "" && !s.saysItself(done) {
		first := sheet.Next{Text: "Not under power yet; what follows and turns the shaft waits until this is cured: " + why, Source: held}
		done.Next = slices.Insert(done.Next, 0, first)
	}
}

// saysItself tells whether what keeps the shaft still is what the first advice of that
// very sheet does, and nothing else is.
func (s *Session) saysItself(done *sheet.Sheet) bool {
	first := done.Next[0].Stops
	for _, stop := range s.Stops() {
		if stop.by.Calculation != done.Calculation || !stop.EndsBy(first) {
			return false
		}
	}
	if out := s.Earlier(faultFinding); out != nil && out.Sheet.Table("holds") != nil {
		holds := out.Sheet.Table("holds")
		for _, r := range holds.Rows {
			if hold := (Stop{Causes: strings.Fields(holds.Reader(r)("causes"))}); !hold.EndsBy(first) {
				return false
			}
		}
	}
	return len(first) > 0
}
