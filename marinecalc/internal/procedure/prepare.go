package procedure

import (
	"slices"
	"strings"

	"example.org/driveline/marinecalc/internal/boat"
	"example.org/driveline/marinecalc/internal/survey"
)

// Missing is what figures of steps that lie ahead still need, and no step before
// them reads.
type Missing struct {
	survey.Need
	Calculation string `json:"calculation"` // on whose form it can be typed
	Sheet       string `json:"sheet"`
	Steps       []int  `json:"steps"`

	key string // what is the same for every sheet that needs it
}

// Prepare is what to measure or look up before beginning, by what settles it.
type Prepare struct {
	By    string   `json:"by"` // gauge; "" for marks, papers and the eye
	What  []string `json:"what"`
	Steps []int    `json:"steps"` // for which
}

// mostBehindNeed is how far back results of other sheets are followed to what is
// measured.
const mostBehindNeed = 3

// lack notes what a figure of a step needs, unless that step is done.
func (m *maker) lack(f Figure, step int) {
	if t := m.ticked(m.steps[step-1].ID); t == nil || t.tick() == nil {
		m.lackOf(f.Calculation, f.Needs, step, mostBehindNeed)
	}
}

func (m *maker) lackOf(calculation string, needs []survey.Need, step, depth int) {
	w := m.work(calculation)
	for _, n := range needs {
		p := m.session.Property(calculation + "/" + n.Input)
		if p == nil || p.Boat == boat.LatestReading+"date" || m.readBefore(p.Boat, step) {
			continue
		}
		if before, _, is := strings.Cut(p.After[strings.LastIndexByte(p.After, '|')+1:], "/"); is { // what that rests on is measured, not the result
			if behind := m.work(before); depth > 0 && behind.sheet == nil && behind.needs != nil {
				m.lackOf(before, behind.needs, step, depth-1)
			}
			continue
		}
		key := p.Boat
		if key == "" {
			key = calculation + "/" + n.Input
		}
		i := slices.IndexFunc(m.out.Missing, func(x Missing) bool { return x.key == key })
		if i < 0 {
			i = len(m.out.Missing)
			m.out.Missing = append(m.out.Missing, Missing{Need: n, Calculation: calculation, Sheet: w.title, key: key})
		}
		if x := &m.out.Missing[i]; !slices.Contains(x.Steps, step) {
			x.Steps = append(x.Steps, step)
		}
	}
}

// readBefore tells whether a step up to that one reads what stands at a place
// of the boat file.
func (m *maker) readBefore(pointer string, step int) bool {
	name, is := strings.CutPrefix(pointer, boat.LatestReading)
	for n := 0; is && n < step; n++ {
		for _, r := range m.steps[n].Record.All() {
			if r.Reading == name {
				return true
			}
		}
	}
	return false
}

// prepare groups what is missing by what settles it, the one for the first step
// first.
func (m *maker) prepare() {
	m.out.Prepare = []Prepare{}
	for _, x := range m.out.Missing {
		i := slices.IndexFunc(m.out.Prepare, func(p Prepare) bool { return p.By == x.Gauge })
		if i < 0 {
			i = len(m.out.Prepare)
			m.out.Prepare = append(m.out.Prepare, Prepare{By: x.Gauge})
		}
		p := &m.out.Prepare[i]
		if !slices.Contains(p.What, x.Title) {
			p.What = append(p.What, x.Title)
		}
		for _, step := range x.Steps {
			if !slices.Contains(p.Steps, step) {
				p.Steps = append(p.Steps, step)
			}
		}
		slices.Sort(p.Steps)
	}
}
