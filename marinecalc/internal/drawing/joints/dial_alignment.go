package joints

import (
	"math"
	"strings"

	"example.org/driveline/marinecalc/align"
	"example.org/driveline/marinecalc/internal/picture"
	"example.org/driveline/marinecalc/quantity"
	"example.org/driveline/marinecalc/sheet"
)

// DialAlignment draws both shaft lines at the coupling, from starboard and from
// above, bow to the right, gap and offset many times enlarged.
func DialAlignment(_ align.DialInput, out align.DialResult, b picture.Brush) []sheet.Drawing {
	return shaftLines("shaft-lines", "Both shaft lines, bow to the right",
		linesOf{gap: out.GapVertical, offset: out.OffsetVertical}, linesOf{gap: out.GapHorizontal, offset: out.OffsetHorizontal}, b)
}

// shaftLines draws both shaft lines from starboard and from above.
func shaftLines(name, title string, upright, across linesOf, b picture.Brush) []sheet.Drawing {
	upright.words = [4]string{"open at the top ", "open at the bottom ", "engine high ", "engine low "}
	across.words, across.down = [4]string{"open to starboard ", "open to port ", "engine to starboard ", "engine to port "}, true
	description := "Up and down: " + upright.tell(b) + ". Sideways: " + across.tell(b) + "."
	p := picture.Begin(360, 312, title, description)
	gap, offset := widest(upright.gap, across.gap), widest(upright.offset, across.offset)
	p.Text(picture.Faint, "start", 8, 16, "from starboard, enlarged")
	upright.draw(p, 72, gap, offset, b)
	p.Text(picture.Faint, "start", 8, 174, "from above, starboard below")
	across.draw(p, 230, gap, offset, b)
	return []sheet.Drawing{{Name: name, Title: title, Description: description, SVG: p.End()}}
}

// widest is the larger of two sizes; one that is not known is none.
func widest(a, b quantity.Length) float64 {
	most := 0.0
	for _, v := range [2]quantity.Length{a, b} {
		if size := math.Abs(float64(v)); size > most {
			most = size
		}
	}
	return most
}

// linesOf is the two lines as seen from one side.
type linesOf struct {
	gap, offset quantity.Length
	words       [4]string // gap plus, gap minus, offset plus, offset minus
	down        bool      // plus is drawn downward
}

func (l *linesOf) tell(b picture.Brush) string { return strings.Join(l.lines(b), ", ") }

// lines says angle and offset, each by itself.
func (l *linesOf) lines(b picture.Brush) []string {
	say := func(v quantity.Length, plus, minus string) string {
		switch {
		case nothing(v, b):
			return ""
		case v > 0:
			return plus + b.SmallLength(v)
		case v < 0:
			return minus + b.SmallLength(-v)
		}
		return ""
	}
	gap := say(l.gap, l.words[0], l.words[1])
	offset := say(l.offset, l.words[2], l.words[3])
	if math.IsNaN(float64(l.offset)) {
		offset = "offset not known"
	}
	switch {
	case gap == "" && offset == "":
		return []string{"in line"}
	case gap == "" || offset == "":
		return []string{gap + offset}
	}
	return []string{gap, offset}
}

// nothing tells whether a size would print as none: it is then drawn as none too.
func nothing(v quantity.Length, b picture.Brush) bool {
	return !math.IsNaN(float64(v)) && b.SmallLength(quantity.Length(math.Abs(float64(v)))) == b.SmallLength(0)
}

func (l *linesOf) draw(p *picture.Picture, y, gap, offset float64, b picture.Brush) {
	const meet, half, mostTilt, mostOff = 176.0, 34.0, 12.0, 16.0
	tilt, off := 0.0, 0.0
	if gap > 0 && !nothing(l.gap, b) {
		tilt = mostTilt * float64(l.gap) / gap
	}
	if offset > 0 && !math.IsNaN(float64(l.offset)) && !nothing(l.offset, b) {
		off = mostOff * float64(l.offset) / offset
	}
	if l.down {
		tilt, off = -tilt, -off
	}
	p.Line(picture.Faint, 8, y, 352, y)
	p.Rect(picture.Body, 24, y-6, meet-32, 12) // shaft
	p.Rect(picture.Body, meet-14, y-half, 8, 2*half)
	at := y - off
	const out = 150.0
	lean := tilt / (2 * half) // the face leans by it, and the line behind with it
	p.Area(picture.Accent, []float64{meet + tilt/2, meet + 8 + tilt/2, meet + 8 - tilt/2, meet - tilt/2},
		[]float64{at - half, at - half, at + half, at + half})
	p.Line(picture.Accent, meet+8, at, meet+8+out, at+lean*out)
	for i, words := range l.lines(b.Single()) {
		p.Text(picture.Ink, "middle", 180, y+58+17*float64(i), words)
	}
}
