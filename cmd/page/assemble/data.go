package assemble

import (
	"bytes"
	"encoding/json"
	"fmt"
	"os"
	"path/filepath"
	"regexp"
)

// onlyDocument is a source of a row that is a document and no more; rules read it as
// one text too.
var onlyDocument = regexp.MustCompile(`"source":\{"document":("(?:[^"\\]|\\.)*")\}`)

// bracket is what the values of an unverified row rest on.
var bracket = regexp.MustCompile(`,"bracket":"(?:[^"\\]|\\.)*"`)

// compact is a file without its spaces and line ends, its sources as short as they can
// be read, its rows without what their brackets rest on and its limits without their
// notes: these are for whoever reads the rules, and nothing that the module answers
// has them.
func compact(text []byte) ([]byte, error) {
	small, err := spaceless(text)
	return bracket.ReplaceAll(onlyDocument.ReplaceAll(small, []byte(`"source":$1`)), nil), err
}

func spaceless(text []byte) ([]byte, error) {
	var file map[string]json.RawMessage
	var limits []map[string]json.RawMessage
	if err := json.Unmarshal(text, &file); err != nil {
		return nil, err
	}
	var small bytes.Buffer
	if json.Unmarshal(file["limits"], &limits) != nil {
		err := json.Compact(&small, text)
		return small.Bytes(), err
	}
	for _, l := range limits {
		delete(l, "note")
	}
	write := json.NewEncoder(&small)
	write.SetEscapeHTML(false)
	if err := write.Encode(limits); err != nil {
		return nil, err
	}
	file["limits"] = bytes.Clone(small.Bytes())
	small.Reset()
	err := write.Encode(file)
	return bytes.TrimSpace(small.Bytes()), err
}

// compactData puts the rules and schemas without their spaces and line ends
// into a folder, and gives the file that tells the Go toolchain to build with
// these: 20 kB off the page, and a fifth less to read at the start.
func compactData(root, folder string) (overlay string, err error) {
	replace := map[string]string{}
	for _, pattern := range []string{"schemas/*.json", "marinecalc/rules/data/*.json", "marinecalc/rules/data/*/*.json"} {
		files, err := filepath.Glob(filepath.Join(root, pattern))
		if err != nil {
			return "", err
		}
		for _, file := range files {
			text, err := os.ReadFile(file)
			if err != nil {
				return "", err
			}
			small, err := compact(text)
			if err != nil {
				return "", fmt.Errorf("%s: %w", file, err)
			}
			replace[file] = filepath.Join(folder, fmt.Sprintf("%d.json", len(replace)))
			if err := os.WriteFile(replace[file], small, 0o644); err != nil {
				return "", err
			}
		}
	}
	list, err := json.Marshal(map[string]any{"Replace": replace})
	if err != nil {
		return "", err
	}
	overlay = filepath.Join(folder, "overlay.json")
	return overlay, os.WriteFile(overlay, list, 0o644)
}
