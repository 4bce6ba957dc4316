package shaftline

import (
	"math"

	"example.org/driveline/marinecalc/internal/picture"
	"example.org/driveline/marinecalc/shaft"
	"example.org/driveline/marinecalc/sheet"
)

// ShaftDroop draws the free end of the shaft from the side, its droop many times
// enlarged, with the coupling face at its end.
func ShaftDroop(in shaft.DroopInput, out shaft.DroopResult, b picture.Brush) []sheet.Drawing {
	const (
		width, height = 360, 200
		bearing, end  = 60.0, 290.0 // where the shaft is held, and where it ends
		level, deep   = 80.0, 60.0  // the line without droop, and how far down the droop is drawn
		face          = 26.0        // half the coupling face
	)
	sag := b.Print("length", float64(out.DroopSag), "mm", "thou")
	const title = "Free end of the shaft"
	description := "From the side, forward to the right, the droop many times enlarged: the end droops " + sag +
		", slope " + b.Print("angle", float64(out.DroopSlope), "mm/m", "thou/in") +
		"; lift until a scale at the coupling shows " + b.Print("mass", float64(out.LiftReading), "kg", "lb") + "."
	p := picture.Begin(width, height, title, description)

	// The shape is the cubic with the slope at the bearing and droop and slope
	// at the end: what the eye can tell apart is not lost by it.
	scale := 0.0
	if sag := math.Abs(float64(out.DroopSag)); sag > 0 {
		scale = deep / sag
	}
	at0, l := 0.0, float64(in.FreeLength)
	if s := float64(out.SupportSlope); !math.IsNaN(s) {
		at0 = s
	}
	y, slope := float64(out.DroopSag), float64(out.DroopSlope)
	shape := func(t float64) float64 {
		a, c := 3*y-l*(2*at0+slope), l*(at0+slope)-2*y
		return scale * (l*at0*t + a*t*t + c*t*t*t)
	}
	p.Line(picture.Faint, 16, level, width-16, level)
	for _, side := range []float64{-1, 1} {
		p.Area(picture.Body, []float64{bearing, bearing - 9, bearing + 9}, []float64{level + side*5, level + side*19, level + side*19})
	}
	const points = 33
	x, down := make([]float64, points+1), make([]float64, points+1)
	x[0], down[0] = 20, level-min(max(scale*at0*l*40/(end-bearing), -30), 30)
	for i := range points {
		t := float64(i) / (points - 1)
		x[i+1], down[i+1] = bearing+t*(end-bearing), level+shape(t)
	}
	p.Curve(picture.Accent, x, down)
	tilt := math.Atan(scale * slope * l / (end - bearing))
	foot := level + shape(1)
	p.Line(picture.Ink, end+face*math.Sin(tilt), foot-face*math.Cos(tilt), end-face*math.Sin(tilt), foot+face*math.Cos(tilt))
	p.Line(picture.Warn, end+34, level, end+34, foot)
	p.Text(picture.Ink, "end", width-8, height-8, b.Single().SmallLength(out.DroopSag))
	p.Text(picture.Ink, "start", 16, height-8, "held here")
	p.Line(picture.Faint, bearing, level+22, bearing, height-24)
	return []sheet.Drawing{{Name: "shaft-droop", Title: title, Description: description, SVG: p.End()}}
}
