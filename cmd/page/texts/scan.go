// Package texts finds what the page says in its sources: every literal that
// people read, with its place. A test holds the list of them, each with where
// its words come from, against site/texts.json; and a page in another language
// is built by putting other words in their places.
package texts

import (
	"fmt"
	"regexp"
	"strings"
)

// Text is a literal that people read.
type Text struct {
	From, To int      // of the literal in the source, with its quotes
	Words    string   // "{0} of {1} steps" where expressions stand between
	Inside   []string // those expressions, as they stand
}

// frame is a bracket that stands open.
type frame struct {
	sign   byte   // ( [ { or $ for an expression in a template
	call   string // what is called, before (
	arg    int
	key    string // of the member that is written, in an object
	object bool
	text   bool // inside a template that people read
}

type scanner struct {
	src   string
	at    int
	prev  string // the token before
	stack []frame
	found []Text
}

// Find gives the texts of a script in their order.
func Find(src string) ([]Text, error) {
	s := &scanner{src: src, stack: []frame{{}}}
	if err := s.run(0); err != nil {
		return nil, err
	}
	return s.found, nil
}

var name = regexp.MustCompile(`^[A-Za-z_$#][\w$]*`)

// run reads until the bracket closes at whose depth it began, or to the end.
func (s *scanner) run(depth int) error {
	for s.at < len(s.src) {
		rest := s.src[s.at:]
		switch c := rest[0]; {
		case c == ' ' || c == '\n' || c == '\t' || c == '\r':
			s.at++
		case strings.HasPrefix(rest, "//"):
			s.at += line(rest)
		case strings.HasPrefix(rest, "/*"):
			end := strings.Index(rest, "*/")
			if end < 0 {
				return fmt.Errorf("a comment has no end")
			}
			s.at += end + 2
		case c == '\'' || c == '"':
			if err := s.quoted(c); err != nil {
				return err
			}
		case c == '`':
			if err := s.template(); err != nil {
				return err
			}
		case c == '/' && s.pattern():
			s.at += pattern(rest)
			s.prev = "/"
		case strings.IndexByte("([{", c) >= 0:
			f := frame{sign: c}
			switch c {
			case '(':
				f.call = s.prev
			case '{':
				f.object = strings.Contains(" ( , = : [ ? && || ?? ... return => ", " "+s.prev+" ") && s.prev != "=>"
			case '[':
				f.call = s.prev
			}
			s.stack = append(s.stack, f)
			s.at++
			s.prev = string(c)
		case strings.IndexByte(")]}", c) >= 0:
			if depth > 0 && len(s.stack) == depth {
				return nil
			}
			if len(s.stack) == 1 {
				return fmt.Errorf("a bracket too many at %.30q", rest)
			}
			s.stack = s.stack[:len(s.stack)-1]
			s.at++
			s.prev = string(c)
		case c == ',':
			top := &s.stack[len(s.stack)-1]
			top.arg++
			top.key = ""
			s.at++
			s.prev = ","
		default:
			token := name.FindString(rest)
			if token == "" {
				token = rest[:1]
				for _, long := range []string{"===", "!==", "...", "=>", "&&", "||", "??", "?."} {
					if strings.HasPrefix(rest, long) {
						token = long
						break
					}
				}
			}
			s.at += len(token)
			top := &s.stack[len(s.stack)-1]
			if top.object && (s.prev == "{" || s.prev == ",") && strings.HasPrefix(strings.TrimLeft(s.src[s.at:], " \n\t"), ":") {
				top.key = token
			}
			if token == "?." {
				continue // as if it were a point
			}
			s.prev = token
		}
	}
	return nil
}

// quoted reads a text in quotes.
func (s *scanner) quoted(quote byte) error {
	from := s.at
	var words strings.Builder
	for s.at++; ; s.at++ {
		if s.at >= len(s.src) || s.src[s.at] == '\n' {
			return fmt.Errorf("a text has no end: %.30q", s.src[from:])
		}
		if s.src[s.at] == quote {
			break
		}
		if s.src[s.at] == '\\' {
			words.WriteByte('\\')
			s.at++
		}
		words.WriteByte(s.src[s.at])
	}
	s.at++
	top := &s.stack[len(s.stack)-1]
	next := strings.TrimLeft(s.src[s.at:], " \n\t")
	if top.object && (s.prev == "{" || s.prev == ",") && strings.HasPrefix(next, ":") {
		top.key = words.String()
	} else if s.read(words.String(), next) {
		s.found = append(s.found, Text{From: from, To: s.at, Words: plain(words.String())})
	}
	s.prev = "text"
	return nil
}

// template reads a text with expressions in it.
func (s *scanner) template() error {
	from, prev, held := s.at, s.prev, len(s.found)
	var words strings.Builder
	var inside []string
	var inner []Text
	// Whether it is read is told by its own words, which end after what is inside.
	for s.at++; s.at < len(s.src) && s.src[s.at] != '`'; s.at++ {
		switch {
		case s.src[s.at] == '\\':
			words.WriteString(s.src[s.at : s.at+2])
			s.at++
		case strings.HasPrefix(s.src[s.at:], "${"):
			s.at += 2
			begin := s.at
			s.stack = append(s.stack, frame{sign: '$', text: true})
			s.prev = "("
			if err := s.run(len(s.stack)); err != nil {
				return err
			}
			s.stack = s.stack[:len(s.stack)-1]
			fmt.Fprintf(&words, "{%d}", len(inside))
			inside = append(inside, s.src[begin:s.at])
		default:
			words.WriteByte(s.src[s.at])
		}
	}
	if s.at >= len(s.src) {
		return fmt.Errorf("a template has no end: %.30q", s.src[from:])
	}
	s.at++
	inner = append(inner, s.found[held:]...)
	s.found = s.found[:held]
	s.prev = prev
	if said := words.String(); s.read(said, strings.TrimLeft(s.src[s.at:], " \n\t")) {
		s.found = append(s.found, Text{From: from, To: s.at, Words: plain(said), Inside: inside})
	}
	s.found = append(s.found, inner...)
	s.prev = "text"
	return nil
}

func plain(words string) string {
	return strings.NewReplacer(`\u00ad`, "\u00ad", `\'`, "'", `\"`, `"`, "\\`", "`", `\\`, `\`, `\n`, "\n").Replace(words)
}

func line(rest string) int {
	if n := strings.IndexByte(rest, '\n'); n >= 0 {
		return n
	}
	return len(rest)
}

// pattern tells whether a stroke begins a regular expression.
func (s *scanner) pattern() bool {
	return strings.Contains(" ( , = : [ ! && || ?? ? { } ; return => ", " "+s.prev+" ") || s.prev == ""
}

func pattern(rest string) int {
	class := false
	for i := 1; i < len(rest); i++ {
		switch rest[i] {
		case '\\':
			i++
		case '[':
			class = true
		case ']':
			class = false
		case '/':
			if !class {
				return i + 1
			}
		}
	}
	return len(rest)
}
