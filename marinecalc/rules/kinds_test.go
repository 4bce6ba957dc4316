package rules

import (
	"strings"
	"testing"
)

// Every row of kind-texts is of a row that there is, by a question that there is, and
// changes it on a boat of that kind alone.
func TestABookReadsByKind(t *testing.T) {
	book := Standard()
	questions := map[string]bool{}
	for _, e := range book.Evidence().All() {
		questions[e.ID] = true
	}
	texts := func(b *Book) map[string]string {
		of := map[string]string{}
		for _, c := range b.AllCautions().All() {
			of["cautions/"+c.ID] = c.Text
		}
		for _, e := range b.Evidence().All() {
			of["evidence/"+e.ID] = e.Help
		}
		for _, l := range b.AllLimits().All() {
			if l.Calculation != "" {
				of["limits/"+l.ID] = l.Title
			}
		}
		for _, a := range b.AllAdvice().All() {
			if a.Calculation != "" {
				of["advice/"+a.ID] = a.Text
			}
		}
		for _, s := range b.Steps().All() {
			with := []string{}
			for _, r := range b.Remedies().All() {
				if Contains(r.Steps, s.ID) {
					with = append(with, r.ID)
				}
			}
			of["steps/"+s.ID] = s.Title + " " + strings.Join(with, " ")
		}
		return of
	}
	plain := texts(book)
	for _, r := range book.Table(kindTexts).Rows.All() {
		question, answer, at := r.Values.Of("question").Text, r.Values.Of("answer").Text, r.Values.Of("of").Text+"/"+r.ID
		kind := book.For(func(q string) string {
			if q == question {
				return answer
			}
			return ""
		})
		if now := texts(kind); !questions[question] || answer != "yes" && answer != "no" || plain[at] == "" || !strings.HasPrefix(at, "steps/") && now[at] != r.Values.Of("text").Text || strings.HasPrefix(at, "steps/") && len(now[at]) < len(plain[at])+10 {
			t.Errorf("%s by %s: %q became %q", at, question, plain[at], now[at])
		}
		for _, c := range kind.Limits("gland-heat").All() {
			if c.ID == r.ID && r.Values.Of("of").Text == "limits" {
				t.Errorf("%s still stands", r.ID)
			}
		}
	}
	if other := book.For(func(string) string { return "" }); other != book {
		t.Error("a boat that says nothing has another book")
	}
	if before, after := book.Limits("gland-heat").Len(), book.For(func(string) string { return "yes" }).Limits("gland-heat").Len(); after != before-1 {
		t.Errorf("of %d limits %d are left", before, after)
	}
}
