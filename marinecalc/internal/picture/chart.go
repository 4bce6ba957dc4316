package picture

import (
	"math"
	"strconv"
)

// Chart is the plotting area of a curve with its two scales.
type Chart struct {
	*Picture
	Left, Top, Width, Height float64
	X0, X1, Y0, Y1           float64 // values at the ends of the axes
}

func (c *Chart) AtX(v float64) float64 { return c.Left + (v-c.X0)/(c.X1-c.X0)*c.Width }

func (c *Chart) AtY(v float64) float64 { return c.Top + c.Height - (v-c.Y0)/(c.Y1-c.Y0)*c.Height }

// Axes draws both axes with a mark at each round step, labelled in the
// display unit: xUnit and yUnit are what one of it is in the chart's values.
func (c *Chart) Axes(xTitle, yTitle string, xUnit, yUnit float64) {
	c.Line(Faint, c.Left, c.Top, c.Left, c.Top+c.Height)
	c.Line(Faint, c.Left, c.Top+c.Height, c.Left+c.Width, c.Top+c.Height)
	for _, v := range Steps(c.X0/xUnit, c.X1/xUnit) {
		x := c.AtX(v * xUnit)
		c.Line(Faint, x, c.Top+c.Height, x, c.Top+c.Height+4)
		c.Text(Ink, "middle", x, c.Top+c.Height+18, strconv.FormatFloat(v, 'g', 6, 64))
	}
	for _, v := range Steps(c.Y0/yUnit, c.Y1/yUnit) {
		y := c.AtY(v * yUnit)
		c.Line(Faint, c.Left-4, y, c.Left+c.Width, y)
		c.Text(Ink, "end", c.Left-7, y+4, strconv.FormatFloat(v, 'g', 6, 64))
	}
	c.Text(Ink, "middle", c.Left+c.Width/2, c.Top+c.Height+38, xTitle)
	c.Text(Ink, "start", 4, c.Top-10, yTitle)
}

// Steps gives four to nine round values from low to high.
func Steps(low, high float64) []float64 {
	if !(high > low) {
		return nil
	}
	size := math.Pow(10, math.Floor(math.Log10((high-low)/4)))
	for _, m := range []float64{1, 2, 5, 10} {
		if (high-low)/(m*size) <= 8 {
			size *= m
			break
		}
	}
	var out []float64
	for n := math.Ceil(low/size - 1e-9); n*size <= high*(1+1e-9); n++ {
		out = append(out, math.Round(n*size*1e9)/1e9+0) // + 0: no minus zero
	}
	return out
}

// ClampY keeps a height inside the chart.
func (c *Chart) ClampY(v float64) float64 { return c.AtY(min(max(v, c.Y0), c.Y1)) }
