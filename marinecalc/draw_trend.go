package marinecalc

import (
	"fmt"
	"math"
	"slices"
	"strconv"
	"strings"

	"example.org/driveline/marinecalc/internal/day"
	"example.org/driveline/marinecalc/internal/trend/series"
	"example.org/driveline/marinecalc/quantity"
	"example.org/driveline/marinecalc/sheet"
)

// draw draws the readings over the axis of their line, with band and limit.
func (t *trend) draw(b brush) []sheet.Drawing {
	if t == nil {
		return nil
	}
	const title = "Readings and where they lead"
	f := &t.found
	at := func(p *series.Point) float64 {
		if f.ByHours {
			return p.Hours
		}
		return float64(p.Day)
	}
	c := chart{picture: begin(360, 280, title, t.property.Title+". "+t.out.Says), left: 56, top: 30, width: 290, height: 190}
	c.x0, c.x1 = at(&t.series.Points[f.Run[0]]), f.Place
	ahead := f.Days.Expected
	if f.ByHours {
		ahead = f.Hours.Expected
	}
	span := max(c.x1-c.x0, 1)
	if ahead > 0 && ahead < 4*span {
		c.x1 += ahead
	}
	c.x1 += 0.15 * span
	c.y0, c.y1 = t.series.Limit, t.series.Limit
	stretch := func(v float64) {
		if !math.IsNaN(v) && !math.IsInf(v, 0) {
			if !(c.y0 <= v) {
				c.y0 = v
			}
			if !(c.y1 >= v) {
				c.y1 = v
			}
		}
	}
	for _, place := range f.Run {
		stretch(t.series.Points[place].Value)
	}
	stretch(f.Fit.At(c.x1))
	margin := 0.1 * (c.y1 - c.y0)
	if margin == 0 {
		margin = max(0.1*math.Abs(c.y0), 1e-9)
	}
	c.y0, c.y1 = c.y0-margin, c.y1+margin
	t.scales(&c, b)
	t.bandArea(&c)
	c.line(accent, c.atX(c.x0), c.clampY(f.Fit.At(c.x0)), c.atX(c.x1), c.clampY(f.Fit.At(c.x1)))
	if y := t.series.Limit; !math.IsNaN(y) {
		c.line(warn, c.left, c.atY(y), c.left+c.width, c.atY(y))
		c.text(ink, "start", c.left+4, c.atY(y)-4, "limit "+t.show(y))
	}
	for _, place := range f.Run {
		p := &t.series.Points[place]
		odd := slices.ContainsFunc(f.Flags, func(g series.Flag) bool { return g.Place == place })
		if odd {
			c.rect(warn, c.atX(at(p))-4, c.clampY(p.Value)-4, 8, 8)
		} else {
			c.circle(ink, c.atX(at(p)), c.clampY(p.Value), 4)
		}
	}
	return []sheet.Drawing{{Name: "trend", Title: title, Description: t.property.Title + ". " + t.out.Says, SVG: c.end()}}
}

// scales draws the axes: dates or engine hours along, the reading up.
func (t *trend) scales(c *chart, b brush) {
	c.line(faint, c.left, c.top, c.left, c.top+c.height)
	c.line(faint, c.left, c.top+c.height, c.left+c.width, c.top+c.height)
	for i := range 3 {
		v := c.x0 + (c.x1-c.x0)*float64(i)/2
		anchor := [...]string{"start", "middle", "end"}[i]
		words := day.Text(int(v))
		if t.found.ByHours {
			words = fmt.Sprintf("%.0f h", v)
		}
		c.line(faint, c.atX(v), c.top+c.height, c.atX(v), c.top+c.height+4)
		c.text(ink, anchor, c.atX(v), c.top+c.height+18, words)
	}
	unit := t.property.Units[0]
	if b.units == quantity.US {
		unit = t.property.Units[1]
	}
	low, _ := t.property.Kind.Convert(c.y0, unit)
	high, _ := t.property.Kind.Convert(c.y1, unit)
	for _, v := range steps(low, high) {
		y := c.top + c.height*(high-v)/(high-low)
		c.line(faint, c.left-4, y, c.left+c.width, y)
		c.text(ink, "end", c.left-7, y+4, strconv.FormatFloat(v, 'g', 6, 64))
	}
	c.text(ink, "start", 4, c.top-12, strings.ToLower(t.property.Title)+", "+unit)
}

// bandArea fills the 95 % band of one more reading.
func (t *trend) bandArea(c *chart) {
	const points = 25
	var x, up, down []float64
	for i := range points {
		v := c.x0 + (c.x1-c.x0)*float64(i)/(points-1)
		half := t.found.Fit.Half(v)
		if math.IsNaN(half) || math.IsInf(half, 0) {
			return
		}
		x = append(x, c.atX(v))
		up = append(up, c.clampY(t.found.Fit.At(v)+half))
		down = append(down, c.clampY(t.found.Fit.At(v)-half))
	}
	back := slices.Clone(x)
	slices.Reverse(back)
	slices.Reverse(down)
	c.area(band, append(x, back...), append(up, down...))
}

// clampY keeps a height inside the chart.
func (c *chart) clampY(v float64) float64 { return c.atY(min(max(v, c.y0), c.y1)) }
