package stern

import (
	"math"

	"example.org/driveline/marinecalc/bearing"
	"example.org/driveline/marinecalc/internal/picture"
	"example.org/driveline/marinecalc/problem"
	"example.org/driveline/marinecalc/quantity"
	"example.org/driveline/marinecalc/sheet"
)

// BearingClearance draws the shaft lying in its bearing, the play many times enlarged,
// and a scale from no play to the worn limit.
func BearingClearance(in bearing.ClearanceInput, out bearing.ClearanceResult, b picture.Brush) []sheet.Drawing {
	const (
		title  = "Shaft in its bearing"
		cx, cy = 84.0, 108.0
		shell  = 70.0
		most   = 22.0 // play that is drawn for the worn limit
		left   = 196.0
		top    = 40.0
		high   = 136.0
	)
	scale := max(float64(in.WornLimit), float64(out.Clearance))
	for _, v := range []quantity.Length{in.NewClearance, out.EarlierUsed, out.ClearanceFromLift, out.ClearanceFromWire, out.ClearanceRead, out.ClearanceFromMark, in.WireOut} {
		if float64(v) > scale { // and known
			scale = float64(v)
		}
	}
	if !(scale > 0) {
		return nil
	}
	description := "Clearance " + b.Length(out.Clearance) + "."
	play := max(0, min(1, float64(out.Clearance)/scale)) * most
	p := picture.Begin(360, 216, title, description+bearingWords(&in, &out, b))
	p.Circle(picture.Body, cx, cy, shell+10)
	p.Circle(picture.Band, cx, cy, shell)
	p.Circle(picture.Accent, cx, cy+play/2, shell-play/2)
	p.Text(picture.Ink, "middle", cx, cy+5, b.Length(out.Clearance))
	p.Text(picture.Faint, "middle", cx, 206, "play enlarged")

	at := func(v quantity.Length) float64 { return top + high*(1-float64(v)/(1.1*scale)) }
	p.Line(picture.Faint, left, top, left, top+high)
	p.Text(picture.Ink, "start", left+14, at(0)+4, "0")
	lowest := at(0)
	mark := func(class string, v quantity.Length, words string) {
		if !(v > 0) {
			return
		}
		y := at(v)
		p.Line(class, left-8, y, left+8, y)
		if y > lowest-17 { // keep the words apart, the marks where they are
			y = lowest - 17
		}
		lowest = y
		p.Text(picture.Ink, "start", left+14, y+4, words+" "+b.Length(v))
	}
	type level struct {
		class string
		value quantity.Length
		words string
	}
	marks := []level{{picture.Ink, in.NewClearance, "new"}, {picture.Ink, out.EarlierUsed, "before"}, {picture.Accent, out.Clearance, "now"}, {picture.Warn, in.WornLimit, "renew at"}}
	for _, w := range bearingWays(&out) {
		if math.Abs(float64(w.value-out.Clearance)) > 1e-9 {
			marks = append(marks, level{picture.Faint, w.value, w.words})
		}
	}
	if in.WireOut > 0 && in.WireIn >= 0 { // between two wires
		p.Line(picture.Accent, left, at(in.WireIn), left, at(in.WireOut))
	}
	for i := range marks { // from the bottom of the scale upward
		for j := i; j > 0 && !(marks[j].value >= marks[j-1].value); j-- {
			marks[j], marks[j-1] = marks[j-1], marks[j]
		}
	}
	for _, m := range marks {
		mark(m.class, m.value, m.words)
	}
	return []sheet.Drawing{{Name: "stern-bearing", Title: title, Description: description + bearingWords(&in, &out, b), SVG: p.End()}}
}

// bearingWay is a way to the clearance, and what it gives.
type bearingWay struct {
	value quantity.Length
	words string
}

// bearingWays are those that were read.
func bearingWays(out *bearing.ClearanceResult) (read []bearingWay) {
	for _, w := range []bearingWay{{out.ClearanceFromBore, "by bore"}, {out.ClearanceFromLift, "by lift"}, {out.ClearanceFromWire, "by wire"}, {out.ClearanceRead, "by feeler"}, {out.ClearanceFromMark, "by mark"}} {
		if w.value > 0 {
			read = append(read, w)
		}
	}
	return read
}

// bearingWords tells what the scale shows to those who cannot see it.
func bearingWords(in *bearing.ClearanceInput, out *bearing.ClearanceResult, b picture.Brush) string {
	words := ""
	if ways := bearingWays(out); len(ways) > 1 {
		for _, w := range ways {
			words += " " + problem.Capital(w.words) + " " + b.Length(w.value) + "."
		}
	}
	if in.WornLimit > 0 {
		words += " Worn limit " + b.Print("length", float64(in.WornLimit), "mm", "in") + "."
	}
	if in.NewClearance > 0 {
		words += " When new " + b.Print("length", float64(in.NewClearance), "mm", "in") + "."
	}
	if out.TimeLeft >= 0 && out.TimeLeft < bearing.Never {
		words += " At this rate " + b.Print("time", float64(out.TimeLeft), "h", "h") + " of running are left."
	}
	return words
}
