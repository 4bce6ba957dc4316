package calc

import (
	"slices"
	"strings"

	"example.org/driveline/marinecalc/problem"
	"example.org/driveline/marinecalc/rules"
	"example.org/driveline/marinecalc/sheet"
)

// Stop is a verdict of a sheet with which the shaft must not run under power.
type Stop struct {
	Why    string   // the verdict, by its sheet
	On     string   // what it is of, and the sheet
	Causes []string // ids of which one cured takes it away
	by     *sheet.Sheet
}

// Stops are the limits of this boat that are past and stop the shaft: those that
// say so in their row, of sheets that the boat file allows. A guide stops nothing.
func (s *Session) Stops() (list []Stop) {
	if s.Boat == nil {
		return nil
	}
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
				list = append(list, Stop{made.Sheet.Title + ": " + problem.MidSentence(v.Says) + ".", on, rules.Join(nil, l.Stops), made.Sheet})
			}
		}
	}
	return list
}

// Still says why the shaft must not run: what the fault finding holds back, which
// has every verdict that stops it too, or those alone; "" where it may.
func (s *Session) Still() string {
	if out := s.Earlier("fault-finding"); out != nil {
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
	if out := s.Earlier("fault-finding"); out != nil && out.Sheet.Result("heldBack") != nil {
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
	if why := s.Still(); why != "" {
		first := sheet.Next{Text: "Not under power yet; what follows and turns the shaft waits until this is cured: " + why, Source: held}
		done.Next = slices.Insert(done.Next, 0, first)
	}
}
