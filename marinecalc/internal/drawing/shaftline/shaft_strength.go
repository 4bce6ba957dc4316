// Package shaftline draws the propeller shaft: its sizes, droop, whirl,
// withdrawal and keys.
package shaftline

import (
	"math"

	"example.org/driveline/marinecalc/internal/picture"
	"example.org/driveline/marinecalc/quantity"
	"example.org/driveline/marinecalc/shaft"
	"example.org/driveline/marinecalc/sheet"
)

// ShaftStrength draws the shaft as it is beside the diameters that the rules
// ask for, to one scale.
func ShaftStrength(in shaft.StrengthInput, out shaft.StrengthResult, b picture.Brush) []sheet.Drawing {
	const (
		width, height = 360, 190
		floor, tall   = 140.0, 110.0
	)
	type disc struct {
		name  string
		d     quantity.Length
		class string
	}
	discs := []disc{{"this shaft", in.ShaftDiameter, picture.Body}}
	for _, rule := range []disc{{"yacht rule", out.YachtDiameter, picture.Warn}, {"class rule", out.ClassDiameter, picture.Warn}} {
		if !math.IsNaN(float64(rule.d)) {
			discs = append(discs, rule)
		}
	}
	if len(discs) == 1 {
		return nil
	}
	greatest := quantity.Length(0)
	for _, one := range discs {
		greatest = max(greatest, one.d)
	}
	const title = "Shaft and what the rules ask for"
	description, comma := "Seen from the end, to one scale: ", ""
	for _, one := range discs {
		description += comma + one.name + " " + b.Print("length", float64(one.d), "mm", "in")
		comma = ", "
	}
	description += "."
	p := picture.Begin(width, height, title, description)
	scale := tall / float64(greatest)
	place := float64(width) / float64(len(discs))
	p.Line(picture.Faint, 8, floor, width-8, floor)
	for i, one := range discs {
		x, r := place*(float64(i)+0.5), float64(one.d)*scale/2
		p.Circle(one.class, x, floor-r, r)
		if i == 0 && in.ShaftBore > 0 {
			p.Circle(picture.Faint, x, floor-r, float64(in.ShaftBore)*scale/2)
		}
		p.Text(picture.Ink, "middle", x, floor+20, one.name)
		p.Text(picture.Ink, "middle", x, floor+38, b.Single().Length(one.d))
	}
	return []sheet.Drawing{{Name: "shaft-sizes", Title: title, Description: description, SVG: p.End()}}
}
