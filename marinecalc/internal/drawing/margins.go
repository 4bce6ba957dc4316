package drawing

import (
	"math"
	"strconv"

	"example.org/driveline/marinecalc/internal/picture"
	"example.org/driveline/marinecalc/quantity"
)

// margin is what is there over what is needed, by the name of the load.
type margin struct {
	name  string
	value quantity.Ratio
}

// tellMargins says the margins that are known.
func tellMargins(margins []margin) string {
	words := ""
	for _, m := range margins {
		if !math.IsNaN(float64(m.value)) {
			words += " " + m.name + " " + figure(m.value) + "."
		}
	}
	if words == "" {
		return " none is known."
	}
	return words
}

func figure(v quantity.Ratio) string { return strconv.FormatFloat(float64(v), 'g', 3, 64) }

// drawMargins draws margins as bars below one another, on a scale that grows
// slower far from 1, with a line at 1.
func drawMargins(p *picture.Picture, margins []margin, top float64) {
	const left, one, right, height = 92.0, 190.0, 344.0, 24.0
	at := func(v float64) float64 { // 0 at left, 1 at one, without end at right
		if v <= 1 {
			return left + (one-left)*v
		}
		return right - (right-one)/v
	}
	y := top
	for _, m := range margins {
		v := float64(m.value)
		p.Text(picture.Ink, "end", left-6, y+14, m.name)
		if math.IsNaN(v) {
			p.Text(picture.Ink, "start", left+4, y+14, "not known")
		} else {
			class := picture.Band
			if v < 1 {
				class = picture.Warn
			}
			p.Rect(class, left, y, max(1, at(max(0, v))-left), height-6)
			p.Text(picture.Ink, "start", left+4, y+14, figure(m.value))
		}
		y += height
	}
	p.Line(picture.Accent, one, top-4, one, y)
	p.Text(picture.Ink, "start", one+4, y+8, "1: it lets go")
}
