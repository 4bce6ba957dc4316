package joints

import (
	"math"
	"strconv"

	"example.org/driveline/marinecalc/align"
	"example.org/driveline/marinecalc/internal/picture"
	"example.org/driveline/marinecalc/quantity"
	"example.org/driveline/marinecalc/sheet"
)

// CouplingAlignment draws the coupling face as seen looking forward from the
// shaft, the fitted gap round it drawn out from the rim many times enlarged,
// the readings as dots, and where it opens widest.
func CouplingAlignment(in align.CouplingInput, out align.CouplingResult, b picture.Brush) []sheet.Drawing {
	const (
		size   = 320
		middle = size / 2
		rim    = 84.0
		least  = 14.0 // how far out the narrowest gap is drawn
		reach  = 40.0 // how much farther the widest
	)
	narrow, wide := out.MeanGap-out.GapDifference/2, out.MeanGap+out.GapDifference/2
	for _, r := range in.Readings {
		narrow, wide = min(narrow, r.Gap), max(wide, r.Gap)
	}
	radius := func(gap quantity.Length) float64 {
		if wide <= narrow {
			return rim + least
		}
		return rim + least + reach*float64((gap-narrow)/(wide-narrow))
	}
	at := func(clock, r float64) (x, y float64) {
		return middle + r*math.Sin(clock), middle - r*math.Cos(clock)
	}

	const title = "Coupling face, looking forward"
	var gaps [4]string // at 12, 3, 6 and 9 o'clock
	for i := range gaps {
		gaps[i] = gapText(b.Single(), align.GapAt(out, quantity.Direction(float64(i)*math.Pi/2)))
	}
	description := "Gap at 12 o'clock " + gaps[0] + ", at 3 " + gaps[1] + ", at 6 " + gaps[2] + ", at 9 " + gaps[3] + "."
	widest := out.Widest != "" && b.Tells("widestAt")
	if widest {
		description += " Widest about " + out.Widest + " o'clock."
	}
	p := picture.Begin(size, size, title, description)
	const steps = 48 // at this size no corner is seen
	x, y := make([]float64, steps), make([]float64, steps)
	for i := range steps {
		clock := 2 * math.Pi * float64(i) / steps
		x[i], y[i] = at(clock, radius(align.GapAt(out, quantity.Direction(clock))))
	}
	p.Area(picture.Band, x, y)
	p.Circle(picture.Body, middle, middle, rim)
	p.Circle(picture.Faint, middle, middle, rim/3)
	for hour := range 12 {
		x1, y1 := at(float64(hour)*math.Pi/6, rim-5)
		x2, y2 := at(float64(hour)*math.Pi/6, rim)
		p.Line(picture.Faint, x1, y1, x2, y2)
	}
	for i, hour := range []int{12, 3, 6, 9} {
		clock := float64(hour) * math.Pi / 6
		tx, ty := at(clock, rim-13)
		p.Text(picture.Faint, "middle", tx, ty+5, strconv.Itoa(hour))
		tx, ty = at(clock, rim/1.75)
		if hour == 3 || hour == 9 {
			ty += 16 // words are wide: below the hour, not beside it
		}
		p.Text(picture.Ink, "middle", tx, ty+5, gaps[i])
	}
	for _, r := range in.Readings {
		dx, dy := at(float64(r.Clock), radius(r.Gap))
		p.Circle(picture.Ink, dx, dy, 3)
	}
	if widest {
		x1, y1 := at(float64(out.WidestAt), rim)
		x2, y2 := at(float64(out.WidestAt), radius(wide)+10)
		p.Line(picture.Accent, x1, y1, x2, y2)
		tx, ty := at(float64(out.WidestAt), radius(wide)+20)
		p.Text(picture.Ink, anchorAt(out.WidestAt), tx, min(max(ty+5, 12), size-4), "widest")
	}
	return []sheet.Drawing{{Name: "coupling-face", Title: title, Description: description, SVG: p.End()}}
}

// anchorAt keeps letters beside a clock position inside the picture.
func anchorAt(clock quantity.Direction) string {
	switch s := math.Sin(float64(clock)); {
	case s > 0.7:
		return "end"
	case s < -0.7:
		return "start"
	}
	return "middle"
}

// gapText prints a gap as short as the drawing has space for: thousandths of
// an inch, or hundredths of a millimetre.
func gapText(b picture.Brush, gap quantity.Length) string {
	if b.Units != quantity.US {
		gap = quantity.Length(math.Round(float64(gap)*1e5) / 1e5)
	}
	return b.SmallLength(gap)
}
