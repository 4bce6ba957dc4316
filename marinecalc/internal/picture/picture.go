// Package picture writes SVG: lines, letters, charts with two scales, and
// quantities printed as drawings have space for.
package picture

import (
	"math"
	"strconv"
	"strings"
	"sync"
)

// Picture is an SVG under way. It uses presentation attributes and classes
// only, never inline style, so that a page may forbid that; the classes take
// their colours from the page. Text is escaped.
//
// Letters stand over all lines and areas, whatever was drawn first; those of a
// group stay in it.
type Picture struct {
	svg, letters []byte
	inside       int // groups that are open
}

// Begin opens a picture of that size with its title and description for
// those who cannot see it.
func Begin(width, height int, title, description string) *Picture {
	p := pictures.Get().(*Picture)
	p.svg, p.letters, p.inside = p.svg[:0], p.letters[:0], 0
	p.write(`<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 `, strconv.Itoa(width), ` `, strconv.Itoa(height), `" role="img"><title>`,
		Escape(title), `</title><desc>`, Escape(description), `</desc>`)
	return p
}

// End closes the picture and returns it. The picture is not to be used after.
func (p *Picture) End() string {
	p.svg = append(p.svg, p.letters...)
	p.write(`</svg>`)
	defer pictures.Put(p)
	return string(p.svg)
}

// pictures keeps the buffer of one picture for the next.
var pictures = sync.Pool{New: func() any { return new(Picture) }}

func (p *Picture) write(parts ...string) {
	for _, part := range parts {
		p.svg = append(p.svg, part...)
	}
}

// The classes of lines, areas and letters that a page gives its colours.
const (
	Ink    = "ink"    // lines and letters that carry the meaning
	Faint  = "faint"  // axes, helping lines
	Accent = "accent" // the value itself
	Warn   = "warn"   // a limit
	Body   = "body"   // metal seen from outside
	Band   = "band"   // the 95 % range
)

func (p *Picture) Line(class string, x1, y1, x2, y2 float64) {
	p.element("line", class, "x1", x1, "y1", y1, "x2", x2, "y2", y2)
}

func (p *Picture) Circle(class string, x, y, r float64) {
	p.element("circle", class, "cx", x, "cy", y, "r", r)
}

func (p *Picture) Rect(class string, x, y, w, h float64) {
	p.element("rect", class, "x", x, "y", y, "width", w, "height", h)
}

// element writes an empty element; attrs are name, value, name, value …
func (p *Picture) element(name, class string, attrs ...any) {
	p.write(`<`, name, ` class="`, class, `"`)
	for i := 0; i+1 < len(attrs); i += 2 {
		p.write(` `, attrs[i].(string), `="`)
		p.coordinate(attrs[i+1].(float64))
		p.write(`"`)
	}
	p.write(`/>`)
}

// Curve draws an open line through the points x[i], y[i].
func (p *Picture) Curve(class string, x, y []float64) { p.points("polyline", class, x, y) }

// Area fills the closed figure through the points.
func (p *Picture) Area(class string, x, y []float64) { p.points("polygon", class, x, y) }

func (p *Picture) points(name, class string, x, y []float64) {
	p.write(`<`, name, ` class="`, class, `" points="`)
	for i := range x {
		p.coordinate(x[i])
		p.write(`,`)
		p.coordinate(y[i])
		p.write(` `)
	}
	p.write(`"/>`)
}

// Text writes letters; anchor is "start", "middle" or "end".
func (p *Picture) Text(class, anchor string, x, y float64, words string) {
	if p.inside == 0 {
		p.svg, p.letters = p.letters, p.svg
		defer func() { p.svg, p.letters = p.letters, p.svg }()
	}
	p.write(`<text class="`, class, `" text-anchor="`, anchor, `" x="`)
	p.coordinate(x)
	p.write(`" y="`)
	p.coordinate(y)
	p.write(`">`, Escape(words), `</text>`)
}

// coordinate writes a number rounded to a tenth, so that platforms draw the
// same picture.
func (p *Picture) coordinate(v float64) {
	if math.IsNaN(v) || math.Abs(v) > 1e6 {
		v = 0
	}
	tenths := int64(math.Round(v * 10))
	if tenths < 0 {
		p.svg, tenths = append(p.svg, '-'), -tenths
	}
	p.svg = strconv.AppendInt(p.svg, tenths/10, 10)
	if rest := tenths % 10; rest != 0 {
		p.svg = append(p.svg, '.', byte('0'+rest))
	}
}

var escaper = strings.NewReplacer("\r\n", "\n", "&", "&amp;", "<", "&lt;", ">", "&gt;", `"`, "&quot;", "'", "&#39;")

func Escape(s string) string {
	if !strings.ContainsAny(s, "\r&<>\"'") { // as nearly all are; the replacer copies these too
		return s
	}
	return escaper.Replace(s)
}

// Arrow draws a line with a point at its end.
func (p *Picture) Arrow(class string, x1, y1, x2, y2 float64) {
	p.Line(class, x1, y1, x2, y2)
	const size = 5
	length := math.Hypot(x2-x1, y2-y1)
	if length == 0 {
		return
	}
	dx, dy := size*(x2-x1)/length, size*(y2-y1)/length
	p.Line(class, x2, y2, x2-dx-dy/2, y2-dy+dx/2)
	p.Line(class, x2, y2, x2-dx+dy/2, y2-dy-dx/2)
}
