package survey

import (
	"strings"

	"example.org/driveline/marinecalc/problem"
	"example.org/driveline/marinecalc/rules"
	"example.org/driveline/marinecalc/sheet"
)

// Against is what verdicts say against a joint, with which its torque is not to
// be printed bare.
type Against struct {
	Word sheet.Word // the gravest; "" where nothing is against it
	Mark string     // of the torque: "not as it stands" or "not sure"
	Text string     // what is against it, and what comes first
}

// Sentence is both, for a reader.
func (a Against) Sentence() string {
	if a.Text == "" {
		return ""
	}
	return strings.ToUpper(a.Mark) + ": " + a.Text
}

// AgainstTorque reads, of a row of the table torque-joints, what is past and what
// is not enough to tell, by the verdicts that it names in its columns: "heeds" for
// those on what the torque does, "asks" for those on the joint as it stands, which
// no torque mends. sheetOf gives a sheet, nil where there is none.
func AgainstTorque(row rules.Row, sheetOf func(id string) *sheet.Sheet, columns ...string) (out Against) {
	first := "Settle that"
	var texts []string
	for _, column := range columns {
		for _, at := range strings.Fields(row.Values.Of(column).Text) {
			id, limit, _ := strings.Cut(at, "/")
			s := sheetOf(id)
			if s == nil {
				continue
			}
			v := s.Verdict(limit)
			if v == nil || v.Value == "" || v.Word.Plain() != sheet.Beyond && v.Word != sheet.CannotTell {
				continue
			}
			if out.Word == "" {
				out.Mark = "not sure"
			}
			if v.Word != sheet.CannotTell {
				out.Mark, first = "not as it stands", "Put that right"
			}
			if out.Word == "" || v.Word.Rank() < out.Word.Rank() {
				out.Word = v.Word
			}
			texts = append(texts, problem.MidSentence(v.Title)+", "+v.Value+", is "+v.Reads)
		}
	}
	if len(texts) > 0 {
		out.Text = strings.Join(texts, "; ") + ". " + first + ", or ask the maker, before a wrench goes on"
	}
	return out
}
