package seatrial

import (
	"math"
	"strings"

	"example.org/driveline/marinecalc/rules"
	"example.org/driveline/marinecalc/sheet"
)

// leaves tells whether a stage is left out of the protocol: by a limit that its
// row names, or since it would turn the shaft near its critical speed or over
// it. One that was run all the same is held against its limits.
func (t *trial) leaves(stage *rules.Row) bool {
	if t.runs[stage.ID] != nil || t.session.Boat == nil {
		return false
	}
	leave := false
	for _, ref := range strings.Fields(stage.Values.Of("leftOutBy").Text) {
		leave = leave || t.says(ref) == sheet.Beyond
	}
	lever := stage.Values.Of("lever").Text
	if inGear := lever == "ahead" || lever == "astern"; inGear && !leave {
		most := t.fastest()
		leave = !math.IsInf(most, 1) && !(t.shaftSpeed(t.speed(stage), lever) <= most) // NaN too
	}
	if leave {
		t.left = append(t.left, stage.Name)
	}
	return leave
}

// says is the word on "calculation/limit" of the boat; "" where there is none.
func (t *trial) says(ref string) sheet.Word {
	calculation, limit, _ := strings.Cut(ref, "/")
	if made := t.session.Earlier(calculation); made != nil {
		if v := made.Sheet.Verdict(limit); v != nil {
			return v.Word.Plain()
		}
	}
	return ""
}

// fastest is the speed of the shaft that a critical speed leaves: with idle in
// gear clear of the range of that, the same share of its low end; or else none.
func (t *trial) fastest() float64 {
	if t.says("shaft-whirl/whirl-below-critical") != sheet.Beyond {
		return math.Inf(1)
	}
	if w := t.says("shaft-whirl/whirl-clear-of-idle"); w != sheet.Within && w != sheet.NearLimit {
		return 0
	}
	s := t.session.Earlier("shaft-whirl").Sheet
	low, _, ok := s.Result("criticalUsed").Range()
	share := s.Verdict("whirl-clear-of-idle").BoundSI
	if !ok || share == nil {
		return 0
	}
	return low * *share
}
