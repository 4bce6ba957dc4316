package marinecalc

import (
	"math"
	"strconv"

	"example.org/driveline/marinecalc/quantity"
	"example.org/driveline/marinecalc/sheet"
	"example.org/driveline/marinecalc/vibration"
)

// drawSources draws every source on a scale of frequency, as high as it is
// likely, with the measured frequency and its accuracy.
func drawSources(in vibration.Running, out vibration.Match, b brush) []sheet.Drawing {
	const title = "Sources on the scale of frequency"
	hertz, _ := quantity.Lookup("frequency")
	show := func(v quantity.Frequency) string { return hertz.Print(float64(v), b.units, "Hz", "Hz") }
	description := "Frequencies of the sources at " + show(out.EngineFrequency) + " of the engine."
	top := 1.5 * float64(in.Frequency)
	for _, c := range out.Sources {
		if c.Name != "" && !math.IsNaN(float64(c.Frequency)) {
			description += " " + c.Name + " " + show(c.Frequency) + "."
			if in.Frequency == 0 {
				top = max(top, 1.1*float64(c.Frequency))
			}
		}
	}
	if !(top > 0) {
		return nil
	}
	if in.Frequency > 0 {
		description += " Measured " + show(in.Frequency) + "; likeliest " + out.BestMatch + "."
	}
	c := chart{picture: begin(360, 240, title, description), left: 16, top: 40, width: 328, height: 140, x1: top, y1: 1}
	c.line(faint, c.left, c.top+c.height, c.left+c.width, c.top+c.height)
	for _, v := range steps(0, top) {
		c.line(faint, c.atX(v), c.top+c.height, c.atX(v), c.top+c.height+4)
		c.text(ink, "middle", c.atX(v), c.top+c.height+18, strconv.Itoa(int(v)))
	}
	c.text(ink, "middle", c.left+c.width/2, c.top+c.height+38, "Hz")
	if in.Frequency > 0 {
		low, high := float64(in.Frequency-in.FrequencyAccuracy), min(top, float64(in.Frequency+in.FrequencyAccuracy))
		c.rect(band, c.atX(max(0, low)), c.top, max(1, c.atX(high)-c.atX(max(0, low))), c.height)
		c.text(ink, "middle", c.atX(float64(in.Frequency)), c.top-20, "measured "+show(in.Frequency))
	}
	for i, s := range out.Sources {
		if s.Name == "" || math.IsNaN(float64(s.Frequency)) || float64(s.Frequency) > top {
			continue
		}
		x, class, height := c.atX(float64(s.Frequency)), ink, 0.25
		if s.Share >= 0 {
			height = 0.08 + 0.9*float64(s.Share)
			if i == 0 {
				class = accent
			}
		}
		c.line(class, x, c.top+c.height, x, c.atY(height))
		if i < 2 && s.Share >= 0 {
			anchor := "start"
			if x > c.left+c.width/2 {
				anchor = "end"
			}
			c.text(ink, anchor, x, c.atY(height)-4, strconv.Itoa(i+1)+". "+show(s.Frequency))
		}
	}
	return []sheet.Drawing{{Name: "vibration-sources", Title: title, Description: description, SVG: c.end()}}
}
