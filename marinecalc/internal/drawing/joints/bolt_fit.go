package joints

import (
	"math"
	"strconv"
	"strings"

	"example.org/driveline/marinecalc/fastener"
	"example.org/driveline/marinecalc/internal/picture"
	"example.org/driveline/marinecalc/problem"
	"example.org/driveline/marinecalc/quantity"
	"example.org/driveline/marinecalc/sheet"
)

// BoltFit draws the bolt in its stack and the order of tightening.
func BoltFit(in fastener.FitInput, out fastener.FitResult, b picture.Brush) []sheet.Drawing {
	drawings := []sheet.Drawing{}
	if !math.IsNaN(float64(out.JudgedLength)) {
		drawings = append(drawings, drawStack(&in, &out, b))
	}
	if in.BoltCount > 0 {
		drawings = append(drawings, drawOrder(in.BoltCount, &in, &out, b))
	}
	return drawings
}

// drawStack draws head, flanges, nut and the end of the bolt from the side,
// to scale, with the room there is.
func drawStack(in *fastener.FitInput, out *fastener.FitResult, b picture.Brush) sheet.Drawing {
	const (
		title  = "Bolt in its stack"
		middle = 92.0
		left   = 16.0
		right  = 344.0
	)
	description := "Grip " + b.Length(out.GripLength) + ", bolt " + b.Length(out.JudgedLength) + " long, " + b.Length(out.Protrusion) + " beyond the nut. "
	if out.LengthsThatGo != "" {
		description += "Lengths that go: " + out.LengthsThatGo + ". "
	} else if out.NoneGoes != "" {
		description += b.Words("noneGoes", out.NoneGoes) + ". "
	}
	if !math.IsNaN(float64(out.ShorterLength)) {
		description += "Next shorter " + b.Length(out.ShorterLength) + ": " + b.Words("whyNotShorter", out.WhyNotShorter) + ". "
	}
	if !math.IsNaN(float64(out.LongerLength)) {
		description += "Next longer " + b.Length(out.LongerLength) + ": " + b.Words("whyNotLonger", out.WhyNotLonger) + "."
	}

	// Distances from the back of the head's flange, plus toward the nut.
	washers := quantity.Length(in.WashersAtHead) * in.WasherThickness
	behind := washers + max(in.HeadHeight, in.NominalDiameter/2)
	before := in.HeadFlangeThickness + in.SpacerThickness + in.NutFlangeThickness
	nutEnd := out.GripLength - washers + in.NutHeight
	end := out.JudgedLength - washers
	far := max(end, nutEnd, before+in.NutRoom)
	near := max(behind, in.HeadRoom)
	scale := (right - left) / float64(near+far)
	at := func(v quantity.Length) float64 { return left + scale*float64(near+v) }
	radius := min(max(scale*float64(in.NominalDiameter)/2, 3), 26)

	p := picture.Begin(360, 216, title, description)
	box := func(class string, from, to quantity.Length, half float64) {
		if to > from {
			p.Rect(class, at(from), middle-half, at(to)-at(from), 2*half)
		}
	}
	box(picture.Body, 0, in.HeadFlangeThickness, 56)
	box(picture.Faint, in.HeadFlangeThickness, in.HeadFlangeThickness+in.SpacerThickness, 50)
	box(picture.Body, in.HeadFlangeThickness+in.SpacerThickness, before, 56)
	box(picture.Faint, -washers, 0, 2.2*radius)
	box(picture.Faint, before, out.GripLength-washers, 2.2*radius)
	box(picture.Ink, -behind, -washers, 1.7*radius)
	box(picture.Ink, out.GripLength-washers, nutEnd, 1.7*radius)
	box(picture.Accent, -washers, end, radius)
	thread := end - out.ThreadedLength
	for i := 0; i < 120; i++ {
		v := end - quantity.Length(i)*max(in.Pitch, out.ThreadedLength/119)
		if v < thread {
			break
		}
		p.Line(picture.Faint, at(v), middle-radius, at(v), middle+radius)
	}
	wall := func(v quantity.Length, words, anchor string) {
		p.Line(picture.Warn, at(v), 24, at(v), 160)
		p.Text(picture.Ink, anchor, at(v), 18, words)
	}
	if in.HeadRoom > 0 {
		wall(-in.HeadRoom, "room ends", "start")
	}
	if in.NutRoom > 0 {
		wall(before+in.NutRoom, "room ends", "end")
	}
	p.Text(picture.Ink, "start", left, 176, "grip "+b.Length(out.GripLength)+", bolt "+b.Length(out.JudgedLength)+", beyond the nut "+b.Length(out.Protrusion))
	if out.LengthsThatGo != "" {
		p.Text(picture.Ink, "start", left, 196, "go: "+shorten(out.LengthsThatGo, 44))
	} else if out.NoneGoes != "" {
		p.Text(picture.Ink, "start", left, 196, shorten(b.Words("noneGoes", out.NoneGoes), 48))
	}
	return sheet.Drawing{Name: "bolt-stack", Title: title, Description: description, SVG: p.End()}
}

// shorten keeps a line of words inside a picture.
func shorten(words string, most int) string {
	r := []rune(words)
	if len(r) <= most {
		return words
	}
	return string(r[:most-1]) + "…"
}

// inLines breaks an order of bolts into lines of so many letters.
func inLines(order []int, most int) (lines []string) {
	line := ""
	for _, number := range order {
		bolt := strconv.Itoa(number)
		if line != "" && len(line)+len(" - ")+len(bolt) > most {
			lines, line = append(lines, line+" -"), bolt
		} else if line != "" {
			line += " - " + bolt
		} else {
			line = bolt
		}
	}
	return append(lines, line)
}

// drawOrder draws the bolts numbered round their circle, as the order of
// tightening and the circle to tick off name them, the way from one to the next,
// and the passes.
func drawOrder(bolts int, in *fastener.FitInput, out *fastener.FitResult, b picture.Brush) sheet.Drawing {
	const (
		title  = "Order of tightening"
		middle = 160.0
		circle = 100.0
	)
	percent := func(v quantity.Ratio) string { return strconv.Itoa(int(math.Round(100*float64(v)))) + " %" }
	passes := []string{"1st pass " + percent(in.FirstPass), "2nd pass " + percent(in.SecondPass), "3rd pass 100 %"}
	if in.WrenchSetting > 0 {
		for i, t := range []quantity.Torque{out.FirstTorque, out.SecondTorque, in.WrenchSetting} {
			passes[i] += ": " + b.Print("torque", float64(t), "N·m", "lbf·ft")
		}
	}
	last := "then once round at 100 %"
	description := "Bolts numbered round the circle from the top. Each pass goes over them in the order " + out.TighteningOrder.String() + ". " + strings.Join(append(passes, problem.Capital(last)), ". ") + "."
	order := out.TighteningOrder.Sequence()
	inOrder := inLines(order, 40)
	p := picture.Begin(320, 352+20*len(inOrder), title, description)
	p.Circle(picture.Body, middle, 130, circle+22)
	p.Circle(picture.Faint, middle, 130, circle)
	at := func(bolt int) (x, y float64) {
		angle := 2 * math.Pi * float64(bolt-1) / float64(bolts)
		return middle + circle*math.Sin(angle), 130 - circle*math.Cos(angle)
	}
	if bolts <= 12 { // more lines would be a tangle
		for i := 1; i < len(order); i++ {
			x1, y1 := at(order[i-1])
			x2, y2 := at(order[i])
			p.Line(picture.Faint, x1, y1, x2, y2)
		}
	}
	size := min(15, 0.8*circle*math.Sin(math.Pi/float64(bolts)))
	for bolt := 1; bolt <= bolts; bolt++ {
		x, y := at(bolt)
		p.Circle(picture.Accent, x, y, size)
		p.Text(picture.Ink, "middle", x, y+4, strconv.Itoa(bolt))
	}
	for i, words := range append(append(inOrder, passes...), last) {
		p.Text(picture.Ink, "middle", middle, 278+20*float64(i), words)
	}
	return sheet.Drawing{Name: "tightening-order", Title: title, Description: description, SVG: p.End()}
}
