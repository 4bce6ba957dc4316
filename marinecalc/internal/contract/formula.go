package contract

import (
	"slices"
	"strings"
	"unicode"
	"unicode/utf8"
)

// Piece is a part of a printed formula: plain text, or a symbol that stands
// for an input or a result.
type Piece struct {
	Text string
	Of   *Property // nil for plain text

	// Absolute: what follows divides it by a kelvin, so that a temperature is
	// counted from absolute zero.
	Absolute bool

	raised bool // to a power, by what follows
}

// AsPrinted is a formula as people read it. A schema puts a quantity that a formula
// has as a constant into braces, with its unit: {1000 h}.
func AsPrinted(formula string) string { return strings.NewReplacer("{", "", "}", "").Replace(formula) }

// Formulas knows the symbols of one calculation and what rests on what.
type Formulas struct {
	bySymbol map[string]*Property
	pieces   [][]Piece  // by the result's index; the right side of its formula
	under    [][]string // by the result's index, likewise
	rests    map[string][]string
}

// formulas reads every formula of the calculation once.
func (c *Calculation) formulas() *Formulas {
	f := &Formulas{bySymbol: map[string]*Property{}, pieces: make([][]Piece, len(c.Result.Properties)), under: make([][]string, len(c.Result.Properties)), rests: map[string][]string{}}
	for _, side := range [][]*Property{c.Input.Properties, c.Result.Properties} {
		for _, p := range side {
			if p.Symbol != "" {
				f.bySymbol[p.Symbol] = p
			}
		}
	}
	for _, p := range c.Result.Properties {
		f.pieces[p.Index] = f.split(p.Formula)
		f.under[p.Index] = slices.Clone(p.DependsOn)
		for _, piece := range f.pieces[p.Index] {
			if piece.Of != nil {
				f.under[p.Index] = append(f.under[p.Index], piece.Of.Name)
			}
		}
	}
	for _, p := range c.Result.Properties {
		f.rests[p.Name] = c.inputsUnder(f, p, nil)
	}
	return f
}

// inputsUnder lists the inputs on which a result rests, directly or through
// other results. path holds the results already being followed.
func (c *Calculation) inputsUnder(f *Formulas, p *Property, path []string) []string {
	if slices.Contains(path, p.Name) {
		return nil
	}
	path = append(path, p.Name)
	names := f.Under(p)
	var inputs []string
	for _, name := range names {
		under := []string{name}
		if r := c.Result.Child(name); r != nil {
			under = c.inputsUnder(f, r, path)
		}
		for _, u := range under {
			if !slices.Contains(inputs, u) {
				inputs = append(inputs, u)
			}
		}
	}
	return inputs
}

// split cuts a formula into pieces; what stands left of "=" stays whole.
func (f *Formulas) split(formula string) []Piece {
	left, right, ok := strings.Cut(formula, "=")
	if !ok {
		return nil
	}
	pieces := []Piece{{Text: left + "="}}
	rest := []rune(right)
	for len(rest) > 0 {
		n := 0
		if end := slices.Index(rest, '}'); rest[0] == '{' && end > 0 { // its unit is no symbol
			pieces = append(pieces, Piece{Text: string(rest[1:end])})
			rest = rest[end+1:]
			continue
		}
		for n < len(rest) && inSymbol(rest[n], n == 0) {
			n++
		}
		if n > 0 {
			word := string(rest[:n])
			pieces = append(pieces, Piece{Text: word, Of: f.bySymbol[word]})
		} else {
			for n < len(rest) && !inSymbol(rest[n], true) && rest[n] != '{' {
				n++
				// A number swallows what sticks to it, so that 2 in 16T is no symbol.
				for n < len(rest) && unicode.IsDigit(rest[n-1]) && (unicode.IsDigit(rest[n]) || rest[n] == '.') {
					n++
				}
			}
			pieces = append(pieces, Piece{Text: string(rest[:n])})
		}
		rest = rest[n:]
	}
	for i := range pieces[1:] {
		pieces[i].raised = isPower(pieces[i+1].Text)
		pieces[i].Absolute = i+2 < len(pieces) && pieces[i+1].Text == "/" && pieces[i+2].Text == "1 K"
	}
	return joined(pieces)
}

// joined makes one piece of plain texts that follow each other.
func joined(pieces []Piece) []Piece {
	out := pieces[:1]
	for _, piece := range pieces[1:] {
		if last := &out[len(out)-1]; piece.Of == nil && last.Of == nil {
			last.Text += piece.Text
			continue
		}
		out = append(out, piece)
	}
	return out
}

func inSymbol(r rune, first bool) bool {
	return unicode.IsLetter(r) || !first && (r == '_' || unicode.IsDigit(r) || r == '′')
}

// Symbol returns the property that a symbol stands for, or nil.
func (f *Formulas) Symbol(symbol string) *Property { return f.bySymbol[symbol] }

// AppendFilled writes a result's formula behind b, with every value in the place
// of its symbol. text returns "" for what is not known, which counts as nothing: a
// number is 0 then. A quantity
// that is raised to a power stands in parentheses, since 30 mm^4 is thirty
// fourth powers of a millimetre (SI Brochure, 5.4.1).
func (f *Formulas) AppendFilled(b []byte, result *Property, text func(of *Property, absolute bool) string) []byte {
	pieces := f.pieces[result.Index]
	for i := range pieces {
		piece := &pieces[i]
		shown := ""
		if piece.Of != nil {
			if shown = text(piece.Of, piece.Absolute); shown == "" {
				shown = piece.Of.nothing()
			}
		}
		switch {
		case shown == "":
			b = append(b, piece.Text...)
		case piece.raised && strings.Contains(shown, " "):
			b = append(b, '(')
			b = append(b, shown...)
			b = append(b, ')')
		default:
			b = append(b, shown...)
		}
	}
	return b
}

// nothing is what stands in a formula for a property that is not known.
func (p *Property) nothing() string {
	if p.Kind == nil && (len(p.Enum) > 0 || p.Rows != "" || slices.Equal(p.Types, []string{"string"})) {
		return `""`
	}
	return "0"
}

// isPower tells whether what follows a symbol raises it to a power.
func isPower(text string) bool {
	r, _ := utf8.DecodeRuneInString(text)
	return r == '^' || r == '²' || r == '³' || r == '⁴'
}

// Under lists what a result is worked out from directly, by name: inputs and
// other results. The list is not to be changed.
func (f *Formulas) Under(p *Property) []string {
	if !p.IsResult {
		return p.DependsOn
	}
	return f.under[p.Index]
}

// Rests lists the inputs on which a result rests.
func (f *Formulas) Rests(result string) []string { return f.rests[result] }
