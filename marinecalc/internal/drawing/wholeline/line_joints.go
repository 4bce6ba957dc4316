package wholeline

import (
	"fmt"
	"math"
	"slices"

	"example.org/driveline/marinecalc/internal/drawing"
	"example.org/driveline/marinecalc/internal/picture"
	"example.org/driveline/marinecalc/line"
	"example.org/driveline/marinecalc/problem"
	"example.org/driveline/marinecalc/quantity"
	"example.org/driveline/marinecalc/sheet"
)

// LineJoints draws the line from gearbox to propeller with its four joints, and
// below each how its margins stand to 1. The weakest has a frame and a mark as
// well as its word.
func LineJoints(_ line.JointsInput, out line.JointsResult, b picture.Brush) []sheet.Drawing {
	const title = "Joints of the line and their margins"
	names := [line.Count][2]string{{"output", "flange"}, {"coupling", "bolts"}, {"shaft in", "coupling"}, {"propeller", "on taper"}}
	description := "From gearbox to propeller."
	for i, j := range out.Joints {
		if j.StandShock == line.StandsLoose {
			description += " " + problem.Capital(names[i][0]) + " " + names[i][1] + ": found loose" + orBeside(j.Joint, &out) + "."
			continue
		}
		description += " " + problem.Capital(names[i][0]) + " " + names[i][1] + ":" + drawing.TellMargins([]drawing.Margin{{Name: "shock", Value: j.Shock}, {Name: "ahead", Value: j.Ahead}, {Name: "astern", Value: j.Astern}})
	}
	description += " Weakest in a shock: " + b.Words("weakestShock", out.WeakestShock) + ", " + b.Words("sureShock", out.SureShock) + "."
	p := picture.Begin(392, 306, title, description)
	const middle, left, column = 66.0, 60.0, 80.0
	at := func(i int) float64 { return left + column*float64(i) + column/2 }
	drawLine(p, middle, at)
	rows := [...]struct {
		name  string
		pick  func(*line.Joint) float64
		stand func(*line.Joint) string
	}{
		{"shock", func(j *line.Joint) float64 { return float64(j.Shock) }, func(j *line.Joint) string { return j.StandShock }},
		{"ahead", func(j *line.Joint) float64 { return float64(j.Ahead) }, func(j *line.Joint) string { return j.StandAhead }},
		{"astern", func(j *line.Joint) float64 { return float64(j.Astern) }, func(j *line.Joint) string { return j.StandAstern }},
	}
	top := func(row int) float64 { return 118 + 58*float64(row) }
	for row, c := range rows {
		p.Text(picture.Ink, "end", left-6, top(row)+16, c.name)
	}
	for i, n := range names {
		p.Group("opens", fmt.Sprint("row-", i), 0, 0, 0) // a page opens the sheet behind it
		p.Text(picture.Ink, "middle", at(i), 14, n[0])
		p.Text(picture.Ink, "middle", at(i), 28, n[1])
		for row, c := range rows {
			drawJoint(p, at(i), top(row), c.pick(&out.Joints[i]), c.stand(&out.Joints[i]))
		}
		p.EndGroup()
	}
	p.Text(picture.Faint, "start", left, 299, "upright line: 1, it lets go")
	return []sheet.Drawing{{Name: "line-joints", Title: title, Description: description, SVG: p.End()}}
}

// orBeside says of a joint of the coupling that its play may be in the other, where
// nobody looked at which of them is loose.
func orBeside(joint string, out *line.JointsResult) string {
	untold := slices.ContainsFunc(out.First[:], func(f line.Failing) bool { return f.Joint == line.Coupling })
	if untold && (joint == line.Faces || joint == line.Bore) {
		return ", it or the other of the coupling"
	}
	return ""
}

// drawLine draws gearbox, output flange with its nut, coupling, shaft and
// propeller from forward aft.
func drawLine(p *picture.Picture, middle float64, at func(int) float64) {
	p.Line(picture.Faint, 8, middle, 372, middle)
	p.Rect(picture.Body, 14, middle-26, 46, 52)                      // gearbox
	p.Rect(picture.Body, 60, middle-8, at(0)-40, 16)                 // its shaft
	p.Rect(picture.Band, at(0)-22, middle-14, at(1)-at(0)+10, 28)    // hub
	p.Rect(picture.Accent, at(0)+8, middle-11, 10, 22)               // nut
	p.Rect(picture.Body, at(1)-12, middle-28, 11, 56)                // faces
	p.Rect(picture.Body, at(1)+1, middle-28, 11, 56)                 //
	p.Line(picture.Accent, at(1)-20, middle-20, at(1)+20, middle-20) // bolts
	p.Line(picture.Accent, at(1)-20, middle+20, at(1)+20, middle+20)
	p.Rect(picture.Band, at(1)+12, middle-18, at(2)-at(1)+14, 36) // boss
	p.Rect(picture.Body, at(2)-24, middle-8, at(3)-at(2), 16)
	p.Rect(picture.Accent, at(2)-14, middle-11, 28, 5) // key
	p.Area(picture.Band, []float64{at(3) - 22, at(3) + 18, at(3) + 18, at(3) - 22}, []float64{middle - 20, middle - 13, middle + 13, middle + 20})
	p.Area(picture.Body, []float64{at(3) - 24, at(3) + 18, at(3) + 18, at(3) - 24}, []float64{middle - 8, middle - 4, middle + 4, middle + 8})
	p.Rect(picture.Accent, at(3)+18, middle-8, 9, 16) // nut
}

// drawJoint draws one margin: a bar whose middle is 1, its figure, and the word
// for how the joint stands.
func drawJoint(p *picture.Picture, x, y, margin float64, stand string) {
	const half, height = 34.0, 14.0
	bar := 0.0
	class := picture.Band
	if !math.IsNaN(margin) {
		bar = half * min(1, margin)
		if margin > 1 {
			bar = 2*half - half/margin
		}
		if margin < 1 {
			class = picture.Warn
		}
	}
	if bar > 0 {
		p.Rect(class, x-half, y+2, bar, height)
	}
	p.Line(picture.Faint, x-half, y+2+height, x+half, y+2+height)
	p.Line(picture.Accent, x, y-1, x, y+5+height)
	figures, word := "?", ""
	if !math.IsNaN(margin) {
		figures = drawing.Figure(quantity.Ratio(margin))
	}
	switch stand {
	case line.Weakest:
		word = "weakest"
		p.Area(picture.Warn, []float64{x - 5, x + 5, x}, []float64{y - 9, y - 9, y - 2})
	case line.Alike:
		word = "as weak"
	case line.CouldBe:
		figures, word = "not", "known"
	case line.StandsLoose:
		figures, word = "found", "loose"
		p.Area(picture.Warn, []float64{x - 5, x + 5, x}, []float64{y - 9, y - 9, y - 2})
	}
	p.Text(picture.Ink, "middle", x, y+30, figures)
	if word != "" {
		p.Text(picture.Ink, "middle", x, y+43, word)
	}
}
