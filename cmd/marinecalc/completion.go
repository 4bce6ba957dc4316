package main

import (
	"fmt"
	"slices"
	"strconv"
	"strings"

	"example.org/driveline/marinecalc"
)

// shells is what each shell needs to ask the program for what can follow.
var shells = map[string]string{
	"bash": `_marinecalc() {
  local IFS=$'\n'
  COMPREPLY=($(marinecalc candidates "$COMP_CWORD" "${COMP_WORDS[@]:1}" 2>/dev/null))
}
complete -o default -F _marinecalc marinecalc
`,
	"zsh": `#compdef marinecalc
_marinecalc() {
  local -a found
  found=("${(@f)$(marinecalc candidates $((CURRENT-1)) "${(@)words[2,-1]}" 2>/dev/null)}")
  if [[ -n "$found" ]]; then compadd -- $found; else _files; fi
}
compdef _marinecalc marinecalc
`,
	"fish": `complete -c marinecalc -a '(marinecalc candidates (count (commandline -opc)) (commandline -opc)[2..-1] (commandline -ct))'
`,
}

// completion prints what a shell needs.
func (t *terminal) completion(args []string) error {
	if len(args) == 1 && shells[args[0]] != "" {
		_, err := fmt.Fprint(t.out, shells[args[0]])
		return err
	}
	return marinecalc.Problems{{Where: "completion", What: "needs the name of one shell", Allowed: "bash, zsh, fish"}}.Err()
}

// printCandidates is what the shells ask for: "candidates N WORD …" prints what
// the word N could be, counted from 1 behind the program's name.
func (t *terminal) printCandidates(args []string) {
	if len(args) == 0 {
		return
	}
	at, err := strconv.Atoi(args[0])
	words := args[1:]
	if err != nil || at < 1 || at > len(words)+1 {
		return
	}
	current := ""
	if at <= len(words) {
		current = words[at-1]
	}
	for _, c := range candidates(words[:at-1]) {
		if strings.HasPrefix(c, current) && (current != "" || !strings.HasPrefix(c, "-")) {
			fmt.Fprintln(t.out, c)
		}
	}
}

// candidates are the words that can follow, and none where any file can.
func candidates(before []string) (list []string) {
	if len(before) == 0 {
		return commandNames()
	}
	i := slices.Index(commandNames(), before[0])
	if i < 0 {
		return nil
	}
	c := &commands[i]
	var form *marinecalc.Blank
	if c.takes == "calculation" && len(before) > 1 {
		form, _ = marinecalc.Open(before[1]) // with a slip in the name there is nothing to offer
	}
	if value, is := strings.CutPrefix(before[len(before)-1], "--"); is {
		if words, takesOne := valuesOf(value, form); takesOne {
			return words
		}
	}
	for _, name := range c.flags {
		if name != "+" {
			list = append(list, "--"+name)
			continue
		}
		for _, f := range ofRuns {
			list = append(list, "--"+f.name)
		}
	}
	switch {
	case form != nil && (c.name == "fill" || c.name == "blank"):
		for _, in := range form.Inputs {
			list = append(list, "--"+flagName(in.Name))
		}
	case c.takes == "calculation" && len(before) == 1:
		for _, e := range marinecalc.Calculations() {
			list = append(list, e.ID)
		}
	case c.takes == "remedy":
		for _, part := range new(marinecalc.Engine).Procedures(nil) {
			for _, w := range part.Work {
				list = append(list, w.ID)
			}
		}
	case c.name == "tables" || c.name == "schemas":
		list = append(list, namesFor(c.name)...)
	case c.name == "completion":
		list = append(list, "bash", "zsh", "fish")
	case c.name == "help":
		list = append(list, commandNames()...)
	}
	return list
}

// valuesOf are the values that a flag can have; takesOne is false for a flag
// that takes none.
func valuesOf(name string, form *marinecalc.Blank) (values []string, takesOne bool) {
	switch name {
	case "units":
		return []string{"metric", "us", "both"}, true
	}
	for _, list := range [][]flagOf{ofSome, ofRuns} {
		if slices.ContainsFunc(list, func(f flagOf) bool { return f.name == name && f.of == "" }) {
			return nil, false
		}
	}
	if form != nil {
		for _, in := range form.Inputs {
			if flagName(in.Name) == name {
				for _, choice := range in.Choices {
					values = append(values, choice.Pick)
				}
			}
		}
	}
	return values, true
}

// namesFor are the names of tables or schemas.
func namesFor(command string) (names []string) {
	if command == "schemas" {
		return marinecalc.Schemas()
	}
	in, err := new(marinecalc.Engine).InForce("", "")
	if err != nil {
		return nil
	}
	for _, t := range in.Tables {
		names = append(names, t.Name)
	}
	return names
}
