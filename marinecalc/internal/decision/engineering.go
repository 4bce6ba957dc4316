// What the engineering asks for, whatever it costs, and which figures would
// decide in money.

package decision

import (
	"fmt"
	"strings"

	"example.org/driveline/marinecalc/internal/calc"
	"example.org/driveline/marinecalc/internal/decision/cost"
	"example.org/driveline/marinecalc/rules"
)

// even is the chance from which a cause is cured and not only looked at.
const even = 0.5

const faultFinding = "fault-finding"

// ask fills in what is renewed, what may be used again and how long it may
// wait, of each cause that is to be cured.
func (m *matter) ask(s *calc.Session) {
	n := 0
	for i, c := range toCure(s) {
		if c.Renew == "" || n == len(m.engineering) || chanceOf(s, c.ID) < even {
			continue // not to be opened before it was looked at
		}
		m.engineering[n] = cost.Asked{Cause: c.Title, Known: s.Earlier(faultFinding).Sheet.Cell("cureOrder", i, "known").Text, Renew: c.Renew, Keep: c.Keep, When: c.When}
		n++
	}
	if n > 0 || m.repairs.ID == "" && m.replaces.ID == "" {
		return
	}
	for _, c := range s.Book.Causes().All() { // work was named, and nothing is found or suspected that it cures
		cures := func(r rules.Remedy) bool { return r.ID != "" && rules.Contains(c.Remedies, r.ID) }
		both := m.repairs.ID != "" && m.replaces.ID != "" && !m.apart
		if c.Renew != "" && n < len(m.engineering) && (cures(m.repairs) && cures(m.replaces) || !both && (cures(m.repairs) || cures(m.replaces))) {
			m.engineering[n] = cost.Asked{Cause: c.Title, Known: "if it is this", Renew: c.Renew, Keep: c.Keep, When: c.When}
			n++
		}
	}
}

// withoutMoney is the result where nothing can be compared in money: what the
// engineering says, and which figures would decide. Where neither is known
// anything of, the error asks for the first of them.
func (m *matter) withoutMoney(s *calc.Session, in cost.Input) (cost.Result, error) {
	var lacks []string
	lack := func(input, words string) {
		if _, known := s.Spread(input); !known {
			lacks = append(lacks, words)
		}
	}
	name := func(r rules.Remedy, otherwise string) string {
		if r.ID == "" {
			return otherwise
		}
		return "“" + r.Title + "”"
	}
	lack("replaceParts", "the price of "+name(m.replaces, "replacing")+", delivered and with all that goes with it")
	lack("repairParts", "the price of "+name(m.repairs, "repairing"))
	if in.Seasons == 0 {
		lacks = append(lacks, "how many seasons it must serve")
	}
	if len(lacks) == 0 && !m.apart {
		return cost.Result{}, nil
	}
	m.noMoney = true
	out := cost.Unknown()
	out.Repairs, out.Replaces, out.Engineering, out.Weighs = m.repairs.ID, m.replaces.ID, m.engineering, m.weighs
	if m.atWork < 1 {
		out.Look = m.question
	}
	switch only := m.only(s); {
	case m.apart:
	case !m.named && len(toCure(s)) == 0:
		return cost.Result{}, calc.Lacking{Input: "repairParts", What: "nothing is found or suspected that is to be cured, and no price is known", Hint: "seasons, and what parts cost for repairing and for replacing"}
	case m.engineering[0].Cause == "" && !m.named && only == "":
		out.InMoney = "Nothing to decide yet: what is suspected is looked at first."
	case m.repairs.Kind == "adjust":
		out.InMoney = fmt.Sprintf("Not a matter of money: “%s” where what is there may stay, “%s” where it is to be renewed, by the list below.", m.repairs.Title, m.replaces.Title)
	case only != "":
		out.InMoney = "Nothing is weighed: " + only
	case len(lacks) == 1:
		out.InMoney = "One figure more weighs it in money: " + lacks[0] + "."
	default:
		out.InMoney = "These would weigh it in money: " + strings.Join(lacks, "; ") + "."
	}
	m.decide(s, in, &out)
	out.Takes, out.Taken = m.takes, m.taken
	return out, nil
}

// only names the work where each cause has one way alone to be cured; "" where
// some has two. It ends the sentence.
func (m *matter) only(s *calc.Session) string {
	if m.repairs.ID != "" && m.replaces.ID != "" {
		return ""
	}
	causes := toCure(s)
	remedies := map[string]rules.Remedy{}
	for _, r := range s.Book.Remedies().All() {
		remedies[r.ID] = r
	}
	var list []string
	ask := "." // what is only set or cleared has no price
	for _, c := range causes {
		if c.Remedies.Len() > 0 && chanceOf(s, c.ID) >= even {
			r := remedies[c.Remedies.At(0)]
			list = append(list, r.Title)
			if r.Kind != "adjust" {
				ask = ". Ask for price and delivery."
			}
		}
	}
	switch len(list) {
	case 0:
		return ""
	case 1:
		return fmt.Sprintf("“%s” is the one way to cure it", list[0]) + ask
	}
	return "each has one way to be cured (" + strings.Join(list, "; ") + ")" + ask
}
