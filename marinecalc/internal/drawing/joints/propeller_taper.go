package joints

import (
	"math"

	"example.org/driveline/marinecalc/internal/drawing"
	"example.org/driveline/marinecalc/internal/picture"
	"example.org/driveline/marinecalc/propeller"
	"example.org/driveline/marinecalc/sheet"
)

// PropellerTaper draws hub and nut on the cone, the taper steeper than it is,
// and below it how the margins stand to 1.
func PropellerTaper(in propeller.TaperInput, out propeller.TaperResult, b picture.Brush) []sheet.Drawing {
	const title = "Propeller on its taper, and what holds it"
	margins := []drawing.Margin{{Name: "ahead", Value: out.MarginAhead}, {Name: "astern", Value: out.MarginAstern}, {Name: "shock", Value: out.MarginPeak}, {Name: "cone alone", Value: out.FrictionMargin}, {Name: "nut lost", Value: out.BareMargin}}
	description := "Hub on a taper of " + b.Length(in.ShaftDiameter) + ", " + b.Length(out.ContactLength) + " long, small end " + b.Length(out.SmallEnd) +
		", pushed up " + b.SmallLength(out.PushUpUsed) + ". Margins, at 1 it lets go:" + drawing.TellMargins(margins)
	p := picture.Begin(360, 318, title, description)
	const middle, large, small = 92.0, 150.0, 270.0 // of the shaft; ends of the cone, forward on the left
	p.Area(picture.Body, []float64{16, large, small, small + 56, small + 56, small, large, 16},
		[]float64{middle - 30, middle - 30, middle - 18, middle - 12, middle + 12, middle + 18, middle + 30, middle + 30})
	p.Area(picture.Band, []float64{large + 8, small, small, large + 8}, []float64{middle - 29, middle - 18, middle - 46, middle - 58})
	p.Area(picture.Band, []float64{large + 8, small, small, large + 8}, []float64{middle + 29, middle + 18, middle + 46, middle + 58})
	p.Rect(picture.Accent, small+2, middle-24, 16, 48)
	p.Line(picture.Faint, 4, middle, 352, middle)
	p.Text(picture.Ink, "start", 20, middle+4, b.Length(in.ShaftDiameter))
	p.Text(picture.Ink, "end", small-6, middle+4, b.Length(out.SmallEnd))
	p.Text(picture.Ink, "start", small+4, middle-52, "nut")
	p.Arrow(picture.Warn, 40, 24, 20, 24)
	p.Text(picture.Ink, "start", 44, 28, "push-up "+b.SmallLength(out.PushUpUsed))
	if !math.IsNaN(float64(out.LeastNutTorque)) && !math.IsNaN(float64(out.MostNutTorque)) {
		words := b.Torque(out.LeastNutTorque) + " holds it all, " + b.Torque(out.MostNutTorque) + " yields"
		if out.LeastNutTorque > out.MostNutTorque {
			words = "yields at " + b.Torque(out.MostNutTorque) + ", before it holds it all"
		}
		p.Text(picture.Ink, "start", 16, 174, "nut: "+words)
	}
	drawing.DrawMargins(p, margins, 186)
	return []sheet.Drawing{{Name: "propeller-taper", Title: title, Description: description, SVG: p.End()}}
}
