package overview

import (
	"cmp"
	"context"
	"fmt"
	"slices"
	"strings"

	"example.org/driveline/marinecalc/internal/boat"
	"example.org/driveline/marinecalc/internal/calc"
	"example.org/driveline/marinecalc/internal/day"
	"example.org/driveline/marinecalc/internal/drawing"
	"example.org/driveline/marinecalc/internal/procedure"
	"example.org/driveline/marinecalc/internal/survey"
	"example.org/driveline/marinecalc/quantity"
	"example.org/driveline/marinecalc/sheet"
)

// PartView is one part of the line: how it stands, what was read of it, what
// can be calculated and done.
type PartView struct {
	Part
	State    survey.PartState `json:"state"`
	Found    []survey.Found   `json:"found"`    // on this part
	Findings []survey.Finding `json:"findings"` // every verdict drawn, most urgent first
	Open     []survey.Finding `json:"open"`     // limits without a reading
	Readings []Chart          `json:"readings"`
	Sheets   []SheetLine      `json:"sheets"`
	Work     []procedure.Work `json:"work"`
	Care     []Due            `json:"care"` // due, or never taken
}

// SheetLine is a calculation of the part and what it says.
type SheetLine struct {
	Calculation string     `json:"calculation"`
	Title       string     `json:"title"`
	Says        string     `json:"says"`           // its first result, or what it lacks
	Word        sheet.Word `json:"word,omitempty"` // its worst verdict; absent where it has no sheet
	Reads       string     `json:"reads,omitempty"`
	Lacks       bool       `json:"lacks,omitempty"`
}

// Chart is one series of readings at a look.
type Chart struct {
	Reading  string `json:"reading"`
	Title    string `json:"title"`
	Value    string `json:"value"` // the newest
	Readings int    `json:"readings"`
	Newest
	Chart string `json:"chart,omitempty"` // SVG; absent with fewer than two readings
}

// PartOf tells of one part of a boat, which may be nil. The error is a
// *problem.Error: there is no such part.
func PartOf(ctx context.Context, b *boat.Boat, o calc.Options, id, today string) (*PartView, error) {
	o.Brief, o.Day = true, ""
	s, err := survey.CheckPart(ctx, b, o, id)
	if err != nil {
		return nil, err
	}
	book := bookOf(o)
	row := book.Table(survey.PartsTable).Find(id, nil)
	v := &PartView{State: s.Parts[0], Found: []survey.Found{}, Findings: []survey.Finding{}, Open: []survey.Finding{}, Readings: []Chart{}, Work: []procedure.Work{}, Care: []Due{}}
	asks, err := asksOf(row, book, b)
	if err != nil {
		return nil, err
	}
	v.Part = partOf(row, asks, b, today)
	ids := survey.CalculationsOf(b, row)
	for _, f := range s.Found {
		if slices.Contains(ids, f.Calculation) && (f.Limit == "" || survey.HoldsFor(book, row, ids, f.Calculation, f.Limit)) {
			v.Found = append(v.Found, f)
		}
	}
	of := func(all []survey.Finding) []survey.Finding {
		return slices.DeleteFunc(all, func(f survey.Finding) bool {
			return !survey.HoldsFor(book, row, ids, f.Calculation, f.Verdict.Limit)
		})
	}
	v.Findings, v.Open = of(s.Findings), of(s.Open)
	v.Sheets = sheetLines(s, ids)
	members := membersOf(row)
	for _, c := range Charts(b, o, today) {
		if head, _, _ := strings.Cut(c.Reading, "/"); slices.Contains(members, head) {
			v.Readings = append(v.Readings, c)
		}
	}
	for _, p := range procedure.List(book, b) {
		if survey.OfPart(row, strings.ToLower(p.Part)) {
			v.Work = append(v.Work, p.Work...)
		}
	}
	if b == nil || today == "" {
		return v, nil
	}
	all, err := cares(ctx, b, o, today)
	for _, d := range all {
		if d.Part == id {
			v.Care = append(v.Care, d)
		}
	}
	return v, err
}

// sheetLines are the calculations of the part, in the order in which they are
// worth looking at.
func sheetLines(s *survey.Survey, ids []string) []SheetLine {
	list := []SheetLine{}
	for _, id := range ids {
		for _, one := range s.Sheets {
			if one.Calculation != id {
				continue
			}
			line := SheetLine{Calculation: id, Title: one.Title, Says: says(one), Word: sheet.NotMeasured, Reads: sheet.NotMeasured.Reads("")}
			for _, v := range one.Verdicts {
				if v.Word.Rank() < line.Word.Rank() {
					line.Word, line.Reads = v.Word, v.Reads
				}
			}
			list = append(list, line)
		}
		for _, m := range s.Missing {
			if m.Calculation == id {
				list = append(list, SheetLine{Calculation: id, Title: m.Title, Says: lacks(m.Needs), Lacks: true})
			}
		}
		for _, f := range s.Faults {
			if f.Calculation == id {
				list = append(list, SheetLine{Calculation: id, Title: f.Title, Says: "Figures to put right.", Lacks: true})
			}
		}
	}
	return list
}

// says is the first result of a sheet in a line.
func says(s *sheet.Sheet) string {
	for _, r := range s.Results {
		if r.Level == sheet.Main && r.Text != "" {
			return r.Title + ": " + r.Text
		}
	}
	return ""
}

func lacks(needs []survey.Need) string {
	if len(needs) == 0 {
		return ""
	}
	words := "Needs " + needs[0].Title
	if more := len(needs) - 1; more > 0 {
		words += fmt.Sprintf(" and %d more", more)
	}
	return words + "."
}

// Charts are all series that a boat has readings of, in the order of its
// schema, each with its newest reading and a small chart.
func Charts(b *boat.Boat, o calc.Options, today string) []Chart {
	list := []Chart{}
	system, err := quantity.ParseSystem(cmp.Or(o.Units, b.Units(), "metric"))
	if err != nil {
		system = quantity.Metric
	}
	points := b.Points()
	for _, f := range b.Followable() {
		if f.Aside() {
			continue
		}
		c := Chart{Reading: f.Name, Title: f.Title, Value: f.Newest.WrittenIn(f.Kind, system), Readings: f.Readings, Newest: newest(f.Newest.Date, today)}
		var days, values []float64
		for _, p := range points[f.Name] {
			if n, err := day.Parse(p.Date); err == nil {
				days, values = append(days, float64(n)), append(values, p.SI)
			}
		}
		if len(days) > 1 {
			c.Chart = drawing.Spark(days, values, f.Title, fmt.Sprintf("%d readings, the newest %s of %s.", len(days), c.Value, f.Newest.Date))
		}
		list = append(list, c)
	}
	return list
}

// Daily are the readings taken every day under way, by the parts' table.
func Daily(o calc.Options) []string {
	var list []string
	for _, row := range bookOf(o).Table(survey.PartsTable).Rows.All() {
		list = append(list, strings.Fields(row.Values.Of("daily").Text)...)
	}
	return list
}
