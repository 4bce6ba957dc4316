package workplan

import (
	"fmt"
	"math"
	"slices"
	"strings"

	"example.org/driveline/marinecalc/internal/calc"
	"example.org/driveline/marinecalc/internal/workplan/schedule"
	"example.org/driveline/marinecalc/problem"
	"example.org/driveline/marinecalc/quantity"
	"example.org/driveline/marinecalc/rules"
)

// planner is one plan under way: the steps as rows and as tasks.
type planner struct {
	session  *calc.Session
	in       *Input
	today    int
	remedies []rules.Remedy
	because  [][]string        // by remedy
	first    map[string]string // by cause: the remedy that the fault finding proposes first
	open     map[string]bool   // steps that the cures of what was found need
	left     []string          // what is not planned, and why
	guessed  []string          // work planned for what is only suspected
	still    Still
	begins   int // of a day's work, minutes after midnight
	steps    []rules.Step
	forWhat  [][]string // by step: titles of the remedies that need it
	tasks    []schedule.Task
	held     []string // by step: why it is not planned to a day; "" where it is
	calendar schedule.Calendar
	needs    []partNeed
	cut      []string // lists too long for the sheet
}

// partNeed is one part of a plan with all the steps that take it.
type partNeed struct {
	part    rules.Part
	amount  float64 // counted, in the part's unit
	si      float64 // measured, where kind is not nil
	kind    *quantity.Kind
	units   [2]string // metric and US
	unknown []string  // sheets that would tell how much
	steps   []int
	lead    int // days
	hand    PartInHand
}

var (
	placeOf  = map[string]schedule.Place{"afloat": schedule.Afloat, "ashore": schedule.Ashore, "either": schedule.Anywhere}
	windowOf = map[string]schedule.WindowKind{"afloat": schedule.AfloatDays, "ashore": schedule.AshoreDays, "haul-out": schedule.LiftedDays,
		"booked": schedule.Booked, "not": schedule.Closed, "ready": schedule.Ready, "no-lift": schedule.NoLift}
	stageOf = map[string]schedule.Stage{"as-found": schedule.AsFound, "open": schedule.Opens, "trial": schedule.Trial, "afterwards": schedule.Afterwards}
)

// stage is where in the job a step stands; one that lays her up before
// anything else is done opens her.
func stage(s rules.Step) schedule.Stage {
	if s.LaysUp && (s.Phase == "" || s.Phase == "as-found") {
		return schedule.Opens
	}
	return stageOf[s.Phase]
}

func minutes(hours float64) int { return max(1, int(math.Ceil(60*hours-1e-9))) }

// runsHeld tells whether the plan ends with her closed up and not to be run.
func (p *planner) runsHeld() bool {
	return slices.ContainsFunc(p.held, func(why string) bool { return why != "" })
}

// noSuch refuses an id that no row has.
func noSuch(list *problem.List, where, what, id string, known []string) {
	hint := ""
	if best, ok := problem.Closest(id, known); ok {
		hint = fmt.Sprintf("did you mean %q?", best)
	}
	list.Add(where, fmt.Sprintf("there is no %s %q", what, id), strings.Join(known, ", "), hint)
}
