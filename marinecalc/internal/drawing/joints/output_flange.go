package joints

import (
	"math"

	"example.org/driveline/marinecalc/flange"
	"example.org/driveline/marinecalc/internal/picture"
	"example.org/driveline/marinecalc/quantity"
	"example.org/driveline/marinecalc/sheet"
)

// OutputFlange draws the stack under the nut in section, and how its clamp falls
// with the wear of a face.
func OutputFlange(in flange.OutputInput, out flange.OutputResult, b picture.Brush) []sheet.Drawing {
	const title = "Stack under the flange nut"
	description := "From the shoulder of the shaft to the nut."
	if f := out.FittedClamp; f > 0 {
		description += " Clamp when tightened " + b.Force(f) + "."
	}
	if f := out.ClampLeft; f >= 0 {
		description += " Clamp left " + b.Force(f) + "."
	}
	if w := out.WearToLoss; w > 0 {
		description += " It is gone at " + b.SmallLength(w) + " of face wear."
	}
	p := picture.Begin(360, 250, title, description)
	stack(p, &in)
	clampByWear(p, &in, &out, b)
	return []sheet.Drawing{{Name: "output-flange", Title: title, Description: description, SVG: p.End()}}
}

// stack draws shaft, ring, hub, spacer and nut along the shaft line, forward to
// the left.
func stack(p *picture.Picture, in *flange.OutputInput) {
	const left, middle, width = 64.0, 58.0, 190.0
	p.Rect(picture.Body, 8, middle-34, left-8, 68) // shoulder of the shaft
	p.Rect(picture.Body, left, middle-14, width+62, 28)
	p.Text(picture.Ink, "start", 10, 14, "shaft")
	total := float64(in.RingLength + in.HubLength + in.SpacerLength)
	x := left
	for _, part := range [...]struct {
		class, name string
		length      quantity.Length
		high        float64
	}{{picture.Accent, "ring", in.RingLength, 24}, {picture.Band, "hub", in.HubLength, 28}, {picture.Accent, "spacer", in.SpacerLength, 24}} {
		if part.length <= 0 || total <= 0 {
			continue
		}
		w := width * float64(part.length) / total
		p.Rect(part.class, x, middle-part.high, w, part.high-14)
		p.Rect(part.class, x, middle+14, w, part.high-14)
		if part.name == "hub" { // the flange itself, at its aft end
			p.Rect(part.class, x+w-16, middle-46, 16, 18)
			p.Rect(part.class, x+w-16, middle+28, 16, 18)
		}
		if w > 34 {
			p.Text(picture.Ink, "middle", x+w/2, middle+60, part.name)
		}
		x += w
	}
	p.Rect(picture.Body, x, middle-26, 26, 52)
	p.Text(picture.Ink, "start", x+30, middle-20, "nut")
}

// clampByWear draws the straight line on which the clamp falls.
func clampByWear(p *picture.Picture, in *flange.OutputInput, out *flange.OutputResult, b picture.Brush) {
	gone, full, worn := float64(out.WearToLoss), float64(out.FittedClamp), float64(in.FaceWear)
	if !(gone > 0 && full > 0) {
		p.Text(picture.Ink, "start", 16, 160, "lengths and diameters tell what wear does")
		return
	}
	most := 1.15 * gone
	if worn > gone {
		most = 1.1 * min(worn, 6*gone)
	}
	const left, right, top, foot = 52.0, 344.0, 150.0, 216.0
	x := func(w float64) float64 { return left + (right-left)*min(w, most)/most }
	y := func(f float64) float64 { return foot - (foot-top)*f/full }
	p.Line(picture.Faint, left, foot, right, foot)
	p.Line(picture.Faint, left, top, left, foot)
	p.Line(picture.Ink, x(0), y(full), x(gone), foot)
	p.Line(picture.Ink, x(gone), foot, right, foot)
	p.Text(picture.Ink, "start", 8, top-8, "clamp "+b.Force(out.FittedClamp))
	p.Line(picture.Warn, x(gone), foot-8, x(gone), foot+4)
	anchor := "middle"
	if x(gone) > 280 {
		anchor = "end"
	}
	p.Text(picture.Ink, anchor, x(gone), foot+16, "gone at "+b.SmallLength(out.WearToLoss))
	p.Text(picture.Faint, "start", left, foot+30, "face wear")
	if math.IsNaN(worn) {
		p.Text(picture.Ink, "end", right, top+6, "wear not read")
		return
	}
	at := x(max(0, worn))
	p.Line(picture.Accent, at, top+8, at, foot)
	anchor, aside := "start", 6.0 // under the line of the clamp
	if at > 200 {
		anchor, aside = "end", -6
	}
	p.Text(picture.Accent, anchor, at+aside, foot-8, "worn "+b.SmallLength(in.FaceWear))
}
