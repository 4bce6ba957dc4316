package marinecalc

import (
	"example.org/driveline/marinecalc/problem"
	"example.org/driveline/marinecalc/sheet"
)

// Survey is everything a boat file allows to be calculated, and what the
// rest still lacks.
type Survey struct {
	Sheets  []*sheet.Sheet `json:"sheets"`
	Missing []Missing      `json:"missing"`
	Faults  []Fault        `json:"faults"`
}

// Missing is a calculation that lacks readings, and how to take them.
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
}

// Fault is a calculation that the boat file's figures do not allow.
type Fault struct {
	Calculation string       `json:"calculation"`
	Title       string       `json:"title"`
	Problems    problem.List `json:"problems"`
}

// Check runs every calculation that the boat file allows and says for the
// rest which reading is missing and how to take it.
func Check(b *Boat, o Options) (*Survey, error) {
	o.Boat = b
	s, err := o.session()
	if err != nil {
		return nil, err
	}
	survey := &Survey{Sheets: []*sheet.Sheet{}, Missing: []Missing{}, Faults: []Fault{}}
	for _, c := range catalogue {
		k, err := c.contract()
		if err != nil {
			return nil, problem.List{{What: err.Error()}}
		}
		out, missing, problems := s.outcome(c)
		switch {
		case out != nil:
			survey.Sheets = append(survey.Sheets, out.sheet)
		case len(missing) > 0 && len(missing) == len(problems):
			m := Missing{Calculation: c.id, Title: k.Title}
			for _, p := range missing {
				m.Needs = append(m.Needs, Need{Input: p.Name, Title: p.Title, How: p.Description})
			}
			survey.Missing = append(survey.Missing, m)
		default:
			survey.Faults = append(survey.Faults, Fault{Calculation: c.id, Title: k.Title, Problems: problems.Sorted()})
		}
	}
	return survey, nil
}

// Beyond tells whether any verdict of the survey is "beyond".
func (s *Survey) Beyond() bool {
	for _, one := range s.Sheets {
		if one.Beyond() {
			return true
		}
	}
	return false
}
