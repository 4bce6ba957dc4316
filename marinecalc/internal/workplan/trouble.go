package workplan

import (
	"fmt"
	"strings"

	"example.org/driveline/marinecalc/internal/workplan/schedule"
	"example.org/driveline/marinecalc/problem"
)

// trouble says plainly what stands in the way.
func (p *planner) trouble(made, late *schedule.Plan, out *Result) {
	var lines []string
	for i, w := range p.calendar.Windows {
		if w.To < p.today {
			lines = append(lines, fmt.Sprintf("The window %s to %s (%s) ended before %s and is not counted.", p.in.Windows[i].From, p.in.Windows[i].To, windowWords(p.in.Windows[i]), p.in.Today))
		}
	}
	lines = append(lines, p.left...)
	if left := p.still.Left(p.remedies); left != "" {
		lines = append(lines, "This work does not end what keeps the shaft still, so no first start and no trial before that is cured too: "+left)
	}
	lines = append(lines, p.undated(made)...)
	lines = append(lines, p.missed(made)...)
	lines = append(lines, p.tight(made)...)
	if slow := p.undated(late); made.Whole() && len(slow) > 0 {
		text := strings.Join(slow, " ")
		lines = append(lines, "When every step takes its long time: "+problem.MidSentence(text))
	}
	for _, list := range p.cut {
		lines = append(lines, "The list of "+list+" is longer than the sheet shows: plan the work in two parts.")
	}
	out.Trouble = strings.Join(lines, " ")
}

// undated says which steps of a plan have no date, and why.
func (p *planner) undated(made *schedule.Plan) (lines []string) {
	never := map[string][]string{}
	short := map[string][]string{}
	follow := 0
	if lines = p.keptShut(made); lines != nil {
		return lines
	}
	for i, t := range made.Tasks {
		switch t.Why {
		case schedule.NoWindow:
			words := p.steps[i].Title
			for _, b := range p.tasks[i].After {
				if p.tasks[b].Wait > 1 {
					words += fmt.Sprintf(" (%s after “%s”)", inDays(p.tasks[b].Wait), p.steps[b].Title)
				}
			}
			never[p.steps[i].Place] = append(never[p.steps[i].Place], words)
		case schedule.TooShort:
			short[p.steps[i].Place] = append(short[p.steps[i].Place], p.steps[i].Title)
		case schedule.AfterAnother, schedule.ForNothing:
			follow++
		}
	}
	for _, place := range []string{"afloat", "ashore", "either"} {
		if steps := never[place]; steps != nil {
			need := "with work allowed"
			if place != "either" {
				need = place
			}
			lines = append(lines, fmt.Sprintf("No day %s is left on this calendar after what comes before: %s. Enter a window for it.", need, strings.Join(steps, "; ")))
		}
		if steps := short[place]; steps != nil {
			lines = append(lines, fmt.Sprintf("No window is long enough for: %s. Ask for more days, more people or longer days.", strings.Join(steps, "; ")))
		}
	}
	if follow > 0 {
		lines = append(lines, fmt.Sprintf("%d more steps hang on these and have no date either.", follow))
	}
	return lines
}

// keptShut says why she is not opened though every step would have a day.
func (p *planner) keptShut(made *schedule.Plan) []string {
	in := ""
	if w := made.Open.Window; w >= 0 && w < len(p.in.Windows) {
		in = fmt.Sprintf(", %s to %s (%s)", p.in.Windows[w].From, p.in.Windows[w].To, windowWords(p.in.Windows[w]))
	}
	switch made.Open.Why {
	case schedule.AcrossClosed:
		return []string{"The work does not fit between days without work: she would lie open over them" + in + ". Longer days, more people or work on those days would make it."}
	case schedule.NotReady:
		return []string{"She would lie open longer than days to be ready allow" + in + ". Plan it outside them, in parts, or with more people."}
	case schedule.MovedOpen:
		return []string{"She would have to run to the haul-out with her line open. Enter a longer time ashore, or one that begins before the work does."}
	}
	return nil
}

// missed says which readings as found cannot be taken.
func (p *planner) missed(made *schedule.Plan) (lines []string) {
	for i, t := range made.Tasks {
		if t.Why == schedule.Missed {
			lines = append(lines, fmt.Sprintf("“%s” cannot be read as found: she does not lie %s before the work. Once she is opened, what it would have shown is gone.", p.steps[i].Title, p.steps[i].Place))
		}
	}
	return lines
}
