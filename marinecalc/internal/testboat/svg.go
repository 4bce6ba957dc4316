package testboat

import (
	"encoding/xml"
	"errors"
	"io"
	"strings"
)

// WellFormed reads an SVG with the standard library's XML reader and says
// what is wrong with it, or nothing.
func WellFormed(svg string) string {
	d := xml.NewDecoder(strings.NewReader(svg))
	for {
		token, err := d.Token()
		if errors.Is(err, io.EOF) {
			return ""
		}
		if err != nil {
			return err.Error()
		}
		if e, ok := token.(xml.StartElement); ok {
			for _, a := range e.Attr {
				if strings.Contains(a.Value, "NaN") || strings.Contains(a.Value, "Inf") {
					return e.Name.Local + " has " + a.Name.Local + "=" + a.Value
				}
			}
		}
	}
}
