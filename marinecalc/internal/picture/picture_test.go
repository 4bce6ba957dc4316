package picture_test

import (
	"math"
	"strings"
	"testing"

	"example.org/driveline/marinecalc/internal/picture"
	"example.org/driveline/marinecalc/internal/testboat"
)

// Whatever the words and numbers, the picture is well formed, has its title and
// description, and no inline style.
func TestPicturesAreWellFormed(t *testing.T) {
	p := picture.Begin(100, 50, `<title> & "more"`, "it's </desc>")
	p.Line(picture.Ink, 0, 0, 100, 50)
	p.Circle(picture.Accent, 1, 2, 3)
	p.Rect(picture.Body, math.NaN(), math.Inf(1), -math.Inf(1), 1e300)
	p.Curve(picture.Band, []float64{0, 1, math.NaN()}, []float64{0, 1, 2})
	p.Area(picture.Band, nil, nil)
	p.Text(picture.Warn, "middle", 1, 2, `<script>"&'`)
	p.Arrow(picture.Faint, 1, 1, 1, 1)
	svg := p.End()
	if fault := testboat.WellFormed(svg); fault != "" {
		t.Errorf("%s: %s", fault, svg)
	}
	for _, has := range []string{`viewBox="0 0 100 50"`, "<title>&lt;title&gt; &amp; &quot;more&quot;</title>", "<desc>it&#39;s &lt;/desc&gt;</desc>", `role="img"`, "&lt;script&gt;"} {
		if !strings.Contains(svg, has) {
			t.Errorf("%q is not in %s", has, svg)
		}
	}
	if strings.Contains(svg, "style") || strings.Contains(svg, "<script") {
		t.Error(svg)
	}
}

// Coordinates are rounded to a tenth, and nothing is minus zero.
func TestCoordinatesAreTenths(t *testing.T) {
	for v, want := range map[float64]string{0: "0", 1: "1", 1.04: "1", 1.05: "1.1", -1.25: "-1.3", -0.04: "0", 12.3456: "12.3", 999999.9: "999999.9", 2e6: "0"} {
		p := picture.Begin(1, 1, "", "")
		p.Circle("", v, 0, 0)
		if svg := p.End(); !strings.Contains(svg, `cx="`+want+`"`) {
			t.Errorf("%v: %s", v, svg)
		}
	}
}

// A picture begins empty, though it takes the buffer of one before it.
func TestPicturesDoNotMix(t *testing.T) {
	first := picture.Begin(1, 1, "first", "")
	first.Text("", "start", 0, 0, "word")
	kept := first.End()
	second := picture.Begin(1, 1, "second", "").End()
	if strings.Contains(second, "word") || strings.Contains(second, "first") || !strings.Contains(kept, "word") {
		t.Errorf("%s\n%s", kept, second)
	}
}

// Letters come after every line and area, so that none crosses them; those of
// a group stay in it, and turn with it.
func TestLettersStandOverLines(t *testing.T) {
	p := picture.Begin(1, 1, "", "")
	p.Text(picture.Ink, "start", 0, 0, "first")
	p.Group("part", "", 90, 0, 0)
	p.Text(picture.Ink, "start", 0, 0, "inside")
	p.EndGroup()
	p.Line(picture.Warn, 0, 0, 1, 1)
	svg := p.End()
	at := func(s string) int { return strings.Index(svg, s) }
	if at("first") < at("<line") || at("inside") > at("</g>") || at("first") < 0 || at("inside") < 0 {
		t.Error(svg)
	}
}

// An arrow has a line and the two of its point; one of no length is a line.
func TestArrowsHaveAPoint(t *testing.T) {
	lines := func(x, y float64) int {
		p := picture.Begin(1, 1, "", "")
		p.Arrow("", 0, 0, x, y)
		return strings.Count(p.End(), "<line")
	}
	if a, b := lines(10, 0), lines(0, 0); a != 3 || b != 1 {
		t.Errorf("%d and %d lines", a, b)
	}
}
