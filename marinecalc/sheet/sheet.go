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

// Term is what every sheet of a calculation calls an input or a result.
type Term struct {
	Name   string `json:"name"`
	Title  string `json:"title"`
	Help   string `json:"help,omitempty"` // results only: the form says it of inputs
	Symbol string `json:"symbol,omitempty"`
	Kind   Kind   `json:"kind,omitempty"` // of quantity; empty for words
	Level  Level  `json:"level"`
}

// Input is one thing that went in.
type Input struct {
	Term
	Text   string   `json:"text"`
	Word   string   `json:"word,omitempty"` // the pick or word itself, where Text is its name
	SI     *float64 `json:"si,omitempty"`
	Range  string   `json:"range,omitempty"`
	Origin Origin   `json:"origin"`
	Source string   `json:"source,omitempty"`
	// Authority is what kind of authority stands behind a figure of the rules,
	// in one word or two; Unverified tells that nobody confirmed it.
	Authority  string `json:"authority,omitempty"`
	Unverified bool   `json:"unverified,omitempty"`
	Unsettled  string `json:"unsettled,omitempty"` // what to print in place of a torque that is not to be set as it stands
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

// Spread is where a number lies with 95 % probability, in SI and in words, and
// which inputs have the largest parts in that. Low and High are nil and the
// rest is empty where there is none, as without trials.
type Spread struct {
	Low      *float64 `json:"low,omitempty"`
	High     *float64 `json:"high,omitempty"`
	Interval string   `json:"interval,omitempty"` // "" where both ends print as the value does
	Shares   []Share  `json:"shares,omitempty"`
}

// Range is where the number lies with 95 % probability, in SI; ok is false
// where it has no spread.
func (s *Spread) Range() (low, high float64, ok bool) {
	if s == nil || s.Low == nil || s.High == nil {
		return 0, 0, false
	}
	return *s.Low, *s.High, true
}

// Half is half the width of the range, 0 where there is none.
func (s *Spread) Half() float64 {
	low, high, _ := s.Range()
	return (high - low) / 2
}

// Result is one thing that came out.
type Result struct {
	Term
	Text     string   `json:"text"`
	Word     string   `json:"word,omitempty"`     // the code, where Text is what people read for it
	Sequence []int    `json:"sequence,omitempty"` // the numbers, where Text is an order of what is numbered
	SI       *float64 `json:"si,omitempty"`
	Spread
	Maker     *Maker `json:"maker,omitempty"`
	Unsettled string `json:"unsettled,omitempty"` // what to print in place of a torque that is not to be set as it stands
}

// Stands is what goes for a result wherever it is used: the maker's figure
// where there is one, or else what was calculated. si is nil for words.
func (r *Result) Stands() (text string, si *float64, makers bool) {
	if r == nil {
		return "", nil, false
	}
	if r.Maker != nil {
		return r.Maker.Text, &r.Maker.SI, true
	}
	return r.Text, r.SI, false
}

// Range is that of the spread; nothing has one.
func (r *Result) Range() (low, high float64, ok bool) {
	if r == nil {
		return 0, 0, false
	}
	return r.Spread.Range()
}

// Half is that of the spread.
func (r *Result) Half() float64 {
	if r == nil {
		return 0
	}
	return r.Spread.Half()
}

// Table is a result that is a list, such as what to do at each mount. Every
// row has one cell for each column.
type Table struct {
	Name    string   `json:"name"`
	Title   string   `json:"title"`
	Help    string   `json:"help,omitempty"`
	Level   Level    `json:"level"`
	Columns []Column `json:"columns"`
	Rows    []Row    `json:"rows"`
}

// Column is the head of one column of a table.
type Column struct {
	Name  string `json:"name"`
	Title string `json:"title"`
	Help  string `json:"help,omitempty"`
	Kind  Kind   `json:"kind,omitempty"` // of quantity; empty for words
	Level Level  `json:"level"`
}

// Row is one row of a table.
type Row struct {
	Cells []Cell `json:"cells"`
}

// Cell is one place of a table: words, or a number with its spread. Its text
// is empty where nothing can be said.
type Cell struct {
	Text string   `json:"text"`
	Word string   `json:"word,omitempty"` // the code, where Text is what people read for it
	SI   *float64 `json:"si,omitempty"`
	Spread
}

// Range is that of the spread; nothing has one.
func (c *Cell) Range() (low, high float64, ok bool) {
	if c == nil {
		return 0, 0, false
	}
	return c.Spread.Range()
}

// Half is that of the spread.
func (c *Cell) Half() float64 {
	if c == nil {
		return 0
	}
	return c.Spread.Half()
}

// Way is how every sheet of a calculation finds a result: by the formula as
// the handbook prints it, or by a method in words.
type Way struct {
	Result  string `json:"result"`
	Formula string `json:"formula,omitempty"`
	Method  string `json:"method,omitempty"`
	Source  string `json:"source,omitempty"`
	Basis   string `json:"basis,omitempty"`
}

// Work is one worked line: the way, its formula with the numbers put in, and
// the answer.
type Work struct {
	Way
	Filled string `json:"filled,omitempty"`
	Answer string `json:"answer"`
}

// Caution is what can hurt in the work that the sheet belongs to. Signal is
// a signal word of ANSI Z535.6.
type Caution struct {
	Signal Signal `json:"signal"`
	Text   string `json:"text"`
	Short  string `json:"short"` // its first statement: what can hurt
	Source string `json:"source"`
	Basis  string `json:"basis"` // how good that is, as in the rule data
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
	Runs   bool   `json:"runs,omitempty"` // to follow it the shaft turns under power
	// Stops are the ids of causes in the fault finding: by what Text says the shaft
	// must not run until one of them is cured. Empty where it may.
	Stops []string `json:"stops,omitempty"`
}

// Sheet is the whole document. In a nil one nothing is found.
type Sheet struct {
	Calculation string     `json:"calculation"`
	Title       string     `json:"title"`
	Answers     string     `json:"answers"`
	Inputs      []Input    `json:"inputs"`
	Results     []Result   `json:"results"`
	Tables      []Table    `json:"tables,omitempty"`
	Work        []Work     `json:"work"`
	Verdicts    []Verdict  `json:"verdicts"`
	Conflicts   []Conflict `json:"conflicts,omitempty"`
	Cautions    []Caution  `json:"cautions"`
	Drawings    []Drawing  `json:"drawings"`
	Next        []Next     `json:"next"`
	Procedures  []string   `json:"procedures,omitempty"` // ids of the work that it chooses or weighs
	Notes       []string   `json:"notes,omitempty"`
	Sources     []string   `json:"sources"`
	Trials      int        `json:"trials"`
	Made        Made       `json:"made"`
}

// Made says what made a sheet or a survey, so that it can be made again.
type Made struct {
	Version  string    `json:"version"`            // of marinecalc and its standard rules
	Overlays []Overlay `json:"overlays,omitempty"` // rule files applied over the standard rules, the first one first
	Units    string    `json:"units"`              // "metric", "us" or "both"
	Trials   int       `json:"trials"`             // asked for; 0 where no ranges were
	Few      int       `json:"few,omitempty"`      // of a survey for which no number was asked: run where they met all limits of a sheet by far
	Seed     uint64    `json:"seed,omitempty"`     // of the trials
	Boat     string    `json:"boat,omitempty"`     // its name
	Day      string    `json:"day,omitempty"`      // of the boat's newest reading, year-month-day
}

// Overlay is a rule file applied over the standard rules.
type Overlay struct {
	Title       string `json:"title"`
	Fingerprint string `json:"fingerprint"` // of its text: FNV-1a of 64 bits, in hexadecimal digits
}

// Result returns the result of that name, or nil.
func (s *Sheet) Result(name string) *Result {
	if s == nil {
		return nil
	}
	for i := range s.Results {
		if s.Results[i].Name == name {
			return &s.Results[i]
		}
	}
	return nil
}

// Table returns the table of that name, or nil.
func (s *Sheet) Table(name string) *Table {
	if s == nil {
		return nil
	}
	for i := range s.Tables {
		if s.Tables[i].Name == name {
			return &s.Tables[i]
		}
	}
	return nil
}

// Reader reads the texts of a row of the table by the names of its columns.
func (t *Table) Reader(r Row) func(column string) string {
	return func(column string) string {
		if c := t.cell(r, column); c != nil {
			return c.Text
		}
		return ""
	}
}

// cell is that of a column in a row, nil where either has none.
func (t *Table) cell(r Row, column string) *Cell {
	if t == nil {
		return nil
	}
	for i := range min(len(t.Columns), len(r.Cells)) {
		if t.Columns[i].Name == column {
			return &r.Cells[i]
		}
	}
	return nil
}

// Cell returns the cell of a table, by the table's name, the row's number and
// the column's name, or nil.
func (s *Sheet) Cell(table string, row int, column string) *Cell {
	if s == nil {
		return nil
	}
	for i := range s.Tables {
		t := &s.Tables[i]
		if t.Name != table || row < 0 || row >= len(t.Rows) {
			continue
		}
		if c := t.cell(t.Rows[row], column); c != nil {
			return c
		}
	}
	return nil
}

// Input returns the input of that name, or nil.
func (s *Sheet) Input(name string) *Input {
	if s == nil {
		return nil
	}
	for i := range s.Inputs {
		if s.Inputs[i].Name == name {
			return &s.Inputs[i]
		}
	}
	return nil
}

// Verdict returns the verdict by that limit, or nil.
func (s *Sheet) Verdict(limit string) *Verdict {
	if s == nil {
		return nil
	}
	for i := range s.Verdicts {
		if s.Verdicts[i].Limit == limit {
			return &s.Verdicts[i]
		}
	}
	return nil
}

// Beyond tells whether any verdict is "beyond".
func (s *Sheet) Beyond() bool {
	if s == nil {
		return false
	}
	for _, v := range s.Verdicts {
		if v.Word == Beyond {
			return true
		}
	}
	return false
}
