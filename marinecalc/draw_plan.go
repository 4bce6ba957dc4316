package marinecalc

import (
	"fmt"
	"strings"

	"example.org/driveline/marinecalc/internal/day"
	"example.org/driveline/marinecalc/sheet"
)

// drawSchedule draws the dated steps as bars over the days, each under its
// name, with the windows as bands above and behind. Critical steps are solid
// and marked; the others trail the room they have as a thin line.
func drawSchedule(in Job, out WorkPlan, _ brush) []sheet.Drawing {
	var steps []ScheduledStep
	first, last := 0, 0
	for _, s := range out.Schedule {
		if s.Start == "" {
			continue
		}
		from, _ := day.Parse(s.Start) // written by us
		to, _ := day.Parse(s.End)
		if len(steps) == 0 {
			first = from
		}
		steps = append(steps, s)
		last = max(last, to+1)
	}
	if len(steps) == 0 {
		return nil
	}
	const title = "Schedule"
	description := fmt.Sprintf("%d steps from %s to %s. Critical: %s.", len(steps), day.Text(first), day.Text(last-1), out.CriticalPath)
	const top, row = 62.0, 30.0
	c := chart{picture: begin(360, int(top+row*float64(len(steps))+34), title, description), left: 12, top: top, width: 336, height: row * float64(len(steps)),
		x0: float64(first), x1: float64(last)}
	drawWindows(&c, in.Windows)
	drawDates(&c, first, last)
	for n, s := range steps {
		drawStep(&c, s, top+row*float64(n))
	}
	c.rect(accent, 16, top+c.height+16, 16, 8)
	c.text(ink, "start", 38, top+c.height+24, "● critical")
	c.rect(body, 122, top+c.height+16, 16, 8)
	c.line(ink, 138, top+c.height+20, 158, top+c.height+20)
	c.text(ink, "start", 164, top+c.height+24, "with room to begin later")
	return []sheet.Drawing{{Name: "schedule", Title: title, Description: description, SVG: c.end()}}
}

// drawWindows draws each window as a bracket with its words above the days, and
// its edges down through the bars.
func drawWindows(c *chart, list []WorkWindow) {
	lines := []float64{14, 30} // letters of neighbours stand on different lines
	n := 0
	for _, w := range list {
		from, err := day.Parse(w.From)
		to, err2 := day.Parse(w.To)
		if err != nil || err2 != nil || float64(to+1) <= c.x0 || float64(from) >= c.x1 {
			continue
		}
		x1, x2 := c.atX(max(float64(from), c.x0)), c.atX(min(float64(to+1), c.x1))
		class := band
		y := lines[n%2]
		n++
		if w.Kind == "not" {
			class = faint
			for x := x1 + 4; x < x2; x += 8 { // hatched, so that it needs no colour
				c.line(faint, x, c.top, x-4, c.top+8)
			}
		}
		c.rect(class, x1, c.top, x2-x1, c.height)
		words, _, _ := strings.Cut(windowWords(w), ",")
		anchor, at := "start", x1
		if x1 > c.left+c.width*0.6 {
			anchor, at = "end", x2
		}
		c.text(ink, anchor, at, y, words)
		c.line(faint, x1, y+3, x2, y+3)
	}
}

// drawDates marks at most six days.
func drawDates(c *chart, first, last int) {
	every := max(1, (last-first+5)/6)
	for _, week := range []int{7, 14, 28} {
		if every > 3 && every <= week {
			every = week
			break
		}
	}
	for d := first; d < last; d += every {
		x := c.atX(float64(d))
		c.line(faint, x, c.top-6, x, c.top+c.height)
		if x < c.left+c.width-36 {
			c.text(faint, "start", x, c.top-10, day.Text(d)[5:])
		}
	}
	c.line(faint, c.left, c.top, c.left+c.width, c.top)
}

func drawStep(c *chart, s ScheduledStep, y float64) {
	from, _ := day.Parse(s.Start)
	to, _ := day.Parse(s.End)
	x1, x2 := c.atX(float64(from)), c.atX(float64(to+1))
	class, name := body, s.Step
	if s.Critical == "yes" {
		class, name = accent, "● "+s.Step
	}
	if days := float64(s.Slack) / 86400; days > 0 {
		c.line(ink, x2, y+22, min(c.atX(float64(to+1)+days), c.left+c.width), y+22)
	}
	c.rect(class, x1, y+18, max(x2-x1, 3), 8)
	anchor, at := "start", x1
	if x1 > c.left+c.width*0.45 {
		anchor, at = "end", c.left+c.width
	}
	c.text(ink, anchor, at, y+14, name)
}
