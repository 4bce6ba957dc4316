package rules_test

import (
	"fmt"

	"example.org/driveline/marinecalc/rules"
)

// A yard knows the maker's own limit for a gland. The maker and the figure are
// invented.
func ExampleBook_Overlay() {
	book, err := rules.Standard().Overlay([]byte(`{
	  "title": "Example Yard, invented figures",
	  "limits": [
	    {"id": "example-maker-rise", "calculation": "gland-heat", "on": "measuredRise", "title": "Measured rise, the gland maker's limit",
	     "max": "15 K",
	     "source": {"document": "Example Gland Works (invented), data sheet 1"}, "basis": "maker",
	     "how": "Hold a thermometer to the gland and to the sea water.",
	     "why": "The maker's seal hardens above it."}
	  ]
	}`))
	if err != nil {
		fmt.Println(err)
		return
	}
	l := book.Limits("gland-heat").At(0)
	fmt.Printf("%s: at most %s (%s, %s)\n", l.Title, l.Max.Text, l.Source, l.Basis.Authority())
	fmt.Println("overlays:", book.Overlays()[0].Title, "over", rules.Standard().Overlays())
	// Output:
	// Measured rise, the gland maker's limit: at most 15 K (Example Gland Works (invented), data sheet 1, maker's figure)
	// overlays: Example Yard, invented figures over []
}
