package assemble

import (
	"errors"
	"strings"

	"github.com/evanw/esbuild/pkg/api"
)

// bundle gathers an entry file and all it imports into one minified text.
func bundle(entry string) (string, error) {
	result := api.Build(api.BuildOptions{
		EntryPoints:       []string{entry},
		Bundle:            true,
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
