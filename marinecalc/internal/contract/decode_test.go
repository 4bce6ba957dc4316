package contract

import (
	"strings"
	"testing"
	"unicode/utf8"

	"github.com/google/go-cmp/cmp"
)

func TestDecodeRefusesWhatJSONWouldLose(t *testing.T) {
	cases := []struct{ name, text, where, what string }{
		{"truncated", `{"a": [1, 2`, "/a", "ends too early"},
		{"empty", ``, "", "the text is empty"},
		{"two values", `{} {}`, "", "more text after"},
		{"a key twice", `{"a": 1, "b": {"c": 1, "c": 2}}`, "/b/c", "written twice"},
		{"NaN", `{"a": NaN}`, "/a", "not JSON"},
		{"a number without end", `{"a": ` + strings.Repeat("9", 40) + `}`, "/a", "40 characters"},
		{"an exponent without end", `{"a": 1e999999}`, "/a", "too large"},
		{"invalid UTF-8", "{\"a\": \"\xff\"}", "", "UTF-8"},
		{"nesting", strings.Repeat("[", 100), strings.Repeat("/0", 24), "nests too deep"},
		{"more than any entry point takes", `"` + strings.Repeat("x", MaxBytes-1) + `"`, "", "bytes long"},
		{"a slash in a name", `{"a/b~c": [nul]}`, "/a~1b~0c/0", "not JSON"},
	}
	for _, c := range cases {
		t.Run(c.name, func(t *testing.T) {
			_, problems := Decode([]byte(c.text))
			if len(problems) != 1 {
				t.Fatalf("got %d problems", len(problems))
			}
			p := problems[0]
			if p.Where != c.where || !strings.Contains(p.What, c.what) {
				t.Errorf("got %q: %s", p.Where, p.What)
			}
			if p.Allowed == "" || p.Hint == "" {
				t.Errorf("it does not say what is allowed, or how to mend it: %+v", p)
			}
		})
	}
}

func TestDecodeTakesSoundJSON(t *testing.T) {
	v, problems := Decode([]byte(` {"a": [1, "x", true, null, {"b": -2.5e3}]} `))
	if len(problems) > 0 {
		t.Fatal(problems)
	}
	n, ok := Resolve(v, Tokens("/a/4/b"))
	if !ok || n.(interface{ String() string }).String() != "-2.5e3" {
		t.Errorf("got %v", n)
	}
}

// FuzzDecode looks for texts that make the guard or a check behind it panic.
func FuzzDecode(f *testing.F) {
	for _, s := range []string{`{}`, `{"a":1}`, `[[[`, `{"nominalDiameter":"1-1/4 in","grade":5}`, `1e9999999`, "\"\xff\"", `{"a":{"b":1,"b":2}}`, `{"\":":":","a\\":[1]} `, `[1] 2`,
		`[-0, 0.5, 1E+2, 10]`, `[01]`, `[1.]`, `[-]`, `[1e]`, `[.5]`, `[+1]`, `[1,]`, `{"a":1,}`, `{,}`, `{"a"}`, `{a:1}`, `[1 2]`, "[\"a\tb\"]", `["\u00e9\ud800"]`, `["\x"]`, `nulle`, `{"a":nullb}`, "\v1", "1\f"} {
		f.Add([]byte(s))
	}
	c, err := OpenCalculation("bolt-preload")
	if err != nil {
		f.Fatal(err)
	}
	f.Fuzz(func(t *testing.T, text []byte) {
		v, problems := Decode(text)
		if utf8.Valid(text) && len(text) <= MaxBytes {
			depth, _, _ := outline(text)
			quick, fine := decodeFine(text, depth)
			if steps, faults := decodeStep(text); fine != (len(faults) == 0) || fine && !cmp.Equal(quick, steps) {
				t.Errorf("read at once: %v (%v); step by step: %v (%v)", quick, fine, steps, faults)
			}
		}
		if len(problems) > 0 {
			return
		}
		for _, p := range c.CheckInput(v) {
			if strings.Contains(p.What, "could not be checked") {
				t.Errorf("the validator panicked: %s", p.What)
			}
		}
	})
}
