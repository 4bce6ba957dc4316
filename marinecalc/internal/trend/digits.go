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
	from := strings.IndexAny(text, "0123456789")
	if from < 0 {
		return 0
	}
	to := from
	for to < len(text) && strings.IndexByte("0123456789.,/- ", text[to]) >= 0 {
		to++
	}
	number := strings.TrimRight(text[from:to], " -.,")
	more := 1.0
	decimals := 0
	if _, parts, is := strings.Cut(number, "/"); is {
		of, err := strconv.ParseFloat(parts, 64)
		if err != nil || of == 0 {
			return 0
		}
		more, decimals = 1/of, 9
	} else if dot := strings.LastIndexAny(number, ".,"); dot >= 0 {
		decimals = len(number) - dot - 1
		more = math.Pow10(-decimals)
	}
	unit := text[from+len(number):]
	zero, one := "0"+unit, strconv.FormatFloat(more, 'f', decimals, 64)+unit
	if t.property.Kind == nil {
		return 0
	}
	a, err := t.property.Kind.Parse(zero)
	if err != nil {
		return more // a bare number in SI
	}
	b, err := t.property.Kind.Parse(one)
	if err != nil {
		return 0
	}
	return math.Abs(b.SI - a.SI)
}
