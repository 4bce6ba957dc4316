package overview

import (
	"slices"
	"sort"
	"strings"

	"example.org/driveline/marinecalc/rules"
)

// HitKind says what a hit leads to.
type HitKind string

// The kinds of hits.
const (
	HitSign        HitKind = "sign"        // of trouble: fault finding with that answered yes
	HitLook        HitKind = "look"        // a check of the fault finding
	HitCalculation HitKind = "calculation" // its sheet
	HitRow         HitKind = "row"         // a row of a table: the sheet with it picked
	HitPart        HitKind = "part"        // of the line
	HitWork        HitKind = "work"        // step by step
	HitView        HitKind = "view"        // of a host, such as the one where readings are logged
)

// Hit is something that was found by what a person typed.
type Hit struct {
	Kind        HitKind `json:"kind"`
	ID          string  `json:"id"` // of the question, calculation, part, work; of a row its pick
	Title       string  `json:"title"`
	Text        string  `json:"text,omitempty"`        // more of it
	Calculation string  `json:"calculation,omitempty"` // of a row
	Input       string  `json:"input,omitempty"`       // that takes the row
	With        []Pick  `json:"with,omitempty"`        // rows that go with a row
}

// Pick is a row of a table picked for an input.
type Pick struct {
	Input string `json:"input"`
	ID    string `json:"id"`
	Title string `json:"title,omitempty"` // where words that were typed mean it
}

// entry is a hit that can be found, with its words by how much they say of it.
type entry struct {
	Hit
	first string // word of the title
	words []word
}

type word struct {
	text   string
	weight int
}

// How much words say: typed words that the table gives, a title, what stands
// below it.
const (
	bySynonym   = 9
	byTitle     = 6
	byText      = 2
	byBeginning = 4 // the title begins so
	byNeed      = 1 // a row that a calculation cannot do without
)

// mostHits is how many are worth showing.
const mostHits = 8

// mostAlike is for how many calculations a row is offered.
const mostAlike = 2

// Find looks for what a person typed: every word of it must be found, spelt as
// it is or nearly; where nothing has them all, what has most of them. Best
// first.
func Find(book *rules.Book, text string) []Hit {
	index := book.Derived(indexKey{}, func() any { return newIndex(book) }).(*index)
	typed := wordsOf(text)
	if len(typed) == 0 {
		return []Hit{}
	}
	type scored struct {
		at, found, score int
	}
	var list []scored
	most := 0
	bonus := index.phrases(typed)
	for i := range index.entries {
		s := scored{at: i}
		for _, t := range typed {
			if best := index.entries[i].best(t); best > 0 {
				s.found++
				s.score += best
			}
		}
		if b := bonus[index.entries[i].key()]; b > 0 {
			s.found, s.score = len(typed), s.score+b
		}
		if strings.HasPrefix(index.entries[i].first, typed[0]) {
			s.score += byBeginning
		}
		if s.found > 0 {
			list = append(list, s)
			most = max(most, s.found)
		}
	}
	sort.SliceStable(list, func(i, j int) bool {
		if list[i].found != list[j].found {
			return list[i].found > list[j].found
		}
		return list[i].score > list[j].score
	})
	hits := []Hit{}
	rows, sized := 0, strings.ContainsAny(text, "0123456789") // words that the best row meets
	for _, s := range list {
		e := &index.entries[s.at]
		if !sized || e.Kind != HitRow || s.found < rows {
			continue
		}
		rows = s.found
		if rows == len(typed) || slices.ContainsFunc(hits, func(h Hit) bool { return h.Calculation == e.Calculation }) {
			continue
		}
		if with := index.together(e, typed); with != nil {
			first := e.Hit
			first.With = with
			hits = append(hits, first)
		}
	}
	whole := len(hits) > 0
	for _, s := range list {
		if whole || s.found < most || len(hits) == mostHits {
			break
		}
		e := &index.entries[s.at]
		if e.Kind == HitRow { // the same row for a third calculation is one too many
			alike := 0
			for _, h := range hits {
				if h.Kind == HitRow && h.ID == e.ID {
					alike++
				}
			}
			if alike == mostAlike {
				continue
			}
		}
		hits = append(hits, e.Hit)
	}
	for i := range hits {
		if hits[i].With == nil {
			hits[i].With = goingWith(&hits[i], hits)
		}
	}
	return hits
}

// goingWith are the rows that go with a row that is picked: a lock nut of 3/8-24 is
// for a thread of 3/8-24. One goes with it whose size alone its name has, where there
// is one such for its input.
func goingWith(h *Hit, hits []Hit) (with []Pick) {
	if h.Kind != HitRow {
		return nil
	}
	words := wordsOf(h.Title)
	count := map[string]int{}
	for _, o := range hits {
		size, _, _ := strings.Cut(strings.ToLower(o.Title), " ")
		if o.Kind == HitRow && o.Calculation == h.Calculation && o.Input != h.Input && slices.Contains(words, size) {
			with = append(with, Pick{Input: o.Input, ID: o.ID})
			count[o.Input]++
		}
	}
	return slices.DeleteFunc(with, func(p Pick) bool { return count[p.Input] > 1 })
}

// together finds the rows for other inputs of the same calculation that the
// words mean which a row leaves: a grade beside a thread. It is nil where a word
// is left over.
func (x *index) together(first *entry, typed []string) (with []Pick) {
	left := slices.DeleteFunc(slices.Clone(typed), func(t string) bool { return first.best(t) > 0 })
	taken := []string{first.Input}
	for len(left) > 0 {
		var best *entry
		most, rest := 0, left
		for i := range x.entries {
			e := &x.entries[i]
			if e.Kind != HitRow || e.Calculation != first.Calculation || slices.Contains(taken, e.Input) {
				continue
			}
			score := 0
			over := slices.DeleteFunc(slices.Clone(left), func(t string) bool { n := e.best(t); score += n; return n > 0 })
			if len(over) < len(rest) || len(over) == len(rest) && score > most {
				best, most, rest = e, score, over
			}
		}
		if best == nil || len(rest) == len(left) {
			return nil
		}
		with, taken, left = append(with, Pick{Input: best.Input, ID: best.ID, Title: best.Title}), append(taken, best.Input), rest
	}
	return with
}

func (e *entry) key() string {
	switch e.Kind {
	case HitSign, HitLook:
		return "question/" + e.ID
	case HitRow:
		return ""
	}
	return string(e.Kind) + "/" + e.ID
}

// best is how well a typed word is met by the entry; 0 where it is not.
func (e *entry) best(typed string) int {
	best := 0
	for _, w := range e.words {
		if n := met(typed, w.text) * w.weight; n > best {
			best = n
		}
	}
	return best
}

// met is how well a typed word meets another: 8 as it is, 6 as its beginning, 3
// with a slip of the finger.
func met(typed, word string) int {
	switch {
	case typed == word:
		return 8
	case len(typed) >= 2 && strings.HasPrefix(word, typed):
		return 6
	case len(word) >= 4 && strings.HasPrefix(typed, word) && len(typed)-len(word) <= 3: // drips, vibrating
		return 5
	case near(typed, word):
		return 3
	}
	return 0
}

// near tells whether two words differ by a slip: one letter in a word of four
// or more, two in one of seven or more.
func near(a, b string) bool {
	most := 0
	switch n := min(len(a), len(b)); {
	case strings.ContainsAny(a, "0123456789"):
		return false // a size is that size
	case n >= 7:
		most = 2
	case n >= 4:
		most = 1
	}
	return most > 0 && a[0] == b[0] && slips(a, b, most) <= most
}

// slips is the number of letters to change, to add, to take out or to swap with
// the next between two words; more than most is as good as most + 1.
func slips(a, b string, most int) int {
	if len(a)-len(b) > most || len(b)-len(a) > most {
		return most + 1
	}
	var before, last, now [64]int
	if len(b) >= len(now) {
		return most + 1
	}
	for j := range len(b) + 1 {
		last[j] = j
	}
	for i := 1; i <= len(a); i++ {
		now[0] = i
		for j := 1; j <= len(b); j++ {
			change := last[j-1]
			if a[i-1] != b[j-1] {
				change++
			}
			now[j] = min(change, last[j]+1, now[j-1]+1)
			if i > 1 && j > 1 && a[i-1] == b[j-2] && a[i-2] == b[j-1] {
				now[j] = min(now[j], before[j-2]+1)
			}
		}
		before, last = last, now
	}
	return last[len(b)]
}
