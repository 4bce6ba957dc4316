package gearing

import (
	"fmt"
	"math"

	"example.org/driveline/marinecalc/fluid"
	"example.org/driveline/marinecalc/internal/picture"
	"example.org/driveline/marinecalc/sheet"
)

// FluidCleanliness draws the code of each size as a bar, with the code that is
// wanted across it. A step of the code is twice the particles.
func FluidCleanliness(in fluid.CleanlinessInput, out fluid.CleanlinessResult, _ picture.Brush) []sheet.Drawing {
	const title, left, top, width, height, most = "Codes of the sample", 70.0, 34.0, 270.0, 30.0, 28.0
	description := "Code " + out.Code + ", each step twice the particles."
	bars := [...]struct {
		size         string
		code, wanted float64
	}{{"4 µm", float64(out.Code4), in.WantedCode4}, {"6 µm", float64(out.Code6), in.WantedCode6}, {"14 µm", float64(out.Code14), in.WantedCode14}}
	for _, b := range bars {
		if !math.IsNaN(b.wanted) {
			description += fmt.Sprintf(" Wanted for %s: at most %.0f.", b.size, b.wanted)
		}
	}
	p := picture.Begin(360, 160, title, description)
	p.Text(picture.Ink, "start", 4, 18, "code by size")
	for i, b := range bars {
		y := top + height*float64(i)
		p.Text(picture.Ink, "end", left-8, y+15, b.size)
		if math.IsNaN(b.code) {
			p.Text(picture.Ink, "start", left+4, y+15, "not counted")
			continue
		}
		p.Rect(picture.Band, left, y, width*b.code/most, height-10)
		p.Text(picture.Ink, "start", left+4, y+15, fmt.Sprintf("%.0f", b.code))
		if !math.IsNaN(b.wanted) {
			x := left + width*b.wanted/most
			p.Line(picture.Warn, x, y-3, x, y+height-7)
		}
	}
	p.Line(picture.Faint, left, top-4, left, top+3*height)
	p.Text(picture.Ink, "start", left, top+3*height+20, "line: at most, as wanted")
	return []sheet.Drawing{{Name: "cleanliness", Title: title, Description: description, SVG: p.End()}}
}
