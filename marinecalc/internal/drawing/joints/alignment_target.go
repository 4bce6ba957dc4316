package joints

import (
	"math"

	"example.org/driveline/marinecalc/internal/picture"
	"example.org/driveline/marinecalc/mount"
	"example.org/driveline/marinecalc/sheet"
)

// AlignmentTarget draws both shaft lines as they are to be set cold, from
// starboard and from above.
func AlignmentTarget(_ mount.TargetInput, out mount.TargetResult, b picture.Brush) []sheet.Drawing {
	if math.IsNaN(float64(out.TargetGapVertical)) {
		return nil
	}
	return shaftLines("cold-target", "Set cold like this, bow to the right",
		linesOf{gap: out.TargetGapVertical, offset: out.TargetOffsetVertical}, linesOf{gap: out.TargetGapHorizontal, offset: out.TargetOffsetHorizontal}, b)
}
