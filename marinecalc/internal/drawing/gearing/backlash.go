package gearing

import (
	"math"

	"example.org/driveline/marinecalc/flange"
	"example.org/driveline/marinecalc/internal/picture"
	"example.org/driveline/marinecalc/problem"
	"example.org/driveline/marinecalc/quantity"
	"example.org/driveline/marinecalc/sheet"
)

// Backlash draws the line from gearbox to propeller, forward to the left, with
// each joint's share of the free play as a bar below it.
func Backlash(_ flange.BacklashInput, out flange.BacklashResult, b picture.Brush) []sheet.Drawing {
	const (
		title = "Free play, joint by joint"
		line  = 52.0
		foot  = 176.0
		high  = 76.0
	)
	angle := func(v quantity.Angle) string { return b.Print("angle", float64(v), "°", "°") }
	joints := []struct {
		name  string
		share quantity.Angle
		x     float64
	}{{"gears", out.GearboxShare, 52}, {"flange", out.HubShare, 126}, {"coupling", out.CouplingShare, 200}, {"propeller", out.PropellerShare, 314}}
	if math.IsNaN(float64(out.GearboxShare)) && !math.IsNaN(float64(out.GearboxAndHub)) {
		joints[0].name, joints[0].share, joints[0].x = "gears and flange", out.GearboxAndHub, 80
		joints = append(joints[:1], joints[2:]...)
	}
	description := "Free play " + angle(out.Total) + " in all."
	most := 0.0
	for _, j := range joints {
		if v := float64(j.share); !math.IsNaN(v) {
			most = max(most, v)
			description += " " + problem.Capital(j.name) + " " + angle(j.share) + "."
		}
	}
	p := picture.Begin(360, 216, title, description)
	p.Rect(picture.Body, 16, line-28, 78, 56)          // gearbox
	p.Rect(picture.Accent, 110, line-24, 14, 48)       // output flange
	p.Rect(picture.Band, 126, line-24, 14, 48)         // shaft coupling flange
	p.Rect(picture.Body, 94, line-7, 16, 14)           // output shaft
	p.Rect(picture.Body, 140, line-7, 160, 14)         // propeller shaft
	p.Rect(picture.Band, 140, line-12, 40, 24)         // coupling's hub
	p.Rect(picture.Accent, 300, line-12, 26, 24)       // propeller's hub
	p.Line(picture.Accent, 313, line-40, 313, line+40) // blades
	for _, j := range joints {
		p.Text(picture.Faint, "middle", j.x, foot+18, j.name)
		v := float64(j.share)
		if math.IsNaN(v) {
			p.Text(picture.Ink, "middle", j.x, foot-6, "not read")
			continue
		}
		h := 0.0
		if most > 0 {
			h = high * max(0, v) / most
		}
		p.Rect(picture.Warn, j.x-12, foot-h, 24, h)
		p.Text(picture.Ink, "middle", j.x, foot-h-4, angle(j.share))
	}
	p.Line(picture.Faint, 8, foot, 352, foot)
	p.Text(picture.Ink, "middle", 180, 18, "in all "+angle(out.Total))
	return []sheet.Drawing{{Name: "backlash", Title: title, Description: description, SVG: p.End()}}
}
