package contract

import (
	"bytes"
	"fmt"
	"maps"
	"slices"
	"strconv"
	"strings"

	"example.org/driveline/marinecalc/problem"
)

// Unclean is the first character of a text that no one types and that a
// terminal, a spreadsheet or a drawing would obey: a control character but
// tabs and ends of lines, or one that turns the direction of writing. A
// carriage return that ends no line goes back over what stands before it.
func Unclean(text string) (r rune, found bool) {
	for i, r := range text {
		if unclean(r) || r == '\r' && !strings.HasPrefix(text[i+1:], "\n") {
			return r, true
		}
	}
	return 0, false
}

func unclean(r rune) bool {
	switch {
	case r == '\t' || r == '\n' || r == '\r':
		return false
	case r < ' ' || r >= 0x7f && r < 0xa0:
		return true
	}
	return r >= 0x202a && r <= 0x202e || r >= 0x2066 && r <= 0x2069 || r == 0xfeff
}

// mayBeUnclean tells quickly whether a JSON text is worth a closer look.
func mayBeUnclean(text []byte) bool {
	return bytes.IndexByte(text, '\\') >= 0 || bytes.IndexFunc(text, func(r rune) bool { return r >= 0x7f && unclean(r) }) >= 0
}

// uncleanIn finds the names and texts of a value that are not clean.
func uncleanIn(path []string, value any, found *problem.List) {
	refuse := func(at []string, text string) {
		if r, is := Unclean(text); is && len(*found) <= mostProblems {
			found.Add(Pointer(at), fmt.Sprintf("it holds the control character %U", r), "letters, signs and ends of lines", "take it out, or type the text anew")
		}
	}
	switch v := value.(type) {
	case string:
		refuse(path, v)
	case []any:
		for i, entry := range v {
			uncleanIn(append(slices.Clip(path), strconv.Itoa(i)), entry, found)
		}
	case map[string]any:
		for _, name := range slices.Sorted(maps.Keys(v)) {
			at := append(slices.Clip(path), name)
			if r, is := Unclean(name); is {
				refuse(path, string(r)) // its own name would be in the place
				continue
			}
			uncleanIn(at, v[name], found)
		}
	}
}
