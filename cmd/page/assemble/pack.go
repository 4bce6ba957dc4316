package assemble

import (
	"crypto/sha256"
	"encoding/base64"
	"fmt"
	"regexp"
	"strings"

	"example.org/driveline/cmd/page/gzip"
	"example.org/driveline/cmd/page/letters"
)

// parts are what a page is packed from.
type parts struct {
	Shell   string // index.html with one comment where each part goes
	First   string // style that stands there unpacked
	Style   string
	Script  string // that takes style and program out and starts it
	Program string
	Module  []byte // WebAssembly
	Boats   string // JSON
	Checks  string // JSON: a few published values, how many there are, and the terms
}

// pack puts the parts into the shell. The policy it writes lets the page run
// its own script, its own style and WebAssembly, and reach nothing else.
func pack(p parts) ([]byte, error) {
	for name, text := range map[string]string{"first style": p.First, "script": p.Script} {
		if low := strings.ToLower(text); strings.Contains(low, "</"+"script") || strings.Contains(low, "</style") {
			return nil, fmt.Errorf("the %s holds an end tag and would break out of its element", name)
		}
	}
	page := lineEnds.ReplaceAllString(betweenTags.ReplaceAllString(p.Shell, "><"), " ")
	page, p.Program = headPacked(page, p.Program)
	for _, put := range []struct{ mark, text string }{
		{"<!-- policy -->", `<meta http-equiv="Content-Security-Policy" content="` + policy(p) + `">`},
		{"<!-- style -->", "<style>" + p.First + "</style>" + packed("style", []byte(p.Style))},
		{"<!-- boats -->", packed("boats", []byte(p.Boats))},
		{"<!-- checks -->", packed("checks", []byte(p.Checks))},
		{"<!-- module -->", packed("module", p.Module)},
		{"<!-- program -->", packed("program", []byte(p.Program))},
		{"<!-- script -->", "<script>" + p.Script + "</script>"},
	} {
		if strings.Count(p.Shell, put.mark) != 1 {
			return nil, fmt.Errorf("index.html must hold %s exactly once", put.mark)
		}
		page = strings.Replace(page, put.mark, put.text, 1)
	}
	return letters.File(page), nil
}

// headPacked moves what the header holds, of which nothing works without the program,
// from the shell into that: a seventh of the bytes.
func headPacked(shell, program string) (string, string) {
	of := insideHeader.FindStringSubmatchIndex(shell)
	if of == nil {
		return shell, program
	}
	head, err := encode(shell[of[2]:of[3]])
	if err != nil {
		return shell, program
	}
	return shell[:of[2]] + shell[of[3]:], "document.querySelector('header').innerHTML=" + string(head) + ";" + program
}

var insideHeader = regexp.MustCompile(`(?s)<header[^>]*>(.*)</header>`)

// policy is the Content-Security-Policy of the page. It knows style and program
// too, which stand there once they are unpacked.
func policy(p parts) string {
	return strings.Join([]string{
		"default-src 'none'",
		"script-src '" + hash(p.Script) + "' '" + hash(p.Program) + "' 'wasm-unsafe-eval'",
		"style-src '" + hash(p.First) + "' '" + hash(p.Style) + "'",
		"img-src data: blob:",
		"worker-src blob:", // the page's own, which has no more leave than the page
		"connect-src 'none'",
		"base-uri 'none'",
		"form-action 'none'",
	}, "; ")
}

func hash(text string) string {
	sum := sha256.Sum256([]byte(text))
	return "sha256-" + base64.StdEncoding.EncodeToString(sum[:])
}

// Spaces of the shell that only its source needs: what stands unpacked takes two
// bytes a letter.
var betweenTags, lineEnds = regexp.MustCompile(`>\s+<`), regexp.MustCompile(`\s*\n\s*`)

// used are the tokens that a style refers to, token what one is set to.
var used, token = regexp.MustCompile(`var\((--[a-z-]+)`), regexp.MustCompile(`(--[a-z-]+): ?[^;}]*;?`)

// withOwnTokens is a style without the tokens that it does not refer to.
func withOwnTokens(style string) string {
	own := map[string]bool{}
	for _, m := range used.FindAllStringSubmatch(style, -1) {
		own[m[1]] = true
	}
	return token.ReplaceAllStringFunc(style, func(set string) string {
		if own[token.FindStringSubmatch(set)[1]] {
			return set
		}
		return ""
	})
}

// packed is an element that holds data gzipped and in letters.
func packed(id string, data []byte) string {
	small := gzip.Pack(data)
	sum := ""
	if id == "module" { // by which the page knows one calculator from another
		whole := sha256.Sum256(small)
		sum = fmt.Sprintf(` data-sum="%x"`, whole[:6])
	}
	return fmt.Sprintf(`<script type="application/octet-stream" id="%s" data-size="%d"%s>%s</script>`, id, len(small), sum, letters.Encode(small))
}
