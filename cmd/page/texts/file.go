package texts

import (
	"encoding/json"
	"fmt"
	"os"
	"path/filepath"
	"regexp"
	"slices"
	"strconv"
	"strings"
)

// File is site/texts.json: every text of the page by the voice that it speaks
// in, what looks like one and is none, and where colours and shapes come from.
type File struct {
	About   string
	Voices  map[string]string
	Texts   map[string][]string
	NotRead []string
	Colours map[string]string
	Shapes  map[string]string
}

// Open reads the file of a module's folder.
func Open(root string) (f File, err error) {
	text, err := os.ReadFile(filepath.Join(root, "site", "texts.json"))
	if err == nil {
		err = json.Unmarshal(text, &f)
	}
	return f, err
}

// Scripts lists the page's scripts, without its tests.
func Scripts(root string) ([]string, error) {
	files, err := filepath.Glob(filepath.Join(root, "site", "*.js"))
	if err != nil {
		return nil, err
	}
	more, err := filepath.Glob(filepath.Join(root, "site", "[a-m,o-z]*", "*.js"))
	return append(files, more...), err
}

var (
	markup = regexp.MustCompile(`(?s)<!--.*?-->|<title>.*?</title>`)
	said   = regexp.MustCompile(`>([^<]*\pL[^<]*)<|aria-label="([^"]*)"`)
)

// InShell gives the texts of index.html.
func InShell(html string) (found []Text) {
	html = markup.ReplaceAllStringFunc(html, func(s string) string { return strings.Repeat(" ", len(s)) })
	for _, at := range said.FindAllStringSubmatchIndex(html, -1) {
		from, to := at[2], at[3]
		if from < 0 {
			from, to = at[4], at[5]
		}
		whole := html[from:to]
		words := strings.TrimSpace(whole)
		from += strings.Index(whole, words)
		found = append(found, Text{From: from, To: from + len(words), Words: words})
	}
	return found
}

// Translate puts other words in the place of a script's texts. A text without
// other words stays, and is told.
func Translate(src string, words map[string]string) (out string, left []string, err error) {
	found, err := Find(src)
	if err != nil {
		return "", nil, err
	}
	// What stands inside another text is put in its place first.
	slices.SortStableFunc(found, func(a, b Text) int { return b.From - a.From })
	for i, t := range found {
		other, has := words[t.Words]
		if !has {
			left = append(left, t.Words)
			continue
		}
		whole := src[t.From:t.To]
		inside := t.Inside
		if len(inside) > 0 { // as it stands by now
			again, err := Find("(" + whole + ")")
			if err != nil {
				return "", nil, err
			}
			for _, a := range again {
				if a.From == 1 {
					inside = a.Inside
				}
			}
		}
		literal := "`" + strings.NewReplacer("\\", `\\`, "`", "\\`", "${", `\${`).Replace(other) + "`"
		for n := range t.Inside {
			hole := "{" + strconv.Itoa(n) + "}"
			if strings.Count(literal, hole) != 1 {
				return "", nil, fmt.Errorf("%q stands for %q and must hold %s once", other, t.Words, hole)
			}
			literal = strings.Replace(literal, hole, "${"+inside[n]+"}", 1)
		}
		src = src[:t.From] + literal + src[t.To:]
		for j := i + 1; j < len(found); j++ { // those around it end later
			if found[j].To >= t.To {
				found[j].To += len(literal) - len(whole)
			}
		}
	}
	return src, left, nil
}
