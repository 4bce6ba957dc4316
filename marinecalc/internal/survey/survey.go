// Package survey runs every calculation that a boat file allows: what is
// urgent, what is not measured yet, and what changed between two days.
package survey

import (
	"context"
	"slices"
	"sort"

	"example.org/driveline/marinecalc/internal/boat"
	"example.org/driveline/marinecalc/internal/calc"
	"example.org/driveline/marinecalc/internal/calc/inputs"
	"example.org/driveline/marinecalc/internal/catalogue"
	"example.org/driveline/marinecalc/internal/contract"
	"example.org/driveline/marinecalc/internal/diagnosis"
	"example.org/driveline/marinecalc/internal/setting"
	"example.org/driveline/marinecalc/problem"
	"example.org/driveline/marinecalc/rules"
	"example.org/driveline/marinecalc/sheet"
)

// Survey is everything a boat file allows to be worked out, in one pass: what
// was found at fault first, what to measure next by what that settles, every
// verdict, how one thing leads to another, and what can hurt in the work ahead.
type Survey struct {
	Boat     string          `json:"boat"`
	Summary  []Line          `json:"summary"`           // the whole boat in a dozen lines at most
	Found    []Found         `json:"found"`             // what was found by looking and measuring, then what is over a limit by calculation
	Nothing  string          `json:"nothing,omitempty"` // what is said in their place where nothing was found
	Disagree []Disagreement  `json:"disagree"`          // figures that contradict each other
	Choice   *Choice         `json:"choice,omitempty"`  // what was decided and what is planned
	Measure  []Measure       `json:"measure"`           // what to measure, to look up or to choose next, in this order; of each that which settles most first
	Findings []Finding       `json:"findings"`          // every verdict drawn, most urgent first
	Parts    []PartState     `json:"parts"`             // of the line, engine to propeller, each by the worst that is known of it
	Still    string          `json:"still,omitempty"`   // why the shaft must not run
	Chains   []string        `json:"chains"`            // how one finding leads to another
	Cautions []sheet.Caution `json:"cautions"`          // of the sheets with findings to act on, gravest first, each once
	Open     []Finding       `json:"open"`              // limits without a reading, and how to take it
	Awaited  []Awaited       `json:"awaited"`           // figures to type, that which tells most first
	Sheets   []*sheet.Sheet  `json:"sheets"`
	Missing  []Missing       `json:"missing"`
	Faults   []Fault         `json:"faults"`
	Warnings problem.List    `json:"warnings,omitempty"` // what of the boat file is kept and not used
	Made     sheet.Made      `json:"made"`
}

// Finding is a verdict and the calculation it belongs to.
type Finding struct {
	Calculation string        `json:"calculation"`
	Sheet       string        `json:"sheet"` // the calculation's title
	Verdict     sheet.Verdict `json:"verdict"`
	Reading     string        `json:"reading,omitempty"` // of the boat that is judged though no sheet takes it
}

// Awaited is a figure that no source confirms, so that verdicts wait until
// somebody types it.
type Awaited struct {
	Title    string   `json:"title"`
	Verdicts int      `json:"verdicts"` // that wait for it, with or without others
	Sheets   []string `json:"sheets"`   // on which it is asked for, by calculation
}

// Missing is a calculation that lacks inputs, and how to get them.
type Missing struct {
	Calculation string `json:"calculation"`
	Title       string `json:"title"`
	Needs       []Need `json:"needs"`
}

// Need is one input that nobody gave.
type Need struct {
	Input string `json:"input"`
	Title string `json:"title"`
	How   string `json:"how"`
	Gauge string `json:"gauge,omitempty"` // what it is usually read with
}

// Fault is a calculation that the boat file's figures do not allow.
type Fault struct {
	Calculation string       `json:"calculation"`
	Title       string       `json:"title"`
	Problems    problem.List `json:"problems"`
}

// Check runs every calculation that the boat file allows and says for the
// rest what is missing and how to get it.
func Check(ctx context.Context, b *boat.Boat, o calc.Options) (*Survey, error) {
	o.Boat = b
	s, err := o.Session(ctx, catalogue.Calculations)
	if err != nil {
		return nil, err
	}
	s.FewWhereClear(o)
	survey := &Survey{Boat: b.Name(), Sheets: []*sheet.Sheet{}, Missing: []Missing{}, Faults: []Fault{}, Warnings: s.Unused(), Made: s.Made()}
	s.Ahead(s.Calculations)
	if err := survey.work(s, nil); err != nil {
		return nil, err
	}
	survey.Warnings = append(survey.Warnings, survey.idleFigures(b, s, survey.Warnings)...)
	survey.sum()
	survey.untaken(s, nil)
	survey.Chains = diagnosis.Chains(s.Book, b, survey.Sheets)
	survey.Disagree = survey.disagree(s.Disagreements())
	survey.Found = survey.found(s)
	survey.Parts, survey.Still = survey.parts(s), s.Still()
	survey.Choice = survey.choice(s.Book)
	if survey.Measure, err = survey.measure(ctx, s, o); err != nil {
		return nil, err
	}
	survey.Nothing = survey.nothing(s)
	survey.Summary = survey.summary(s)
	return survey, nil
}

// work runs the calculations of these ids, or all where none is named, and
// sorts them into those that have a sheet, those that lack inputs and those that
// the figures do not allow.
func (survey *Survey) work(s *calc.Session, ids []string) error {
	for _, c := range s.Calculations {
		if ids != nil && !slices.Contains(ids, c.ID) || !catalogue.Aboard(c.ID, s.Boat) {
			continue
		}
		k, err := c.Form()
		if err != nil {
			return problem.List{{What: err.Error()}}.Err()
		}
		out, missing, problems := s.Work(c)
		if stopped := s.Cancelled(); len(stopped) > 0 {
			return stopped.Err()
		}
		switch {
		case out != nil:
			setting.Mark(out.Sheet, s.Book)
			survey.Sheets = append(survey.Sheets, out.Sheet)
		case len(missing) > 0 && len(missing) == len(problems):
			survey.Missing = append(survey.Missing, Missing{Calculation: c.ID, Title: k.Title, Needs: HowTo(s, k.Calculation, missing)})
		default:
			survey.Faults = append(survey.Faults, Fault{Calculation: c.ID, Title: k.Title, Problems: problems.Sorted()})
		}
	}
	for _, made := range survey.Sheets {
		s.HoldStill(made)
	}
	return nil
}

// HowTo says of each missing input how to get it, and with which gauge.
func HowTo(s *calc.Session, k *contract.Calculation, missing []*contract.Property) []Need {
	needs := make([]Need, 0, len(missing))
	for i, p := range missing {
		if slices.Contains(missing[:i], p) {
			continue // one choice gives several
		}
		need := Need{Input: p.Name, Title: p.Title, How: p.Description, Gauge: gaugeOf(s, k, p)}
		if why := s.Withheld(p); why != "" {
			need.How, need.Gauge = "Not available as things are. "+why+" Put that right first.", ""
		}
		needs = append(needs, need)
	}
	return needs
}

// gaugeOf is what an input is usually read with; "" for none.
func gaugeOf(s *calc.Session, k *contract.Calculation, p *contract.Property) string {
	readBy := p.ReadBy
	if p.Items != nil {
		for _, part := range p.Items.Properties {
			if part.ReadBy != "" {
				readBy = part.ReadBy
			}
		}
	}
	if g := k.Input.Child(readBy); g != nil {
		pick, _ := g.Default.(string)
		if row := s.Book.Table(inputs.Gauges).Find(pick, nil); row != nil {
			return row.Name
		}
	}
	return ""
}

// sum gathers what the sheets say into one list by urgency.
func (s *Survey) sum() {
	s.Findings, s.Open, s.Cautions = []Finding{}, []Finding{}, []sheet.Caution{}
	told := map[string]bool{} // limits of the owner's, each on the first sheet that takes the reading
	for _, one := range s.Sheets {
		act, title := false, one.Title
		if of := s.subject(one.Calculation); of != "" {
			title += ": " + problem.MidSentence(of)
		}
		for _, v := range one.Verdicts {
			f := Finding{Calculation: one.Calculation, Sheet: title, Verdict: v}
			if told[v.Limit] {
				continue
			}
			told[v.Limit] = rules.IsOwn(v.Limit)
			if v.Word == sheet.NotMeasured {
				if !v.Moot {
					s.Open = append(s.Open, f)
				}
				continue
			}
			s.Findings = append(s.Findings, f)
			act = act || v.Word != sheet.Within && v.Word != sheet.Inside
		}
		if act {
			s.Cautions = append(s.Cautions, one.Cautions...)
		}
	}
	s.Awaited = awaited(s.Findings)
	s.mostUrgentFirst()
	sort.SliceStable(s.Cautions, func(i, j int) bool { return s.Cautions[i].Signal.Gravity() < s.Cautions[j].Signal.Gravity() })
	seen := map[string]bool{}
	s.Cautions = slices.DeleteFunc(s.Cautions, func(c sheet.Caution) bool {
		again := seen[c.Text]
		seen[c.Text] = true
		return again
	})
}

func (s *Survey) mostUrgentFirst() {
	sort.SliceStable(s.Findings, func(i, j int) bool { return s.Findings[i].Verdict.Word.Rank() < s.Findings[j].Verdict.Word.Rank() })
}

// awaited counts the verdicts that wait for each figure.
func awaited(findings []Finding) []Awaited {
	list := []Awaited{}
	for _, f := range findings {
		for _, title := range f.Verdict.Awaits {
			i := slices.IndexFunc(list, func(a Awaited) bool { return a.Title == title })
			if i < 0 {
				i = len(list)
				list = append(list, Awaited{Title: title})
			}
			list[i].Verdicts++
			if !slices.Contains(list[i].Sheets, f.Calculation) {
				list[i].Sheets = append(list[i].Sheets, f.Calculation)
			}
		}
	}
	sort.SliceStable(list, func(i, j int) bool { return list[i].Verdicts > list[j].Verdicts })
	return list
}

// Beyond tells whether any verdict of the survey is "beyond".
func (s *Survey) Beyond() bool {
	if s == nil {
		return false
	}
	for _, one := range s.Sheets {
		if one.Beyond() {
			return true
		}
	}
	return false
}
