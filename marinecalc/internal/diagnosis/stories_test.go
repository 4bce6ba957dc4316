package diagnosis_test

import (
	"context"
	"encoding/json"
	"os"
	"path/filepath"
	"slices"
	"testing"

	"example.org/driveline/marinecalc"
	"example.org/driveline/marinecalc/internal/diagnosis"
	"example.org/driveline/marinecalc/internal/testboat"
	"example.org/driveline/marinecalc/rules"
)

// caseStory is a trouble as an owner tells it, what was at work, and the look
// a mechanic would make next: written from the trade (common practice, no
// source), not from what the program says.
type caseStory struct {
	Name, Lies       string
	Yes, No, Unknown []string
	Wrong            []string // of the answers, those that are not true
	Causes, Looks    []string
}

func caseStories(t *testing.T) (list []caseStory) {
	t.Helper()
	files, err := filepath.Glob(testboat.Root("testdata", "stories", "*.json"))
	if err != nil {
		t.Fatal(err)
	}
	for _, name := range files {
		text, err := os.ReadFile(name)
		if err != nil {
			t.Fatal(err)
		}
		var file struct{ Stories []caseStory }
		if err := json.Unmarshal(text, &file); err != nil {
			t.Fatalf("%s: %v", name, err)
		}
		list = append(list, file.Stories...)
	}
	return list
}

// The shares of the case stories that are found out, and in which the look a
// mechanic would make is among the first three proposed.
func TestCaseStories(t *testing.T) {
	titles, questions := map[string]string{}, map[string]string{}
	for _, c := range rules.Standard().Causes().All() {
		titles[c.ID] = c.Title
	}
	for _, e := range rules.Standard().Evidence().All() {
		questions[e.ID] = e.Title
	}
	s, err := marinecalc.Options{}.Session(context.Background(), nil)
	if err != nil {
		t.Fatal(err)
	}
	list := caseStories(t)
	first, three, looks, firstLooks := 0, 0, 0, 0
	for _, one := range list {
		answers := slices.Concat(yes(one.Yes...), no(one.No...), said("unknown", one.Unknown))
		for _, id := range slices.Concat(one.Wrong, one.Looks) {
			if questions[id] == "" {
				t.Errorf("%s: there is no question %s", one.Name, id)
			}
		}
		out, err := diagnosis.Find(s, diagnosis.Input{Answers: answers, Lies: one.Lies})
		if err != nil {
			t.Fatalf("%s: %v", one.Name, err)
		}
		var ranked, proposed []string
		for _, r := range out.Ranking[:3] {
			ranked = append(ranked, r.Cause)
		}
		for _, c := range out.NextChecks[:3] {
			proposed = append(proposed, c.Question)
		}
		if slices.Contains(one.Causes, ranked[0]) {
			first++
		} else {
			t.Logf("%s: first are %v, %s", one.Name, ranked, out.HowSure)
		}
		all := true
		for _, id := range one.Causes {
			if titles[id] == "" {
				t.Errorf("%s: there is no cause %s", one.Name, id)
			}
			all = all && slices.Contains(ranked, id)
		}
		if all {
			three++
		} else {
			t.Logf("%s: not all among the first three %v", one.Name, ranked)
		}
		if slices.ContainsFunc(one.Looks, func(id string) bool { return questions[id] == proposed[0] }) {
			firstLooks++
		} else {
			t.Logf("%s: proposed first is %q", one.Name, proposed[0])
		}
		if slices.ContainsFunc(one.Looks, func(id string) bool { return slices.Contains(proposed, questions[id]) }) {
			looks++
		} else {
			t.Logf("%s: proposed are %q", one.Name, proposed)
		}
	}
	n := len(list)
	t.Logf("%d stories: true cause first in %d, all true causes among the first three in %d, a mechanic's look among the first three proposed in %d, the first in %d", n, first, three, looks, firstLooks)
	for _, c := range []struct {
		what       string
		got, least int
	}{{"the true cause first", first, 85}, {"all true causes among the first three", three, 97}, {"a mechanic's look among the first three", looks, 85}} {
		if 100*c.got < c.least*n {
			t.Errorf("%s in %d of %d, under %d %%", c.what, c.got, n, c.least)
		}
	}
}
