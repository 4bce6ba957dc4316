package contract

import (
	"testing"

	"example.org/driveline/schemas"
)

// BenchmarkOpen opens the contract of every calculation and of the boat.
func BenchmarkOpen(b *testing.B) {
	b.ReportAllocs()
	for b.Loop() {
		for _, id := range schemas.Names() {
			OpenCalculation(id) // a schema of another kind is refused at once
		}
		if _, err := OpenDocument("boat"); err != nil {
			b.Fatal(err)
		}
	}
}
