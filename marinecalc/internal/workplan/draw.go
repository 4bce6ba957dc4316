package workplan

import (
	"fmt"
	"strings"

	"example.org/driveline/marinecalc/internal/day"
	"example.org/driveline/marinecalc/internal/picture"
	"example.org/driveline/marinecalc/sheet"
)

// DrawSchedule draws the dated steps as bars over the days, each under its
// name, over the block of days on which she lies open, with the windows as
// bands above and behind, and today. Critical steps are solid and marked; the
// others trail the slack they have as a thin line.
func DrawSchedule(in Input, out Result, _ picture.Brush) []sheet.Drawing {
	var steps []ScheduledStep
	first, last := 0, 0
	for _, s := range out.Schedule {
		if s.Start == "" || s.Phase == "afterwards" {
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
	today, _ := day.Parse(in.Today)
	if today >= first-nearToday {
		first = min(first, today)
	}
	const title = "Schedule"
	description := fmt.Sprintf("%d step%s from %s to %s. Critical: %s.", len(steps), map[bool]string{false: "s"}[len(steps) == 1], steps[0].Start, day.Text(last-1), out.CriticalPath)
	if out.Open != "" {
		description += " She lies open for " + out.Open + "."
	}
	const top, row = 78.0, 30.0
	c := picture.Chart{Picture: picture.Begin(360, int(top+row*float64(len(steps))+34), title, description), Left: 12, Top: top, Width: 336, Height: row * float64(len(steps)),
		X0: float64(first), X1: float64(last)}
	drawWindows(&c, in.Windows)
	drawOpen(&c, out.OpenFrom, out.OpenTo)
	drawDates(&c, first, last)
	drawToday(&c, in.Today, today, first)
	for n, s := range steps {
		drawStep(&c, s, top+row*float64(n))
	}
	c.Rect(picture.Accent, 16, top+c.Height+16, 16, 8)
	c.Text(picture.Ink, "start", 38, top+c.Height+24, "● critical")
	c.Rect(picture.Body, 112, top+c.Height+16, 16, 8)
	c.Line(picture.Ink, 128, top+c.Height+20, 148, top+c.Height+20)
	c.Text(picture.Ink, "start", 154, top+c.Height+24, "with slack")
	return []sheet.Drawing{{Name: "schedule", Title: title, Description: description, SVG: c.End()}}
}

// nearToday is how many days after today the plan may begin for today to have
// a place among its days.
const nearToday = 10

// drawOpen draws the days on which she lies open as one block.
func drawOpen(c *picture.Chart, from, to string) {
	first, err := day.Parse(from)
	last, err2 := day.Parse(to)
	if err != nil || err2 != nil {
		return
	}
	x1, x2 := c.AtX(float64(first)), c.AtX(float64(last+1))
	c.Rect(picture.Band, x1, c.Top, x2-x1, c.Height)
	c.Line(picture.Warn, x1, c.Top, x1, c.Top+c.Height)
	c.Line(picture.Warn, x2, c.Top, x2, c.Top+c.Height)
	anchor, at := "start", x1
	if x1 > c.Left+c.Width*0.6 {
		anchor, at = "end", x2
	}
	c.Text(picture.Ink, anchor, at, 46, "open, "+inDays(last-first+1))
	c.Line(picture.Warn, x1, 50, x2, 50)
}

// drawToday marks today, or says that it lies before the days drawn.
func drawToday(c *picture.Chart, date string, today, first int) {
	if today < first {
		c.Text(picture.Faint, "end", c.Left+c.Width, c.Top+c.Height+24, "← today, "+date)
		return
	}
	if x := c.AtX(float64(today)); x <= c.Left+c.Width {
		c.Line(picture.Ink, x, c.Top-4, x, c.Top+c.Height)
		c.Text(picture.Ink, "start", x, c.Top+c.Height+12, "today")
	}
}

// drawWindows draws each window as a bracket with its words above the days, and
// its edges down through the bars.
func drawWindows(c *picture.Chart, list []WorkWindow) {
	lines := []float64{14, 30} // letters of neighbours stand on different lines
	n := 0
	for _, w := range list {
		from, err := day.Parse(w.From)
		to, err2 := day.Parse(w.To)
		if err != nil || err2 != nil || float64(to+1) <= c.X0 || float64(from) >= c.X1 {
			continue
		}
		x1, x2 := c.AtX(max(float64(from), c.X0)), c.AtX(min(float64(to+1), c.X1))
		class := picture.Band
		y := lines[n%2]
		n++
		if w.Kind == "not" {
			class = picture.Faint
			for x := x1 + 4; x < x2; x += 8 { // hatched, so that it needs no colour
				c.Line(picture.Faint, x, c.Top, x-4, c.Top+8)
			}
		}
		if w.Kind == "not" || w.Kind == "no-lift" || w.Kind == "ready" {
			c.Line(picture.Faint, x1, c.Top, x1, c.Top+c.Height)
			c.Line(picture.Faint, x2, c.Top, x2, c.Top+c.Height)
		} else {
			c.Rect(class, x1, c.Top, x2-x1, c.Height)
		}
		words, _, _ := strings.Cut(windowWords(w), ",")
		anchor, at := "start", x1
		if x1 > c.Left+c.Width*0.6 {
			anchor, at = "end", x2
		}
		c.Text(picture.Ink, anchor, at, y, words)
		c.Line(picture.Faint, x1, y+3, x2, y+3)
	}
}

// drawDates marks at most six days.
func drawDates(c *picture.Chart, first, last int) {
	every := max(1, (last-first+5)/6)
	for _, week := range []int{7, 14, 28} {
		if every > 3 && every <= week {
			every = week
			break
		}
	}
	for d := first; d < last; d += every {
		x := c.AtX(float64(d))
		c.Line(picture.Faint, x, c.Top-6, x, c.Top+c.Height)
		if x < c.Left+c.Width-36 {
			c.Text(picture.Faint, "start", x, c.Top-10, day.Text(d)[5:])
		}
	}
	c.Line(picture.Faint, c.Left, c.Top, c.Left+c.Width, c.Top)
}

func drawStep(c *picture.Chart, s ScheduledStep, y float64) {
	from, _ := day.Parse(s.Start)
	to, _ := day.Parse(s.End)
	x1, x2 := c.AtX(float64(from)), c.AtX(float64(to+1))
	class, name := picture.Body, s.Step
	if s.Critical == "yes" {
		class, name = picture.Accent, "● "+s.Step
	}
	if days := float64(s.Slack) / 86400; days > 0 {
		c.Line(picture.Ink, x2, y+22, min(c.AtX(float64(to+1)+days), c.Left+c.Width), y+22)
	}
	c.Rect(class, x1, y+18, max(x2-x1, 3), 8)
	anchor, at := "start", x1
	if x1 > c.Left+c.Width*0.45 {
		anchor, at = "end", c.Left+c.Width
	}
	c.Text(picture.Ink, anchor, at, y+14, name)
}
