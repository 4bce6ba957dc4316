package drawing

import (
	"math"
	"strconv"

	"example.org/driveline/marinecalc/internal/picture"
	"example.org/driveline/marinecalc/quantity"
)

// Margin is what is there over what is needed, by the name of the load.
type Margin struct {
	Name  string
	Value quantity.Ratio
}

// TellMargins says the margins that are known.
func TellMargins(margins []Margin) string {
	words := ""
	for _, m := range margins {
		if !math.IsNaN(float64(m.Value)) {
			words += ", " + m.Name + " " + Figure(m.Value)
		}
	}
	if words == "" {
		return " none is known."
	}
	return words[1:] + "."
}

// Figure writes a margin to three digits.
func Figure(v quantity.Ratio) string { return strconv.FormatFloat(float64(v), 'g', 3, 64) }

// DrawMargins draws margins as bars below one another, on a scale that grows
// slower far from 1, with a line at 1.
func DrawMargins(p *picture.Picture, margins []Margin, top float64) {
	const left, one, right, height = 92.0, 190.0, 344.0, 24.0
	at := func(v float64) float64 { // 0 at left, 1 at one, without end at right
		if v <= 1 {
			return left + (one-left)*v
		}
		return right - (right-one)/v
	}
	y := top
	for _, m := range margins {
		v := float64(m.Value)
		p.Text(picture.Ink, "end", left-6, y+14, m.Name)
		if math.IsNaN(v) {
			p.Text(picture.Ink, "start", left+4, y+14, "not known")
		} else {
			class := picture.Band
			if v < 1 {
				class = picture.Warn
			}
			p.Rect(class, left, y, max(1, at(max(0, v))-left), height-6)
			p.Text(picture.Ink, "start", left+4, y+14, Figure(m.Value))
		}
		y += height
	}
	p.Line(picture.Accent, one, top-4, one, y)
	p.Text(picture.Ink, "start", one+4, y+8, "1: it lets go")
}
