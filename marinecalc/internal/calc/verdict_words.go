package calc

import (
	"fmt"
	"math"
	"strings"

	"example.org/driveline/marinecalc/internal/contract"
	"example.org/driveline/marinecalc/internal/spread"
	"example.org/driveline/marinecalc/rules"
)

func (r *run) sentence(l *rules.Limit, p *contract.Property, j judged, judgement spread.Judgement, limit spread.Limit, bound string) string {
	value := j.text
	if j.low < j.high && p != nil {
		if span := r.in.showBeside(p, j.si, j.low, j.high); span != "" {
			value += " (" + span + ")"
		}
	}
	if l.Chance {
		return chanceSentence(l, j.text, judgement.Word)
	}
	switch judgement.Word {
	case spread.Within:
		return l.Title + ": " + value + ", within " + bound + "."
	case spread.NearLimit:
		return l.Title + ": " + value + ", within " + bound + nearness(j.si, limit) + "."
	case spread.Beyond:
		return strings.TrimSpace(l.Title + ": " + value + ", beyond " + bound + ". " + l.Why)
	default:
		return l.Title + ": " + value + "; whether it is " + bound + " cannot be told from this."
	}
}

// nearness says how near to its limit a value is that is called near to it.
func nearness(si float64, l spread.Limit) string {
	if l.Max > 0 && l.Max != 1 && math.IsNaN(l.Min) && si > 0 { // what is held against 1 is such a part itself
		return fmt.Sprintf(", of which it takes up %.0f %%", 100*si/l.Max)
	}
	return " but close to it"
}

// chanceSentence words the verdict on a chance that all is well.
func chanceSentence(l *rules.Limit, chance string, word spread.Word) string {
	switch word {
	case spread.Within:
		return fmt.Sprintf("%s: yes, with a chance of %s.", l.Title, chance)
	case spread.Beyond:
		return strings.TrimSpace(fmt.Sprintf("%s: hardly, with a chance of %s. %s", l.Title, chance, l.Why))
	}
	return fmt.Sprintf("%s: the chance is %s, which is neither a yes nor a no.", l.Title, chance)
}
