// The digits to which readings were read.

package trend

import (
	"math"
	"strconv"
	"strings"
)

// step is the step in which the readings were read: one of the last digit of
// the finest, or two, five or ten of it where all of them keep to that. It is
// 0 where no digits are seen.
func (t *follower) step() float64 {
	finest := math.Inf(1)
	for i := range t.read {
		if s := t.lastDigit(t.read[i].text); s > 0 {
			finest = min(finest, s)
		}
	}
	if math.IsInf(finest, 1) {
		return 0
	}
	for _, times := range [...]float64{10, 5, 2} {
		kept, moves := true, false
		for i := range t.series.Points {
			steps := (t.series.Points[i].Value - t.series.Points[0].Value) / (times * finest)
			kept = kept && math.Abs(steps-math.Round(steps)) < 1e-4
			moves = moves || math.Abs(steps) > 0.5
		}
		if kept && moves {
			return times * finest
		}
	}
	return finest
}

// lastDigit is what one more in the last digit of a number would be; of a
// fraction, one more of its parts.
func (t *follower) lastDigit(text string) float64 {
	kind := t.property.Kind
	if half := kind.HalfDigit(text); half > 0 {
		return 2 * half
	}
	if bare, err := strconv.ParseFloat(text, 64); err == nil && !math.IsNaN(bare) { // in SI
		_, decimals, _ := strings.Cut(text, ".")
		return math.Pow10(-len(decimals))
	}
	_, parts, is := strings.Cut(text, "/")
	digits := len(parts) - len(strings.TrimLeft(parts, "0123456789"))
	of, err := strconv.Atoi(parts[:digits])
	if !is || err != nil || of == 0 {
		return 0
	}
	a, err := kind.ParseAccuracy(strconv.FormatFloat(1/float64(of), 'f', 9, 64)+parts[digits:], 0)
	if err != nil {
		return 0
	}
	return a
}
