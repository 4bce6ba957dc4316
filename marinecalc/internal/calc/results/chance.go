package results

import (
	"fmt"
	"math"
)

// inTen writes a share of the trials: no more of it than such a figure is
// worth, and that it holds only if what nobody confirmed does.
func inTen(p float64, guessed bool) string {
	words := fmt.Sprintf("about %.0f in 10", min(max(math.Round(10*p), 1), 9))
	switch {
	case p < 0.05:
		words = "less than 1 in 20"
	case p > 0.95:
		words = "more than 19 in 20"
	}
	if guessed {
		words += ", if the guesses hold"
	}
	return words
}

// guessed tells whether any number of the run is a figure that nobody confirmed.
func (r *Run) guessed() bool {
	for i, p := range r.In.Form.Input.Properties {
		if k := &r.In.Values[i]; k.Known && !k.Confirmed && p.Kind != nil {
			return true
		}
	}
	return false
}
