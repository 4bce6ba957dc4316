package rules

import (
	"bytes"
	"encoding/json"
	"errors"
	"fmt"
	"reflect"
	"slices"
	"strings"

	"example.org/driveline/marinecalc/problem"
)

// What is wrong with a rule file that is not the JSON it should be.

// withoutMark leaves out the byte order mark that some editors put first.
func withoutMark(text []byte) []byte { return bytes.TrimPrefix(text, []byte("\ufeff")) }

// unreadable says where a text that did not load goes wrong: by line and
// column where it is not JSON, else by the row.
func unreadable(text []byte, where string, err error) problem.List {
	var slip *json.SyntaxError
	if errors.As(err, &slip) {
		line, column := lineOf(text, slip.Offset)
		said := strings.Replace(slip.Error(), "unexpected end of JSON input", "it ends too early", 1)
		return problem.List{{Where: where, Line: line, What: fmt.Sprintf("this rule file cannot be read at column %d: %s", column, said),
			Allowed: "JSON", Hint: "look there and just before for a comma, a quote or a bracket too many or too few"}}
	}
	var list problem.List
	members := map[string]json.RawMessage{}
	if json.Unmarshal(text, &members) != nil {
		return problem.List{{Where: where, What: "this rule file is not an object", Allowed: `{"title": "…", "limits": […]}`, Hint: "put its rows under the name of their kind"}}
	}
	for name, read := range rowReaders {
		var rows []json.RawMessage
		if err := json.Unmarshal(members[name], &rows); err != nil && members[name] != nil {
			list.Add(where+"/"+name, "it is not a list of rows", "[…]", "put the rows in brackets, one after the other")
		}
		for i, row := range rows {
			if err := read(row); err != nil {
				what, allowed := wrongType(err)
				list.Add(fmt.Sprintf("%s/%s/%d", where, name, i), what, allowed, "")
			}
		}
	}
	if len(list) == 0 { // it is in what stands beside the rows
		what, allowed := wrongType(err)
		list.Add(where, what, allowed, "")
	}
	return list.Sorted()
}

// rowReaders try to read one row of each kind.
var rowReaders = map[string]func([]byte) error{
	"rows": try[writtenRow], "limits": try[Limit], "shared": try[Shared], "cautions": try[Caution], "advice": try[Advice],
	"causes": try[Cause], "evidence": try[Evidence], "signs": try[Sign], "chains": try[Chain],
	"remedies": try[Remedy], "steps": try[Step], "parts": try[Part],
}

func try[T any](text []byte) error {
	var row T
	return json.Unmarshal(text, &row)
}

// wrongType words what encoding/json says of a value of the wrong type.
func wrongType(err error) (what, allowed string) {
	var wrong *json.UnmarshalTypeError
	if !errors.As(err, &wrong) {
		return err.Error(), ""
	}
	what = fmt.Sprintf("a JSON %s stands here", wrong.Value)
	if wrong.Field != "" {
		what = embedded.Replace(wrong.Field) + ": " + what
	}
	switch kind := wrong.Type.Kind(); {
	case kind == reflect.String:
		return what, `a text in quotes`
	case kind == reflect.Bool:
		return what, "true or false"
	case slices.Contains([]reflect.Kind{reflect.Int, reflect.Float64}, kind):
		return what, "a number without quotes"
	case kind == reflect.Slice:
		return what, "a list in brackets"
	}
	return what, "an object in braces"
}

// embedded leaves out the names of our own types, which the path of a field
// has.
var embedded = strings.NewReplacer("plain.", "", "Provenance.", "")

// lineOf counts the line and column of a byte, both from 1.
func lineOf(text []byte, offset int64) (line, column int) {
	before := text[:max(0, min(int(offset), len(text))-1)] // the offset is past the byte that is wrong
	line = 1 + bytes.Count(before, []byte("\n"))
	return line, 1 + len([]rune(string(before[bytes.LastIndexByte(before, '\n')+1:])))
}
