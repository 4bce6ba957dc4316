package quantity

import "testing"

func TestEither(t *testing.T) {
	const text = "It reads to {0.05 mm|2 thou}, {a hand|a foot} off."
	for s, want := range map[System]string{
		Metric: "It reads to 0.05 mm, a hand off.", US: "It reads to 2 thou, a foot off.", Both: "It reads to 0.05 mm (2 thou), a hand (a foot) off.",
	} {
		if got := Either(text, s); got != want {
			t.Errorf("%s: %q", s, got)
		}
	}
	for _, as := range []string{"", "none", "{one}", "{open|ended", "}{"} {
		if got := Either(as, US); got != as {
			t.Errorf("%q became %q", as, got)
		}
	}
}
