package main

import (
	"encoding/json"
	"fmt"
	"io"
	"strings"

	"example.org/driveline/marinecalc"
)

func printJSON(w io.Writer, v any) error {
	e := json.NewEncoder(w)
	e.SetIndent("", "  ")
	e.SetEscapeHTML(false)
	return e.Encode(v)
}

// blank prints the inputs of a calculation.
func (t *terminal) blank(args []string) error {
	out := t.out
	if len(args) != 1 {
		return marinecalc.Problems{{Where: "blank", What: "needs the name of one calculation", Allowed: `one of "marinecalc index"`}}.Err()
	}
	form, err := marinecalc.Open(args[0])
	if err != nil {
		return err
	}
	fmt.Fprintf(out, "%s\n%s\n", form.Title, form.Answers)
	for _, in := range form.Inputs {
		mark := ""
		if in.Required {
			mark = "  (needed)"
		}
		fmt.Fprintf(out, "\n--%s  %s%s\n", flagName(in.Name), in.Title, mark)
		if in.Help != "" {
			fmt.Fprintln(out, wrapped("    ", in.Help))
		}
		if len(in.Units) > 1 {
			fmt.Fprintln(out, wrapped("    ", "units: "+strings.Join(in.Units, ", ")))
		}
		printChoices(out, in.Choices)
		for _, part := range in.Parts {
			fmt.Fprintln(out, wrapped("    ", fmt.Sprintf("each with %q: %s. %s", part.Name, part.Title, part.Help)))
			printChoices(out, part.Choices)
		}
		if in.Example != nil {
			if text, err := json.Marshal(in.Example); err == nil {
				fmt.Fprintln(out, "    for example "+string(text))
			}
		}
	}
	return nil
}

// printChoices lists what can be picked.
func printChoices(out io.Writer, choices []marinecalc.Choice) {
	for _, c := range choices {
		columnAt(out, "      ", 29, c.Pick, c.Name)
	}
}

// printSheet writes a sheet as text: cautions first, then results, verdicts
// and what to do next.
func printSheet(w io.Writer, s *marinecalc.Sheet, work bool) {
	fmt.Fprintf(w, "%s\n%s\n", s.Title, strings.Repeat("=", len([]rune(s.Title))))
	for _, c := range s.Cautions {
		fmt.Fprintln(w, wrapped("  ", string(c.Signal)+": "+c.Text))
	}
	fmt.Fprintln(w)
	for _, r := range s.Results {
		if r.Level == "detail" && !work {
			continue
		}
		text := r.Text
		if r.Interval != "" {
			text += "   (95 %: " + r.Interval + ")"
		}
		if line := fmt.Sprintf("  %-42s %s", r.Title, text); len([]rune(line)) <= lineWidth {
			fmt.Fprintln(w, line)
		} else {
			fmt.Fprintf(w, "  %s\n%s\n", r.Title, wrapped("      ", text))
		}
		if r.Maker != nil {
			fmt.Fprintf(w, "  %-42s %s   (%s)\n", "    the maker says", r.Maker.Text, r.Maker.Source)
		}
	}
	for _, t := range s.Tables {
		if t.Level == "main" || work {
			printTable(w, t, work)
		}
	}
	if len(s.Conflicts)+len(s.Verdicts) > 0 {
		fmt.Fprintln(w)
	}
	for _, c := range s.Conflicts {
		fmt.Fprintln(w, wrapped("  ", "DOES NOT AGREE: "+c.Text))
	}
	for _, v := range s.Verdicts {
		fmt.Fprintln(w, wrapped("  ", strings.ToUpper(v.Reads)+": "+v.Sentence+" ["+v.Backing()+"] "+v.Settle))
	}
	for _, n := range s.Next {
		fmt.Fprintln(w, wrapped("  ", "Next: "+n.Text))
	}
	for _, n := range s.Notes {
		fmt.Fprintln(w, wrapped("  ", "Note: "+n))
	}
	if work {
		printWork(w, s)
	}
}

// printTable writes a list of results, its columns under their heads.
func printTable(w io.Writer, t marinecalc.Table, work bool) {
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
	if all > lineWidth {
		printEntries(w, lines)
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

// printEntries writes a list whose lines are too long for a terminal: each
// entry by itself, what stands in it behind its head.
func printEntries(w io.Writer, lines [][]string) {
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

// hanging is a text behind a head, its further lines indented.
func hanging(head, text string) string {
	const indent = "       "
	behind := strings.TrimLeft(head, " ")
	return head[:len(head)-len(behind)] + strings.TrimPrefix(wrapped(indent, behind+text), indent)
}

// printWork writes where the inputs came from, and the worked lines.
func printWork(w io.Writer, s *marinecalc.Sheet) {
	fmt.Fprintln(w, "\n  What went in")
	for _, i := range s.Inputs {
		from := string(i.Origin)
		if i.Source != "" {
			from += ", " + i.Source
		}
		columnAt(w, "  ", 43, i.Title, i.Text+" ("+from+")")
	}
	fmt.Fprintln(w, "\n  Worked lines")
	for _, l := range s.Work {
		if l.Formula == "" {
			fmt.Fprintln(w, wrapped("  ", l.Result+" = "+l.Answer+": "+l.Method))
		} else {
			fmt.Fprintf(w, "%s\n%s\n    = %s\n", wrapped("  ", l.Formula), wrapped("  ", l.Filled), l.Answer)
		}
		fmt.Fprintln(w, wrapped("      ", l.Source))
	}
}

// wrapped breaks a text into lines of lineWidth letters at the most.
func wrapped(indent, text string) string {
	var lines []string
	line := ""
	for _, word := range strings.Fields(text) {
		if line != "" && len([]rune(indent+line+" "+word)) > lineWidth {
			lines, line = append(lines, indent+line), ""
		}
		if line != "" {
			line += " "
		}
		line += word
	}
	return strings.Join(append(lines, indent+line), "\n")
}
