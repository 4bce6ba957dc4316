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
		if r.Name == "" || float64(r.Probability) < leastPercent {
			break
		}
		rows++
		description += fmt.Sprintf("%d. %s, %s. ", rows, r.Name, percent(float64(r.Probability)))
	}
	p := picture.Begin(360, int(top+height*float64(rows)+12), title, strings.TrimSpace(description))
	p.Text(picture.Ink, "start", left, 22, "probability of each cause, one of them at work alone")
	for i, r := range out.Ranking[:rows] {
		y := top + height*float64(i)
		p.Text(picture.Ink, "start", left, y+12, fmt.Sprintf("%d  %s", i+1, r.Name))
		p.Rect(picture.Band, left, y+17, (right-left)*float64(r.Probability), 12)
		if i == 0 {
			p.Rect(picture.Accent, left, y+17, (right-left)*float64(r.Probability), 12)
		}
		p.Text(picture.Ink, "start", left+(right-left)*float64(r.Probability)+6, y+28, percent(float64(r.Probability)))
	}
	p.Line(picture.Faint, left, top, left, top+height*float64(rows))
	return []sheet.Drawing{{Name: "fault-ranking", Title: title, Description: strings.TrimSpace(description), SVG: p.End()}}
}
