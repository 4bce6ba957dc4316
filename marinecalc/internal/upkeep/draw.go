package upkeep

import (
	"fmt"
	"math"

	"example.org/driveline/marinecalc/internal/day"
	"example.org/driveline/marinecalc/internal/picture"
	"example.org/driveline/marinecalc/internal/upkeep/due"
	"example.org/driveline/marinecalc/sheet"
)

// most is how many lines are drawn.
const most = 16

// draw draws what is overdue and what comes next, from the last time to the day
// it is due, with today across.
func (k *keeper) draw(picture.Brush) []sheet.Drawing {
	if k == nil {
		return nil
	}
	var list []*care
	for i := range k.cares {
		if c := &k.cares[i]; c.state != due.Never && c.state != due.Open && len(list) < most {
			list = append(list, c)
		}
	}
	if len(list) == 0 {
		return nil
	}
	const title, top, row = "What is due when", 26.0, 32.0
	description := fmt.Sprintf("%d of %d things with a day. %s", len(list), len(k.cares), k.out.Says)
	today := float64(k.today)
	c := picture.Chart{Picture: picture.Begin(360, int(top+row*float64(len(list))+10), title, description), Left: 12, Top: top, Width: 336, Height: row * float64(len(list)),
		X0: today - 365, X1: today + 365}
	x := c.AtX(today)
	c.Line(picture.Warn, x, c.Top-4, x, c.Top+c.Height)
	c.Text(picture.Ink, "middle", x, 14, "today, "+day.Text(k.today))
	c.Text(picture.Ink, "start", c.Left, 14, "a year ago")
	c.Text(picture.Ink, "end", c.Left+c.Width, 14, "in a year")
	clamp := func(d float64) float64 { return c.AtX(math.Min(math.Max(d, c.X0), c.X1)) }
	for i, one := range list {
		y := top + row*float64(i)
		from, to := clamp(float64(one.Day)), clamp(one.when.Day)
		if !one.Done {
			from = x
		}
		class, sign := picture.Body, ""
		if one.state == due.Overdue {
			class, sign = picture.Accent, "● "
		}
		c.Rect(class, math.Min(from, to), y+21, math.Max(math.Abs(to-from), 3), 6)
		c.Text(picture.Ink, "start", c.Left, y+14, sign+one.row.Name)
		c.Text(picture.Ink, "end", c.Left+c.Width, y+14, day.Text(int(math.Floor(one.when.Day))))
	}
	return []sheet.Drawing{{Name: "service-schedule", Title: title, Description: description, SVG: c.End()}}
}
