// Package sheet is the document that every calculation returns and every
// host shows: what went in, what came out with its range, the worked lines,
// how each result stands to its limit, cautions, drawings, what to do next,
// and the sources of it all.
package sheet

// Origin says where an input came from.
type Origin string

// The origins, in the order in which they win.
const (
	Typed        Origin = "typed"
	MakersFigure Origin = "maker's figure"
	FromBoat     Origin = "boat"
	Earlier      Origin = "earlier result"
	HandbookRow  Origin = "handbook row"
	UsualValue   Origin = "usual value"
	Default      Origin = "default"
)

// Input is one thing that went in.
type Input struct {
	Name   string   `json:"name"`
	Title  string   `json:"title"`
	Symbol string   `json:"symbol,omitempty"`
	Kind   string   `json:"kind,omitempty"`
	Text   string   `json:"text"`
	Word   string   `json:"word,omitempty"` // the pick or word itself, where Text is its name
	SI     *float64 `json:"si,omitempty"`
	Range  string   `json:"range,omitempty"`
	Origin Origin   `json:"origin"`
	Source string   `json:"source,omitempty"`
	Level  string   `json:"level,omitempty"`
}

// Share is one input's part of a result's spread.
type Share struct {
	Input string  `json:"input"`
	Title string  `json:"title"`
	Share float64 `json:"share"`
}

// Maker is what the maker says where the handbook gives a result too.
type Maker struct {
	Text   string  `json:"text"`
	SI     float64 `json:"si"`
	Source string  `json:"source"`
}

// Result is one thing that came out.
type Result struct {
	Name     string   `json:"name"`
	Title    string   `json:"title"`
	Help     string   `json:"help,omitempty"`
	Symbol   string   `json:"symbol,omitempty"`
	Kind     string   `json:"kind,omitempty"`
	Text     string   `json:"text"`
	SI       *float64 `json:"si,omitempty"`
	Low      *float64 `json:"low,omitempty"` // 95 % interval, in SI
	High     *float64 `json:"high,omitempty"`
	Interval string   `json:"interval,omitempty"`
	Level    string   `json:"level"`
	Shares   []Share  `json:"shares,omitempty"`
	Maker    *Maker   `json:"maker,omitempty"`
}

// Work is one worked line: the formula as the handbook prints it, the same
// with the numbers put in, and the answer.
type Work struct {
	Result  string `json:"result"`
	Formula string `json:"formula,omitempty"`
	Filled  string `json:"filled,omitempty"`
	Method  string `json:"method,omitempty"`
	Answer  string `json:"answer"`
	Source  string `json:"source,omitempty"`
	Basis   string `json:"basis,omitempty"`
}

// Verdict is how a result or a reading stands to a limit.
type Verdict struct {
	Limit       string   `json:"limit"`
	Title       string   `json:"title"`
	On          string   `json:"on"`
	Word        string   `json:"word"`
	Probability *float64 `json:"probability,omitempty"` // that the true value meets the limit
	Value       string   `json:"value,omitempty"`
	Bound       string   `json:"bound"`
	Sentence    string   `json:"sentence"`
	Authority   string   `json:"authority"`
	Source      string   `json:"source"`
	Settle      string   `json:"settle,omitempty"` // what would settle it
}

// Caution is what can hurt in the work that the sheet belongs to. Signal is
// a signal word of ANSI Z535.6.
type Caution struct {
	Signal string `json:"signal"`
	Text   string `json:"text"`
	Source string `json:"source"`
}

// Drawing is a picture in SVG, with words for those who cannot see it.
type Drawing struct {
	Name        string `json:"name"`
	Title       string `json:"title"`
	Description string `json:"description"`
	SVG         string `json:"svg"`
}

// Next is one thing to do next.
type Next struct {
	Text   string `json:"text"`
	Source string `json:"source"`
}

// Sheet is the whole document.
type Sheet struct {
	Calculation string    `json:"calculation"`
	Title       string    `json:"title"`
	Answers     string    `json:"answers"`
	Inputs      []Input   `json:"inputs"`
	Results     []Result  `json:"results"`
	Work        []Work    `json:"work"`
	Verdicts    []Verdict `json:"verdicts"`
	Cautions    []Caution `json:"cautions"`
	Drawings    []Drawing `json:"drawings"`
	Next        []Next    `json:"next"`
	Notes       []string  `json:"notes,omitempty"`
	Sources     []string  `json:"sources"`
	Trials      int       `json:"trials"`
}

// Result returns the result of that name, or nil.
func (s *Sheet) Result(name string) *Result {
	for i := range s.Results {
		if s.Results[i].Name == name {
			return &s.Results[i]
		}
	}
	return nil
}

// Input returns the input of that name, or nil.
func (s *Sheet) Input(name string) *Input {
	for i := range s.Inputs {
		if s.Inputs[i].Name == name {
			return &s.Inputs[i]
		}
	}
	return nil
}

// Verdict returns the verdict by that limit, or nil.
func (s *Sheet) Verdict(limit string) *Verdict {
	for i := range s.Verdicts {
		if s.Verdicts[i].Limit == limit {
			return &s.Verdicts[i]
		}
	}
	return nil
}

// Beyond tells whether any verdict is "beyond".
func (s *Sheet) Beyond() bool {
	for _, v := range s.Verdicts {
		if v.Word == "beyond" {
			return true
		}
	}
	return false
}
