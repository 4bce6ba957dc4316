package texts

import (
	"os"
	"path/filepath"
	"regexp"
	"slices"
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"
)

const root = "../../.."

// Every text of the page has one voice, and every one that has a voice is said.
func TestEveryTextHasItsVoice(t *testing.T) {
	f, err := Open(root)
	if err != nil {
		t.Fatal(err)
	}
	voice := map[string]string{}
	for v, texts := range f.Texts {
		if f.Voices[v] == "" {
			t.Errorf("voice %q does not say where it comes from", v)
		}
		for _, text := range texts {
			if voice[text] != "" {
				t.Errorf("%q speaks in two voices: %s, %s", text, voice[text], v)
			}
			voice[text] = v
		}
	}
	for _, text := range f.NotRead {
		voice[text] = "not read"
	}
	used := map[string]bool{}
	look := func(file string, found []Text) {
		for _, text := range found {
			used[text.Words] = true
			if voice[text.Words] == "" {
				t.Errorf("%s: %q has no voice in site/texts.json", file, text.Words)
			}
		}
	}
	files, err := Scripts(root)
	if err != nil || len(files) < 60 {
		t.Fatalf("%d scripts, %v", len(files), err)
	}
	for _, file := range files {
		src, err := os.ReadFile(file)
		if err != nil {
			t.Fatal(err)
		}
		found, err := Find(string(src))
		if err != nil {
			t.Errorf("%s: %v", file, err)
		}
		look(file, found)
	}
	shell, err := os.ReadFile(filepath.Join(root, "site", "index.html"))
	if err != nil {
		t.Fatal(err)
	}
	look("index.html", InShell(string(shell)))
	for text := range voice {
		if !used[text] {
			t.Errorf("nothing says %q any more", text)
		}
	}
}

var (
	colour = regexp.MustCompile(`--([a-z-]+): #`)
	shape  = regexp.MustCompile(`\bs\(\s*'svg'`)
)

// Every colour and every file that draws says where that comes from.
func TestColoursAndShapesHaveTheirVoice(t *testing.T) {
	f, err := Open(root)
	if err != nil {
		t.Fatal(err)
	}
	tokens, err := os.ReadFile(filepath.Join(root, "site", "styles", "tokens.css"))
	if err != nil {
		t.Fatal(err)
	}
	used := map[string]bool{}
	hold := func(what, said string) {
		used[what] = true
		if v, _, _ := strings.Cut(said, ":"); f.Voices[v] == "" {
			t.Errorf("%s: %q does not begin with a voice", what, said)
		}
	}
	for _, m := range colour.FindAllStringSubmatch(string(tokens), -1) {
		hold(m[1], f.Colours[m[1]])
	}
	files, err := Scripts(root)
	if err != nil {
		t.Fatal(err)
	}
	for _, file := range files {
		src, err := os.ReadFile(file)
		if err != nil {
			t.Fatal(err)
		}
		if shape.Match(src) {
			name, _ := filepath.Rel(root, file)
			hold(filepath.ToSlash(name), f.Shapes[filepath.ToSlash(name)])
		}
	}
	for _, of := range []map[string]string{f.Colours, f.Shapes} {
		for what := range of {
			if !used[what] {
				t.Errorf("there is no %s any more", what)
			}
		}
	}
}

func words(found []Text) (words []string) {
	for _, t := range found {
		words = append(words, t.Words)
	}
	return words
}

func TestFind(t *testing.T) {
	for _, c := range []struct {
		src  string
		want []string
	}{
		{`import { x } from './a.js'; // 'A comment'`, nil},
		{`h('p', { class: 'big red', title: 'Say it' }, 'go', on ? 'Now' : 'later on')`, []string{"Say it", "go", "Now", "later on"}},
		{"h('p', {}, `${n} of ${all.filter((e) => e.x === 'Not this').length} done${late ? ', too late' : ''}`)", []string{"{0} of {1} done{2}", ", too late"}},
		{`if (key === 'Escape' || e.matches('.a > b c')) keep('left over', 1)`, nil},
		{`x = /don't 'stop' here/.test(y) ? a / b : 'Stop here'`, []string{"Stop here"}},
		{`const kinds = { sign: 'Find it', class: 'wide open' }; kinds['Some Thing']`, []string{"Find it"}},
	} {
		found, err := Find(c.src)
		if diff := cmp.Diff(c.want, words(found)); diff != "" || err != nil {
			t.Errorf("%s: %v\n%s", c.src, err, diff)
		}
	}
	for _, bad := range []string{`h('p`, "h(`p", "h('p'))", "/* "} {
		if _, err := Find(bad); err == nil {
			t.Errorf("%q was read", bad)
		}
	}
}

func TestTranslate(t *testing.T) {
	src := "h('p', {}, `${n} of ${all} done${late ? ', too late' : ''}`, 'Stop here', 'Stay')"
	out, left, err := Translate(src, map[string]string{"{0} of {1} done{2}": "von {1} sind {0} `getan`{2}", ", too late": ", zu spät", "Stop here": "Halt"})
	want := "h('p', {}, `von ${all} sind ${n} \\`getan\\`${late ? `, zu spät` : ''}`, `Halt`, 'Stay')"
	if err != nil || out != want || !slices.Equal(left, []string{"Stay"}) {
		t.Errorf("%s\nwant %s\nleft %q, %v", out, want, left, err)
	}
	if _, _, err := Translate(src, map[string]string{"{0} of {1} done{2}": "{0}"}); err == nil {
		t.Error("words that lose a figure were taken")
	}
}
