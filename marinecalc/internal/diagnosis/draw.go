package diagnosis

import (
	"fmt"
	"strings"

	"example.org/driveline/marinecalc/internal/picture"
	"example.org/driveline/marinecalc/sheet"
)

// DrawRanking draws the first causes as bars, each with its number.
func DrawRanking(_ Input, out Result, _ picture.Brush) []sheet.Drawing {
	const (
		title        = "Causes by probability"
		left, right  = 16.0, 300.0
		top, height  = 40.0, 40.0
		shown        = 6
		leastPercent = 0.005
	)
	description := ""
	rows := 0
	for _, r := range out.Ranking[:shown] {
		if r.Name == "" || r.Known == "" && float64(r.Probability) < leastPercent {
			break
		}
		rows++
		description += fmt.Sprintf("%d. %s, %s. ", rows, r.Name, r.words())
	}
	p := picture.Begin(360, int(top+height*float64(rows)+12), title, strings.TrimSpace(description))
	p.Text(picture.Ink, "start", left, 22, "found, or suspected with this probability")
	for i, r := range out.Ranking[:rows] {
		y := top + height*float64(i)
		p.Text(picture.Ink, "start", left, y+12, fmt.Sprintf("%d  %s", i+1, r.Name))
		width := (right - left) * r.bar()
		p.Rect(picture.Band, left, y+17, width, 12)
		if i == 0 {
			p.Rect(picture.Accent, left, y+17, width, 12)
		}
		p.Text(picture.Ink, "start", left+width+6, y+28, r.words())
	}
	p.Line(picture.Faint, left, top, left, top+height*float64(rows))
	return []sheet.Drawing{{Name: "fault-ranking", Title: title, Description: strings.TrimSpace(description), SVG: p.End()}}
}

// words is what stands beside a cause: found, or its probability.
func (r RankedCause) words() string {
	if r.Known != "" {
		return found
	}
	return percent(float64(r.Probability))
}

// bar is how long its bar is, of the whole.
func (r RankedCause) bar() float64 {
	if r.Known != "" {
		return 1
	}
	return float64(r.Probability)
}
