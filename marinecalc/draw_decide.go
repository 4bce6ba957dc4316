package marinecalc

import (
	"math"
	"strconv"

	"example.org/driveline/marinecalc/internal/decision/cost"
	"example.org/driveline/marinecalc/quantity"
	"example.org/driveline/marinecalc/sheet"
)

// drawBreakEven draws the expected costs of the ways out against the seasons
// that the part must serve. Each line has a mark and a name of its own.
func drawBreakEven(in cost.Choice, out cost.Weighed, b brush) []sheet.Drawing {
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
		b.money(out.RepairExpected) + ", replacing " + b.money(out.ReplaceExpected)
	ways := []costLine{
		{"repairing", ink, func(c cost.Costs) quantity.Money { return c.Repair }},
		{"replacing", accent, func(c cost.Costs) quantity.Money { return c.Replace }},
	}
	if !math.IsNaN(float64(out.LeaveExpected)) {
		description += ", leaving it " + b.money(out.LeaveExpected)
		ways = append(ways, costLine{"leaving it", warn, func(c cost.Costs) quantity.Money { return c.Leave }})
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
	c := chart{picture: begin(360, 296, title, description), left: 52, top: 28, width: 284, height: 200, x1: float64(seasons), y1: 1.1 * top}
	unit := math.Pow(10, math.Floor(math.Log10(top)/3)*3) // thousands as thousands
	c.axes("seasons", "cost, "+scaled(unit)+b.currency, 1, unit)
	c.line(faint, c.atX(float64(in.Seasons)), c.top, c.atX(float64(in.Seasons)), c.top+c.height)
	c.text(faint, "middle", c.atX(float64(in.Seasons)), c.top-4, "must serve")
	for n, w := range ways {
		drawWay(&c, costs, w, n)
	}
	if even > 1 && even <= seasons {
		x, y := c.atX(float64(even)), c.atY(float64(costs[even-1].Replace))
		c.circle(ink, x, y, 5)
		c.text(ink, "start", x+8, y+16, "break-even")
	}
	return []sheet.Drawing{{Name: "break-even", Title: title, Description: description, SVG: c.end()}}
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
func drawWay(c *chart, costs []cost.Costs, w costLine, n int) {
	x, y := make([]float64, len(costs)), make([]float64, len(costs))
	for i := range costs {
		x[i], y[i] = c.atX(float64(i+1)), c.atY(float64(w.of(costs[i])))
	}
	c.curve(w.class, x, y)
	every := (len(costs) + 11) / 12
	for i := every - 1; i < len(costs); i += every {
		switch n {
		case 0:
			c.rect(ink, x[i]-3, y[i]-3, 6, 6)
		case 1:
			c.circle(accent, x[i], y[i], 3)
		default:
			c.line(ink, x[i], y[i]-4, x[i], y[i]+4)
		}
	}
	at := c.left + 10 + float64(n)*98
	switch n {
	case 0:
		c.rect(ink, at-7, c.top+c.height+46, 6, 6)
	case 1:
		c.circle(accent, at-4, c.top+c.height+49, 3)
	default:
		c.line(ink, at-4, c.top+c.height+45, at-4, c.top+c.height+53)
	}
	c.text(ink, "start", at+4, c.top+c.height+54, w.name)
}
