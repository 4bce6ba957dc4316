package assemble

import (
	"os"
	"path/filepath"
	"regexp"
	"strings"
	"testing"

	"example.org/driveline/cmd/page/texts"
)

// Every text of the page can be said in another language: with each of them in
// brackets the script is sound, and none stands there without its brackets.
func TestPageInAnotherLanguage(t *testing.T) {
	root, err := Root()
	if err != nil {
		t.Fatal(err)
	}
	f, err := texts.Open(root)
	if err != nil {
		t.Fatal(err)
	}
	in := &Language{Lang: "xx", Texts: map[string]string{}}
	for _, said := range f.Texts {
		for _, text := range said {
			in.Texts[text] = "⟦" + text + "⟧"
		}
	}
	program, err := bundle(filepath.Join(root, "site", "main.js"), in)
	if err != nil {
		t.Fatal(err)
	}
	shell, err := os.ReadFile(filepath.Join(root, "site", "index.html"))
	if err != nil {
		t.Fatal(err)
	}
	held := regexp.MustCompile(`[!=]==?"[^"]*"`) // the calculator's own words, held against
	page := held.ReplaceAllString(program, "") + string(in.shell(shell))
	rest := strings.Builder{} // what stands in no bracket
	depth := 0
	for _, r := range page {
		switch {
		case r == '⟦':
			depth++
		case r == '⟧':
			depth--
		case depth == 0:
			rest.WriteRune(r)
		}
	}
	said := 0
	for text := range in.Texts {
		plain := regexp.MustCompile(`\{\d+\}`).Split(text, -1)[0]
		if len(plain) < 16 || !strings.Contains(page, plain) {
			continue // too short to be told from code
		}
		said++
		if strings.Contains(rest.String(), plain) && !strings.Contains(strings.Join(f.NotRead, "\n"), plain) {
			t.Errorf("%q stands somewhere in its first language", text)
		}
	}
	if t.Logf("%d of %d texts", said, len(in.Texts)); said < 150 {
		t.Errorf("only %d texts were found", said)
	}
	if !strings.Contains(page, `lang="xx"`) {
		t.Error("the page does not name its language")
	}
}

func TestReadLanguage(t *testing.T) {
	root, err := Root()
	if err != nil {
		t.Fatal(err)
	}
	file := filepath.Join(t.TempDir(), "words.json")
	for text, good := range map[string]bool{`{"lang":"de","texts":{"Undo":"Zurück"}}`: true, `{"texts":{"No such text":"Nichts"}}`: false, `{`: false} {
		if err := os.WriteFile(file, []byte(text), 0o644); err != nil {
			t.Fatal(err)
		}
		if _, err := ReadLanguage(root, file); (err == nil) != good {
			t.Errorf("%s: %v", text, err)
		}
	}
}
