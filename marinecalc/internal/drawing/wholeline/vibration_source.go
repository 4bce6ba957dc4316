package wholeline

import (
	"math"
	"strconv"

	"example.org/driveline/marinecalc/internal/picture"
	"example.org/driveline/marinecalc/sheet"
	"example.org/driveline/marinecalc/vibration"
)

// VibrationSource draws every source on a scale of frequency, as high as it is
// likely, with the measured frequency and its accuracy.
func VibrationSource(in vibration.SourceInput, out vibration.SourceResult, b picture.Brush) []sheet.Drawing {
	const title = "Sources on the scale of frequency"
	description := "Frequencies of the sources at " + b.Frequency(out.EngineFrequency) + " of the engine."
	top := 1.5 * float64(in.Frequency)
	for _, c := range out.Sources {
		if c.Name != "" && !math.IsNaN(float64(c.Frequency)) {
			description += " " + c.Name + " " + b.Frequency(c.Frequency) + "."
			if in.Frequency == 0 {
				top = max(top, 1.1*float64(c.Frequency))
			}
		}
	}
	if !(top > 0) {
		return nil
	}
	if in.Frequency > 0 {
		description += " Measured " + b.Frequency(in.Frequency) + "; likeliest " + out.BestMatch + "."
	}
	c := picture.Chart{Picture: picture.Begin(360, 240, title, description), Left: 16, Top: 40, Width: 328, Height: 140, X1: top, Y1: 1}
	c.Line(picture.Faint, c.Left, c.Top+c.Height, c.Left+c.Width, c.Top+c.Height)
	for _, v := range picture.Steps(0, top) {
		c.Line(picture.Faint, c.AtX(v), c.Top+c.Height, c.AtX(v), c.Top+c.Height+4)
		c.Text(picture.Ink, "middle", c.AtX(v), c.Top+c.Height+18, strconv.Itoa(int(v)))
	}
	c.Text(picture.Ink, "middle", c.Left+c.Width/2, c.Top+c.Height+38, "Hz")
	if in.Frequency > 0 {
		low, high := float64(in.Frequency-in.FrequencyAccuracy), min(top, float64(in.Frequency+in.FrequencyAccuracy))
		c.Rect(picture.Band, c.AtX(max(0, low)), c.Top, max(1, c.AtX(high)-c.AtX(max(0, low))), c.Height)
		c.Text(picture.Ink, "middle", c.AtX(float64(in.Frequency)), c.Top-20, "measured "+b.Frequency(in.Frequency))
	}
	for i, s := range out.Sources {
		if s.Name == "" || math.IsNaN(float64(s.Frequency)) || float64(s.Frequency) > top {
			continue
		}
		x, class, height := c.AtX(float64(s.Frequency)), picture.Ink, 0.25
		if s.Share >= 0 {
			height = 0.08 + 0.9*float64(s.Share)
			if i == 0 {
				class = picture.Accent
			}
		}
		c.Line(class, x, c.Top+c.Height, x, c.AtY(height))
		if i < 2 && s.Share >= 0 {
			anchor := "start"
			if x > c.Left+c.Width/2 {
				anchor = "end"
			}
			c.Text(picture.Ink, anchor, x, c.AtY(height)-4, strconv.Itoa(i+1)+". "+b.Frequency(s.Frequency))
		}
	}
	return []sheet.Drawing{{Name: "vibration-sources", Title: title, Description: description, SVG: c.End()}}
}
