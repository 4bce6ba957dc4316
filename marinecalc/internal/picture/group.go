package picture

// Group opens a part of the picture that a page can find by its id, turned by
// degrees about a point; EndGroup closes it.
func (p *Picture) Group(class, id string, degrees, x, y float64) {
	p.inside++
	p.write(`<g class="`, Escape(class), `"`)
	if id != "" {
		p.write(` id="`, Escape(id), `"`)
	}
	if degrees != 0 {
		p.write(` transform="rotate(`)
		p.coordinate(degrees)
		p.write(` `)
		p.coordinate(x)
		p.write(` `)
		p.coordinate(y)
		p.write(`)"`)
	}
	p.write(`>`)
}

// EndGroup closes the group opened last.
func (p *Picture) EndGroup() {
	p.inside--
	p.write(`</g>`)
}

// RoundRect draws a rectangle with rounded corners.
func (p *Picture) RoundRect(class string, x, y, w, h, r float64) {
	p.element("rect", class, "x", x, "y", y, "width", w, "height", h, "rx", r)
}
