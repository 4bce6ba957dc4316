package stock

import (
	"math"
	"testing"
)

func TestSizesAreRead(t *testing.T) {
	// Exact factors: 1 in = 25.4 mm.
	want := []struct {
		words string
		size  float64
	}{{"8 mm", 0.008}, {"12.5 mm", 0.0125}, {"3/4 in", 0.01905}, {"1 in", 0.0254}, {"1-3/4 in", 0.04445}}
	list := List("8 mm, 12.5 mm,3/4 in, 1 in,  1-3/4 in")
	for _, w := range want {
		size, words, rest := list.Cut()
		if words != w.words || math.Abs(float64(size)-w.size) > 1e-12 {
			t.Errorf("got %v (%q), want %v (%q)", size, words, w.size, w.words)
		}
		list = rest
	}
	if list != "" {
		t.Errorf("%q is left", list)
	}
}

func TestBadListsAreNamed(t *testing.T) {
	for _, bad := range []List{"8", "8 cm", "eight mm", "8 mm,, 9 mm", "9 mm, 8 mm", "8 mm, 8 mm", "-8 mm", "1-5/4 in", "1/0 in", "0 mm", "1234567 mm", ",", "8 mm 9 mm"} {
		if bad.Fault() == "" {
			t.Errorf("%q was taken", bad)
		}
	}
	if f := List("1/2 in, 3/4 in, 25 mm").Fault(); f != "" {
		t.Error(f)
	}
}

func TestAmounts(t *testing.T) {
	for words, want := range map[string]float64{"12": 12, "12.5": 12.5, "7/16": 0.4375, "1-3/4": 1.75, "9": 9, "19/32": 0.59375, "10.09": 10.09, "123456": 123456} {
		if got := Amount(words); got != want {
			t.Errorf("%q is %v, want %v", words, got, want)
		}
	}
	for _, bad := range []string{"", "7/16-14", "1-8", "a", "1.", "3 4", "1234567", "1:", "16/16"} {
		if got := Amount(bad); !math.IsNaN(got) {
			t.Errorf("%q is %v", bad, got)
		}
	}
}

func TestCutDoesNotAllocate(t *testing.T) {
	list := List("1/2 in, 12.75 mm, 1-3/4 in")
	n := testing.AllocsPerRun(100, func() {
		for l := list; l != ""; {
			_, _, l = l.Cut()
		}
		_ = list.Fault()
	})
	if n != 0 {
		t.Errorf("%v allocations", n)
	}
}

func FuzzList(f *testing.F) {
	f.Add("8 mm, 1-1/2 in")
	f.Fuzz(func(t *testing.T, text string) {
		l := List(text)
		for n := 0; l != ""; n++ {
			if n > len(text) {
				t.Fatal("the list does not end")
			}
			_, _, l = l.Cut()
		}
		_ = List(text).Fault()
	})
}
