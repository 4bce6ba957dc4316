package shaftline

import (
	"math"

	"example.org/driveline/marinecalc/internal/picture"
	"example.org/driveline/marinecalc/shaft"
	"example.org/driveline/marinecalc/sheet"
)

// KeyStrength draws shaft and key from the end, to one scale.
func KeyStrength(in shaft.KeyStrengthInput, out shaft.KeyStrengthResult, b picture.Brush) []sheet.Drawing {
	return key("Key in the shaft", "in hub ", in, out, b)
}

// CouplingKey draws likewise the key of the coupling flange.
func CouplingKey(in shaft.KeyStrengthInput, out shaft.KeyStrengthResult, b picture.Brush) []sheet.Drawing {
	return key("Key in the coupling flange", "in flange ", in, out, b)
}

func key(title, inHub string, in shaft.KeyStrengthInput, out shaft.KeyStrengthResult, b picture.Brush) []sheet.Drawing {
	const (
		size   = 220.0
		radius = 72.0
		middle = size / 2
		centre = middle + 12
	)
	description := "Seen from the end, to one scale: shaft " + b.Length(in.ShaftDiameter) + ", key " + b.Length(in.KeyWidth) + " wide and " +
		b.Length(out.KeyRise) + " high, " + b.Length(out.SeatInShaft) + " of it in the shaft."
	b = b.Single()
	p := picture.Begin(340, 220, title, description)
	scale := 2 * radius / float64(in.ShaftDiameter)
	w, h, seat := float64(in.KeyWidth)*scale, float64(out.KeyRise)*scale, float64(out.SeatInShaft)*scale
	p.Circle(picture.Body, middle, centre, radius)
	shoulder := centre - math.Sqrt(max(0, radius*radius-w*w/4)) // where the keyway's side meets the shaft's surface
	p.Rect(picture.Band, middle-w/2, shoulder+seat-h, w, h)
	p.Line(picture.Accent, middle-w/2, shoulder, middle+w/2, shoulder)
	p.Text(picture.Ink, "middle", middle, centre+4, b.Length(in.ShaftDiameter))
	p.Text(picture.Ink, "start", size-12, 40, "key "+b.Length(in.KeyWidth))
	p.Text(picture.Ink, "start", size-12, 58, "by "+b.Length(out.KeyRise))
	p.Text(picture.Ink, "start", size-12, 82, "in shaft "+b.Length(out.SeatInShaft))
	p.Text(picture.Ink, "start", size-12, 100, inHub+b.Length(out.SeatInHub))
	return []sheet.Drawing{{Name: "key", Title: title, Description: description, SVG: p.End()}}
}
