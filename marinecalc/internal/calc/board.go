package calc

import (
	"runtime"
	"sync"

	"example.org/driveline/marinecalc/internal/calc/inputs"
	"example.org/driveline/marinecalc/internal/contract"
	"example.org/driveline/marinecalc/problem"
)

// board holds what the sessions of one request have worked out on the boat
// alone, each calculation once. Sessions on several goroutines share it.
type board struct {
	mutex   sync.Mutex
	entries map[string]*entry
}

// entry is a calculation on the board. All but by and over is written before
// ready is closed, and not after.
type entry struct {
	out      *inputs.Outcome // nil where the boat does not allow it
	missing  []*contract.Property
	problems problem.List
	ready    chan struct{}
	by       *Session // that runs it
	over     bool
	brackets sync.Map // of its results, once asked for: *inputs.Bracket by name
}

// take gives the entry of a calculation. mine tells that the session is to run
// it now, and to finish it. While it runs it cannot lead to itself, on this
// goroutine or by way of others that wait for one another: then it gives nil.
func (b *board) take(s *Session, id string) (e *entry, mine bool) {
	b.mutex.Lock()
	e = b.entries[id]
	if e == nil {
		e = &entry{by: s, ready: make(chan struct{})}
		if b.entries == nil {
			b.entries = map[string]*entry{}
		}
		b.entries[id] = e
		b.mutex.Unlock()
		return e, true
	}
	for at := e; at != nil && !at.over; at = at.by.waits {
		if at.by == s {
			b.mutex.Unlock()
			return nil, false
		}
	}
	s.waits = e
	b.mutex.Unlock()
	<-e.ready
	b.mutex.Lock()
	s.waits = nil
	b.mutex.Unlock()
	return e, false
}

// finish lets go those that wait for an entry.
func (b *board) finish(e *entry) {
	b.mutex.Lock()
	e.over, e.by = true, nil // what is kept of a board keeps no session
	b.mutex.Unlock()
	close(e.ready)
}

// Ahead works calculations out on the boat alone, on as many cores as there
// are, so that the session finds them done. It is no faster on one.
func (s *Session) Ahead(list []Calculation) {
	if runtime.GOMAXPROCS(0) == 1 {
		return
	}
	s.Disagreements() // of the boat file, compared once for all of them
	var group sync.WaitGroup
	for _, c := range list { // many at a time: those that wait for others leave the cores to them
		group.Go(func() { s.beside().Work(c) })
	}
	group.Wait()
}

// beside is a session of the same request for another goroutine.
func (s *Session) beside() *Session {
	own := *s
	own.done, own.waits, own.inHand = map[string]*inputs.Outcome{}, nil, nil
	own.OtherSheet, own.WhyWithheld, own.WhyNone = own.Earlier, own.Withheld, own.noneBecause
	return &own
}
