package drawing

import (
	"math"

	"example.org/driveline/marinecalc/internal/picture"
)

// Spark is a small chart of one series without scales: days along it, the
// newest reading marked. More than a hundred readings show as their least and
// most of each stretch of time.
func Spark(days, values []float64, title, description string) string {
	if len(days) < 2 {
		return ""
	}
	c := picture.Chart{Picture: picture.Begin(120, 32, title, description), Left: 4, Top: 4, Width: 112, Height: 24}
	c.X0, c.X1 = days[0], days[len(days)-1]
	c.Y0, c.Y1 = math.Inf(1), math.Inf(-1)
	for _, v := range values {
		c.Y0, c.Y1 = min(c.Y0, v), max(c.Y1, v)
	}
	if c.X1 <= c.X0 {
		c.X0, c.X1 = c.X0-1, c.X0+1
	}
	if c.Y1 <= c.Y0 {
		c.Y0, c.Y1 = c.Y0-1, c.Y0+1
	}
	x, y := thinned(days, values, c.X0, c.X1)
	for i := range x {
		x[i], y[i] = c.AtX(x[i]), c.AtY(y[i])
	}
	c.Curve(picture.Accent, x, y)
	last := len(days) - 1
	c.Circle(picture.Ink, c.AtX(days[last]), c.AtY(values[last]), 3)
	return c.End()
}

// thinned keeps of each of fifty stretches its first, least, most and last.
func thinned(days, values []float64, from, to float64) (x, y []float64) {
	const most, stretches = 100, 50
	if len(days) <= most {
		return append(x, days...), append(y, values...)
	}
	begin := 0
	for begin < len(days) {
		stretch := math.Floor((days[begin] - from) / (to - from) * stretches)
		end, least, highest := begin, begin, begin
		for end < len(days) && math.Floor((days[end]-from)/(to-from)*stretches) == stretch {
			if values[end] < values[least] {
				least = end
			}
			if values[end] > values[highest] {
				highest = end
			}
			end++
		}
		for _, i := range []int{min(least, highest), max(least, highest)} {
			x, y = append(x, days[i]), append(y, values[i])
		}
		begin = end
	}
	return append(x, days[len(days)-1]), append(y, values[len(values)-1])
}
