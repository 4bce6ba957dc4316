package rules

import (
	"encoding/json"
	"iter"
	"slices"
)

// List is a list that can be read but not changed: what a Book hands out leads
// back to the book's own rows, which every sheet rests on.
type List[T any] struct{ items []T }

// All goes through the list from its beginning.
func (l List[T]) All() iter.Seq2[int, T] { return slices.All(l.items) }

// Len counts the items.
func (l List[T]) Len() int { return len(l.items) }

// At returns a copy of the item of that number, counted from 0. It panics
// where there is none.
func (l List[T]) At(i int) T { return l.items[i] }

// UnmarshalJSON reads an array.
func (l *List[T]) UnmarshalJSON(text []byte) error {
	l.items = nil
	return json.Unmarshal(text, &l.items)
}

// Contains tells whether v is an item of the list.
func Contains[T comparable](l List[T], v T) bool { return slices.Contains(l.items, v) }

// Join adds the items of a list that are not there yet.
func Join[T comparable](to []T, l List[T]) []T {
	for _, v := range l.items {
		if !slices.Contains(to, v) {
			to = append(to, v)
		}
	}
	return to
}

// replace returns old with the rows of the same id replaced, and the other
// new rows put first, so that a row of an overlay is found before a general one.
func replace[T any](old, rows []T, id func(T) string) []T {
	if len(rows) == 0 {
		return old
	}
	out := slices.Clone(old)
	var added []T
	for _, r := range rows {
		if i := slices.IndexFunc(out, func(o T) bool { return id(o) == id(r) }); i >= 0 {
			out[i] = r
		} else {
			added = append(added, r)
		}
	}
	return append(added, out...)
}
