package gearing

import (
	"example.org/driveline/marinecalc/debris"
	"example.org/driveline/marinecalc/internal/picture"
	"example.org/driveline/marinecalc/quantity"
	"example.org/driveline/marinecalc/sheet"
)

// WearDebris draws the thickness of the part with what the wear took off it,
// and where the maker renews it.
func WearDebris(in debris.WearInput, out debris.WearResult, b picture.Brush) []sheet.Drawing {
	if in.PartThickness == 0 {
		return nil
	}
	const title = "What is left of the thickness"
	description := "Thickness when new " + b.Length(in.PartThickness) + ", left " + b.Length(out.ThicknessLeft) + "."
	if in.WearLimit > 0 {
		description += " The maker renews it at a wear of " + b.Length(in.WearLimit) + "."
	}
	const left, top, width, height = 14.0, 40.0, 332.0, 44.0
	at := func(v quantity.Length) float64 {
		return left + width*min(1, max(0, float64(v)/float64(in.PartThickness)))
	}
	p := picture.Begin(360, 140, title, description)
	p.Rect(picture.Band, left, top, width, height)
	p.Rect(picture.Body, left, top, at(out.ThicknessLeft)-left, height)
	p.Text(picture.Ink, "start", left, top-10, "left "+b.Length(out.ThicknessLeft))
	p.Text(picture.Ink, "end", left+width, top-10, "new "+b.Length(in.PartThickness))
	if in.WearLimit > 0 {
		limit := in.PartThickness - quantity.Length(in.WornSides)*in.WearLimit
		x := at(limit)
		p.Line(picture.Warn, x, top-4, x, top+height+8)
		p.Text(picture.Ink, "end", x, top+height+24, "renew at "+b.Length(max(limit, 0)))
	}
	return []sheet.Drawing{{Name: "thickness-left", Title: title, Description: description, SVG: p.End()}}
}
