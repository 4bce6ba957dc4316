package contract

import (
	"encoding/json"
	"testing"

	"github.com/google/go-cmp/cmp"

	"example.org/driveline/schemas"
)

// Every object of every schema comes apart as encoding/json takes it, and what
// is no object is refused.
func TestSplit(t *testing.T) {
	var try func(raw json.RawMessage)
	try = func(raw json.RawMessage) {
		var want map[string]json.RawMessage
		names, values, err := split(raw)
		if wrong := json.Unmarshal(raw, &want); (wrong == nil) != (err == nil) {
			t.Fatalf("%.60s: %v, encoding/json says %v", raw, err, wrong)
		}
		got := map[string]json.RawMessage{}
		for i, name := range names {
			got[name] = values[i]
		}
		if diff := cmp.Diff(want, got); diff != "" {
			t.Fatal(diff)
		}
		for _, value := range values {
			if value[0] == '{' {
				try(value)
			}
		}
	}
	for _, name := range schemas.Names() {
		text, err := schemas.Read(name)
		if err != nil {
			t.Fatal(err)
		}
		try(text)
	}
	try(json.RawMessage(` { } `))
	try(json.RawMessage(`{"a\"b":[1,{"c":"}"}] , "d" : -1.5e3 ,"e":null}`))
	for _, bad := range []string{``, ` `, `[1]`, `1`, `"a"`, `{`, `{"a"}`, `{"a":}`, `{"a":1,}`, `{"a":1 "b":2}`, `{a:1}`, `{"a":1`, `{"a`, `{,}`} {
		if _, _, err := split([]byte(bad)); err == nil {
			t.Errorf("%q came apart", bad)
		}
	}
}
