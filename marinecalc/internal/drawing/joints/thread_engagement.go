package joints

import (
	"math"

	"example.org/driveline/marinecalc/fastener"
	"example.org/driveline/marinecalc/internal/picture"
	"example.org/driveline/marinecalc/quantity"
	"example.org/driveline/marinecalc/sheet"
)

// ThreadEngagement draws the bolt in its hole to one scale, with the engagement
// wanted beside it, and the loads that break and strip as bars.
func ThreadEngagement(in fastener.EngagementInput, out fastener.EngagementResult, b picture.Brush) []sheet.Drawing {
	const title = "Bolt in its tapped hole"
	loads := []struct {
		name  string
		value quantity.Force
	}{{"bolt breaks", out.BreakingLoad}, {"bolt strips", out.BoltStripping}, {"hole strips", out.TappedStripping}, {"clamp", in.Preload}}
	description := b.Length(in.NominalDiameter) + " thread, " + b.Length(in.EngagementLength) + " engaged."
	most := 0.0
	for _, l := range loads {
		if l.value > 0 { // never for NaN
			most = max(most, float64(l.value))
			description += " " + l.name + " " + b.Force(l.value) + "."
		}
	}
	deep := float64(max(in.EngagementLength, in.TappedDepth, in.NominalDiameter*3/2))
	wanted := float64(out.EngagementWanted)
	drawn := !math.IsNaN(wanted) && wanted < 3*deep
	if drawn {
		deep = max(deep, wanted)
		description += " Wanted " + b.Length(out.EngagementWanted) + "."
	}
	const middle, face, height = 100.0, 44.0, 130.0
	scale := min(height/deep, 60/float64(in.NominalDiameter))
	half := float64(in.NominalDiameter) * scale / 2
	engaged := float64(in.EngagementLength) * scale
	p := picture.Begin(360, 300, title, description)
	p.Rect(picture.Band, 20, face, 160, height+10)
	p.Rect(picture.Body, middle-half, 14, 2*half, face-14+engaged)
	for i := range 7 { // a few turns, not all
		y := face + engaged*(float64(i)+0.5)/7
		p.Line(picture.Ink, middle-half, y, middle+half, y)
	}
	p.Text(picture.Ink, "start", 190, face+14, "engaged "+b.Length(in.EngagementLength))
	if drawn {
		y := face + wanted*scale
		p.Line(picture.Accent, middle-half-16, y, middle+half+16, y)
		p.Text(picture.Ink, "start", 190, face+34, "wanted "+b.Length(out.EngagementWanted))
	}
	if in.TappedDepth > 0 {
		y := face + float64(in.TappedDepth)*scale
		p.Line(picture.Warn, middle-half, y, middle+half, y)
		p.Text(picture.Ink, "start", 190, face+54, "thread "+b.Length(in.TappedDepth)+" deep")
	}
	y := 198.0
	for _, l := range loads {
		p.Text(picture.Ink, "end", 96, y+14, l.name)
		if l.value > 0 {
			p.Rect(picture.Band, 102, y, max(1, 240*float64(l.value)/most), 18)
			p.Text(picture.Ink, "start", 106, y+14, b.Force(l.value))
		} else {
			p.Text(picture.Ink, "start", 106, y+14, "not known")
		}
		y += 24
	}
	return []sheet.Drawing{{Name: "thread-engagement", Title: title, Description: description, SVG: p.End()}}
}
