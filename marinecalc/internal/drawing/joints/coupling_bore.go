package joints

import (
	"math"

	"example.org/driveline/marinecalc/coupling"
	"example.org/driveline/marinecalc/internal/drawing"
	"example.org/driveline/marinecalc/internal/picture"
	"example.org/driveline/marinecalc/sheet"
)

// CouplingBore draws the flange on its shaft, cut along the middle, and below
// it how the margins ahead, astern, in a shock and against a pull stand to 1.
func CouplingBore(in coupling.BoreInput, out coupling.BoreResult, b picture.Brush) []sheet.Drawing {
	const title = "Flange on its shaft, and what holds it"
	margins := []drawing.Margin{{Name: "ahead", Value: out.MarginAhead}, {Name: "astern", Value: out.MarginAstern}, {Name: "shock", Value: out.MarginPeak}, {Name: "pull astern", Value: out.PullMargin}, {Name: "fouled", Value: out.FoulMargin}}
	description := "Shaft " + b.Length(in.ShaftDiameter) + " in its coupling flange. Margins, at 1 it lets go:" + drawing.TellMargins(margins)
	p := picture.Begin(360, 286, title, description)
	const middle, left, face = 76.0, 40.0, 214.0 // of the shaft, where it begins aft, the coupling face
	slope := 0.0
	if in.HoldMethod == coupling.TaperNut {
		slope = 10
	}
	p.Rect(picture.Band, 110, middle-46, 80, 92)
	p.Rect(picture.Band, 190, middle-58, face-190, 116)
	p.Area(picture.Body, []float64{left, 110, face - 8, face - 8, 110, left}, []float64{middle - 22, middle - 22, middle - 22 + slope, middle + 22 - slope, middle + 22, middle + 22})
	p.Line(picture.Faint, left-14, middle, face+24, middle)
	if out.PullAstern > 0 { // never for NaN
		p.Arrow(picture.Warn, left+50, middle, left-20, middle)
		p.Text(picture.Ink, "start", 4, middle+48, "pull "+b.Force(out.PullAstern))
	}
	switch in.HoldMethod {
	case coupling.SplitClamp:
		p.Line(picture.Accent, 118, middle-34, 182, middle-34)
		p.Text(picture.Ink, "start", 232, middle-34, "pinch bolts")
	case coupling.SetScrews:
		p.Rect(picture.Accent, 138, middle-46, 8, 24)
		p.Rect(picture.Accent, 162, middle-46, 8, 24)
		p.Text(picture.Ink, "start", 232, middle-34, "set screws")
	case coupling.Interference:
		p.Line(picture.Accent, 110, middle-22, face-8, middle-22)
		p.Line(picture.Accent, 110, middle+22, face-8, middle+22)
		p.Text(picture.Ink, "start", 232, middle-34, "pressed on")
	case coupling.TaperNut:
		p.Rect(picture.Accent, face-8, middle-16, 16, 32)
		p.Text(picture.Ink, "start", 232, middle-34, "taper and nut")
	}
	if !math.IsNaN(float64(out.SlipTorque)) {
		p.Text(picture.Ink, "start", 232, middle-14, "holds")
		p.Text(picture.Ink, "start", 232, middle+2, b.Torque(out.SlipTorque))
	}
	p.Text(picture.Ink, "start", 4, 14, "aft")
	drawing.DrawMargins(p, margins, 150)
	return []sheet.Drawing{{Name: "coupling-bore", Title: title, Description: description, SVG: p.End()}}
}
