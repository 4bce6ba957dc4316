package calc

import (
	"bytes"
	"sync/atomic"

	"example.org/driveline/marinecalc/internal/boat"
)

// Keeper keeps the boat of the last request, and what was worked out on her alone:
// a person types on one sheet of one boat, and each key is a request of its own
// with the whole boat in it. One request at a time has it; one beside it begins
// with nothing. The zero Keeper keeps nothing yet.
type Keeper struct{ last atomic.Pointer[Kept] }

// Kept is a boat that was read, and what was worked out on her alone by one set
// of options. It belongs to one request at a time.
type Kept struct {
	Boat  *boat.Boat // not to be changed
	text  []byte
	sound bool // without what of it cannot be used
	by    Options
	board *board
}

// maxKept is the longest boat that is kept, in bytes: of a longer one, this and
// the next together would be too much for a host with little memory.
const maxKept = 1 << 18

// Take gives the boat that was kept, where it was written with the same bytes, and
// read likewise: sound is without what of it cannot be used. It is nil otherwise, and
// then another is not held in memory any more.
func (k *Keeper) Take(text []byte, sound bool) *Kept {
	kept := k.last.Swap(nil)
	if kept == nil || kept.sound != sound || !bytes.Equal(kept.text, text) {
		return nil
	}
	return kept
}

// Keep keeps a boat for the next request: one that Take gave, or a new one; nil is
// nothing to keep. Nothing may be kept of a request that was stopped.
func (k *Keeper) Keep(kept *Kept) {
	if kept != nil {
		k.last.Store(kept)
	}
}

// NewKept is a boat as it was read from a text, which is copied; nil where that is
// too long to be kept, or not known.
func NewKept(text []byte, sound bool, b *boat.Boat) *Kept {
	if len(text) == 0 || len(text) > maxKept {
		return nil
	}
	return &Kept{Boat: b, text: bytes.Clone(text), sound: sound}
}

// GoOn lets a session, which was made with these options, go on from what was
// worked out on the same boat by the very same ones; from nothing by others.
func (s *Session) GoOn(kept *Kept, o Options) {
	if kept == nil || kept.Boat != s.Boat {
		return
	}
	if kept.board == nil || kept.by != o {
		kept.board, kept.by = &board{}, o
	}
	s.board = kept.board
}
