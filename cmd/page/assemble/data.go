package assemble

import (
	"bytes"
	"encoding/json"
	"fmt"
	"os"
	"path/filepath"
	"regexp"
	"strings"
)

// onlyDocument is a source of a row that is a document and no more; rules read it as
// one text too.
var onlyDocument = regexp.MustCompile(`"source":\{"document":("(?:[^"\\]|\\.)*")\}`)

// compact is a file without its spaces and line ends, its sources as short as they can
// be read, and its rows without what nobody is answered or the rules put back.
func compact(text []byte) ([]byte, error) {
	small, err := spaceless(text)
	return onlyDocument.ReplaceAll(small, []byte(`"source":$1`)), err
}

// commonPractice is how rows of our own are written of which that is the source.
const commonPractice = `{"document":"common practice, no source"} "common-practice"`

// shorten leaves out of a row of a kind what can be: notes of limits are for whoever
// reads the rules, and nothing that the module answers has them; ids of signs and what
// is common practice of signs and advice are put back by marinecalc/rules.
var shorten = map[string]func(row map[string]json.RawMessage){
	"limits": func(row map[string]json.RawMessage) { delete(row, "note") },
	"signs": func(row map[string]json.RawMessage) {
		if ends := string(row["cause"]) + string(row["evidence"]); strings.ReplaceAll(ends, `""`, "/") == string(row["id"]) {
			delete(row, "id")
		}
		withoutPractice(row)
	},
	"advice": withoutPractice,
}

func withoutPractice(row map[string]json.RawMessage) {
	var source bytes.Buffer
	if json.Compact(&source, row["source"]) == nil && source.String()+" "+string(row["basis"]) == commonPractice {
		delete(row, "source")
		delete(row, "basis")
	}
}

func spaceless(text []byte) ([]byte, error) {
	var file map[string]json.RawMessage
	if err := json.Unmarshal(text, &file); err != nil {
		return nil, err
	}
	plain := true
	for kind, short := range shorten {
		var rows []map[string]json.RawMessage
		if json.Unmarshal(file[kind], &rows) != nil {
			continue
		}
		plain = false
		for _, row := range rows {
			short(row)
		}
		written, err := encode(rows)
		if err != nil {
			return nil, err
		}
		file[kind] = written
	}
	if !plain {
		return encode(file)
	}
	var small bytes.Buffer
	err := json.Compact(&small, text)
	return small.Bytes(), err
}

// encode writes JSON without space, and signs as they are.
func encode(value any) ([]byte, error) {
	var small bytes.Buffer
	write := json.NewEncoder(&small)
	write.SetEscapeHTML(false)
	err := write.Encode(value)
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
