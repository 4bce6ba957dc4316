package marinecalc

import (
	"fmt"

	"example.org/driveline/marinecalc/internal/catalogue"
	"example.org/driveline/marinecalc/internal/contract"
	"example.org/driveline/marinecalc/problem"
	"example.org/driveline/marinecalc/rules"
	"example.org/driveline/marinecalc/sheet"
)

// Sheet is the document that every calculation returns.
type Sheet = sheet.Sheet

// Problem is one thing wrong with an input; Error, used by pointer, is the
// error of every function here that takes input, and Problems what it holds.
type (
	Problem  = problem.Problem
	Problems = problem.List
	Error    = problem.Error
)

// Run runs one calculation on an input written as a JSON object and returns
// its sheet. The error, when there is one, is a *problem.Error with every
// fault at its place.
func Run(id string, input []byte, o Options) (*sheet.Sheet, error) {
	typed, problems := contract.Decode(input)
	if len(problems) > 0 {
		return nil, problems.Err()
	}
	return runDecoded(id, typed, o)
}

func runDecoded(id string, typed any, o Options) (*sheet.Sheet, error) {
	s, err := o.Session(catalogue.Calculations)
	if err != nil {
		return nil, err
	}
	c, err := s.Find(id)
	if err != nil {
		return nil, err
	}
	object, ok := typed.(map[string]any)
	if !ok {
		return nil, problem.List{{What: "the input is not an object", Allowed: `an object such as {"name": "value"}`, Hint: "put the inputs between braces"}}.Err()
	}
	out, _, problems := s.Run(c, object)
	if len(problems) > 0 {
		return nil, problems.Sorted().Err()
	}
	return out.Sheet, nil
}

// Overlay lays rule files over the standard rules, one after the other. The
// error is Problems; their places begin with the number of the file.
func Overlay(files ...[]byte) (*rules.Book, error) {
	book := rules.Standard()
	var problems problem.List
	for i, text := range files {
		next, err := book.Overlay(text)
		if err == nil {
			book = next
			continue
		}
		for _, f := range problem.Of(err) {
			f.Where = fmt.Sprintf("/%d%s", i, f.Where)
			problems = append(problems, f)
		}
	}
	return book, problems.Err()
}

// ProblemsOf gives the problems that an error is made of, and none for nil.
func ProblemsOf(err error) Problems { return problem.Of(err) }
