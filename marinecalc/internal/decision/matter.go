package decision

import (
	"fmt"
	"slices"
	"strings"

	"example.org/driveline/marinecalc/internal/calc"
	"example.org/driveline/marinecalc/internal/decision/cost"
	"example.org/driveline/marinecalc/quantity"
	"example.org/driveline/marinecalc/rules"
)

// Settler finds the look that settles a cause: its question, and its minutes.
type Settler func(book *rules.Book, cause string) (question string, minutes float64, ok bool)

// matter is what is weighed: the work that repairs and the work that replaces,
// the cause that both cure, and what was decided of it.
type matter struct {
	cause             rules.Cause // "" where it is none of those to be cured
	repairs, replaces rules.Remedy
	question          string // the look that would settle the cause
	minutes           float64
	atWork            float64 // chance of the cause; 1 when it was found, 0 when it is not known
	weighs            string
	takes, taken      string
	named             bool // somebody named the work
	apart             bool // repairs and replaces cure different troubles
	noMoney           bool // nothing is compared: a price is lacking, or there is nothing to compare
	inMoney           string
	engineering       [cost.MostAsked]cost.Asked
}

// about finds what is weighed: the work that was named, or the two ways to
// cure the first cause to be cured that has both.
func about(s *calc.Session, in cost.Input, settler Settler) (m matter) {
	byID := map[string]rules.Remedy{}
	for _, r := range s.Book.Remedies().All() {
		byID[r.ID] = r
	}
	m.repairs, m.replaces = byID[in.RepairWork], byID[in.ReplaceWork]
	named := m.repairs.ID != "" || m.replaces.ID != ""
	m.named = named
	for _, c := range toCure(s) {
		of := func(kinds ...string) rules.Remedy {
			for _, id := range c.Remedies.All() {
				if slices.Contains(kinds, byID[id].Kind) {
					return byID[id]
				}
			}
			return rules.Remedy{}
		}
		if !named {
			m.repairs, m.replaces = of("repair", "adjust"), of("replace")
		}
		cures := func(r rules.Remedy) bool { return r.ID == "" || rules.Contains(c.Remedies, r.ID) }
		if named && cures(m.repairs) && cures(m.replaces) || m.repairs.ID != "" && m.replaces.ID != "" && !named {
			m.cause = c
			break
		}
	}
	if m.cause.ID == "" && !named {
		m.repairs, m.replaces = rules.Remedy{}, rules.Remedy{}
	}
	if m.cause.ID != "" {
		m.atWork = chanceOf(s, m.cause.ID)
		if question, minutes, ok := settler(s.Book, m.cause.ID); ok {
			m.question, m.minutes = question, minutes
		}
	}
	m.apart = m.repairs.ID != "" && m.replaces.ID != "" && !oneTrouble(s.Book, m.repairs, m.replaces)
	m.weighs = strings.Join(slices.DeleteFunc([]string{m.repairs.Title, m.replaces.Title}, func(t string) bool { return t == "" }), ", or: ")
	switch {
	case m.apart:
		m.weighs = fmt.Sprintf("nothing: “%s” and “%s” cure different troubles. They are no alternatives; each is decided by itself, and both may be due.", m.repairs.Title, m.replaces.Title)
	case m.weighs != "" && m.cause.ID != "":
		m.weighs = m.cause.Title + ": " + m.weighs
	}
	m.ask(s)
	return m
}

// oneTrouble tells whether some cause is cured by either of two pieces of work.
func oneTrouble(book *rules.Book, a, b rules.Remedy) bool {
	for _, c := range book.Causes().All() {
		if rules.Contains(c.Remedies, a.ID) && rules.Contains(c.Remedies, b.ID) {
			return true
		}
	}
	return false
}

// look fills in of the look what nobody typed.
func (m *matter) look(in cost.Input) cost.Input {
	if in.CauseAtWork == 0 {
		in.CauseAtWork = quantity.Ratio(m.atWork)
	}
	if in.LookTime == 0 {
		in.LookTime = quantity.Time(m.minutes * 60)
	}
	return in
}

// toCure lists the causes that the fault finding says are to be cured.
func toCure(s *calc.Session) (causes []rules.Cause) {
	out := s.Earlier(faultFinding)
	if out == nil {
		return nil
	}
	table := out.Sheet.Table("cureOrder")
	if table == nil {
		return nil
	}
	for _, r := range table.Rows {
		id := table.Reader(r)("cause")
		for _, c := range s.Book.Causes().All() {
			if c.ID == id {
				causes = append(causes, c)
			}
		}
	}
	return causes
}

// chanceOf is how probable the fault finding holds a cause; 1 where a look
// found it, 0 where it says nothing of it.
func chanceOf(s *calc.Session, cause string) float64 {
	out := s.Earlier(faultFinding)
	if out == nil {
		return 0
	}
	table := out.Sheet.Table("ranking")
	if table == nil {
		return 0
	}
	for n, r := range table.Rows {
		at := table.Reader(r)
		if at("cause") != cause {
			continue
		}
		if at("known") != "" {
			return 1
		}
		if cell := out.Sheet.Cell("ranking", n, "probability"); cell != nil && cell.SI != nil {
			return *cell.SI
		}
	}
	return 0
}

// decide says which way the work plan takes: work that was chosen, else what
// was decided, else what clearly costs least.
func (m *matter) decide(s *calc.Session, in cost.Input, out *cost.Result) {
	of := map[string]rules.Remedy{cost.RepairIt: m.repairs, cost.ReplaceIt: m.replaces}
	way, why := in.Decided, "as you decided"
	if way == "" {
		way, why = cost.Way(out.Cheapest), "it costs least"
	}
	if chosen, is := s.Boat.ChosenWork(); is {
		m.taken, m.takes = "", "neither: other work was chosen"
		if len(chosen) == 0 {
			m.takes = "nothing: the list of work is empty"
		}
		for _, w := range []string{cost.RepairIt, cost.ReplaceIt} {
			if r := of[w]; r.ID != "" && slices.Contains(chosen, r.ID) {
				m.taken, m.takes = w, r.Title+": it stands in the list of work"
				if way != w && way != cost.TooClose {
					m.takes += fmt.Sprintf(", though %s", map[string]string{cost.RepairIt: "repairing", cost.ReplaceIt: "replacing", cost.LeaveIt: "leaving it"}[way]) + map[bool]string{true: " was decided", false: " costs least"}[in.Decided != ""]
				}
			}
		}
		return
	}
	switch r := of[way]; {
	case m.apart:
		m.takes = "what the fault finding says is to be cured, each by its own work"
	case way == "":
		m.takes = "the first cure of each cause, until you decide"
		if first := m.firstCure(s); first != "" {
			m.takes = first + ", until you decide"
		}
		if m.atWork > 0 && m.atWork <= 0.5 {
			m.takes = "nothing for it yet: it is only suspected, and looked for first"
		}
	case way == cost.TooClose:
		m.takes = "the first cure of the cause, until you decide: the money does not"
	case way == cost.LeaveIt && in.Decided == "": // money does not leave a fault in a boat
		m.takes = "the first cure of the cause, until you decide: leaving it costs least in money alone"
	case way == cost.LeaveIt:
		m.taken, m.takes = way, "no work on it: "+why
	case r.ID == "":
		m.takes = "not known: name the work that " + way + "s it"
	default:
		m.taken, m.takes = way, r.Title+": "+why
	}
}

// firstCure names the work that the fault finding puts first for the cause.
func (m *matter) firstCure(s *calc.Session) string {
	for i, c := range toCure(s) {
		if cure := s.Earlier(faultFinding).Sheet.Cell("cureOrder", i, "cure"); c.ID == m.cause.ID && cure != nil {
			for _, r := range s.Book.Remedies().All() {
				if r.ID == cure.Text {
					return r.Title
				}
			}
		}
	}
	return ""
}
