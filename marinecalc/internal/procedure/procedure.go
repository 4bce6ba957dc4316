// Package procedure makes of one piece of work, or of several done together, a
// document to go by, step by step, filled with what is known of this boat. Its
// files: procedure.go is the document and how it is made, steps.go which steps
// it is, figures.go the figures of the boat's sheets, record.go what is read and
// written down, prepare.go what to measure or look up before beginning, ticks.go
// what has been ticked off, close.go how a job ends, due.go when a step after the
// trial is due, list.go which work there is.
package procedure

import (
	"context"
	"slices"
	"strconv"
	"strings"

	"example.org/driveline/marinecalc/internal/boat"
	"example.org/driveline/marinecalc/internal/calc"
	"example.org/driveline/marinecalc/internal/catalogue"
	"example.org/driveline/marinecalc/internal/workplan"
	"example.org/driveline/marinecalc/problem"
	"example.org/driveline/marinecalc/quantity"
	"example.org/driveline/marinecalc/rules"
	"example.org/driveline/marinecalc/sheet"
)

// Procedure is a piece of work to go by, step by step.
type Procedure struct {
	Boat     string    `json:"boat"`
	Title    string    `json:"title"`
	Remedies []Piece   `json:"remedies"`
	Cures    []Cause   `json:"cures"`
	Phases   []Phase   `json:"phases"` // in order
	Steps    int       `json:"steps"`
	Ticked   int       `json:"ticked"`
	Hours    float64   `json:"hours"` // of work, of one person
	LastTick *Tick     `json:"lastTick,omitempty"`
	Moves    int       `json:"moves"`   // times that she goes ashore or afloat between the steps
	LeftOut  []string  `json:"leftOut"` // steps that must not be done on this boat now, and why
	Tools    []string  `json:"tools"`   // of all steps, each once
	Missing  []Missing `json:"missing"` // what figures of the steps still need
	Prepare  []Prepare `json:"prepare"` // the same, by what settles it
	Drawings []Drawing `json:"drawings"`

	Warnings problem.List `json:"warnings,omitempty"` // what of the boat file is kept and not used
	Made     sheet.Made   `json:"made"`
}

// Piece is one remedy.
type Piece struct {
	ID    string `json:"id"`
	Title string `json:"title"`
	Text  string `json:"text,omitempty"`
	Kind  string `json:"kind"`
}

// Cause is what a remedy cures.
type Cause struct {
	ID    string `json:"id"`
	Title string `json:"title"`
}

// Phase is the steps of one part of the job.
type Phase struct {
	Phase string `json:"phase"`
	Title string `json:"title"`
	Steps []Step `json:"steps"`
}

// Step is one step, with what this boat asks for.
type Step struct {
	ID         string          `json:"id"`
	Number     int             `json:"number"` // from 1, through all phases
	Title      string          `json:"title"`
	Text       string          `json:"text"`
	Note       string          `json:"note,omitempty"`
	For        []string        `json:"for"`   // titles of the remedies that need it
	After      []int           `json:"after"` // numbers of the steps that come before it
	Place      string          `json:"place"`
	Move       string          `json:"move,omitempty"` // what has to be done with the boat before it
	Hours      float64         `json:"hours"`
	LongHours  float64         `json:"longHours"`      // when it does not go smoothly
	WaitDays   int             `json:"waitDays"`       // that must pass after it
	Hold       string          `json:"hold,omitempty"` // why it must not be done yet even in its turn
	Once       string          `json:"once,omitempty"` // what must be so before it, of what the same work cures
	Cautions   []sheet.Caution `json:"cautions"`       // gravest first
	Safe       string          `json:"safe,omitempty"`
	Tools      []string        `json:"tools"`
	Parts      []Part          `json:"parts"`
	Figures    []Figure        `json:"figures"`
	Tightening *Tightening     `json:"tightening,omitempty"`
	Drawing    string          `json:"drawing,omitempty"` // id of the calculation whose picture it is
	Records    []Record        `json:"records"`
	Bares      []Piece         `json:"bares"` // what else is cheap while this lies open
	Due        *Due            `json:"due,omitempty"`
	Tick       *Tick           `json:"tick,omitempty"`
	TickNote   string          `json:"tickNote,omitempty"`
}

// Part is something that the step takes.
type Part struct {
	ID     string `json:"id"`
	Title  string `json:"title"`
	Amount string `json:"amount"`
	Size   string `json:"size,omitempty"`
	Note   string `json:"note,omitempty"`
}

// Due is when a step after the trial is due: whichever comes first.
type Due struct {
	Hours float64 `json:"hours,omitempty"` // engine hours after the trial
	Days  int     `json:"days,omitempty"`
	By    string  `json:"by,omitempty"`    // the day, once the trial is ticked off
	Meter string  `json:"meter,omitempty"` // what the hour meter shows then
	Text  string  `json:"text"`
}

// Drawing is a picture that steps refer to by its calculation.
type Drawing struct {
	Calculation string          `json:"calculation"`
	Sheet       string          `json:"sheet"`
	Pictures    []sheet.Drawing `json:"pictures"`        // none where the calculation cannot be worked out
	Needs       []string        `json:"needs,omitempty"` // what it still needs then
}

// Request is what is asked for.
type Request struct {
	Remedies []string // ids; steps that several need are done once
	Done     []string // ids of steps to show as ticked off besides those of the boat file
}

// phases are the parts of a job in their order, each with its title.
var phases = []struct{ phase, title string }{
	{"as-found", "As found, before the first bolt"},
	{"open", "Open up"},
	{"work", "Do the work"},
	{"close", "Close up"},
	{"first-start", "First start"},
	{"trial", "Trial under way"},
	{"afterwards", "Afterwards"},
}

// mostRemedies is how many pieces of work one procedure takes.
const mostRemedies = 20

// maker is one procedure under way.
type maker struct {
	session *calc.Session
	steps   []rules.Step
	byID    map[string]int // number of each step, from 0, in the order of the work
	rows    []rules.Remedy
	hers    []rules.Remedy // of these, what is work of this boat
	ticks   []boatStep
	still   workplan.Still
	lies    string // where she lies for the steps so far; "" where any place will do
	worked  map[string]*worked
	out     *Procedure
}

// Make makes the document. The boat may be nil: then no figure is known, and
// each says what it needs.
func Make(ctx context.Context, b *boat.Boat, o calc.Options, r Request) (*Procedure, error) {
	o.Boat = b
	s, err := o.Session(ctx, catalogue.Calculations)
	if err != nil {
		return nil, err
	}
	m := &maker{session: s, worked: map[string]*worked{}, out: &Procedure{Boat: b.Name(), Warnings: s.Unused(), Made: s.Made(),
		Cures: []Cause{}, Phases: []Phase{}, LeftOut: []string{}, Tools: []string{}, Missing: []Missing{}, Drawings: []Drawing{}}}
	if m.rows, err = choose(s.Book, r.Remedies); err != nil {
		return nil, err
	}
	if m.steps, err = stepsOf(s.Book, m.rows); err != nil {
		return nil, err
	}
	m.readTicks(b, r.Remedies)
	if err := m.tickBesides(r.Done, o.Day); err != nil {
		return nil, err
	}
	if err := m.ofBoat(); err != nil {
		return nil, err
	}
	m.leaveOut()
	if err := m.write(); err != nil {
		return nil, err
	}
	if stopped := s.Cancelled(); len(stopped) > 0 {
		return nil, stopped.Err()
	}
	return m.out, nil
}

// write fills the document.
func (m *maker) write() error {
	m.byID = map[string]int{}
	for n, s := range m.steps {
		m.byID[s.ID] = n
	}
	causes := map[string]string{}
	for _, c := range m.session.Book.Causes().All() {
		causes[c.ID] = c.Title
	}
	var titles []string
	for _, r := range m.rows {
		m.out.Remedies = append(m.out.Remedies, piece(r))
		titles = append(titles, r.Title)
	}
	for _, r := range m.hers {
		for _, id := range r.Cures.All() {
			if c := (Cause{id, causes[id]}); !slices.Contains(m.out.Cures, c) {
				m.out.Cures = append(m.out.Cures, c)
			}
		}
	}
	m.out.Title, m.out.Steps = strings.Join(titles, "; "), len(m.steps)
	at := -1
	for n := range m.steps {
		if stopped := m.session.Cancelled(); len(stopped) > 0 {
			return stopped.Err()
		}
		rank := slices.Index(phaseNames(), m.steps[n].Phase)
		if at < 0 || m.out.Phases[at].Phase != phases[rank].phase {
			m.out.Phases = append(m.out.Phases, Phase{Phase: phases[rank].phase, Title: phases[rank].title})
			at++
		}
		m.out.Phases[at].Steps = append(m.out.Phases[at].Steps, m.step(n))
	}
	m.prepare()
	return nil
}

func piece(r rules.Remedy) Piece { return Piece{ID: r.ID, Title: r.Title, Text: r.Text, Kind: r.Kind} }

// step fills one step.
func (m *maker) step(n int) Step {
	row := m.steps[n]
	out := Step{ID: row.ID, Number: n + 1, Title: row.Title, Text: quantity.Either(row.Text, m.session.Units), Note: row.Note, Place: row.Place, Hours: row.Hours, LongHours: row.LongHours,
		WaitDays: row.WaitDays, Safe: row.Safe, Drawing: row.Drawing,
		For: []string{}, After: []int{}, Cautions: []sheet.Caution{}, Tools: []string{}, Parts: []Part{}, Figures: []Figure{}, Records: []Record{}, Bares: []Piece{}}
	if out.LongHours == 0 {
		out.LongHours = 2 * row.Hours
	}
	switch {
	case row.Place == "either":
		out.Place = "afloat or ashore"
	case m.lies != "" && m.lies != row.Place:
		m.out.Moves++
		out.Move = map[string]string{"afloat": "Before this she is launched.", "ashore": "Before this she is hauled out."}[row.Place]
		m.lies = row.Place
	default:
		m.lies = row.Place
	}
	m.out.Hours += row.Hours
	for _, r := range m.hers {
		if rules.Contains(r.Steps, row.ID) {
			out.For = append(out.For, r.Title)
		}
	}
	for _, id := range row.After.All() {
		if before, has := m.byID[id]; has {
			out.After = append(out.After, before+1)
		}
	}
	slices.Sort(out.After)
	for _, tool := range row.Tools.All() {
		out.Tools = append(out.Tools, tool)
		if !slices.Contains(m.out.Tools, tool) {
			m.out.Tools = append(m.out.Tools, tool)
		}
	}
	out.Hold, out.Once = m.still.Holds(row, m.hers), m.still.Once(row, m.hers)
	for _, c := range m.session.Book.AllCautions().All() {
		if rules.Contains(row.Hazards, c.ID) || c.ID == rules.StopNow && out.Hold != "" {
			out.Cautions = append(out.Cautions, c.Said())
		}
	}
	m.session.Book.SortCautions(out.Cautions)
	for _, p := range workplan.PartsOf(m.session, m.steps, n) {
		out.Parts = append(out.Parts, Part{ID: p.Part.ID, Title: p.Part.Title, Amount: p.Amount, Size: p.Size, Note: p.Part.Note})
	}
	uses := m.uses(n)
	for _, of := range uses {
		out.Figures = append(out.Figures, m.figure(of, n+1))
	}
	if slices.Contains(uses, wrenchSetting) {
		out.Tightening = m.tightening()
		out.Figures = slices.DeleteFunc(out.Figures, func(f Figure) bool { return slices.Contains(inTightening, f.Of) })
	}
	m.draw(row.Drawing)
	told := map[Held]bool{} // a limit that holds several readings together is told at the first of them
	for _, r := range row.Record.All() {
		record := m.record(row.ID, r)
		record.Limits = slices.DeleteFunc(record.Limits, func(h Held) bool { return told[h] })
		for _, h := range record.Limits {
			told[h] = true
		}
		out.Records = append(out.Records, record)
	}
	for _, id := range row.Bares.All() {
		for _, r := range m.session.Book.Remedies().All() {
			if r.ID == id && !slices.ContainsFunc(m.rows, func(own rules.Remedy) bool { return own.ID == id }) {
				out.Bares = append(out.Bares, piece(r))
			}
		}
	}
	out.Due = m.due(row)
	if t := m.ticked(row.ID); t != nil {
		out.TickNote = t.Note
		if out.Tick = t.tick(); out.Tick != nil {
			m.out.Ticked++
			if m.out.LastTick == nil || out.Tick.at() > m.out.LastTick.at() {
				m.out.LastTick = out.Tick
			}
		}
	}
	return out
}

// draw adds the pictures of a calculation, once.
func (m *maker) draw(id string) {
	if id == "" || slices.ContainsFunc(m.out.Drawings, func(d Drawing) bool { return d.Calculation == id }) {
		return
	}
	w := m.work(id)
	d := Drawing{Calculation: id, Sheet: w.title, Pictures: []sheet.Drawing{}}
	if w.sheet != nil {
		d.Pictures = append(d.Pictures, w.sheet.Drawings...)
	}
	for _, n := range w.needs {
		d.Needs = append(d.Needs, n.Title)
	}
	m.out.Drawings = append(m.out.Drawings, d)
}

// hoursText writes hours as people say them.
func hoursText(hours float64) string { return strconv.FormatFloat(hours, 'g', 4, 64) + " h" }
