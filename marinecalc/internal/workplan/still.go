package workplan

import (
	"cmp"
	"fmt"
	"slices"
	"strings"

	"example.org/driveline/marinecalc/internal/calc"
	"example.org/driveline/marinecalc/problem"
	"example.org/driveline/marinecalc/rules"
)

// Still is why fault finding, or a verdict that forbids power, keeps the shaft
// still, and by what that ends: one mechanism for plan and procedure.
type Still struct {
	Why     string // "" where the shaft may run
	by      string // what keeps it still
	verdict string // the first that forbids power
	holds   []hold
	titles  map[string]string // of causes
}

// hold is one reason, and the causes of which one cured takes it away.
type hold struct {
	why    string
	on     string // the verdict's, to be read again once it is cured; "" of a cause
	causes []string
}

// StillOf reads off the fault finding what keeps the shaft still.
func StillOf(s *calc.Session) (still Still) {
	for _, stop := range s.Stops() {
		still.by, still.verdict = "a verdict forbids power", cmp.Or(still.verdict, stop.Why)
		still.holds = append(still.holds, hold{stop.Why, stop.On, stop.Causes})
	}
	still.Why = s.Still()
	still.titles = map[string]string{}
	for _, c := range s.Book.Causes().All() {
		still.titles[c.ID] = c.Title
	}
	out := s.Earlier("fault-finding")
	if out == nil {
		return still
	}
	if table := out.Sheet.Table("holds"); table != nil {
		still.by = "the fault finding keeps the shaft still"
		for _, r := range table.Rows {
			at := table.Reader(r)
			still.holds = append(still.holds, hold{at("why"), "", strings.Fields(at("causes"))})
		}
	}
	return still
}

// Left are the reasons that some work leaves standing, in words; "" where it
// cures all that keeps the shaft still.
func (k Still) Left(work []rules.Remedy) string {
	var words []string
	for _, h := range k.holds {
		cures := func(r rules.Remedy) bool {
			return slices.ContainsFunc(h.causes, func(cause string) bool { return rules.Contains(r.Cures, cause) })
		}
		if !slices.ContainsFunc(work, cures) {
			words = append(words, h.why)
		}
	}
	return strings.Join(words, " ")
}

// runs tells whether the shaft turns under power at a step.
func runs(s rules.Step) bool { return rules.Contains(s.Hazards, "turning-shaft") }

// StepOn is a step as it stands on the boat, and why it is left out: she has not
// what it is on, or it runs the shaft; "" where it is not.
func (k Still) StepOn(s *calc.Session, step rules.Step) (on rules.Step, leftOut string) {
	on, hers := s.StepOn(step)
	switch {
	case !hers:
		return on, fmt.Sprintf("“%s” is left out: %s", on.Title, on.Absent)
	case k.omits(on):
		return on, k.omitted(on)
	}
	return on, ""
}

// omits tells whether a step is left out: it runs the shaft for a reading,
// before anything is cured.
func (k Still) omits(s rules.Step) bool {
	return k.Why != "" && (s.Phase == "as-found" || s.Phase == "") && runs(s)
}

// omitted says that such a step is left out.
func (k Still) omitted(s rules.Step) string {
	words := fmt.Sprintf("“%s” is left out: %s. What the log has of her last run stands in its place.", s.Title, k.by)
	if k.verdict != "" {
		words += " " + k.verdict
	}
	return words
}

// Holds says why a step must not be done even after some work: it runs the
// shaft, and the work leaves a reason to keep it still. "" where it may.
func (k Still) Holds(s rules.Step, work []rules.Remedy) string {
	if left := k.Left(work); left != "" && runs(s) {
		return "Not before this is cured too: " + left
	}
	return ""
}

// Once says what must be so before a step that some work makes possible: it runs the
// shaft, and what kept that still is cured by the work, which only reading it again
// shows. "" for every other step.
func (k Still) Once(s rules.Step, work []rules.Remedy) string {
	if len(k.holds) == 0 || !runs(s) || k.Left(work) != "" {
		return ""
	}
	var on []string
	for _, h := range k.holds {
		words := h.on
		for _, cause := range h.causes {
			if cures := func(r rules.Remedy) bool { return rules.Contains(r.Cures, cause) }; words == "" && slices.ContainsFunc(work, cures) {
				words = problem.MidSentence(k.titles[cause])
			}
		}
		if !slices.Contains(on, words) {
			on = append(on, words)
		}
	}
	return "Only when this has been put right and looked at or read again: " + strings.Join(on, "; ") + "."
}
