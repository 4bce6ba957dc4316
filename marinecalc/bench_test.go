package marinecalc

import (
	"encoding/json"
	"testing"

	"example.org/driveline/marinecalc/internal/calc"
	"example.org/driveline/marinecalc/internal/catalogue"
	"example.org/driveline/marinecalc/sample"
)

// benchInput is an input as a person types it, from the schema's examples.
func benchInput(b *testing.B, c calc.Calculation) []byte {
	b.Helper()
	input, err := sample.Typed(c.ID)
	if err != nil {
		b.Fatal(err)
	}
	text, err := json.Marshal(input)
	if err != nil {
		b.Fatal(err)
	}
	return text
}

// benchRuns times each calculation from JSON with schema validation.
func benchRuns(b *testing.B, o Options) {
	for _, c := range catalogue.Calculations {
		b.Run(c.ID, func(b *testing.B) {
			input := benchInput(b, c)
			b.ReportAllocs()
			for b.Loop() {
				if _, err := Run(c.ID, input, o); err != nil {
					b.Fatal(err)
				}
			}
		})
	}
}

// BenchmarkPlain: no ranges. Issue 2 asks for under 50 µs.
func BenchmarkPlain(b *testing.B) { benchRuns(b, Options{NoRanges: true}) }

// BenchmarkBrief: the same without worked lines and drawings.
func BenchmarkBrief(b *testing.B) { benchRuns(b, Options{NoRanges: true, Brief: true}) }

// BenchmarkRanges: with 4096 trials. Issue 2 asks for under 5 ms.
func BenchmarkRanges(b *testing.B) { benchRuns(b, Options{}) }

// BenchmarkBoat: the whole demo boat, 4096 trials a calculation. Issue 3 asks
// for under 150 ms on one core.
func BenchmarkBoat(b *testing.B) {
	boat := demoBoat(b, "kittiwake")
	for b.Loop() {
		if _, err := Check(boat, Options{}); err != nil {
			b.Fatal(err)
		}
	}
}
