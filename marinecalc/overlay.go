// Rule files, applied over the rules.

package marinecalc

import (
	"fmt"

	"example.org/driveline/marinecalc/internal/rulefile"
	"example.org/driveline/marinecalc/problem"
	"example.org/driveline/marinecalc/rules"
)

// RulesReport is what a rule file would do, and what is wrong with it.
// Its members are Adds, File, Problems, Replaces, Title and Warnings: what each is
// stands with rulefile.Report of the inner packages.
type RulesReport = rulefile.Report

// RulesChange is one row of a rule file.
// Its members are ID, Kind, Line, Now, Title, Was, WasSource and WasTitle: what each
// is stands with rulefile.Change of the inner packages.
type RulesChange = rulefile.Change

// Overlay applies rule files over the standard rules, one after the other. A
// file with a name that leads nowhere, a unit of another kind or a row that
// never applies is refused, so that nothing written in it is lost in silence.
// The error is an [*Error]; the places of its problems begin with the number of
// the file, and each has its line.
func Overlay(files ...[]byte) (*rules.Book, error) { return apply(rules.Standard(), files) }

// apply applies rule files over a book, one after the other. The places of its
// problems begin with the number of the file.
func apply(book *rules.Book, files [][]byte) (*rules.Book, error) {
	book, problems, _ := applyAll(book, files)
	return book, problems.Err()
}

func applyAll(book *rules.Book, files [][]byte) (_ *rules.Book, problems, warnings problem.List) {
	for i, text := range files {
		where := fmt.Sprintf("/%d", i)
		if len(text) > MaxBytes {
			p := tooLong(text)
			p.Where = where
			problems = append(problems, p)
			continue
		}
		next, report := rulefile.Check(book, text, "")
		if next != nil {
			book = next
		}
		problems = append(problems, below(where, report.Problems)...)
		warnings = append(warnings, below(where, report.Warnings)...)
	}
	return book, problems, warnings
}

// below puts the places of problems below another.
func below(where string, list problem.List) problem.List {
	for i := range list {
		list[i].Where = where + list[i].Where
	}
	return list
}

func tooLong(text []byte) Problem {
	return Problem{What: fmt.Sprintf("the rule file is %d bytes long", len(text)),
		Allowed: fmt.Sprintf("at most %d bytes", MaxBytes), Hint: "part it in two", Kind: problem.TooLarge}
}
