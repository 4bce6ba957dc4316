package main

import (
	"encoding/json"
	"os"
	"os/exec"
	"path/filepath"
	"strings"
	"testing"

	"example.org/driveline/marinecalc"
	"example.org/driveline/schemas"
)

func TestTypesAreAsTheSchemasSay(t *testing.T) {
	want, err := declarations()
	if err != nil {
		t.Fatal(err)
	}
	got, err := os.ReadFile("../../wasm/marinecalc.d.ts")
	if err != nil {
		t.Fatal(err)
	}
	if string(got) != string(want) {
		t.Error("wasm/marinecalc.d.ts is not what the schemas give: go run ./cmd/types")
	}
}

// A keyword that is not understood here is refused, as is a member that a rule
// names and the schema lacks, so that neither is lost.
func TestSlipsInASchemaAreRefused(t *testing.T) {
	for _, text := range []string{`{"titel": "X"}`, `{"properties": {"a": {"typ": "string"}}}`, `{"items": {"properties": {"a": {"minimun": 1}}}}`} {
		if strict([]byte(text)).Decode(new(schema)) == nil {
			t.Errorf("%s is taken", text)
		}
	}
	request := new(schema)
	if err := strict([]byte(`{"title": "Request", "properties": {"ask": {"type": "string"}},
		"allOf": [{"if": {"properties": {"ask": {"const": "sing"}}}, "then": {"propertyNames": {"enum": ["ask", "song"]}}}]}`)).Decode(request); err != nil {
		t.Fatal(err)
	}
	w := &writer{titles: map[string]bool{}}
	if w.requests(request); len(w.errs) != 1 || !strings.Contains(w.errs[0].Error(), "song") {
		t.Errorf("got %v", w.errs)
	}
}

func TestTypeOf(t *testing.T) {
	for text, want := range map[string]string{
		`{"type": "string"}`: "string", `{"type": "integer"}`: "number", `{"type": ["object", "null"]}`: "object | null",
		`{"enum": ["a", "b's", 3]}`: `'a' | "b's" | 3`, `{"const": true}`: "true",
		`{"type": "array", "items": {"enum": ["a", "b"]}}`:               "('a' | 'b')[]",
		`{"type": "object", "additionalProperties": {"type": "number"}}`: "{ [name: string]: number }",
		`{"$ref": "sheet.schema.json#/$defs/sheetInput"}`:                "SheetInput",
		`{"$ref": "survey.schema.json"}`:                                 "Survey",
		`{"$ref": "annotations.schema.json#/$defs/calculation"}`:         "CalculationSchema",
		`{"type": "array", "items": {"$ref": "sheet.schema.json"}}`:      "Sheet[]",
		`{"description": "Nobody says of what type."}`:                   "",
		`{"type": "array"}`: "",
		`{"type": "object", "properties": {"inline": {"type": "string"}}}`:    "",
		`{"type": "object", "properties": {}, "$ref": "songs.schema.json#x"}`: "",
	} {
		s := new(schema)
		if err := strict([]byte(text)).Decode(s); err != nil {
			t.Fatal(err)
		}
		w := &writer{object: "object"}
		got := w.typeOf(s)
		if want == "" && len(w.errs) == 0 || want != "" && (got != want || len(w.errs) > 0) {
			t.Errorf("%s is %s (%v), want %s", text, got, w.errs, want)
		}
	}
}

// The type of a schema stands in head.d.ts, and has every keyword that a
// schema may use.
func TestSchemaTypeHasEveryKeyword(t *testing.T) {
	text, err := schemas.Read("annotations")
	if err != nil {
		t.Fatal(err)
	}
	var annotations struct {
		Defs struct {
			Property, Document struct{ Properties map[string]any }
		} `json:"$defs"`
	}
	if err := json.Unmarshal(text, &annotations); err != nil {
		t.Fatal(err)
	}
	_, inside, _ := strings.Cut(head, "export interface Schema {\n")
	inside, _, _ = strings.Cut(inside, "\n}")
	if len(annotations.Defs.Property.Properties) < 30 {
		t.Fatalf("only %d keywords", len(annotations.Defs.Property.Properties))
	}
	for _, keywords := range []map[string]any{annotations.Defs.Property.Properties, annotations.Defs.Document.Properties} {
		for name := range keywords {
			if !strings.Contains(inside, "  "+name+"?: ") {
				t.Errorf("head.d.ts: the type Schema lacks %s", name)
			}
		}
	}
}

// The types hold for what is really sent and got, in a strict program that has
// no types of a browser. Real replies are written out as values, which
// TypeScript checks member by member, more of them than of variables.
func TestTypesHoldForRealReplies(t *testing.T) {
	checker, err := filepath.Abs("../../site/node_modules/.bin/tsc")
	if err != nil {
		t.Fatal(err)
	}
	if _, err := os.Stat(checker); err != nil {
		t.Skip("TypeScript's checker is not installed: npm --prefix site ci")
	}
	program, err := os.ReadFile("testdata/host.ts")
	if err != nil {
		t.Fatal(err)
	}
	boat, err := os.ReadFile("../../testdata/boats/kittiwake.json")
	if err != nil {
		t.Fatal(err)
	}
	var values strings.Builder
	for name, request := range map[string]string{
		"Contents": `{"ask": "contents"}`, "Blank": `{"ask": "blank", "calculation": "fault-finding", "boat": ` + string(boat) + `}`,
		"Survey":    `{"ask": "survey", "trials": 100, "boat": ` + string(boat) + `}`,
		"Procedure": `{"ask": "procedure", "remedies": ["align-coupling", "repack-gland"], "trials": 100, "boat": ` + string(boat) + `}`,
		"Compare":   `{"ask": "compare", "before": "2025-10-04", "after": "2026-06-20", "trials": 100, "boat": ` + string(boat) + `}`,
	} {
		reply := marinecalc.Call([]byte(request))
		if !json.Valid(reply) || !strings.HasPrefix(string(reply), `{"ok":true`) {
			t.Fatalf("%.200s gives %.300s", request, reply)
		}
		values.WriteString("export const real" + name + ": types." + name + "Reply = " + string(reply) + ";\n")
	}
	refused := marinecalc.Call([]byte(`{"ask": "run", "calculation": "shaft-torque"}`))
	values.WriteString("export const realRefusal: types.Refusal = " + string(refused) + ";\n")

	check := func(text string) (string, error) {
		folder := t.TempDir()
		types, err := os.ReadFile("../../wasm/marinecalc.d.ts")
		if err != nil {
			t.Fatal(err)
		}
		for name, text := range map[string]string{"marinecalc.d.ts": string(types), "host.ts": text} {
			if err := os.WriteFile(filepath.Join(folder, name), []byte(text), 0o666); err != nil {
				t.Fatal(err)
			}
		}
		run := exec.Command(checker, "--strict", "--noEmit", "--exactOptionalPropertyTypes", "--noUncheckedIndexedAccess", "--target", "es2022",
			"--module", "es2022", "--moduleResolution", "bundler", "--lib", "es2022", "--types", "", "--ignoreConfig", "host.ts")
		run.Dir = folder
		out, err := run.CombinedOutput()
		return string(out), err
	}
	if out, err := check(string(program) + values.String()); err != nil {
		t.Errorf("%v:\n%.3000s", err, out)
	}
	// It would be noticed if one did not hold.
	for _, slip := range []string{
		"export const slip: types.RunReply = { ok: true };", "export const slip: types.Request = { ask: 'survey' };",
		"export const slip: types.RunRequest = { ask: 'run', calculation: 'bolt-preload', csv: '' };",
		"export const slip = types.start('a name');", "export const slip = (v: types.Verdict) => v.settle.length;",
		"export const slip: types.Choice = { pick: 'a', name: 'b', other: 1 };",
	} {
		if out, err := check(string(program) + slip); err == nil || strings.Count(out, "error TS") != 1 {
			t.Errorf("%s: %v, %s", slip, err, out)
		}
	}
}
