package overview

import (
	"slices"
	"strings"

	"example.org/driveline/marinecalc/internal/calc/inputs"
	"example.org/driveline/marinecalc/internal/catalogue"
	"example.org/driveline/marinecalc/internal/contract"
	"example.org/driveline/marinecalc/internal/diagnosis"
	"example.org/driveline/marinecalc/internal/survey"
	"example.org/driveline/marinecalc/rules"
)

// SearchTable is the table of the words that people type.
const SearchTable = "search-words"

// index is all that can be found, made once of a book.
type index struct {
	entries []entry
	leads   []lead
}

// views are what a host shows beside sheets, parts and work.
var views = []Hit{
	{Kind: HitView, ID: "readings", Title: "Log of readings", Text: "Log what was read today, and see how it went."},
	{Kind: HitView, ID: "boat", Title: "The boat file", Text: "What is known of the boat, saved to a file and opened."},
	{Kind: HitView, ID: "survey", Title: "Survey", Text: "Everything that the boat's figures allow, worst first."},
	{Kind: HitView, ID: "compare", Title: "Before and after", Text: "Two dated states side by side."},
}

type indexKey struct{}

// lead is a word or phrase that people type and what it leads to, best first.
type lead struct {
	words []string
	to    []string
}

// idle are words that say nothing of what is looked for.
var idle = strings.Fields("a an the is it its my of in on to at and or when does do i there that this with for from has have be by as not than was too")

// wordsOf are the words of a text that say something, in small letters.
func wordsOf(text string) []string {
	fields := strings.FieldsFunc(strings.ToLower(text), func(r rune) bool { return strings.ContainsRune(" \t\n,;:?!()“”\"’'·", r) })
	return slices.DeleteFunc(fields, func(w string) bool { return slices.Contains(idle, strings.Trim(w, ".")) || strings.Trim(w, ".-") == "" })
}

func newIndex(book *rules.Book) *index {
	x := &index{}
	for _, row := range book.Table(SearchTable).Rows.All() {
		to := strings.Fields(row.Values.Of("finds").Text)
		for _, phrase := range strings.Split(row.Values.Of("words").Text, "|") {
			x.leads = append(x.leads, lead{wordsOf(phrase), to})
		}
	}
	for _, row := range book.Table(survey.PartsTable).Rows.All() {
		x.add(Hit{Kind: HitPart, ID: row.ID, Title: row.Name, Text: row.Note})
	}
	for _, v := range views {
		x.add(v)
	}
	for _, q := range diagnosis.Questions(book) {
		kind := HitSign
		if q.Kind == "check" {
			kind = HitLook
		}
		x.add(Hit{Kind: kind, ID: q.ID, Title: q.Title, Text: q.Help})
	}
	for _, r := range book.Remedies().All() {
		x.add(Hit{Kind: HitWork, ID: r.ID, Title: r.Title, Text: r.Text})
	}
	for _, c := range catalogue.Calculations {
		k, err := c.Form()
		if err != nil {
			continue // a test opens every contract
		}
		x.add(Hit{Kind: HitCalculation, ID: c.ID, Title: k.Title, Text: k.Answers})
		e := &x.entries[len(x.entries)-1]
		for _, p := range slices.Concat(k.Input.Properties, k.Result.Properties) {
			e.say(byText, p.Title)
		}
		x.rowsOf(k.Calculation, book)
	}
	return x
}

func (x *index) add(h Hit) {
	e := entry{Hit: h}
	e.say(byTitle, h.Title)
	e.say(byText, h.Text)
	x.entries = append(x.entries, e)
}

func (e *entry) say(weight int, text string) {
	if list := wordsOf(text); e.first == "" && len(list) > 0 {
		e.first = list[0]
	}
	for _, w := range wordsOf(text) {
		w = strings.TrimRight(w, ".")
		if !slices.ContainsFunc(e.words, func(known word) bool { return known.text == w }) {
			e.words = append(e.words, word{w, weight})
		}
	}
}

// rowsOf adds the rows that can be picked for a calculation.
func (x *index) rowsOf(k *contract.Calculation, book *rules.Book) {
	for _, p := range k.Input.Properties {
		table := book.Table(p.Rows)
		if p.Rows == "" || p.Rows == inputs.Gauges || table == nil {
			continue
		}
		weight := byTitle - byNeed
		if slices.ContainsFunc(k.Input.Needs, func(need string) bool { return need == p.Name || fills(p, book, need) }) {
			weight = byTitle
		}
		picks, names := table.Picks()
		for i, pick := range picks {
			e := entry{Hit: Hit{Kind: HitRow, ID: pick, Title: names[i], Text: k.Title + ": " + p.Title, Calculation: k.ID, Input: p.Name}}
			e.say(weight, names[i])
			x.entries = append(x.entries, e)
		}
	}
}

// phrases is what the table of words gives to each target: more for what stands
// first, for a phrase of several words, and for words spelt as they are.
func (x *index) phrases(typed []string) map[string]int {
	given := map[string]int{}
	for _, l := range x.leads {
		score := 0
		for _, w := range l.words {
			best := 0
			for _, t := range typed {
				best = max(best, met(t, w))
			}
			if best == 0 {
				score = 0
				break
			}
			score += best
		}
		if score == 0 || len(l.words) < len(typed) && len(l.words) == 1 && len(typed) > 1 {
			score /= 2 // one word of several: the others must be met too
		}
		if score == 0 {
			continue
		}
		for i, to := range l.to {
			given[to] = max(given[to], score*bySynonym-i)
		}
	}
	return given
}
