package rewrite

import (
	"bytes"
	"encoding/binary"
	"strings"
)

// names are those of the functions of a table, as far as one is still called by
// them, each once: of the types that a function was made for what a trace
// prints of them, [...], and of packages outside the standard library the last
// part of their path alone. Those within have none, which leaves them out of a
// trace; the runtime's stay, by which it knows itself there.
type names struct {
	before []byte
	after  []byte
	placed map[string]uint32
}

// namesOf begins with none: the place 0 stands for no name.
func namesOf(before []byte) *names {
	return &names{before: before, after: []byte{0}, placed: map[string]uint32{}}
}

// move takes up the name that begins where the first four bytes say, and writes
// there where it begins from now on. It is read where a value's method was called
// by a nil pointer (runtime.panicwrap), of any package.
func (n *names) move(place []byte, read bool) {
	from := binary.LittleEndian.Uint32(place)
	if from == 0 || int64(from) >= int64(len(n.before)) {
		return
	}
	name, _, _ := bytes.Cut(n.before[from:], []byte{0})
	short, within := shortName(string(name))
	if within && !read {
		binary.LittleEndian.PutUint32(place, 0)
		return
	}
	at, known := n.placed[short]
	if !known {
		at = uint32(len(n.after))
		n.placed[short] = at
		n.after = append(append(n.after, short...), 0)
	}
	binary.LittleEndian.PutUint32(place, at)
}

// write puts the names where they stood before, with zeros behind them.
func (n *names) write() {
	clear(n.before[copy(n.before, n.after):])
}

// shortName is what stays of a name, and whether it is of the standard library and
// none that the runtime looks for.
func shortName(name string) (short string, within bool) {
	if open, shut := strings.IndexByte(name, '['), strings.LastIndexByte(name, ']'); open >= 0 && shut-open > len("[...") {
		name = name[:open] + "[...]" + name[shut+1:]
	}
	path := name
	if i := strings.IndexAny(path, "(["); i >= 0 {
		path = path[:i]
	}
	host, _, deep := strings.Cut(path, "/")
	switch {
	case deep && strings.Contains(host, "."):
		return name[strings.LastIndexByte(path, '/')+1:], false
	case strings.HasPrefix(name, "main."), strings.HasPrefix(name, "runtime."):
		return name, false
	}
	return name, true
}
