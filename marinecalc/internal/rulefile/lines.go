package rulefile

import (
	"bytes"
	"encoding/json"
	"strconv"
	"strings"

	"example.org/driveline/marinecalc/internal/contract"
	"example.org/driveline/marinecalc/problem"
)

// lines are the lines of a JSON text by the pointers to what stands there.
type lines map[string]int

// want asks for a place, and for those around it in case it is not there.
func (l lines) want(where string) {
	for l[where] = 0; where != ""; l[where] = 0 {
		where = where[:strings.LastIndexByte(where, '/')]
	}
}

// find looks for what is wanted in a text that was decoded before.
func (l lines) find(text []byte) {
	d := json.NewDecoder(bytes.NewReader(text))
	at, line := 0, 1
	next := func() json.Token {
		token, _ := d.Token() // of a text that can be read
		end := int(d.InputOffset())
		line += bytes.Count(text[at:end], []byte("\n"))
		at = end
		return token
	}
	var value func(where string)
	value = func(where string) {
		token := next()
		if _, wanted := l[where]; wanted {
			l[where] = line
		}
		switch token {
		case json.Delim('{'):
			for d.More() {
				name, _ := next().(string)
				value(where + contract.Pointer([]string{name}))
			}
			next()
		case json.Delim('['):
			for i := 0; d.More(); i++ {
				value(where + "/" + strconv.Itoa(i))
			}
			next()
		}
	}
	value("")
}

// line is that of a place, or of the nearest one around it that is there.
func (l lines) line(where string) int {
	for {
		if n := l[where]; n > 0 {
			return n
		}
		cut := strings.LastIndexByte(where, '/')
		if cut < 0 {
			return 0
		}
		where = where[:cut]
	}
}

// place gives each problem its line.
func (l lines) place(list problem.List) {
	for i := range list {
		if list[i].Line == 0 {
			list[i].Line = l.line(list[i].Where)
		}
	}
}
