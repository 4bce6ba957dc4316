package contract

import (
	"encoding/json"
	"errors"
)

var errSplit = errors.New("this is no JSON object")

// split takes an object of a schema apart in one pass, names and values in the
// order in which they stand. What is inside the values is not looked at: every
// schema is part of the program, and encoding/json, which looks at all of a
// value again at each level above it, took three quarters of their reading.
func split(raw []byte) (names []string, values []json.RawMessage, err error) {
	at := blank(raw, 0)
	if at == len(raw) || raw[at] != '{' {
		return nil, nil, errSplit
	}
	for at++; ; at++ {
		if at = blank(raw, at); at < len(raw) && raw[at] == '}' && len(names) == 0 {
			return nil, nil, nil
		}
		from := at
		if at = past(raw, at); at < from+2 || raw[from] != '"' {
			return nil, nil, errSplit
		}
		var name string
		if err := json.Unmarshal(raw[from:at], &name); err != nil {
			return nil, nil, err
		}
		if at = blank(raw, at); at == len(raw) || raw[at] != ':' {
			return nil, nil, errSplit
		}
		from = blank(raw, at+1)
		at = past(raw, from)
		names, values = append(names, name), append(values, raw[from:at:at])
		switch at = blank(raw, at); {
		case at == len(raw) || from == at:
			return nil, nil, errSplit
		case raw[at] == '}':
			return names, values, nil
		case raw[at] != ',':
			return nil, nil, errSplit
		}
	}
}

// blank is the place after white space.
func blank(raw []byte, at int) int {
	for at < len(raw) && (raw[at] == ' ' || raw[at] == '\n' || raw[at] == '\t' || raw[at] == '\r') {
		at++
	}
	return at
}

// past is the place after the value that begins at a place, or the end.
func past(raw []byte, at int) int {
	depth := 0
	for ; at < len(raw); at++ {
		switch raw[at] {
		case '{', '[':
			depth++
		case '}', ']':
			if depth--; depth < 0 {
				return at // of a number or a word, which end without a sign
			} else if depth == 0 {
				return at + 1
			}
		case '"':
			for at++; at < len(raw) && raw[at] != '"'; at++ {
				if raw[at] == '\\' {
					at++
				}
			}
			if depth == 0 {
				return min(at+1, len(raw))
			}
		case ',', ' ', '\n', '\t', '\r':
			if depth == 0 {
				return at
			}
		}
	}
	return at
}
