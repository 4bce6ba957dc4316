package plain

import (
	"fmt"
	"io"
	"strings"

	"example.org/driveline/marinecalc"
)

// Sheet writes a sheet as text: cautions first, then results, verdicts
// and what to do next.
func Sheet(w io.Writer, s *marinecalc.Sheet, work bool) {
	fmt.Fprintf(w, "%s\n%s\n", s.Title, strings.Repeat("=", len([]rune(s.Title))))
	for _, c := range s.Cautions {
		fmt.Fprintln(w, Wrapped("  ", string(c.Signal)+": "+c.Text))
	}
	fmt.Fprintln(w)
	for _, r := range s.Results {
		if r.Level == "detail" && !work {
			continue
		}
		text := r.Text
		if r.Maker != nil { // it goes first
			fmt.Fprintln(w, Wrapped("  ", r.Title+", by the maker: "+r.Maker.Text+" ("+r.Maker.Source+"). Calculated, and what is told below is of that:"))
		}
		if r.Interval != "" {
			text += "   (95 %: " + r.Interval + ")"
		}
		if line := fmt.Sprintf("  %-42s %s", r.Title, text); len([]rune(line)) <= Width {
			fmt.Fprintln(w, line)
		} else {
			fmt.Fprintf(w, "  %s\n%s\n", r.Title, Wrapped("      ", text))
		}
	}
	for _, t := range s.Tables {
		if t.Level == "main" || work {
			table(w, t, work)
		}
	}
	if len(s.Conflicts)+len(s.Verdicts) > 0 {
		fmt.Fprintln(w)
	}
	for _, c := range s.Conflicts {
		fmt.Fprintln(w, Wrapped("  ", "DOES NOT AGREE: "+c.Text))
	}
	for _, v := range s.Verdicts {
		fmt.Fprintln(w, Wrapped("  ", strings.ToUpper(v.Reads)+": "+v.Sentence+" ["+v.Backing()+"] "+v.Settle))
	}
	for _, n := range s.Next {
		fmt.Fprintln(w, Wrapped("  ", "Next: "+n.Text))
	}
	for _, n := range s.Notes {
		fmt.Fprintln(w, Wrapped("  ", "Note: "+n))
	}
	if work {
		working(w, s)
	}
}

// table writes a list of results, its columns under their heads.
func table(w io.Writer, t marinecalc.Table, work bool) {
	var columns []int
	for i, c := range t.Columns {
		if c.Level == "main" || work {
			columns = append(columns, i)
		}
	}
	lines := [][]string{{}}
	for _, i := range columns {
		lines[0] = append(lines[0], t.Columns[i].Title)
	}
	for _, r := range t.Rows {
		var line []string
		for _, i := range columns {
			line = append(line, r.Cells[i].Text)
		}
		lines = append(lines, line)
	}
	fmt.Fprintf(w, "\n  %s\n", t.Title)
	widths := make([]int, len(columns))
	for _, line := range lines {
		for i, text := range line {
			widths[i] = max(widths[i], len([]rune(text)))
		}
	}
	all := 3
	for _, width := range widths {
		all += width + 2
	}
	if all > Width {
		entries(w, lines)
		return
	}
	for _, line := range lines {
		text := "   "
		for i, cell := range line {
			text += " " + cell + strings.Repeat(" ", widths[i]-len([]rune(cell))+1)
		}
		fmt.Fprintln(w, strings.TrimRight(text, " "))
	}
}

// entries writes a list whose lines are too long for a terminal: each
// entry by itself, what stands in it behind its head.
func entries(w io.Writer, lines [][]string) {
	for n, line := range lines[1:] {
		for i, cell := range line {
			switch {
			case i == 0:
				fmt.Fprintln(w, hanging(fmt.Sprintf("    %d  ", n+1), cell))
			case cell != "":
				fmt.Fprintln(w, hanging("       "+lines[0][i]+": ", cell))
			}
		}
	}
}

// working writes where the inputs came from, and the worked lines.
func working(w io.Writer, s *marinecalc.Sheet) {
	fmt.Fprintln(w, "\n  What went in")
	for _, i := range s.Inputs {
		from := string(i.Origin)
		if i.Source != "" {
			from += ", " + i.Source
		}
		Column(w, "  ", 43, i.Title, i.Text+" ("+from+")")
	}
	fmt.Fprintln(w, "\n  Worked lines")
	for _, l := range s.Work {
		if l.Formula == "" {
			fmt.Fprintln(w, Wrapped("  ", l.Result+" = "+l.Answer+": "+l.Method))
		} else {
			fmt.Fprintf(w, "%s\n%s\n    = %s\n", Wrapped("  ", l.Formula), Wrapped("  ", l.Filled), l.Answer)
		}
		fmt.Fprintln(w, Wrapped("      ", l.Source))
	}
}
