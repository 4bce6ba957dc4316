package joints

import (
	"example.org/driveline/marinecalc/align"
	"example.org/driveline/marinecalc/internal/picture"
	"example.org/driveline/marinecalc/sheet"
)

// AlignmentChange draws where the engine's line went from where it was, from
// starboard and from above, bow to the right, many times enlarged.
func AlignmentChange(_ align.ChangeInput, out align.ChangeResult, b picture.Brush) []sheet.Drawing {
	return shaftLines("line-change", "Change of the engine's line, bow to the right",
		linesOf{gap: out.GapChangeVertical, offset: out.OffsetChangeVertical}, linesOf{gap: out.GapChangeHorizontal, offset: out.OffsetChangeHorizontal}, b)
}
