package plain

import (
	"fmt"
	"io"
	"strconv"
	"strings"

	"example.org/driveline/marinecalc"
	"example.org/driveline/marinecalc/problem"
)

// Step writes one step. said has the step at which each caution stands, and
// what else was said.
func Step(w io.Writer, s *marinecalc.Step, said map[string]int) {
	const indent = "       "
	line := func(label, text string) {
		if text != "" {
			fmt.Fprintln(w, Wrapped(indent, label+text))
		}
	}
	fmt.Fprintf(w, "\n%s %2d %s\n", box(s.Tick != nil), s.Number, s.Title)
	if s.Tick != nil {
		line("Ticked off ", strings.TrimSpace(s.Tick.Date+" "+s.Tick.Time)+".")
	}
	line("", s.Hold)
	line("", s.Once)
	var again []string
	for _, c := range s.Cautions {
		if at, has := said[c.Text]; has {
			again = append(again, fmt.Sprintf("%s (%d) %s", c.Signal, at, inShort(c.Text)))
			continue
		}
		said[c.Text] = s.Number
		line(string(c.Signal)+": ", c.Text)
	}
	line("As at the steps before: ", strings.Join(again, "; "))
	line("", s.Move)
	line("No special hazard: ", s.Safe)
	line("", s.Text)
	line("", s.Note)
	work := Hours(s.Hours) + ", " + Hours(s.LongHours) + " when it does not go smoothly; " + s.Place
	if s.WaitDays > 0 {
		work += "; then wait " + Days(s.WaitDays)
	}
	line("", work+".")
	line("Tools: ", strings.Join(s.Tools, ", "))
	for _, p := range s.Parts {
		line("Takes: ", joined("; ", p.Title+", "+p.Amount, p.Size, p.Note))
	}
	var unknown []string
	for i := range s.Figures {
		if f := &s.Figures[i]; f.Table == nil && f.Text == "" {
			unknown = append(unknown, problem.MidSentence(f.Title)+" ____________")
		} else {
			figure(w, indent, f)
		}
	}
	line("Not known yet, write it in: ", strings.Join(unknown, ", "))
	if s.Tightening != nil {
		line("TIGHTENING: ", s.Tightening.Text)
	}
	if len(s.Records) > 0 {
		line("", "Write down:")
	}
	for _, r := range s.Records {
		text := box(r.Noted != "") + " " + r.Title + ": "
		if r.Noted != "" {
			text += r.Noted + " (" + r.NotedOn + ")"
		} else {
			text += "____________ " + r.Unit
		}
		if r.Last != "" {
			text += " Last " + r.Last + " on " + r.Date + "."
		} else if r.Reading != "" {
			text += " Never read so far."
		}
		for _, l := range r.Limits {
			text += " " + l.Title + ": " + l.Bound
			if l.Guide {
				text += " (a guide)"
			}
			text += "."
		}
		line("  ", text)
	}
	var bares []string
	for _, b := range s.Bares {
		if _, has := said["bares "+b.ID]; !has {
			said["bares "+b.ID] = s.Number
			bares = append(bares, b.Title+" ("+b.ID+")")
		}
	}
	line("Cheap while it lies open (marinecalc procedure …): ", strings.Join(bares, "; "))
	if s.Due != nil {
		line("Due: ", s.Due.Text)
	}
	line("Noted: ", s.TickNote)
}

// figure writes a figure of the boat.
func figure(w io.Writer, indent string, f *marinecalc.StepFigure) {
	switch {
	case f.Table != nil && len(f.Table.Rows) > mostRows:
		fmt.Fprintln(w, Wrapped(indent, fmt.Sprintf("%s: take the sheet “%s” along (marinecalc fill %s --boat FILE).", f.Title, f.Sheet, f.Calculation)))
		return
	case f.Table != nil:
		table(w, *f.Table, false)
		return
	}
	text := f.Title + ": " + f.Text
	if f.Interval != "" {
		text += " (95 %: " + f.Interval + ")"
	}
	if f.Maker != nil && f.Maker.Text == f.Text {
		text += ", the maker's (" + f.Maker.Source + ")"
	} else if f.Maker != nil {
		text += "; the maker says " + f.Maker.Text + " (" + f.Maker.Source + "), which goes first"
	}
	if f.Reads != "" {
		text += "; " + strings.ToUpper(f.Reads) + ": " + f.Sentence
	}
	if len(f.RestsOn) > 0 {
		text += "; rests on figures that nobody confirmed: " + strings.Join(f.RestsOn, ", ")
	}
	fmt.Fprintln(w, Wrapped(indent, text+" ["+f.Sheet+"]"))
}

// mostRows is how long a list may be that stands at a step.
const mostRows = 8

// inShort is the first statement of a caution: what can hurt.
func inShort(text string) string {
	end := len(text)
	for _, stop := range []string{". ", ": ", "; "} {
		if i := strings.Index(text, stop); i >= 0 {
			end = min(end, i)
		}
	}
	return strings.TrimSuffix(text[:end], ".")
}

func joined(by string, parts ...string) string {
	var there []string
	for _, p := range parts {
		if p != "" {
			there = append(there, p)
		}
	}
	return strings.Join(there, by)
}

// Hours writes hours as people say them.
func Hours(h float64) string {
	if h < 1 {
		return strconv.FormatFloat(60*h, 'f', 0, 64) + " min"
	}
	return strconv.FormatFloat(h, 'g', 3, 64) + " h"
}

func Days(n int) string {
	if n == 1 {
		return "a day"
	}
	return strconv.Itoa(n) + " days"
}

// box is a box to tick, empty or ticked.
func box(ticked bool) string {
	if ticked {
		return "[x]"
	}
	return "[ ]"
}
