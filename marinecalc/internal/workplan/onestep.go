package workplan

import (
	"math"
	"slices"

	"example.org/driveline/marinecalc/internal/calc"
	"example.org/driveline/marinecalc/internal/workplan/schedule"
	"example.org/driveline/marinecalc/problem"
	"example.org/driveline/marinecalc/quantity"
	"example.org/driveline/marinecalc/rules"
)

// StepPart is what one step takes of a part on this boat.
type StepPart struct {
	Part   rules.Part
	Amount string
	Size   string // which one; "" where the boat's sheets do not say
}

// PartsOf lists the parts that one of the steps of some work takes on this
// boat, as the shopping list has them.
func PartsOf(s *calc.Session, steps []rules.Step, step int) []StepPart {
	alone := slices.Clone(steps)
	for i := range alone {
		if i != step {
			alone[i].Parts = rules.List[rules.PartNeed]{}
		}
	}
	p := &planner{session: s, in: &Input{PartsInHand: inHand(s)}, steps: alone, tasks: make([]schedule.Task, len(alone))}
	p.gatherParts(new(problem.List)) // the plan tells of a part in hand that there is not
	var list []StepPart
	for i := range p.needs {
		need := &p.needs[i]
		list = append(list, StepPart{need.part, p.amount(need), p.sizes(need.part)})
	}
	return list
}

// inHand is what the boat file says of parts, as far as it decides whether a
// step takes them.
func inHand(s *calc.Session) (list []PartInHand) {
	for _, h := range s.Boat.HeldParts() {
		list = append(list, PartInHand{Part: h.Part, OnBoard: h.OnBoard, MakerAsks: h.MakerAsks, LeadTime: quantity.Time(math.NaN())})
	}
	return list
}

// FigureOf prints a result or an input of the boat's own sheets, by
// "calculation/name"; an input also where its sheet as a whole cannot be
// worked out.
func FigureOf(s *calc.Session, of string) (text string, ok bool) {
	_, _, text, ok = (&planner{session: s}).figure(of)
	return text, ok
}

// InSequence gives the steps in an order for one person, and the number of the
// phase that each is done in; phases never go backward.
func InSequence(steps []rules.Step, phases []string) (order, phase []int, err error) {
	number := map[string]int{}
	for i, s := range steps {
		number[s.ID] = i
	}
	tasks := make([]schedule.Task, len(steps))
	ranks := make([]int, len(steps))
	for i, s := range steps {
		tasks[i].Name, tasks[i].Place = s.Title, placeOf[s.Place]
		for _, id := range s.After.All() {
			if before, has := number[id]; has {
				tasks[i].After = append(tasks[i].After, before)
			}
		}
		for rank, name := range phases {
			if s.Phase == name {
				ranks[i] = rank
			}
		}
	}
	return schedule.Sequence(tasks, ranks)
}
