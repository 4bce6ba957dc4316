package marinecalc

import (
	"context"
	"fmt"

	"example.org/driveline/marinecalc/internal/book"
	"example.org/driveline/marinecalc/problem"
)

// CheckChapter is published values of one calculation, of one table of the
// rules, or of what all share, each beside what is computed now.
// Its members are Checks, Farthest, ID, Off, Sources and Title: what each is stands
// with book.Chapter of the inner packages.
type CheckChapter = book.Chapter

// Checks computes published values anew by the standard rules: what a file
// such as those of testdata/published expects, beside what comes out, by
// calculation. A value that is not met is no error but says so. The error is an
// [*Error]: no such file, or a context that ended.
func Checks(ctx context.Context, file []byte) ([]CheckChapter, error) {
	rows, err := book.Read(file)
	if err != nil {
		return nil, err
	}
	return computed(ctx, rows)
}

func computed(ctx context.Context, rows []book.Row) ([]CheckChapter, error) {
	if ctx == nil {
		ctx = context.Background()
	}
	list, err := book.All(ctx, rows)
	if err := stopped(ctx, nil); err != nil {
		return nil, err
	}
	return list, err
}

// What one request may have computed, so that it is answered soon.
const (
	mostChecks = 200
	mostDrawn  = 30 // of which a hundred thousand draws and more are taken
)

func readChecks(r *request, name string, v any, problems *problem.List) {
	list, ok := v.([]any)
	if !ok {
		problems.Add("/"+name, name+" is not a list", "a list of published values", "")
		return
	}
	if len(list) > mostChecks {
		*problems = append(*problems, problem.Problem{Where: "/" + name, What: fmt.Sprintf("%s has %d entries", name, len(list)), Allowed: fmt.Sprintf("up to %d", mostChecks), Hint: "send them in several requests", Kind: problem.TooLarge})
		return
	}
	rows, wrong := book.Rows("/"+name, list)
	*problems = append(*problems, wrong...)
	drawn := 0
	for i := range rows {
		if rows[i].Draws() {
			drawn++
		}
	}
	if drawn > mostDrawn {
		*problems = append(*problems, problem.Problem{Where: "/" + name, What: fmt.Sprintf("%s has %d entries that take many draws", name, drawn), Allowed: fmt.Sprintf("up to %d", mostDrawn), Hint: "send them in several requests", Kind: problem.TooLarge})
	}
	r.checks = rows
}

// askChecks answers with published values beside what is computed.
func askChecks(ctx context.Context, r *request) (reply, error) {
	if len(r.checks) == 0 {
		return reply{}, problem.List{{Where: "/checks", What: "there is no published value", Allowed: "rows as in testdata/published", Kind: problem.Missing}}.Err()
	}
	list, err := computed(ctx, r.checks)
	return reply{Checks: list}, err
}
