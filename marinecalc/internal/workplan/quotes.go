package workplan

import (
	"fmt"
	"math"
	"strings"

	"example.org/driveline/marinecalc/internal/day"
	"example.org/driveline/marinecalc/internal/workplan/schedule"
	"example.org/driveline/marinecalc/quantity"
)

// price is what was quoted for a part; NaN where nothing was.
func (n *partNeed) price() quantity.Money {
	if n.hand.Part == "" {
		return quantity.Money(math.NaN())
	}
	return n.hand.Price
}

// quotes adds up the prices typed, names what has none, and says by when the
// old unit goes back for its deposit.
func (p *planner) quotes(made *schedule.Plan, out *Result) {
	out.Quoted = quantity.Money(math.NaN())
	var without, back []string
	for i := range p.needs {
		need := &p.needs[i]
		switch price := need.price(); {
		case need.hand.OnBoard:
		case math.IsNaN(float64(price)):
			without = append(without, need.part.Title)
		case math.IsNaN(float64(out.Quoted)):
			out.Quoted = price
		default:
			out.Quoted += price
		}
		if words := p.coreReturn(made, need); words != "" {
			back = append(back, words)
		}
	}
	out.NotQuoted, out.CoreReturn = strings.Join(without, "; "), strings.Join(back, " ")
}

// returnDays is within how many days the old unit of an exchange goes back,
// counted from the day the new one comes, and on which day that is at the
// latest; 0 where nothing goes back or nothing has a date.
func (p *planner) returnDays(made *schedule.Plan, need *partNeed) (within, by int) {
	within = need.part.ReturnDays
	if w := float64(need.hand.ReturnWithin); need.hand.Part != "" && !math.IsNaN(w) {
		within = int(w / 86400)
	}
	on, dated := p.neededOn(made, need)
	if within == 0 || !dated {
		return 0, 0
	}
	if need.hand.OnBoard {
		on = p.today
	}
	return within, on + within
}

func (p *planner) returnBy(made *schedule.Plan, need *partNeed) string {
	if within, by := p.returnDays(made, need); within > 0 {
		return day.Text(by)
	}
	return ""
}

// coreReturn says by when the old unit of an exchange goes back.
func (p *planner) coreReturn(made *schedule.Plan, need *partNeed) string {
	within, by := p.returnDays(made, need)
	if within == 0 {
		return ""
	}
	words := fmt.Sprintf("%s: the old one goes back by %s, %s after the new one comes", need.part.Title, day.Text(by), inDays(within))
	if need.hand.Part == "" || math.IsNaN(float64(need.hand.ReturnWithin)) {
		words += " (as a rule: ask the shop)"
	}
	if d := float64(need.hand.Deposit); need.hand.Part != "" && d > 0 {
		words += "; the deposit is " + p.session.Money(d)
	}
	words += "."
	if open := made.Open; open.Any && open.Why == schedule.Dated && made.LastDay(open.End) > by {
		words += " She still lies open then: agree on a later day."
	}
	return words
}
