package contract

import (
	"bytes"
	"strings"
	"sync"

	"example.org/driveline/schemas"
)

// HandedOn tells whether any calculation takes a result of another one, named
// "calculation/result", for an input of its own (keyword "after").
func HandedOn(result string) bool { return handedOn()[result] }

// handedOn reads the keyword out of the texts of all schemas, since opening
// them all would take longer than the sheet that asks.
var handedOn = sync.OnceValue(func() map[string]bool {
	taken := map[string]bool{}
	for _, name := range schemas.Names() {
		text, _ := schemas.Read(name) // the name is one of its own
		for {
			_, after, found := bytes.Cut(text, []byte(`"after":`))
			if !found {
				break
			}
			_, value, _ := bytes.Cut(after, []byte(`"`))
			value, text, _ = bytes.Cut(value, []byte(`"`))
			for one := range strings.SplitSeq(string(value), "|") {
				taken[one] = true
			}
		}
	}
	return taken
})
