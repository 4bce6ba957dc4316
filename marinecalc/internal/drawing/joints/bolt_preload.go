package joints

import (
	"math"
	"slices"
	"sort"

	"example.org/driveline/marinecalc/fastener"
	"example.org/driveline/marinecalc/internal/picture"
	"example.org/driveline/marinecalc/quantity"
	"example.org/driveline/marinecalc/sheet"
)

// pull is a load of the bolt by its name.
type pull struct {
	name string
	load quantity.Force
}

// BoltPreload draws the clamps of the bolt as bars on the scale of its pull,
// with what the bolt bears as lines across them.
func BoltPreload(in fastener.PreloadInput, out fastener.PreloadResult, b picture.Brush) []sheet.Drawing {
	const (
		title  = "Clamp, and what the bolt bears"
		left   = 112.0
		right  = 344.0
		height = 26.0
		top    = 62.0
	)
	force := func(v quantity.Force) string { return b.Print("force", float64(v), "kN", "lbf") }
	bars := known(pull{"target", out.Preload}, pull{"at the setting", out.AchievedPreload}, pull{"by stretch", out.ClampFromStretch}, pull{"by turn", out.ClampFromTurn}, pull{"settled", out.SettledClamp})
	bears := known(pull{"proof", quantity.Force(float64(out.ProofStress) * float64(out.StressArea))},
		pull{"yield", quantity.Force(float64(in.YieldStrength) * float64(out.StressArea))}, pull{"breaks", out.BreakingLoad})
	if len(bars) == 0 {
		return nil
	}
	far := quantity.Force(0)
	description := ""
	for _, v := range slices.Concat(bars, bears) {
		far = max(far, v.load)
		description += v.name + " " + force(v.load) + ", "
	}
	at := func(v quantity.Force) float64 { return left + (right-left)*float64(v)/(1.04*float64(far)) }
	description = "Pull in the bolt: " + description[:len(description)-2] + "."
	p := picture.Begin(360, int(top+height*float64(len(bars)))+16, title, description)
	bottom := top + height*float64(len(bars))
	for i, v := range bars {
		y := top + height*float64(i)
		p.Text(picture.Ink, "end", left-6, y+16, v.name)
		p.Rect(picture.Band, left, y+2, max(1, at(v.load)-left), height-6)
		p.Text(picture.Ink, "start", left+4, y+16, force(v.load))
	}
	// Their words stand one below the other, as the lines may stand close: the largest
	// on top, so that no line goes through the words of another.
	sort.SliceStable(bears, func(i, j int) bool { return bears[i].load > bears[j].load })
	for i, v := range bears {
		class := picture.Warn
		if v.name == "proof" {
			class = picture.Accent
		}
		y := 14 + 16*float64(i)
		p.Line(class, at(v.load), y+3, at(v.load), bottom)
		p.Text(picture.Ink, "end", at(v.load)-4, y+2, v.name+" "+force(v.load))
	}
	return []sheet.Drawing{{Name: "bolt-clamp", Title: title, Description: description, SVG: p.End()}}
}

// known leaves out what is not known.
func known(list ...pull) (told []pull) {
	for _, v := range list {
		if !math.IsNaN(float64(v.load)) && v.load > 0 {
			told = append(told, v)
		}
	}
	return told
}
