package seatrial

import (
	"fmt"
	"math"
	"strings"

	"example.org/driveline/marinecalc/internal/picture"
	"example.org/driveline/marinecalc/internal/seatrial/proof"
	"example.org/driveline/marinecalc/sheet"
)

// draw draws the stages one under the other, the engine speed of each as a bar,
// with the gravest word of its readings at the end.
func draw(in Input, out Result, b picture.Brush) []sheet.Drawing {
	const title = "Sea trial"
	worst := map[string]proof.Word{}
	for _, c := range out.Checks {
		if c.Stage != "" {
			worst[c.Stage] = proof.Worse(worst[c.Stage], proof.Word(c.Word))
		}
	}
	n := 0
	for _, s := range out.Protocol {
		if s.Stage != "" {
			n++
		}
	}
	if n == 0 || in.EngineSpeed <= 0 {
		return nil
	}
	const top, row, left, width = 12.0, 34.0, 12.0, 336.0
	description := fmt.Sprintf("%d stages. %s", n, out.Says)
	p := picture.Begin(360, int(top+row*float64(n)+8), title, description)
	marks := map[proof.Word]string{proof.Pass: "✓", proof.Fail: "✗ ", proof.LookAgain: "?", proof.NotRead: "–", proof.Noted: "✓"}
	for i, s := range out.Protocol[:n] {
		y := top + row*float64(i)
		words := s.Stage
		if v := float64(s.EngineSpeed); !math.IsNaN(v) {
			words += ", " + b.Single().RotationSpeed(s.EngineSpeed)
			class := picture.Body
			if s.Stage != "" && worst[s.Stage] == proof.Fail {
				class = picture.Warn
			}
			p.Rect(class, left, y+19, max(2, (width-30)*v/float64(in.EngineSpeed)), 7)
		}
		p.Line(picture.Faint, left, y+30, left+width, y+30)
		p.Text(picture.Ink, "start", left, y+13, words)
		p.Text(picture.Ink, "end", left+width, y+13, marks[worst[s.Stage]]+" "+strings.ReplaceAll(string(worst[s.Stage]), "-", " "))
	}
	return []sheet.Drawing{{Name: "sea-trial", Title: title, Description: description, SVG: p.End()}}
}
