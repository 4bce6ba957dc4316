package contract

import (
	"encoding/json"
	"strings"
)

// parser reads a JSON text that has nothing wrong with it, three times as
// quickly as encoding/json: its texts are pieces of the one it reads. It is not
// fine with anything else, and tells nothing of it; decodeStep does.
type parser struct {
	text string
	at   int
	fine bool
}

// parse reads a whole text of bounded depth.
func parse(text string) (value any, fine bool) {
	p := parser{text: text, fine: true}
	value = p.value()
	return value, p.fine && strings.TrimSpace(text[p.at:]) == ""
}

// skip passes white space over.
func (p *parser) skip() {
	for p.at < len(p.text) && (p.text[p.at] == ' ' || p.text[p.at] == '\n' || p.text[p.at] == '\t' || p.text[p.at] == '\r') {
		p.at++
	}
}

// next is the byte after white space, 0 at the end.
func (p *parser) next() byte {
	if p.skip(); p.at < len(p.text) {
		return p.text[p.at]
	}
	return 0
}

// take passes a byte over where it comes next.
func (p *parser) take(c byte) bool {
	if p.next() != c {
		return false
	}
	p.at++
	return true
}

func (p *parser) value() any {
	switch c := p.next(); {
	case c == '{':
		return p.object()
	case c == '[':
		return p.list()
	case c == '"':
		return p.quoted()
	case c == '-' || c >= '0' && c <= '9':
		return p.number()
	case p.word("true"):
		return true
	case p.word("false"):
		return false
	case p.word("null"):
		return nil
	}
	p.fine = false
	return nil
}

func (p *parser) word(word string) bool {
	is := strings.HasPrefix(p.text[p.at:], word)
	if is {
		p.at += len(word)
	}
	return is
}

// object reads an object; a name written twice is not fine.
func (p *parser) object() any {
	p.at++
	object := map[string]any{}
	for first := true; p.fine && !p.take('}'); first = false {
		if !first && !p.take(',') || p.next() != '"' {
			p.fine = false
			break
		}
		name := p.quoted()
		if _, twice := object[name]; twice || !p.take(':') {
			p.fine = false
			break
		}
		object[name] = p.value()
	}
	return object
}

func (p *parser) list() any {
	p.at++
	list := []any{}
	for p.fine && !p.take(']') {
		if len(list) > 0 && !p.take(',') {
			p.fine = false
			break
		}
		list = append(list, p.value())
	}
	return list
}

// quoted reads a text; one with escapes as encoding/json does.
func (p *parser) quoted() (text string) {
	from, escaped := p.at, false
	for i := from + 1; i < len(p.text); i++ {
		switch c := p.text[i]; {
		case c == '\\':
			escaped = true
			i++
		case c < ' ':
			p.fine = false
			return ""
		case c == '"':
			if p.at = i + 1; !escaped {
				return p.text[from+1 : i]
			}
			p.fine = p.fine && json.Unmarshal([]byte(p.text[from:p.at]), &text) == nil
			return text
		}
	}
	p.fine = false
	return ""
}

// number reads a number as it is written: -0.5e-3, and neither +1 nor 01 nor 1.
func (p *parser) number() any {
	from := p.at
	if p.text[p.at] == '-' {
		p.at++
	}
	first := p.at
	whole := p.digits()
	p.fine = p.fine && (whole == 1 || whole > 1 && p.text[first] != '0')
	if p.at < len(p.text) && p.text[p.at] == '.' {
		p.at++
		p.fine = p.digits() > 0 && p.fine
	}
	if p.at < len(p.text) && p.text[p.at]|' ' == 'e' {
		if p.at++; p.at < len(p.text) && (p.text[p.at] == '+' || p.text[p.at] == '-') {
			p.at++
		}
		p.fine = p.digits() > 0 && p.fine
	}
	n := json.Number(p.text[from:p.at])
	p.fine = p.fine && checkNumber(n) == nil
	return n
}

// digits passes digits over, and counts them.
func (p *parser) digits() int {
	from := p.at
	for p.at < len(p.text) && p.text[p.at] >= '0' && p.text[p.at] <= '9' {
		p.at++
	}
	return p.at - from
}
