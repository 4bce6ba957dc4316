package sheet_test

import (
	"fmt"

	"example.org/driveline/marinecalc/sheet"
)

// A panel draws a verdict by its codes and numbers, and shows what people
// read.
func ExampleVerdict() {
	rise, most := 23.0, 20.0 // K
	v := sheet.Verdict{Title: "Measured temperature rise of the gland", Word: sheet.Beyond, Side: sheet.AtMost, SI: &rise, BoundSI: &most, Unit: "K"}
	if v.Word == sheet.Beyond && v.Side == sheet.AtMost {
		fmt.Printf("red from %g %s, needle at %g: %s\n", *v.BoundSI, v.Unit, *v.SI, v.Word.Reads(v.Side))
	}
	// Output: red from 20 K, needle at 23: over the limit
}

// The words of verdicts, most urgent first, as people read them.
func ExampleWords() {
	for _, w := range sheet.Words() {
		fmt.Println(w.Rank(), w, "-", w.Reads(sheet.AtLeast))
	}
	// Output:
	// 0 beyond - under the minimum
	// 1 outside the guide - outside the guide
	// 2 cannot tell - not enough to tell
	// 3 near the limit - OK but close
	// 4 about the guide - about the guide
	// 5 within - OK
	// 6 inside the guide - inside the guide
	// 7 not measured - not measured
}

// A result without a range is read like any other.
func ExampleSpread_Range() {
	r := sheet.Result{Text: "37.84 N·m"}
	_, _, ok := r.Range()
	fmt.Println(ok, r.Interval == "", r.Half())
	// Output: false true 0
}
