package verdict

import (
	"strings"

	"example.org/driveline/marinecalc/sheet"
)

// passedElsewhere says on which limit of another sheet of the boat, itself
// passed, a value hangs that would be OK: a clamp that the thread does not bear
// holds no coupling. It is "" where there is none.
func (r *Judgement) passedElsewhere(h *held) string {
	if r.In.Request.Boat == nil {
		return ""
	}
	for _, at := range h.While.All() {
		id, limit, _ := strings.Cut(at, "/")
		if id == r.In.Form.ID {
			continue
		}
		other := r.In.Request.OtherSheet(id)
		if other == nil {
			continue
		}
		if v := other.Sheet.Verdict(limit); v != nil && v.Word == sheet.Beyond {
			return "OK only once this is put right: " + midSentence(v.Title) + ", " + v.Value + ", is " + v.Reads + ". See " + midSentence(other.Sheet.Title)
		}
	}
	return ""
}
