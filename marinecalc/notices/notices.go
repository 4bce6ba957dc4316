// Package notices holds the licence of marinecalc and of what is built into
// its module and its command line.
package notices

import _ "embed"

//go:embed mit.txt
var mit string

//go:embed go.txt
var goLicence string

//go:embed jsonschema.txt
var jsonschema string

// Own is the licence of marinecalc itself (MIT).
func Own() string { return mit }

// Third is the licences of what others wrote and marinecalc is built with: the
// Go standard library, what the command line asks a terminal by, and the
// validator of JSON Schema.
func Third() string {
	return "The Go standard library (go.dev), golang.org/x/term and golang.org/x/sys (these two in the command line)\n\n" + goLicence +
		"\ngithub.com/santhosh-tekuri/jsonschema/v5\n\n" + jsonschema
}
