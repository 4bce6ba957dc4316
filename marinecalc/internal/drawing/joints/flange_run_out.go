package joints

import (
	"math"

	"example.org/driveline/marinecalc/flange"
	"example.org/driveline/marinecalc/internal/picture"
	"example.org/driveline/marinecalc/quantity"
	"example.org/driveline/marinecalc/sheet"
)

// worse tells whether the rim has something to show where the face has nothing.
func worse(face, rim string) bool {
	return face == flange.RunsTrue && rim != "" && rim != flange.RunsTrue
}

// FlangeRunOut draws the run-out of the face, or of the rim where that alone runs
// out or was read, as arrows from the middle of the shaft, its mark at the top: as
// it was read in both positions, and the two parts as bars.
func FlangeRunOut(in flange.RunOutInput, out flange.RunOutResult, b picture.Brush) []sheet.Drawing {
	const (
		title  = "Run-out, looking forward"
		cx, cy = 92.0, 112.0
		radius = 76.0
		left   = 196.0
	)
	what, first, firstAt, moved, movedAt := "face", in.FaceRunOut, in.FaceAt, in.FaceRunOutMoved, in.FaceAtMoved
	flange, shaft := out.FaceWithFlange, out.FaceWithShaft
	if math.IsNaN(float64(first)) || worse(out.Cause, out.RimCause) {
		what, first, firstAt, moved, movedAt = "rim", in.RimRunOut, in.RimAt, in.RimRunOutMoved, in.RimAtMoved
		flange, shaft = out.RimWithFlange, out.RimWithShaft
	}
	description := "Run-out of the " + what + " " + b.SmallLength(first) + "."
	most := float64(first)
	for _, v := range []quantity.Length{moved, flange, shaft} {
		if float64(v) > most {
			most = float64(v)
		}
	}
	if flange >= 0 {
		description += " With the flange goes " + b.SmallLength(flange) + ", with the shaft " + b.SmallLength(shaft) + "."
	}
	p := picture.Begin(360, 216, title, description)
	p.Circle(picture.Band, cx, cy, radius)
	p.Line(picture.Faint, cx, cy-radius, cx, cy-radius-10)
	p.Text(picture.Ink, "middle", cx, 22, "mark")
	arrow := func(class string, amount quantity.Length, at quantity.Direction) {
		if r := radius * float64(amount) / most; r > 4 && !math.IsNaN(float64(at)) {
			p.Arrow(class, cx, cy, cx+r*math.Sin(float64(at)), cy-r*math.Cos(float64(at)))
		}
	}
	arrow(picture.Ink, first, firstAt)
	arrow(picture.Accent, moved, movedAt)
	p.Text(picture.Faint, "middle", cx, 208, "highest "+what)
	y := 44.0
	for _, bar := range []struct {
		class, words string
		v            quantity.Length
	}{{picture.Ink, "first ", first}, {picture.Accent, "moved ", moved}, {picture.Accent, "with the flange ", flange}, {picture.Body, "with the shaft ", shaft}} {
		if !(bar.v >= 0) {
			continue
		}
		p.Text(picture.Ink, "start", left, y, bar.words+b.SmallLength(bar.v))
		if most > 0 {
			p.Rect(bar.class, left, y+5, 150*float64(bar.v)/most, 10)
		}
		y += 42
	}
	return []sheet.Drawing{{Name: "flange-run-out", Title: title, Description: description, SVG: p.End()}}
}
