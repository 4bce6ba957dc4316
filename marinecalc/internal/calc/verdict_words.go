package calc

import (
	"fmt"
	"math"
	"strings"

	"example.org/driveline/marinecalc/internal/contract"
	"example.org/driveline/marinecalc/internal/spread"
	"example.org/driveline/marinecalc/rules"
	"example.org/driveline/marinecalc/sheet"
)

// sentence says a verdict: "Safety at proof load: 2.26, needs at least 2: OK."
func (r *run) sentence(l *rules.Limit, p *contract.Property, j judged, v *sheet.Verdict, limit spread.Limit) string {
	value := j.text
	if j.low < j.high && p != nil {
		if span := r.in.showBeside(p, j.si, j.low, j.high); span != "" {
			value += " (" + span + ")"
		}
	}
	if l.Chance {
		return chanceSentence(l, j.text, v.Word)
	}
	text := l.Title + ": " + value + ", " + asks(v.Bound) + ": " + v.Word.Reads(v.Side)
	switch v.Word {
	case sheet.NearLimit:
		return text + nearness(j.si, limit) + "."
	case sheet.Beyond:
		return strings.TrimSpace(text + ". " + l.Why)
	}
	return text + "."
}

// asks words what a limit asks for: its bound is "at most 20 °C" or "at least
// 2".
func asks(bound string) string {
	if strings.HasPrefix(bound, string(sheet.AtLeast)) {
		return "needs " + bound
	}
	return "allowed " + bound
}

// nearness says how near to its limit a value is that is called near to it.
func nearness(si float64, l spread.Limit) string {
	if l.Max > 0 && l.Max != 1 && math.IsNaN(l.Min) && si > 0 { // what is held against 1 is such a part itself
		return fmt.Sprintf(", %.0f %% of the limit is taken up", 100*si/l.Max)
	}
	return ""
}

// chanceSentence words the verdict on a chance that all is well.
func chanceSentence(l *rules.Limit, chance string, word sheet.Word) string {
	switch word {
	case sheet.Within:
		return fmt.Sprintf("%s: yes, with a chance of %s.", l.Title, chance)
	case sheet.Beyond:
		return strings.TrimSpace(fmt.Sprintf("%s: hardly, with a chance of %s. %s", l.Title, chance, l.Why))
	}
	return fmt.Sprintf("%s: the chance is %s, which is neither a yes nor a no.", l.Title, chance)
}
