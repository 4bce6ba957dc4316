package drawing

import (
	"math"

	"example.org/driveline/marinecalc/internal/picture"
	"example.org/driveline/marinecalc/mount"
	"example.org/driveline/marinecalc/sheet"
)

// AlignmentTarget draws both shaft lines as they are to be set cold, from
// starboard and from above.
func AlignmentTarget(_ mount.TargetInput, out mount.TargetResult, b picture.Brush) []sheet.Drawing {
	const title = "Set cold like this, bow to the right"
	upright := linesOf{gap: out.TargetGapVertical, offset: out.TargetOffsetVertical, words: [4]string{"open at the top ", "open at the bottom ", "engine high ", "engine low "}}
	across := linesOf{gap: out.TargetGapHorizontal, offset: out.TargetOffsetHorizontal, words: [4]string{"open to starboard ", "open to port ", "engine to starboard ", "engine to port "}, down: true}
	description := "Up and down: " + upright.tell(b) + ". Sideways: " + across.tell(b) + "."
	if math.IsNaN(float64(out.TargetGapVertical)) {
		return nil
	}
	p := picture.Begin(360, 280, title, description)
	gap, offset := widest(out.TargetGapVertical, out.TargetGapHorizontal), widest(out.TargetOffsetVertical, out.TargetOffsetHorizontal)
	p.Text(picture.Faint, "start", 8, 16, "from starboard, enlarged")
	upright.draw(p, 72, gap, offset, b)
	p.Text(picture.Faint, "start", 8, 156, "from above, starboard below")
	across.draw(p, 212, gap, offset, b)
	return []sheet.Drawing{{Name: "cold-target", Title: title, Description: description, SVG: p.End()}}
}
