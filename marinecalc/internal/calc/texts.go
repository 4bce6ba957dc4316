package calc

import "strings"

// texts keeps the texts of a sheet one behind the other in a few pieces of
// memory: a sheet has some 150 of them, each a few letters long.
type texts struct{ strings.Builder }

// keep gives what is written in b a place that stays.
func (t *texts) keep(b []byte) string {
	const piece = 1024
	if t.Cap()-t.Len() < len(b) {
		*t = texts{}
		t.Grow(max(piece, len(b)))
	}
	from := t.Len()
	t.Write(b)
	return t.String()[from:]
}
