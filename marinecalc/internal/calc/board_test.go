package calc

import (
	"testing"
	"time"
)

// Two sessions that would wait for one another: the second is told that it
// leads to itself, as one session alone is, and nobody waits for ever.
func TestSessionsDoNotWaitInACircle(t *testing.T) {
	b := &board{}
	one, other := &Session{board: b}, &Session{board: b}
	first, mine := b.take(one, "first")
	if !mine {
		t.Fatal("nobody had it")
	}
	if e, mine := b.take(one, "first"); e != nil || mine {
		t.Fatal("one session leads to itself")
	}
	second, _ := b.take(other, "second")
	got := make(chan *entry)
	go func() { e, _ := b.take(one, "second"); got <- e }()
	for waits := false; !waits; time.Sleep(time.Millisecond) {
		b.mutex.Lock()
		waits = one.waits != nil
		b.mutex.Unlock()
	}
	if e, mine := b.take(other, "first"); e != nil || mine {
		t.Fatal("two sessions lead to one another")
	}
	b.finish(second)
	if e := <-got; e != second {
		t.Fatal("it waited for another")
	}
	b.finish(first)
	if e, mine := b.take(other, "first"); e != first || mine {
		t.Fatal("what is over is there for all")
	}
}
