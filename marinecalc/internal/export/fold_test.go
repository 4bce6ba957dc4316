package export

import (
	"encoding/json"
	"strings"
	"testing"
)

func TestCalendarFoldsBetweenLetters(t *testing.T) {
	var c calendarText
	c.line("SUMMARY", icalText(strings.Repeat("ö→", 60)+"; a, b\\ c\nd"))
	for _, l := range strings.Split(c.b.String(), "\r\n") {
		if len(l) > 75 || !json.Valid([]byte(`"`+strings.ReplaceAll(l, `\`, ``)+`"`)) {
			t.Errorf("%d octets, %q", len(l), l)
		}
	}
	whole := strings.ReplaceAll(c.b.String(), "\r\n ", "")
	if whole != "SUMMARY:"+strings.Repeat("ö→", 60)+`\; a\, b\\ c\nd`+"\r\n" {
		t.Errorf("unfolded it is %q", whole)
	}
}
