// Package upkeep is the watch over a boat: what to read, look at or renew, and
// when; which spares save most days; and when each way of looking would have
// shown a wear. The arithmetic is package due below it: upkeep.go is what goes
// in and comes out, gather.go reads the boat, rows.go makes the list of care,
// beside.go what is asked for beside the rows: looks after work, and readings of
// her own that have a limit. shown.go is about wear debris, spares.go about spares, draw.go draws it.
package upkeep

import (
	"fmt"
	"math"
	"strings"

	"example.org/driveline/marinecalc/internal/calc"
	"example.org/driveline/marinecalc/internal/day"
	"example.org/driveline/marinecalc/internal/picture"
	"example.org/driveline/marinecalc/internal/upkeep/due"
	"example.org/driveline/marinecalc/problem"
	"example.org/driveline/marinecalc/quantity"
	"example.org/driveline/marinecalc/rules"
	"example.org/driveline/marinecalc/sheet"
)

// Input is what service-schedule takes.
type Input struct {
	Today         string
	HoursNow      quantity.Time `unset:"NaN"`
	HoursPerYear  quantity.Time `unset:"NaN"`
	Horizon       quantity.Time
	Done          []DoneCare
	Intervals     []MakersInterval
	Without       []NotAboard
	Spares        []Spare
	FaultsPerYear quantity.Ratio
	StrandsUsual  quantity.Ratio
	LiftWait      quantity.Time
}

// DoneCare is care with its day.
type DoneCare struct {
	Item        string
	Date        string
	EngineHours quantity.Time `unset:"NaN"`
}

// MakersInterval is how often a maker asks for care. NaN: not by that.
type MakersInterval struct {
	Item     string
	Hours    quantity.Time `unset:"NaN"`
	Within   quantity.Time `unset:"NaN"`
	Document string
}

// NotAboard is care that the boat needs none of.
type NotAboard struct{ Item string }

// Spare is what is known of a spare part.
type Spare struct {
	Part   string
	Aboard bool
	Price  quantity.Money `unset:"NaN"`
	Mass   quantity.Mass  `unset:"NaN"`
}

// Result is what service-schedule gives.
type Result struct {
	Says         string
	NextDue      string
	AtFault      int
	NeverLooked  int
	DueSoon      int
	Overdue      quantity.Ratio // by makers, law and manuals; NaN where nothing is and something was never looked at
	OverdueGuide quantity.Ratio // by common practice
	OverdueOf    string         // the first few of them
	OverdueBy    string         // the first few by common practice
	MeterToday   quantity.Time
	YearUsed     quantity.Time // hours a year that days go by
	YearByLog    quantity.Time
	WearRate     quantity.Ratio // share of the fluid's mass in 100 hours
	Schedule     [mostCare]CareLine
	ShownBy      [mostMethods]ShownLine
	SparesBy     [mostSpares]SpareLine
	hazards      []string // ids of cautions: of the care in hand
}

// Hazards are the cautions of the care that is due now. Those of the other care
// stand with each.
func (r Result) Hazards() []string { return r.hazards }

const (
	mostCare    = 48
	mostMethods = 8
	mostSpares  = 24
)

// CareLine is one thing to do.
type CareLine struct {
	What      string
	State     string // a due.State
	Due       string // day; "" where it is not known
	HoursLeft quantity.Time
	By        string // a due.By
	LastDone  string
	Kind      string
	How       string
	Hazard    string
	Every     string
	Authority string
	Part      string
}

// ShownLine is one way of looking, and when it would have told.
type ShownLine struct{ Method, First, After, Remark string }

// SpareLine is one spare.
type SpareLine struct {
	Part     string
	Aboard   string
	Saves    string // days a year
	PerPrice string // days a year for 100 of the money
	PerMass  string // days a year for a kilo
	LeadTime quantity.Time
	Fit      string // where it is fitted
	Because  string
	For      string
}

// keeper is one list of care under way.
type keeper struct {
	session *calc.Session
	in      *Input
	today   int
	log     due.Log // of the meter as it stands
	use     due.Use
	cares   []care
	out     Result

	meterOff string // what to say where the meter was renewed or misread
}

// care is one row of care with what is known of it.
type care struct {
	row rules.Row // of a look after work and of a reading of her own: the name alone
	due.Care
	kind, how, part string
	when            due.When
	state           due.State
	last            string
	every           string
	authority       string
	guide           bool
	fault           string // the question by which it was found at fault
	reached         bool   // its readings are at their limit, and not only near it
	fresh           bool   // last looked at for the first time after work on it
}

// Keep makes the list. It is worked out once for a sheet: nothing in it is
// drawn in trials.
func Keep(s *calc.Session) calc.PerRun[Input, Result] {
	var k *keeper
	return calc.PerRun[Input, Result]{Compute: func(in Input) (Result, error) {
		if k == nil {
			made := &keeper{session: s, in: &in}
			if err := made.gather(); err != nil {
				return Result{}, err
			}
			made.list()
			made.shown()
			made.spares()
			made.says()
			k = made
		}
		return k.out, nil
	}, Draw: func(_ Input, _ Result, b picture.Brush) []sheet.Drawing { return k.draw(b) }}
}

// says counts and names what comes first: before all, that the shaft must not
// run now, where the fault finding says so.
func (k *keeper) says() {
	out := &k.out
	defer func() {
		if k.meterOff != "" {
			out.Says += " " + k.meterOff
		}
		if k.session.Boat == nil {
			return
		}
		if why := k.session.Still(); why != "" {
			k.heldBack()
			out.Says = "The shaft stands until it is cured, and what is read under way waits: " + why + " " + out.Says
		}
	}()
	known := false
	nan := quantity.Ratio(math.NaN())
	out.Overdue, out.OverdueGuide = 0, 0
	var faults, late, sure, guides []string
	for i := range k.cares {
		c := &k.cares[i]
		known = known || c.Done || c.fault != ""
		switch c.state {
		case due.Fault:
			faults = append(faults, problem.MidSentence(c.row.Name))
			out.AtFault++
		case due.Never:
			out.NeverLooked++
		case due.Soon:
			out.DueSoon++
		case due.Overdue:
			name := problem.MidSentence(c.row.Name)
			switch {
			case c.spoken():
				name += ", at its limit"
			case c.worn():
				name += ", which may be at its limit by now"
			}
			late = append(late, name)
			if c.guide && c.when.By != due.ByWear {
				out.OverdueGuide++
				guides = append(guides, name)
			} else {
				out.Overdue++
				sure = append(sure, name)
			}
		}
		if out.NextDue == "" && (c.state == due.Soon || c.state == due.Later) {
			out.NextDue = c.row.Name + ", by " + day.Text(int(math.Floor(c.when.Day)))
		}
	}
	out.OverdueOf, out.OverdueBy = fewOf(sure), fewOf(guides)
	if out.NeverLooked > 0 { // nobody knows of these: nothing over is no all clear
		if out.Overdue == 0 {
			out.Overdue = nan
		}
		if out.OverdueGuide == 0 {
			out.OverdueGuide = nan
		}
	}
	if !known {
		out.Says = "The boat file does not say when anything was looked at or renewed: begin with what nobody has looked at."
		return
	}
	var parts []string
	if len(faults) > 0 {
		parts = append(parts, "Found at fault: "+strings.Join(faults, "; ")+".")
	}
	if len(late) > 0 {
		parts = append(parts, "Overdue: "+strings.Join(late, "; ")+".")
	}
	if out.NeverLooked > 0 {
		parts = append(parts, fmt.Sprintf("%d things nobody has looked at, as far as the boat file tells.", out.NeverLooked))
	}
	if len(parts) == 0 {
		parts = append(parts, "Nothing is overdue.")
	}
	out.Says = strings.Join(parts, " ")
}

// mostNamed is how many things are named before the rest is counted.
const mostNamed = 3

// fewOf names the first few of a list.
func fewOf(names []string) string {
	if len(names) > mostNamed+1 {
		return strings.Join(names[:mostNamed], "; ") + fmt.Sprintf("; %d more", len(names)-mostNamed)
	}
	return strings.Join(names, "; ")
}
