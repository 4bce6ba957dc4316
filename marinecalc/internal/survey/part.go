// What the survey finds of each part of the line.

package survey

import (
	"cmp"
	"context"
	"fmt"
	"slices"
	"strings"

	"example.org/driveline/marinecalc/internal/boat"
	"example.org/driveline/marinecalc/internal/calc"
	"example.org/driveline/marinecalc/internal/catalogue"
	"example.org/driveline/marinecalc/internal/seatrial/proof"
	"example.org/driveline/marinecalc/problem"
	"example.org/driveline/marinecalc/rules"
	"example.org/driveline/marinecalc/sheet"
)

// PartsTable is the table of the parts of the line, engine to propeller.
const PartsTable = "line-parts"

// PartState is how a part of the line stands: by what was found at fault or seen
// on it, else by the worst of its verdicts.
type PartState struct {
	Part        string     `json:"part"` // id, of the table line-parts
	Title       string     `json:"title"`
	Word        sheet.Word `json:"word"`  // "not measured" where no verdict was drawn
	Reads       string     `json:"reads"` // what people read for it
	Short       string     `json:"short"` // the same in a word or two, for a small place
	Sentence    string     `json:"sentence,omitempty"`
	Calculation string     `json:"calculation,omitempty"` // that says it
	Sheet       string     `json:"sheet,omitempty"`
	Verdicts    int        `json:"verdicts"` // that were drawn
}

// Columns of the parts' table.
func columnOf(row *rules.Row, column string) []string {
	return strings.Fields(row.Values.Of(column).Text)
}

// CheckPart runs what belongs to one part of the line and says of it what
// [Check] would, but for what the fault finding found, which rests on the whole
// boat. The error is a *problem.Error: there is no such part.
func CheckPart(ctx context.Context, b *boat.Boat, o calc.Options, id string) (*Survey, error) {
	book := o.Rules
	if book == nil {
		book = rules.Standard()
	}
	row := book.Table(PartsTable).Find(id, nil)
	if row == nil {
		picks, _ := book.Table(PartsTable).Picks()
		return nil, problem.List{{Where: "/part", What: "the line has no part " + id, Allowed: strings.Join(picks, ", "), Kind: problem.Unknown}}.Err()
	}
	o.Boat = b
	s, err := o.Session(ctx, catalogue.Calculations)
	if err != nil {
		return nil, err
	}
	s.FewWhereClear(o)
	survey := &Survey{Boat: b.Name(), Sheets: []*sheet.Sheet{}, Missing: []Missing{}, Faults: []Fault{}, Made: s.Made()}
	if err := survey.work(s, CalculationsOf(b, row)); err != nil {
		return nil, err
	}
	survey.sum()
	survey.untaken(s, row)
	survey.Found = survey.found(s)
	survey.Parts = []PartState{survey.partState(s, row)}
	return survey, nil
}

// CheckParts says how every part of the line stands, as [Check] does, without
// the rest of the survey.
func CheckParts(ctx context.Context, b *boat.Boat, o calc.Options) (parts []PartState, still string, err error) {
	o.Boat, o.Brief = b, true
	s, err := o.Session(ctx, catalogue.Calculations)
	if err != nil {
		return nil, "", err
	}
	s.FewWhereClear(o)
	survey := &Survey{Boat: b.Name()}
	if err := survey.work(s, nil); err != nil {
		return nil, "", err
	}
	survey.sum()
	survey.untaken(s, nil)
	survey.Found = survey.found(s)
	return survey.parts(s), s.Still(), nil
}

// parts says of every part how it stands.
func (s *Survey) parts(from *calc.Session) []PartState {
	list := []PartState{}
	for _, row := range from.Book.Table(PartsTable).Rows.All() {
		list = append(list, s.partState(from, &row))
	}
	return list
}

func (s *Survey) partState(from *calc.Session, row *rules.Row) PartState {
	p := PartState{Part: row.ID, Title: row.Name, Word: sheet.NotMeasured, Reads: sheet.NotMeasured.Reads(""), Short: "no data"}
	if from.Boat.NewestOf(columnOf(row, "readings")) != "" {
		p.Reads, p.Short = "read, and held against no limit yet", "read"
	}
	ids := CalculationsOf(from.Boat, row)
	own := func(calculation, limit string) bool { return HoldsFor(from.Book, row, ids, calculation, limit) }
	for _, f := range s.Findings { // most urgent first
		if !readOf(row, f.Reading) && (f.Reading != "" || !own(f.Calculation, f.Verdict.Limit)) {
			continue
		}
		if p.Verdicts++; p.Verdicts == 1 {
			p.Word, p.Reads, p.Short = f.Verdict.Word, f.Verdict.Reads, short(f.Verdict)
			p.Sentence, p.Calculation, p.Sheet = f.Verdict.Sentence, f.Calculation, f.Sheet
		}
	}
	open := slices.ContainsFunc(s.Open, func(f Finding) bool { return own(f.Calculation, f.Verdict.Limit) }) ||
		slices.ContainsFunc(s.Missing, func(m Missing) bool { return own(m.Calculation, "") }) ||
		slices.ContainsFunc(s.Faults, func(f Fault) bool { return own(f.Calculation, "") })
	if p.Word.Plain() == sheet.Within && open { // no OK from silence
		p.Reads, p.Short = "OK as far as it was measured", "partly"
	}
	if on, says, by := failedOnTrial(from, row); says != "" {
		p.Word, p.Reads, p.Short, p.Sentence, p.Calculation, p.Sheet = sheet.Beyond, "failed on the sea trial of "+on, "failed", says, by.Calculation, by.Title
	}
	for _, f := range s.Found {
		if (f.Kind == FoundCause || f.Kind == FoundLook) && slices.Contains(NamesOf(row), partOf(from.Book, f)) || f.Kind == FoundWear && slices.Contains(ids, f.Calculation) {
			p.Word, p.Sentence, p.Calculation, p.Sheet = sheet.Beyond, f.Title, f.Calculation, f.Sheet
			p.Reads, p.Short = "seen", "seen"
			if f.Kind == FoundCause {
				p.Reads, p.Short = "fault found", "fault"
			}
			break // what was found stands in the order in which it leads
		}
		if f.Limit == "trend-newest" && slices.Contains(columnOf(row, "readings"), f.Row) && p.Word != sheet.Beyond {
			p.Word, p.Reads, p.Short, p.Sentence, p.Calculation, p.Sheet = sheet.CannotTell, "newest reading off the earlier ones", "jumped", f.Title+". "+f.Text, f.Calculation, f.Sheet
		}
	}
	return p
}

// failedOnTrial says what of a part failed on the sea trial, where nothing of it was
// read since.
func failedOnTrial(from *calc.Session, row *rules.Row) (on, says string, by *sheet.Sheet) {
	for _, check := range from.Book.Table("trial-checks").Rows.All() {
		name := []string{check.Values.Of("reading").Text}
		if on = from.Boat.TrialRead(name); on == "" || !slices.Contains(columnOf(row, "readings"), name[0]) || from.Boat.NewestOf(name) > on {
			continue
		}
		out := from.Earlier("sea-trial")
		if out == nil {
			return "", "", nil
		}
		for n := 0; out.Sheet.Cell("checks", n, "reading") != nil; n++ {
			cell := func(column string) string { return out.Sheet.Cell("checks", n, column).Text }
			word := out.Sheet.Cell("checks", n, "word")
			if cell("reading") == check.Name && cmp.Or(word.Word, word.Text) == string(proof.Fail) {
				return on, fmt.Sprintf("%s, %s: %s. %s", check.Name, problem.MidSentence(cell("stage")), cell("read"), cell("reason")), out.Sheet
			}
		}
	}
	return "", "", nil
}

// CalculationsOf are the calculations of a part, those of which some limits count for it,
// and the trend where that follows a reading of the part.
func CalculationsOf(b *boat.Boat, row *rules.Row) []string {
	ids := columnOf(row, "calculations")
	for _, limit := range columnOf(row, "limits") {
		if id, _, _ := strings.Cut(limit, "/"); !slices.Contains(ids, id) {
			ids = append(ids, id)
		}
	}
	if of, _, _, _ := b.Find("/follow/reading"); of != nil && slices.Contains(columnOf(row, "readings"), fmt.Sprint(of)) {
		ids = append(ids, "reading-trend")
	}
	return ids
}

// HoldsFor tells whether a limit of a calculation, or with limit "" its sheet, counts for a
// part with the calculations ids: for the part that names the limit, else that of the sheet.
func HoldsFor(book *rules.Book, row *rules.Row, ids []string, calculation, limit string) bool {
	of := ""
	for _, other := range book.Table(PartsTable).Rows.All() {
		if slices.Contains(columnOf(&other, "limits"), calculation+"/"+limit) {
			return other.ID == row.ID
		}
		if slices.Contains(columnOf(&other, "calculations"), calculation) {
			of = other.ID
		}
	}
	return of == row.ID || of == "" && slices.Contains(ids, calculation) // a trend is of the part of its reading
}

// NamesOf are the names that causes and care have for a part.
func NamesOf(row *rules.Row) []string { return strings.Split(row.Values.Of("names").Text, "|") }

// OfPart tells whether causes and care mean the part of that row by a name.
func OfPart(row *rules.Row, name string) bool { return slices.Contains(NamesOf(row), name) }

// HasSheet tells whether a calculation belongs to the part that causes and care call
// by that name.
func HasSheet(book *rules.Book, name, calculation string) bool {
	rows := book.Table(PartsTable).Rows
	for i := range rows.Len() {
		if row := rows.At(i); OfPart(&row, name) && slices.Contains(columnOf(&row, "calculations"), calculation) {
			return true
		}
	}
	return false
}

// partOf is the part that something was found on, as its cause names it; ""
// where it is of none.
func partOf(book *rules.Book, f Found) string {
	for _, c := range book.Causes().All() {
		if f.Row != "" && (f.Row == c.ID || f.Row == c.Confirm) {
			return c.Part
		}
	}
	return ""
}

// short is a verdict in a word or two.
func short(v sheet.Verdict) string {
	switch v.Word {
	case sheet.Within, sheet.Inside:
		return "OK"
	case sheet.NearLimit:
		return "close"
	case sheet.CannotTell, sheet.About:
		return "unsure"
	case sheet.Outside:
		return "outside"
	case sheet.Beyond:
		if v.Reads == v.Word.Reads(sheet.AtLeast) {
			return "under"
		}
		return "over"
	}
	return "no data"
}
