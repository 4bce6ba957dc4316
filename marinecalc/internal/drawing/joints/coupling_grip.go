// Package joints draws what is bolted, keyed and faced together: bolts, coupling,
// output flange, propeller taper, and how they are aligned.
package joints

import (
	"math"
	"strings"

	"example.org/driveline/marinecalc/coupling"
	"example.org/driveline/marinecalc/internal/picture"
	"example.org/driveline/marinecalc/quantity"
	"example.org/driveline/marinecalc/sheet"
)

// CouplingGrip draws the torques at which the faces slip as bars, and the torques
// they have to hold as lines across them.
func CouplingGrip(in coupling.GripInput, out coupling.GripResult, b picture.Brush) []sheet.Drawing {
	type mark struct {
		name  string
		value quantity.Torque
	}
	bars := []mark{{"all bolts", out.FrictionCapacity}, {"pull astern", out.CapacityAstern}, {"one loose", out.CapacityOneLoose}, {"grade lower", out.CapacityLowerGrade}}
	held := []mark{{"ahead", in.ShaftTorque}, {"astern", in.AsternTorque}, {"shock", in.PeakTorque}}

	const (
		title       = "What slips and what turns"
		left, right = 96.0, 348.0
		top, height = 44.0, 24.0
	)
	most := 0.0
	var slip, hold []string
	for _, m := range bars {
		if !math.IsNaN(float64(m.value)) {
			most = max(most, float64(m.value))
			slip = append(slip, m.name+" "+b.Torque(m.value))
		}
	}
	for _, m := range held {
		if m.value > 0 {
			most = max(most, float64(m.value))
			hold = append(hold, m.name+" "+b.Torque(m.value))
		}
	}
	description := "Torque at which the faces slip: " + strings.Join(slip, ", ") + ". Torque to hold: " + strings.Join(hold, ", ") + "."
	if most <= 0 {
		return nil
	}
	at := func(v quantity.Torque) float64 { return left + (right-left)*float64(v)/(1.05*most) }
	p := picture.Begin(360, 200, title, description)
	y := top
	for _, m := range bars {
		if math.IsNaN(float64(m.value)) {
			continue
		}
		p.Text(picture.Ink, "end", left-6, y+16, m.name)
		p.Rect(picture.Band, left, y, at(m.value)-left, height-6)
		p.Text(picture.Ink, "start", left+4, y+14, b.Torque(m.value))
		y += height
	}
	for i, m := range held {
		if m.value == 0 {
			continue
		}
		x := at(m.value)
		p.Line(picture.Warn, x, top-6, x, y+6)
		words := m.name + " " + b.Torque(m.value)
		anchor := "start"
		if x > (left+right)/2 {
			anchor = "end"
		}
		p.Text(picture.Ink, anchor, x, y+20+16*float64(i), words)
	}
	p.Line(picture.Faint, left, top-6, left, y+6)
	p.Text(picture.Ink, "start", 4, 20, "torque at which the faces slip; lines: torque to hold")
	return []sheet.Drawing{{Name: "coupling-grip", Title: title, Description: description, SVG: p.End()}}
}
