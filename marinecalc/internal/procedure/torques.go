package procedure

import (
	"cmp"
	"strings"

	"example.org/driveline/marinecalc/internal/setting"
	"example.org/driveline/marinecalc/problem"
	"example.org/driveline/marinecalc/sheet"
)

// jointOf is the joint of the torque card whose torque a figure is, of several the one
// that this boat has; nil where it is none.
func (m *maker) jointOf(of string) *setting.Joint {
	table := m.session.Book.Table("torque-joints")
	if table == nil {
		return nil
	}
	for _, row := range table.Rows.All() {
		if row.Values.Of("torque").Text != of {
			continue
		}
		if !setting.Absent(m.session.Book, m.session.Boat, row) {
			return &setting.Joint{Row: row, Boat: m.session.Boat, Book: m.session.Book, SheetOf: m.sheetOf}
		}
	}
	return nil
}

// asOnCard has a torque as the torque card has it: the maker's where there is one, with
// what the sheets say against its joint, and in place of one that is not to be set why.
func (f *Figure) asOnCard(joint *setting.Joint) {
	s := joint.Standing()
	if s.Text == "" {
		return
	}
	if s.Listed {
		f.Maker, f.Word, f.Reads, f.Sentence = &sheet.Maker{Text: s.Text, SI: s.SI, Source: s.Source}, "", "", ""
		if s.Without == nil {
			f.Text, f.Interval, f.RestsOn = s.Text, "", nil
		}
	}
	a, ofOwn := joint.Against(&s)
	if ofOwn.Word != "" { // of what it would hold at that
		ofOwn.Text = "of " + s.Own + ": " + ofOwn.Text
		a = a.And(ofOwn)
	}
	if a.Word != "" {
		if f.Word == "" || a.Word.Rank() <= f.Word.Rank() {
			f.Word, f.Reads = a.Word, a.Mark
		}
		f.Sentence = strings.TrimSpace(problem.Capital(a.Text) + ". " + f.Sentence)
	}
	if s.Why == "" {
		return
	}
	f.Text, f.Interval, f.Maker = setting.NotSettled(s.Why), "", nil
	if f.Word == "" || f.Word.Rank() > sheet.CannotTell.Rank() {
		f.Word, f.Reads = sheet.CannotTell, "not settled"
		f.Sentence = strings.TrimSpace(cmp.Or(s.Do, setting.Look) + ". " + f.Sentence)
	}
}
