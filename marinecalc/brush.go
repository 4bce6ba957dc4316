package marinecalc

import (
	"math"
	"strconv"
	"strings"
	"sync"

	"example.org/driveline/marinecalc/internal/contract"
	"example.org/driveline/marinecalc/quantity"
)

// brush gives the drawings the unit system and the currency in force, and the
// words for the codes of a result.
type brush struct {
	units    quantity.System
	currency string
	result   *contract.Property
}

// words gives what people read for the code that a result has.
func (b brush) words(result, code string) string { return b.result.Child(result).Words(code) }

// picture is an SVG under way. It uses presentation attributes and classes
// only, never inline style, so that a page may forbid that; the classes take
// their colours from the page. Text is escaped.
type picture struct{ svg []byte }

// begin opens a picture of that size with its title and description for
// those who cannot see it.
func begin(width, height int, title, description string) *picture {
	p := pictures.Get().(*picture)
	p.svg = p.svg[:0]
	p.write(`<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 `, itoa(width), ` `, itoa(height), `" role="img"><title>`,
		escape(title), `</title><desc>`, escape(description), `</desc>`)
	return p
}

// end closes the picture and returns it. The picture is not to be used after.
func (p *picture) end() string {
	p.write(`</svg>`)
	defer pictures.Put(p)
	return string(p.svg)
}

// pictures keeps the room of one picture for the next.
var pictures = sync.Pool{New: func() any { return new(picture) }}

func (p *picture) write(parts ...string) {
	for _, part := range parts {
		p.svg = append(p.svg, part...)
	}
}

// The classes of lines, areas and letters that a page gives its colours.
const (
	ink    = "ink"    // lines and letters that carry the meaning
	faint  = "faint"  // axes, helping lines
	accent = "accent" // the value itself
	warn   = "warn"   // a limit
	body   = "body"   // metal seen from outside
	band   = "band"   // the 95 % range
)

func (p *picture) line(class string, x1, y1, x2, y2 float64) {
	p.element("line", class, "x1", x1, "y1", y1, "x2", x2, "y2", y2)
}

func (p *picture) circle(class string, x, y, r float64) {
	p.element("circle", class, "cx", x, "cy", y, "r", r)
}

func (p *picture) rect(class string, x, y, w, h float64) {
	p.element("rect", class, "x", x, "y", y, "width", w, "height", h)
}

// element writes an empty element; attrs are name, value, name, value …
func (p *picture) element(name, class string, attrs ...any) {
	p.write(`<`, name, ` class="`, class, `"`)
	for i := 0; i+1 < len(attrs); i += 2 {
		p.write(` `, attrs[i].(string), `="`)
		p.coordinate(attrs[i+1].(float64))
		p.write(`"`)
	}
	p.write(`/>`)
}

// curve draws an open line through the points x[i], y[i].
func (p *picture) curve(class string, x, y []float64) { p.points("polyline", class, x, y) }

// area fills the closed figure through the points.
func (p *picture) area(class string, x, y []float64) { p.points("polygon", class, x, y) }

func (p *picture) points(name, class string, x, y []float64) {
	p.write(`<`, name, ` class="`, class, `" points="`)
	for i := range x {
		p.coordinate(x[i])
		p.write(`,`)
		p.coordinate(y[i])
		p.write(` `)
	}
	p.write(`"/>`)
}

// text writes letters; anchor is "start", "middle" or "end".
func (p *picture) text(class, anchor string, x, y float64, words string) {
	p.write(`<text class="`, class, `" text-anchor="`, anchor, `" x="`)
	p.coordinate(x)
	p.write(`" y="`)
	p.coordinate(y)
	p.write(`">`, escape(words), `</text>`)
}

// coordinate writes a number rounded to a tenth, so that platforms draw the
// same picture.
func (p *picture) coordinate(v float64) {
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

var escaper = strings.NewReplacer("&", "&amp;", "<", "&lt;", ">", "&gt;", `"`, "&quot;", "'", "&#39;")

func escape(s string) string { return escaper.Replace(s) }

// chart is the plotting area of a curve with its two scales.
type chart struct {
	*picture
	left, top, width, height float64
	x0, x1, y0, y1           float64 // values at the ends of the axes
}

func (c *chart) atX(v float64) float64 { return c.left + (v-c.x0)/(c.x1-c.x0)*c.width }
func (c *chart) atY(v float64) float64 { return c.top + c.height - (v-c.y0)/(c.y1-c.y0)*c.height }

// axes draws both axes with a mark at each round step, labelled in the
// display unit: xUnit and yUnit are what one of it is in the chart's values.
func (c *chart) axes(xTitle, yTitle string, xUnit, yUnit float64) {
	c.line(faint, c.left, c.top, c.left, c.top+c.height)
	c.line(faint, c.left, c.top+c.height, c.left+c.width, c.top+c.height)
	for _, v := range steps(c.x0/xUnit, c.x1/xUnit) {
		x := c.atX(v * xUnit)
		c.line(faint, x, c.top+c.height, x, c.top+c.height+4)
		c.text(ink, "middle", x, c.top+c.height+18, strconv.FormatFloat(v, 'g', 6, 64))
	}
	for _, v := range steps(c.y0/yUnit, c.y1/yUnit) {
		y := c.atY(v * yUnit)
		c.line(faint, c.left-4, y, c.left+c.width, y)
		c.text(ink, "end", c.left-7, y+4, strconv.FormatFloat(v, 'g', 6, 64))
	}
	c.text(ink, "middle", c.left+c.width/2, c.top+c.height+38, xTitle)
	c.text(ink, "start", 4, c.top-10, yTitle)
}

// steps gives four to nine round values from low to high.
func steps(low, high float64) []float64 {
	if !(high > low) {
		return nil
	}
	size := math.Pow(10, math.Floor(math.Log10((high-low)/4)))
	for _, m := range []float64{1, 2, 5, 10} {
		if (high-low)/(m*size) <= 8 {
			size *= m
			break
		}
	}
	var out []float64
	for n := math.Ceil(low/size - 1e-9); n*size <= high*(1+1e-9); n++ {
		out = append(out, math.Round(n*size*1e9)/1e9+0) // + 0: no minus zero
	}
	return out
}
