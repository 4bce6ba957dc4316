package marinecalc

import (
	"math"

	"example.org/driveline/marinecalc/quantity"
	"example.org/driveline/marinecalc/shaft"
	"example.org/driveline/marinecalc/sheet"
)

// drawKey draws shaft and key from the end, to one scale.
func drawKey(in shaft.Keyed, out shaft.KeyHold, b brush) []sheet.Drawing {
	const (
		size   = 220.0
		radius = 72.0
		middle = size / 2
		centre = middle + 12
	)
	length, _ := quantity.Lookup("length")
	show := func(v quantity.Length) string { return length.Print(float64(v), b.units, "mm", "in") }
	const title = "Key in the shaft"
	description := "Seen from the end, to one scale: shaft " + show(in.ShaftDiameter) + ", key " + show(in.KeyWidth) + " wide and " +
		show(out.KeyRise) + " high, " + show(out.SeatInShaft) + " of it in the shaft."
	show = func(v quantity.Length) string { return length.Print(float64(v), b.single(), "mm", "in") }
	p := begin(340, 220, title, description)
	scale := 2 * radius / float64(in.ShaftDiameter)
	w, h, seat := float64(in.KeyWidth)*scale, float64(out.KeyRise)*scale, float64(out.SeatInShaft)*scale
	p.circle(body, middle, centre, radius)
	shoulder := centre - math.Sqrt(max(0, radius*radius-w*w/4)) // where the keyway's side meets the shaft's surface
	p.rect(band, middle-w/2, shoulder+seat-h, w, h)
	p.line(accent, middle-w/2, shoulder, middle+w/2, shoulder)
	p.text(ink, "middle", middle, centre+4, show(in.ShaftDiameter))
	p.text(ink, "start", size-12, 40, "key "+show(in.KeyWidth))
	p.text(ink, "start", size-12, 58, "by "+show(out.KeyRise))
	p.text(ink, "start", size-12, 82, "in shaft "+show(out.SeatInShaft))
	p.text(ink, "start", size-12, 100, "in hub "+show(out.SeatInHub))
	return []sheet.Drawing{{Name: "key", Title: title, Description: description, SVG: p.end()}}
}
