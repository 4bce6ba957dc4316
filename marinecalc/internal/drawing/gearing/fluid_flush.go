package gearing

import (
	"strconv"

	"example.org/driveline/marinecalc/fluid"
	"example.org/driveline/marinecalc/internal/picture"
	"example.org/driveline/marinecalc/sheet"
)

// FluidFlush draws what is left of the debris after each change.
func FluidFlush(in fluid.FlushInput, out fluid.FlushResult, _ picture.Brush) []sheet.Drawing {
	const title = "Old debris left, change by change"
	percent := func(v float64) string {
		if v >= 0.1 {
			return strconv.FormatFloat(100*v, 'f', 0, 64) + " %"
		}
		return strconv.FormatFloat(100*v, 'g', 2, 64) + " %"
	}
	description := "Wanted: at most " + percent(float64(in.WantedShare)) + "."
	names, shares := []string{"now"}, []float64{1}
	for _, c := range out.Changes {
		if c.Name != "" {
			description += " After the " + c.Name + " change " + percent(float64(c.Left)) + "."
			names, shares = append(names, c.Name), append(shares, float64(c.Left))
		}
	}
	const left, bottom, height, step = 44.0, 196.0, 150.0, 34.0
	p := picture.Begin(360, 240, title, description)
	for i, share := range shares {
		x := left + 8 + step*float64(i)
		p.Rect(picture.Band, x, bottom-height*share, step-8, height*share)
		p.Text(picture.Ink, "middle", x+(step-8)/2, bottom-height*max(share, float64(in.WantedShare))-4, percent(share))
		p.Text(picture.Ink, "middle", x+(step-8)/2, bottom+16, names[i])
	}
	y := bottom - height*float64(in.WantedShare)
	p.Line(picture.Warn, left, y, 352, y)
	p.Text(picture.Ink, "end", 352, y-4, "wanted")
	p.Line(picture.Faint, left, bottom, 352, bottom)
	p.Text(picture.Ink, "start", 4, 20, "share of the old debris")
	return []sheet.Drawing{{Name: "flush", Title: title, Description: description, SVG: p.End()}}
}
