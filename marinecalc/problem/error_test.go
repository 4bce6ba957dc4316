package problem

import (
	"encoding/json"
	"errors"
	"fmt"
	"testing"
)

func twoProblems() error {
	return List{
		{Where: "/a", What: "a is not known", Kind: Missing, Choose: "b"},
		{Where: "/c", What: "c is 3", Allowed: "up to 2"},
	}.Err()
}

func TestErrorIsWhatItsProblemsAre(t *testing.T) {
	err := twoProblems()
	for _, c := range []struct {
		target error
		want   bool
	}{
		{ErrMissing, true}, {ErrUnknown, false}, {ErrTooLarge, false}, {ErrCancelled, false}, {err, true}, {twoProblems(), false},
		{Problem{Where: "/c", What: "c is 3", Allowed: "up to 2"}, true}, {Problem{Where: "/c", What: "c is 4"}, false},
	} {
		if got := errors.Is(fmt.Errorf("wrapped: %w", err), c.target); got != c.want {
			t.Errorf("errors.Is %v: %v", c.target, got)
		}
	}
	for kind, target := range map[Kind]error{Missing: ErrMissing, Unknown: ErrUnknown, TooLarge: ErrTooLarge, Cancelled: ErrCancelled, Failed: ErrFailed} {
		for _, other := range []error{ErrMissing, ErrUnknown, ErrTooLarge, ErrCancelled, ErrFailed} {
			if got := errors.Is(Problem{Kind: kind}, other); got != (other == target) {
				t.Errorf("a problem that is %s, %v: %v", kind, other, got)
			}
		}
	}
	if errors.Is(Problem{Kind: Wrong}, ErrMissing) || errors.Is(Problem{}, ErrMissing) {
		t.Error("what is only wrong is taken as missing")
	}
}

func TestErrorsCanBeComparedAndTakenApart(t *testing.T) {
	err := twoProblems()
	if again := err; err != again || err == twoProblems() {
		t.Error("an error is itself and no other")
	}
	var all *Error
	if !errors.As(err, &all) || len(all.Problems) != 2 || all.Problems[0].Choose != "b" {
		t.Errorf("got %+v", all)
	}
	var first Problem
	if !errors.As(err, &first) || first.Where != "/a" {
		t.Errorf("got %+v", first)
	}
	if got := err.Error(); got != "/a: a is not known\n/c: c is 3; allowed: up to 2" {
		t.Error(got)
	}
	if List(nil).Err() != nil || (List{}).Err() != nil {
		t.Error("no problems are an error")
	}
}

func TestOf(t *testing.T) {
	err := twoProblems()
	for _, c := range []struct {
		err  error
		want int
		what string
	}{
		{nil, 0, ""}, {err, 2, "a is not known"}, {fmt.Errorf("in b: %w", err), 2, "a is not known"},
		{Problem{What: "alone"}, 1, "alone"}, {errors.New("another"), 1, "another"},
	} {
		list := Of(c.err)
		if len(list) != c.want || len(list) > 0 && list[0].What != c.what {
			t.Errorf("%v: %v", c.err, list)
		}
	}
}

// A problem without the members for programs is written as it always was.
func TestProblemsInJSON(t *testing.T) {
	for want, p := range map[string]Problem{
		`{"where":"/a","what":"b"}`:                          {Where: "/a", What: "b"},
		`{"where":"","what":"b","allowed":"c","hint":"d"}`:   {What: "b", Allowed: "c", Hint: "d"},
		`{"where":"/a","what":"b","kind":"missing"}`:         {Where: "/a", What: "b", Kind: Missing},
		`{"where":"/a","what":"b","input":"c","choose":"d"}`: {Where: "/a", What: "b", Input: "c", Choose: "d"},
		`{"where":"/a","what":"b","file":"c","line":4}`:      {Where: "/a", What: "b", File: "c", Line: 4},
	} {
		got, err := json.Marshal(p)
		var back Problem
		if err != nil || string(got) != want || json.Unmarshal(got, &back) != nil || back != p {
			t.Errorf("%+v is written as %s, want %s (%v)", p, got, want, err)
		}
	}
}

// File and line stand first, as compilers write them.
func TestLinesBeginWithFileAndLine(t *testing.T) {
	for want, p := range map[string]Problem{
		"yard.json:12: /a: b": {Where: "/a", What: "b", File: "yard.json", Line: 12},
		"line 12: b":          {What: "b", Line: 12},
		"yard.json: b":        {What: "b", File: "yard.json"},
	} {
		if got := p.String(); got != want {
			t.Errorf("%q, want %q", got, want)
		}
	}
}

// What a bare number is read in stands apart for programs, and in the line
// for people.
func TestLineSaysAllThatIsAllowed(t *testing.T) {
	p := Problem{Where: "/bore", What: "it is not known", Allowed: "a length with its unit", Hint: "type it"}
	if got, want := p.String(), "/bore: it is not known; allowed: a length with its unit; type it"; got != want {
		t.Errorf("%q, want %q", got, want)
	}
	p.Bare = "m"
	if got, want := p.String(), "/bore: it is not known; allowed: a length with its unit, or a bare number in m; type it"; got != want {
		t.Errorf("%q, want %q", got, want)
	}
}
