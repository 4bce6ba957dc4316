package problem

import "testing"

func TestMidSentence(t *testing.T) {
	for title, want := range map[string]string{
		"Shock factor": "shock factor", "K factor": "K factor", "SAE grade": "SAE grade", "PTO speed": "PTO speed", "UZ": "UZ", "Up": "up", "P": "P", "Aa": "aa",
		"M10 bolt": "M10 bolt", "Poisson's ratio of the shaft": "Poisson's ratio of the shaft", "Young's modulus": "Young's modulus", "Reynolds number": "Reynolds number", "Signal K": "Signal K", "Signal Kit": "signal Kit",
		"Signal": "signal", "Younger rubber": "younger rubber", "Canada, rules": "Canada, rules", "Marching": "marching", "O-ring": "O-ring", "A clunk in gear": "a clunk in gear", "Öl im Wasser": "öl im Wasser", "already small": "already small", "12 o'clock": "12 o'clock", "": "", "\xff": "\xff",
	} {
		if got := MidSentence(title); got != want {
			t.Errorf("%q: %q, want %q", title, got, want)
		}
	}
}

func TestCapital(t *testing.T) {
	for text, want := range map[string]string{"the nut": "The nut", "öl im Wasser": "Öl im Wasser", "O-ring": "O-ring", "12 turns": "12 turns", "": "", "\xff": "\xff"} {
		if got := Capital(text); got != want {
			t.Errorf("%q: %q, want %q", text, got, want)
		}
	}
}
