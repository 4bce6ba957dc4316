package decision

import (
	"math"
	"strconv"

	"example.org/driveline/marinecalc/internal/decision/cost"
	"example.org/driveline/marinecalc/internal/picture"
	"example.org/driveline/marinecalc/quantity"
	"example.org/driveline/marinecalc/sheet"
)

// drawBreakEven draws the expected costs of the ways out against the seasons
// that the part must serve. Each line has a mark and a name of its own.
func drawBreakEven(in cost.Input, out cost.Result, b picture.Brush) []sheet.Drawing {
	seasons := max(4, in.Seasons+in.Seasons/2)
	even := cost.EvenSeasons(in)
	if even > seasons && even <= 3*seasons {
		seasons = even + 1
	}
	seasons = min(seasons, cost.MostSeasons)
	costs := make([]cost.Costs, seasons)
	if cost.Curve(in, costs) != nil {
		return nil
	}
	const title = "Cost against time of service"
	description := "Expected cost over 1 to " + strconv.Itoa(seasons) + " seasons. Over " + strconv.Itoa(in.Seasons) + " seasons: repairing " +
		b.Money(out.RepairExpected) + ", replacing " + b.Money(out.ReplaceExpected)
	ways := []costLine{
		{"repairing", picture.Ink, func(c cost.Costs) quantity.Money { return c.Repair }},
		{"replacing", picture.Accent, func(c cost.Costs) quantity.Money { return c.Replace }},
	}
	if !math.IsNaN(float64(out.LeaveExpected)) {
		description += ", leaving it " + b.Money(out.LeaveExpected)
		ways = append(ways, costLine{"leaving it", picture.Warn, func(c cost.Costs) quantity.Money { return c.Leave }})
	}
	if even > 1 {
		description += ". From " + strconv.Itoa(even) + " seasons on replacing costs no more than repairing"
	}
	description += "."
	top := 0.0
	for _, w := range ways {
		top = max(top, float64(w.of(costs[seasons-1])), float64(w.of(costs[0])))
	}
	if top <= 0 {
		return nil
	}
	c := picture.Chart{Picture: picture.Begin(360, 296, title, description), Left: 52, Top: 28, Width: 284, Height: 200, X1: float64(seasons), Y1: 1.1 * top}
	unit := math.Pow(10, math.Floor(math.Log10(top)/3)*3) // thousands as thousands
	c.Axes("seasons", "cost, "+scaled(unit)+b.Currency, 1, unit)
	c.Line(picture.Faint, c.AtX(float64(in.Seasons)), c.Top, c.AtX(float64(in.Seasons)), c.Top+c.Height)
	c.Text(picture.Faint, "middle", c.AtX(float64(in.Seasons)), c.Top-4, "must serve")
	for n, w := range ways {
		drawWay(&c, costs, w, n)
	}
	if even > 1 && even <= seasons {
		x, y := c.AtX(float64(even)), c.AtY(float64(costs[even-1].Replace))
		c.Circle(picture.Ink, x, y, 5)
		c.Text(picture.Ink, "start", x+8, y+16, "break-even")
	}
	return []sheet.Drawing{{Name: "break-even", Title: title, Description: description, SVG: c.End()}}
}

// costLine is one way out as a line of the chart.
type costLine struct {
	name, class string
	of          func(cost.Costs) quantity.Money
}

// scaled names a power of a thousand before a currency.
func scaled(unit float64) string {
	switch unit {
	case 1:
		return ""
	case 1e3:
		return "thousand "
	default:
		return "10^" + strconv.Itoa(int(math.Log10(unit)+0.5)) + " "
	}
}

// drawWay draws one line with its mark at each season (square, round or upright)
// and its name where the lines stand apart.
func drawWay(c *picture.Chart, costs []cost.Costs, w costLine, n int) {
	x, y := make([]float64, len(costs)), make([]float64, len(costs))
	for i := range costs {
		x[i], y[i] = c.AtX(float64(i+1)), c.AtY(float64(w.of(costs[i])))
	}
	c.Curve(w.class, x, y)
	every := (len(costs) + 11) / 12
	for i := every - 1; i < len(costs); i += every {
		switch n {
		case 0:
			c.Rect(picture.Ink, x[i]-3, y[i]-3, 6, 6)
		case 1:
			c.Circle(picture.Accent, x[i], y[i], 3)
		default:
			c.Line(picture.Ink, x[i], y[i]-4, x[i], y[i]+4)
		}
	}
	at := c.Left + 10 + float64(n)*98
	switch n {
	case 0:
		c.Rect(picture.Ink, at-7, c.Top+c.Height+46, 6, 6)
	case 1:
		c.Circle(picture.Accent, at-4, c.Top+c.Height+49, 3)
	default:
		c.Line(picture.Ink, at-4, c.Top+c.Height+45, at-4, c.Top+c.Height+53)
	}
	c.Text(picture.Ink, "start", at+4, c.Top+c.Height+54, w.name)
}
