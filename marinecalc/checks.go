package marinecalc

import (
	"context"

	"example.org/driveline/marinecalc/internal/book"
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
