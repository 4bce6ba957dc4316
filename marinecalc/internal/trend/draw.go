package trend

import (
	"fmt"
	"math"
	"slices"
	"strconv"
	"strings"

	"example.org/driveline/marinecalc/internal/day"
	"example.org/driveline/marinecalc/internal/picture"
	"example.org/driveline/marinecalc/internal/trend/series"
	"example.org/driveline/marinecalc/quantity"
	"example.org/driveline/marinecalc/sheet"
)

// draw draws the readings over the axis of their line, with band and limit.
func (t *follower) draw(b picture.Brush) []sheet.Drawing {
	if t == nil {
		return nil
	}
	const title = "Readings and where they lead"
	f := &t.found
	at := func(p *series.Point) float64 {
		if f.ByHours {
			return p.Hours
		}
		return float64(p.Day) + p.Time
	}
	c := picture.Chart{Picture: picture.Begin(360, 280, title, t.property.Title+". "+t.out.Says), Left: 56, Top: 30, Width: 290, Height: 190}
	c.X0, c.X1 = at(&t.series.Points[f.Run[0]]), f.Place
	ahead := f.Days.Expected
	if f.ByHours {
		ahead = f.Hours.Expected
	}
	span := max(c.X1-c.X0, 1)
	if ahead > 0 && ahead < 4*span {
		c.X1 += ahead
	}
	c.X1 += 0.15 * span
	c.Y0, c.Y1 = t.series.Limit, t.series.Limit
	stretch := func(v float64) {
		if !math.IsNaN(v) && !math.IsInf(v, 0) {
			if !(c.Y0 <= v) {
				c.Y0 = v
			}
			if !(c.Y1 >= v) {
				c.Y1 = v
			}
		}
	}
	for _, place := range f.Run {
		stretch(t.series.Points[place].Value)
	}
	if _, there, _ := t.at(c.X1); t.led() {
		stretch(there)
	}
	margin := 0.1 * (c.Y1 - c.Y0)
	if margin == 0 {
		margin = max(0.1*math.Abs(c.Y0), 1e-9)
	}
	c.Y0, c.Y1 = c.Y0-margin, c.Y1+margin
	t.scales(&c, b)
	if t.led() {
		t.bandArea(&c)
		t.through(&c)
	}
	if y := t.series.Limit; !math.IsNaN(y) {
		c.Line(picture.Warn, c.Left, c.AtY(y), c.Left+c.Width, c.AtY(y))
		c.Text(picture.Ink, "start", c.Left+4, c.AtY(y)-4, "limit "+t.show(y))
	}
	for _, place := range f.Run {
		p := &t.series.Points[place]
		odd := slices.ContainsFunc(f.Flags, func(g series.Flag) bool { return g.Place == place })
		if odd {
			c.Rect(picture.Warn, c.AtX(at(p))-4, c.ClampY(p.Value)-4, 8, 8)
		} else {
			c.Circle(picture.Ink, c.AtX(at(p)), c.ClampY(p.Value), 4)
		}
	}
	return []sheet.Drawing{{Name: "trend", Title: title, Description: t.property.Title + ". " + t.out.Says, SVG: c.End()}}
}

// scales draws the axes: dates or engine hours along, the reading up.
func (t *follower) scales(c *picture.Chart, b picture.Brush) {
	c.Line(picture.Faint, c.Left, c.Top, c.Left, c.Top+c.Height)
	c.Line(picture.Faint, c.Left, c.Top+c.Height, c.Left+c.Width, c.Top+c.Height)
	for i := range 3 {
		v := c.X0 + (c.X1-c.X0)*float64(i)/2
		anchor := [...]string{"start", "middle", "end"}[i]
		words := day.Text(int(v))
		if t.found.ByHours {
			words = fmt.Sprintf("%.0f h", v)
		}
		c.Line(picture.Faint, c.AtX(v), c.Top+c.Height, c.AtX(v), c.Top+c.Height+4)
		c.Text(picture.Ink, anchor, c.AtX(v), c.Top+c.Height+18, words)
	}
	unit := t.property.Units[0]
	if b.Units == quantity.US {
		unit = t.property.Units[1]
	}
	low, _ := t.property.Kind.Convert(c.Y0, unit)
	high, _ := t.property.Kind.Convert(c.Y1, unit)
	for _, v := range picture.Steps(low, high) {
		y := c.Top + c.Height*(high-v)/(high-low)
		c.Line(picture.Faint, c.Left-4, y, c.Left+c.Width, y)
		c.Text(picture.Ink, "end", c.Left-7, y+4, strconv.FormatFloat(v, 'g', 6, 64))
	}
	c.Text(picture.Ink, "start", 4, c.Top-12, strings.ToLower(t.property.Title)+", "+unit)
}

// through draws the line, bent where the pace grows.
func (t *follower) through(c *picture.Chart) {
	parts := 1
	if t.found.Quickens {
		parts = 24
	}
	_, y, _ := t.at(c.X0)
	for i := range parts {
		a := c.X0 + (c.X1-c.X0)*float64(i)/float64(parts)
		b := c.X0 + (c.X1-c.X0)*float64(i+1)/float64(parts)
		_, next, _ := t.at(b)
		c.Line(picture.Accent, c.AtX(a), c.ClampY(y), c.AtX(b), c.ClampY(next))
		y = next
	}
}

// bandArea fills the 95 % band of one more reading.
func (t *follower) bandArea(c *picture.Chart) {
	const points = 25
	var x, up, down []float64
	for i := range points {
		v := c.X0 + (c.X1-c.X0)*float64(i)/(points-1)
		low, _, high := t.at(v)
		if math.IsNaN(high-low) || math.IsInf(high-low, 0) {
			return
		}
		x = append(x, c.AtX(v))
		up = append(up, c.ClampY(high))
		down = append(down, c.ClampY(low))
	}
	back := slices.Clone(x)
	slices.Reverse(back)
	slices.Reverse(down)
	c.Area(picture.Band, append(x, back...), append(up, down...))
}
