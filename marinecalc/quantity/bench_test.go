package quantity

import "testing"

func BenchmarkParse(b *testing.B) {
	for _, c := range []struct{ kind, text string }{
		{"length", "32 mm"}, {"length", "1-11/16 in"}, {"torque", "45 lbf·ft ± 5 %"}, {"temperature", "30 °C"}, {"torque", "45 lb-ft"},
	} {
		k := kind(b, c.kind)
		b.Run(c.text, func(b *testing.B) {
			b.ReportAllocs()
			for b.Loop() {
				if _, err := k.Parse(c.text); err != nil {
					b.Fatal(err)
				}
			}
		})
	}
}

func BenchmarkPrint(b *testing.B) {
	k := kind(b, "length")
	b.Run("Metric", func(b *testing.B) {
		b.ReportAllocs()
		for b.Loop() {
			k.Print(0.032, Metric, "", "")
		}
	})
	b.Run("Both", func(b *testing.B) {
		b.ReportAllocs()
		for b.Loop() {
			k.Print(0.0111125, Both, "mm", "in")
		}
	})
	b.Run("Exact", func(b *testing.B) {
		b.ReportAllocs()
		for b.Loop() {
			k.Exact(0.0111125, "in")
		}
	})
}

// The hot path must not allocate beyond the text it returns.
func TestAllocations(t *testing.T) {
	k := kind(t, "length")
	if n := testing.AllocsPerRun(100, func() { _, _ = k.Parse("32 mm") }); n > 0 {
		t.Errorf("Parse allocates %v times", n)
	}
	if n := testing.AllocsPerRun(100, func() { k.Print(0.0111125, Both, "mm", "in") }); n > 1 {
		t.Errorf("Print allocates %v times", n)
	}
}
