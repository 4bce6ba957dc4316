// Package stern draws the gland and the stern bearing.
package stern

import (
	"math"
	"strconv"

	"example.org/driveline/marinecalc/gland"
	"example.org/driveline/marinecalc/internal/picture"
	"example.org/driveline/marinecalc/quantity"
	"example.org/driveline/marinecalc/sheet"
)

// GlandPacking draws the upper half of the box cut open with its rings, and
// beside it where on the clock each joint lies.
func GlandPacking(in gland.PackingInput, out gland.PackingResult, b picture.Brush) []sheet.Drawing {
	rings := int(out.RingCount)
	const (
		title = "Rings in the box"
		left  = 20.0
		wide  = 180.0
		top   = 48.0
		high  = 96.0
	)
	description := strconv.Itoa(rings) + map[bool]string{true: " ring of ", false: " rings of "}[rings == 1] + out.SoldAs + " in a box " + b.Length(in.BoxDepth) + " deep, the follower " + b.Length(in.FollowerDepth) + " inside. Each ring is cut " + b.Length(out.RingLength) + " long."
	if out.GrooveDepth > 0 {
		description += " The shaft is worn " + b.Length(out.GrooveDepth) + " deep."
	}
	p := picture.Begin(360, 220, title, description)
	outside := float64(in.BoxBore)/2 + float64(out.Section)/2
	scaleX, scaleY := wide/float64(in.BoxDepth), high/outside
	x := func(v quantity.Length) float64 { return left + scaleX*float64(v) }
	y := func(radius float64) float64 { return top + high - scaleY*radius }
	bore, shaft := float64(in.BoxBore)/2, float64(in.ShaftDiameter)/2

	p.Rect(picture.Body, left-8, top, wide+8, y(bore)-top) // wall of the box
	p.Rect(picture.Body, left-8, y(bore), 8, y(shaft)-y(bore))
	p.Rect(picture.Faint, left-16, y(shaft), wide+60, top+high-y(shaft)) // shaft
	for i := range min(rings, 60) {
		p.Rect(picture.Accent, x(quantity.Length(i)*out.StockSection), y(bore), scaleX*float64(out.StockSection), y(shaft)-y(bore))
	}
	packed := x(out.PackedLength)
	p.Rect(picture.Ink, packed, y(bore), left+wide+30-packed, y(shaft)-y(bore)) // follower
	if out.GrooveDepth > 0 {
		p.Rect(picture.Warn, left, y(shaft), packed-left, scaleY*float64(out.GrooveDepth))
	}
	p.Text(picture.Ink, "start", left-8, 24, strconv.Itoa(rings)+" × "+out.SoldAs)
	p.Text(picture.Ink, "start", left-8, 42, "room "+b.Length(out.Section))
	p.Text(picture.Ink, "start", left-8, 166, "cut each ring "+b.Length(out.RingLength))
	p.Text(picture.Ink, "start", left-8, 186, "buy "+b.Print("length", float64(out.TotalLength), "m", "ft"))
	if out.GrooveDepth > 0 {
		p.Text(picture.Ink, "start", left-8, 206, "groove "+b.Length(out.GrooveDepth)+" deep")
	}
	if !math.IsNaN(float64(out.JointStagger)) {
		const cx, cy, r = 314.0, 96.0, 28.0
		p.Circle(picture.Faint, cx, cy, r)
		p.Text(picture.Ink, "middle", cx, 24, "joints")
		places := int(math.Round(2 * math.Pi / float64(out.JointStagger)))
		for i := range min(rings, places) {
			angle := float64(i) * float64(out.JointStagger)
			p.Line(picture.Ink, cx+(r-8)*math.Sin(angle), cy-(r-8)*math.Cos(angle), cx+r*math.Sin(angle), cy-r*math.Cos(angle))
			p.Text(picture.Ink, "middle", cx+(r+12)*math.Sin(angle), cy-(r+12)*math.Cos(angle)+4, strconv.Itoa(i+1))
		}
	}
	return []sheet.Drawing{{Name: "packing-rings", Title: title, Description: description, SVG: p.End()}}
}
