package contract

import (
	"bytes"
	"encoding/json"
	"errors"
	"fmt"
	"io"
	"math"
	"strconv"
	"strings"
	"unicode/utf8"

	"example.org/driveline/marinecalc/problem"
)

// Decode reads one JSON text into plain Go values (map[string]any, []any,
// string, json.Number, bool, nil). It refuses what encoding/json would let
// through or lose: invalid UTF-8, a key written twice, numbers no float can
// hold, nesting without end, and anything after the value. What it returns
// beside the value is a list, empty where nothing is wrong, not an error: an
// empty list in an error is not nil, so callers that return one use its Err.
//
// A mark of the encoding at its front is passed over. Characters that a
// terminal or a spreadsheet would obey are refused.
func Decode(text []byte) (any, problem.List) {
	value, problems := DecodeForeign(text)
	if len(problems) == 0 && mayBeUnclean(bytes.TrimPrefix(text, []byte(Mark))) {
		uncleanIn(nil, value, &problems)
	}
	if len(problems) > 0 {
		return nil, problems
	}
	return value, nil
}

// DecodeForeign is Decode for what others wrote and of which no text is kept.
func DecodeForeign(text []byte) (any, problem.List) {
	text = bytes.TrimPrefix(text, []byte(Mark))
	if len(text) > MaxBytes {
		return nil, problem.List{{What: fmt.Sprintf("the text is %d bytes long", len(text)), Kind: problem.TooLarge,
			Allowed: fmt.Sprintf("at most %d bytes", MaxBytes), Hint: fmt.Sprintf("leave out what is not needed; a boat file has space for %d readings", MaxReadings)}}
	}
	if len(bytes.TrimSpace(text)) == 0 {
		return nil, one("", "the text is empty", "one JSON value (RFC 8259)", "is it the right file, and was it written to its end?")
	}
	if !utf8.Valid(text) {
		return nil, one("", "the text is not valid UTF-8", "JSON in UTF-8", "save the file as UTF-8")
	}
	depth, names, weight := outline(text)
	if weight > maxWeight || names > maxNames {
		return nil, problem.List{{What: "the text holds too many values", Kind: problem.TooLarge,
			Allowed: fmt.Sprintf("at most %d, where an object counts %d, and %d names", maxWeight, objectWeight, maxNames), Hint: fmt.Sprintf("leave out what is not needed; a boat file has space for %d readings", MaxReadings)}}
	}
	if value, fine := decodeFine(text, depth); fine {
		return value, nil
	}
	return decodeStep(text)
}

// Mark is what some editors put before a text in UTF-8.
const Mark = "\xef\xbb\xbf"

// decodeStep reads a text step by step, so that it can say where a fault is.
func decodeStep(text []byte) (any, problem.List) {
	d := decoder{json: json.NewDecoder(bytes.NewReader(text))}
	d.json.UseNumber()
	value, err := d.value()
	if err == nil {
		if rest := text[d.json.InputOffset():]; len(bytes.TrimSpace(rest)) > 0 {
			err = &problem.Problem{What: "there is more text after the JSON value", Allowed: "one JSON value", Hint: "remove what follows it"}
		}
	}
	if err != nil {
		return nil, problem.List{d.explain(err)}
	}
	return value, nil
}

// decodeFine reads a text that has nothing wrong with it, which is quicker than
// step by step. fine is false where something is wrong; nothing else is told
// of it.
func decodeFine(text []byte, depth int) (value any, fine bool) {
	if depth > maxDepth {
		return nil, false
	}
	return parse(string(text))
}

// outline tells how deep a JSON text nests, how many names its objects write,
// and what it weighs. Of anything but JSON it tells nothing of use.
func outline(text []byte) (depth, names, weight int) {
	open, quoted := 0, false
	for i := 0; i < len(text); i++ {
		switch c := text[i]; {
		case c == '"':
			quoted = !quoted
		case quoted:
			if c == '\\' {
				i++
			}
		case c == ':':
			names++
		case c == ',':
			weight++
		case c == '{' || c == '[':
			open++
			if weight++; c == '{' {
				weight += objectWeight - 1
			}
			depth = max(depth, open)
		case c == '}' || c == ']':
			open--
		}
	}
	return depth, names, weight
}

func one(where, what, allowed, hint string) problem.List {
	return problem.List{{Where: where, What: what, Allowed: allowed, Hint: hint}}
}

type decoder struct {
	json *json.Decoder
	path []string
}

func (d *decoder) value() (any, error) {
	token, err := d.json.Token()
	if err != nil {
		return nil, err
	}
	switch t := token.(type) {
	case json.Delim:
		if len(d.path) >= maxDepth {
			return nil, &problem.Problem{What: "the text nests too deep", Allowed: fmt.Sprintf("at most %d levels", maxDepth), Hint: "look for a bracket that is never closed"}
		}
		if t == '{' {
			return d.object()
		}
		return d.list()
	case json.Number:
		return t, checkNumber(t)
	default:
		return t, nil // a text, bool or nil
	}
}

func (d *decoder) object() (any, error) {
	object := map[string]any{}
	for d.json.More() {
		token, err := d.json.Token()
		if err != nil {
			return nil, err
		}
		key := token.(string) // the decoder lets no other key through
		d.path = append(d.path, key)
		if _, twice := object[key]; twice {
			return nil, &problem.Problem{What: "this name is written twice", Allowed: "each name once in an object", Hint: "keep one of the two"}
		}
		if object[key], err = d.value(); err != nil {
			return nil, err
		}
		d.path = d.path[:len(d.path)-1]
	}
	_, err := d.json.Token()
	return object, err
}

func (d *decoder) list() (any, error) {
	list := []any{}
	for d.json.More() {
		d.path = append(d.path, strconv.Itoa(len(list)))
		item, err := d.value()
		if err != nil {
			return nil, err
		}
		list = append(list, item)
		d.path = d.path[:len(d.path)-1]
	}
	_, err := d.json.Token()
	return list, err
}

func checkNumber(n json.Number) error {
	if len(n) > maxDigits {
		return &problem.Problem{What: fmt.Sprintf("a number of %d characters", len(n)), Allowed: fmt.Sprintf("at most %d characters", maxDigits), Hint: "round it"}
	}
	if f, err := n.Float64(); err != nil || math.IsInf(f, 0) {
		return &problem.Problem{What: "the number " + n.String() + " is too large", Allowed: "numbers up to 1.8e308", Hint: "check its exponent"}
	}
	return nil
}

// explain turns an error of the JSON reader into a problem at its place.
func (d *decoder) explain(err error) problem.Problem {
	var p *problem.Problem
	if errors.As(err, &p) {
		p.Where = Pointer(d.path)
		return *p
	}
	what := "the text is not JSON: " + err.Error()
	if errors.Is(err, io.EOF) || errors.Is(err, io.ErrUnexpectedEOF) {
		what = "the JSON text ends too early"
	}
	return problem.Problem{Where: Pointer(d.path), What: what, Allowed: "one JSON value (RFC 8259)",
		Hint: fmt.Sprintf("look near byte %d", d.json.InputOffset())}
}

// How the tokens of a JSON pointer are written (RFC 6901, section 3).
var (
	escaped   = strings.NewReplacer("~", "~0", "/", "~1")
	unescaped = strings.NewReplacer("~1", "/", "~0", "~")
)

// Pointer writes a JSON pointer (RFC 6901) of the given tokens. A name longer
// than one reads is cut, so that no problem grows with what it is about.
func Pointer(tokens []string) string {
	var b strings.Builder
	for _, t := range tokens {
		b.WriteByte('/')
		b.WriteString(escaped.Replace(Shorten(t)))
	}
	return b.String()
}

// Tokens splits a JSON pointer into its unescaped tokens.
func Tokens(pointer string) []string {
	if pointer == "" {
		return nil
	}
	tokens := strings.Split(strings.TrimPrefix(pointer, "/"), "/")
	for i, t := range tokens {
		if strings.Contains(t, "~") {
			tokens[i] = unescaped.Replace(t)
		}
	}
	return tokens
}

// Resolve returns the value at a JSON pointer inside a decoded document.
func Resolve(document any, tokens []string) (any, bool) {
	for _, t := range tokens {
		switch v := document.(type) {
		case map[string]any:
			next, ok := v[t]
			if !ok {
				return nil, false
			}
			document = next
		case []any:
			i, err := strconv.Atoi(t)
			if err != nil || i < 0 || i >= len(v) {
				return nil, false
			}
			document = v[i]
		default:
			return nil, false
		}
	}
	return document, true
}
