package drawing

import (
	"math"

	"example.org/driveline/marinecalc/internal/picture"
	"example.org/driveline/marinecalc/quantity"
	"example.org/driveline/marinecalc/shaft"
	"example.org/driveline/marinecalc/sheet"
)

// drawKey draws shaft and key from the end, to one scale.
func KeyStrength(in shaft.Keyed, out shaft.KeyHold, b picture.Brush) []sheet.Drawing {
	const (
		size   = 220.0
		radius = 72.0
		middle = size / 2
		centre = middle + 12
	)
	length, _ := quantity.Lookup("length")
	show := func(v quantity.Length) string { return length.Print(float64(v), b.Units, "mm", "in") }
	const title = "Key in the shaft"
	description := "Seen from the end, to one scale: shaft " + show(in.ShaftDiameter) + ", key " + show(in.KeyWidth) + " wide and " +
		show(out.KeyRise) + " high, " + show(out.SeatInShaft) + " of it in the shaft."
	show = func(v quantity.Length) string { return length.Print(float64(v), b.Single(), "mm", "in") }
	p := picture.Begin(340, 220, title, description)
	scale := 2 * radius / float64(in.ShaftDiameter)
	w, h, seat := float64(in.KeyWidth)*scale, float64(out.KeyRise)*scale, float64(out.SeatInShaft)*scale
	p.Circle(picture.Body, middle, centre, radius)
	shoulder := centre - math.Sqrt(max(0, radius*radius-w*w/4)) // where the keyway's side meets the shaft's surface
	p.Rect(picture.Band, middle-w/2, shoulder+seat-h, w, h)
	p.Line(picture.Accent, middle-w/2, shoulder, middle+w/2, shoulder)
	p.Text(picture.Ink, "middle", middle, centre+4, show(in.ShaftDiameter))
	p.Text(picture.Ink, "start", size-12, 40, "key "+show(in.KeyWidth))
	p.Text(picture.Ink, "start", size-12, 58, "by "+show(out.KeyRise))
	p.Text(picture.Ink, "start", size-12, 82, "in shaft "+show(out.SeatInShaft))
	p.Text(picture.Ink, "start", size-12, 100, "in hub "+show(out.SeatInHub))
	return []sheet.Drawing{{Name: "key", Title: title, Description: description, SVG: p.End()}}
}
