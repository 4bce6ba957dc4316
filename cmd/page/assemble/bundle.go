package assemble

import (
	"encoding/json"
	"errors"
	"fmt"
	"os"
	"slices"
	"strings"

	"github.com/evanw/esbuild/pkg/api"

	"example.org/driveline/cmd/page/texts"
)

// Language holds the page's texts in another one. What it has no words for
// stays as it is.
type Language struct {
	Lang  string            // as HTML names it: "de"
	Texts map[string]string // by the texts that the sources have
}

// ReadLanguage reads a file of other words. A text that the page does not say
// is refused, since it would never be seen.
func ReadLanguage(root, file string) (*Language, error) {
	text, err := os.ReadFile(file)
	if err != nil {
		return nil, err
	}
	var l Language
	if err := json.Unmarshal(text, &l); err != nil {
		return nil, fmt.Errorf("%s: %w", file, err)
	}
	own, err := texts.Open(root)
	if err != nil {
		return nil, err
	}
	for said := range l.Texts {
		if !slices.ContainsFunc([]string{"trade", "standard", "own"}, func(v string) bool { return slices.Contains(own.Texts[v], said) }) {
			return nil, fmt.Errorf("%s: the page does not say %q; site/texts.json has what it says", file, said)
		}
	}
	return &l, nil
}

// plugin puts the words of the language into each script as it is read.
func (l *Language) plugin() api.Plugin {
	return api.Plugin{Name: "language", Setup: func(b api.PluginBuild) {
		b.OnLoad(api.OnLoadOptions{Filter: `[/\\]site[/\\].*\.js$`}, func(a api.OnLoadArgs) (api.OnLoadResult, error) {
			src, err := os.ReadFile(a.Path)
			if err != nil {
				return api.OnLoadResult{}, err
			}
			out, _, err := texts.Translate(string(src), l.Texts)
			return api.OnLoadResult{Contents: &out}, err
		})
	}}
}

// bundle gathers an entry file and all it imports into one minified text, in
// another language where there is one.
func bundle(entry string, in *Language) (string, error) {
	var plugins []api.Plugin
	if in != nil {
		plugins = append(plugins, in.plugin())
	}
	result := api.Build(api.BuildOptions{
		EntryPoints:       []string{entry},
		Bundle:            true,
		Plugins:           plugins,
		Write:             false,
		Format:            api.FormatIIFE,
		Target:            api.ES2022,
		Charset:           api.CharsetUTF8,
		LegalComments:     api.LegalCommentsNone,
		MinifyWhitespace:  true,
		MinifyIdentifiers: true,
		MinifySyntax:      true,
		LogLevel:          api.LogLevelSilent,
	})
	// A warning here is a mistake in the page: stop for it as for an error.
	if said := append(result.Errors, result.Warnings...); len(said) > 0 {
		lines := api.FormatMessages(said, api.FormatMessagesOptions{Kind: api.ErrorMessage})
		return "", errors.New("bundling the page:\n" + strings.Join(lines, ""))
	}
	return strings.TrimSpace(string(result.OutputFiles[0].Contents)), nil
}

// shell puts the words of the language into index.html.
func (l *Language) shell(html []byte) []byte {
	page := string(html)
	found := texts.InShell(page)
	for _, t := range slices.Backward(found) {
		if other, has := l.Texts[t.Words]; has {
			page = page[:t.From] + escape.Replace(other) + page[t.To:]
		}
	}
	return []byte(strings.Replace(page, `lang="en"`, `lang="`+escape.Replace(l.Lang)+`"`, 1))
}

var escape = strings.NewReplacer("&", "&amp;", "<", "&lt;", `"`, "&quot;")
