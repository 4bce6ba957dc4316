// Package mounts draws the engine on its mounts.
package mounts

import (
	"math"
	"strings"

	"example.org/driveline/marinecalc/internal/picture"
	"example.org/driveline/marinecalc/mount"
	"example.org/driveline/marinecalc/problem"
	"example.org/driveline/marinecalc/quantity"
	"example.org/driveline/marinecalc/sheet"
)

// mountPlan places mounts on a picture, bow to the right: seen from the
// starboard side above, from the top below.
type mountPlan struct {
	*picture.Picture
	left, width   float64 // of the picture's field
	aft, fore     float64 // mounts and coupling, in m forward of the coupling
	beam          float64 // farthest mount from the shaft line, in m
	middle, reach float64 // of the plan, and how far a mount is drawn from the middle
	shaft         float64 // height of the shaft line in the side view
}

func planMounts(p *picture.Picture, mounts []mount.Mount) mountPlan {
	v := mountPlan{Picture: p, left: 60, width: 240, middle: 262, reach: 52, shaft: 84}
	for _, m := range mounts {
		v.aft, v.fore = min(v.aft, float64(m.Forward)), max(v.fore, float64(m.Forward))
		v.beam = max(v.beam, math.Abs(float64(m.Starboard)))
	}
	return v
}

func (v *mountPlan) atX(m *mount.Mount) float64 {
	return v.left + (float64(m.Forward)-v.aft)/math.Max(v.fore-v.aft, 1e-3)*v.width
}

func (v *mountPlan) atY(m *mount.Mount) float64 {
	return v.middle + float64(m.Starboard)/math.Max(v.beam, 1e-3)*v.reach
}

// engine draws shaft, coupling and engine in both views.
func (v *mountPlan) engine() {
	coupling := v.left - v.aft/math.Max(v.fore-v.aft, 1e-3)*v.width
	end := v.left + v.width
	for _, y := range []float64{v.shaft, v.middle} {
		v.Line(picture.Faint, 8, y, end+40, y)
		v.Rect(picture.Body, coupling-3, y-16, 6, 32)
	}
	v.Rect(picture.Body, coupling+8, v.shaft-42, max(end-coupling+12, 30), 56)
	v.Rect(picture.Body, coupling+8, v.middle-30, max(end-coupling+12, 30), 60)
	v.Text(picture.Faint, "start", 8, 18, "from starboard, bow to the right")
	v.Text(picture.Faint, "start", 8, v.middle-92, "from above")
}

// MountMoves draws the engine from the side and from above, with an
// arrow at each mount that is to be moved.
func MountMoves(in mount.MovesInput, out mount.MovesResult, b picture.Brush) []sheet.Drawing {
	const title = "What to do at each mount"
	var words []string
	for i, m := range in.Mounts {
		words = append(words, m.Name+": "+moveWords(out.Moves[i], b))
	}
	v := planMounts(picture.Begin(360, 352, title, problem.Capital(strings.Join(words, "; "))+"."), in.Mounts)
	v.engine()
	seen := map[float64]bool{} // a mount behind another moves alike
	for i := range in.Mounts {
		m, to := &in.Mounts[i], &out.Moves[i]
		x, y := v.atX(m), v.atY(m)
		v.Rect(picture.Ink, x-6, v.shaft+14, 12, 8)
		v.Rect(picture.Ink, x-5, y-5, 10, 10)
		if !seen[x] {
			seen[x] = true
			v.raise(to, x, b)
		}
		v.shift(m, to, x, y, b)
	}
	return []sheet.Drawing{{Name: "mount-moves", Title: title, Description: strings.Join(words, "; ") + ".", SVG: v.End()}}
}

func (v *mountPlan) raise(to *mount.Move, x float64, b picture.Brush) {
	switch {
	case to.Raise > 0:
		v.Arrow(picture.Accent, x, v.shaft+52, x, v.shaft+26)
		v.say(x, v.shaft+67, "up "+b.SetLength(abs(to.Raise)))
	case to.Raise < 0:
		v.Arrow(picture.Accent, x, v.shaft+26, x, v.shaft+52)
		v.say(x, v.shaft+67, "down "+b.SetLength(abs(to.Raise)))
	default:
		v.Text(picture.Ink, "middle", x, v.shaft+40, "leave")
	}
}

func (v *mountPlan) shift(m *mount.Mount, to *mount.Move, x, y float64, b picture.Brush) {
	below := y + 26 // letters stand outside the engine
	if m.Starboard < 0 {
		below = y - 16
	}
	switch {
	case to.Shift > 0:
		v.Arrow(picture.Accent, x+14, y-9, x+14, y+9)
		v.say(x, below, aside(b.SetLength(abs(to.Shift)), " to starboard"))
	case to.Shift < 0:
		v.Arrow(picture.Accent, x+14, y+9, x+14, y-9)
		v.say(x, below, aside(b.SetLength(abs(to.Shift)), " to port"))
	}
}

// say writes below a mount; a long text keeps to the edge of the picture on its
// side, so that those of two mounts never meet.
func (v *mountPlan) say(x, y float64, words string) {
	switch {
	case len(words) <= 14:
		v.Text(picture.Ink, "middle", x, y, words)
	case x < v.left+v.width/2:
		v.Text(picture.Ink, "start", 4, y, words)
	default:
		v.Text(picture.Ink, "end", 356, y, words)
	}
}

// aside is a shift as it stands beside its arrow, which alone says where to
// when the figure is in two units.
func aside(size, to string) string {
	if len(size) > 14 {
		return size
	}
	return size + to
}

// moveWords says a move for those who cannot see it.
func moveWords(to mount.Move, b picture.Brush) string {
	var parts []string
	switch {
	case to.Raise > 0:
		parts = append(parts, "up "+b.SetLength(abs(to.Raise)))
	case to.Raise < 0:
		parts = append(parts, "down "+b.SetLength(abs(to.Raise)))
	}
	switch {
	case to.Shift > 0:
		parts = append(parts, b.SetLength(abs(to.Shift))+" to starboard")
	case to.Shift < 0:
		parts = append(parts, b.SetLength(abs(to.Shift))+" to port")
	}
	if parts == nil {
		return "leave"
	}
	return strings.Join(parts, ", ")
}

func abs(v quantity.Length) quantity.Length { return quantity.Length(math.Abs(float64(v))) }
