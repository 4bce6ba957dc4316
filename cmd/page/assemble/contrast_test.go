package assemble

import (
	"math"
	"os"
	"path/filepath"
	"regexp"
	"strconv"
	"strings"
	"testing"
)

var colourToken = regexp.MustCompile(`--([a-z-]+): #([0-9a-f]{6});`)

// By day every text stands out from its ground by 7:1 (WCAG 2.2, 1.4.6), in
// the dark by 4.5:1 (1.4.3): letters that glare blind eyes that must see out.
func TestContrast(t *testing.T) {
	root, err := Root()
	if err != nil {
		t.Fatal(err)
	}
	text, err := os.ReadFile(filepath.Join(root, "site", "styles", "tokens.css"))
	if err != nil {
		t.Fatal(err)
	}
	for _, block := range strings.SplitAfter(string(text), "}") {
		colour := map[string]float64{}
		for _, m := range colourToken.FindAllStringSubmatch(block, -1) {
			colour[m[1]] = luminance(t, m[2])
		}
		if _, ok := colour["ground"]; !ok {
			continue
		}
		least := 4.5
		if !strings.Contains(block, "data-light") {
			least = 7
		}
		hold := func(letters, ground string) {
			a, b := colour[letters], colour[ground]
			if ratio := (max(a, b) + 0.05) / (min(a, b) + 0.05); ratio < least {
				t.Errorf("%s: --%s on --%s is %.2f:1, less than %g:1", strings.TrimSpace(strings.SplitN(block, "{", 2)[0]), letters, ground, ratio, least)
			}
		}
		for _, ground := range []string{"ground", "paper"} {
			for _, letters := range []string{"ink", "soft", "accent", "warn", "good"} {
				hold(letters, ground)
			}
		}
		for _, ground := range []string{"accent", "danger", "warning", "caution", "notice"} {
			hold("on-"+ground, ground)
		}
	}
}

// luminance is the relative luminance of a colour (WCAG 2.2).
func luminance(t *testing.T, hex string) float64 {
	t.Helper()
	part := func(at int) float64 {
		v, err := strconv.ParseUint(hex[at:at+2], 16, 8)
		if err != nil {
			t.Fatal(err)
		}
		c := float64(v) / 255
		if c <= 0.04045 {
			return c / 12.92
		}
		return math.Pow((c+0.055)/1.055, 2.4)
	}
	return 0.2126*part(0) + 0.7152*part(2) + 0.0722*part(4)
}
