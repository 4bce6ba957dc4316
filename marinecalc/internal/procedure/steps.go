package procedure

import (
	"fmt"
	"slices"
	"strings"

	"example.org/driveline/marinecalc/internal/workplan"
	"example.org/driveline/marinecalc/problem"
	"example.org/driveline/marinecalc/rules"
)

// leaveOut drops what would run a shaft that is to be kept still, and what is no
// step of this boat, unless it was done already; what is left says what it says of
// this boat.
func (m *maker) leaveOut() {
	m.still = workplan.StillOf(m.session)
	steps := m.steps
	m.steps = nil
	for _, s := range steps {
		on, leftOut := m.still.StepOn(m.session, s)
		if t := m.ticked(s.ID); leftOut == "" || t != nil && t.Done != "" {
			m.steps = append(m.steps, on)
		} else {
			m.out.LeftOut = append(m.out.LeftOut, leftOut)
		}
	}
}

// ofBoat takes out work that is none of this boat, and says why, before anything of
// it is walked through. What opened her is gone through to its end all the same: what
// lies open has to be closed.
func (m *maker) ofBoat() (err error) {
	for _, r := range m.rows {
		why := m.session.NoWork(r)
		if why != "" {
			m.out.LeftOut = append(m.out.LeftOut, why)
		}
		opened := func(s rules.Step) bool {
			t := m.ticked(s.ID)
			return s.LaysUp && t != nil && t.Done != "" && rules.Contains(r.Steps, s.ID)
		}
		if why == "" || slices.ContainsFunc(m.steps, opened) {
			m.hers = append(m.hers, r)
		}
	}
	m.steps, err = stepsOf(m.session.Book, m.hers)
	return err
}

// uses are the figures of a step: its own, and of one that gathers the torques of
// the work those that the steps after it set.
func (m *maker) uses(n int) []string {
	list := rules.Join(nil, m.steps[n].Use)
	if !m.steps[n].Gathers {
		return list
	}
	for _, s := range m.steps[n+1:] {
		for _, of := range s.Use.All() {
			if m.jointOf(of) != nil && !slices.Contains(list, of) {
				list = append(list, of)
			}
		}
	}
	return list
}

// choose finds remedies by their ids, each once.
func choose(book *rules.Book, ids []string) ([]rules.Remedy, error) {
	var list problem.List
	var rows []rules.Remedy
	var known []string
	for _, r := range book.Remedies().All() {
		known = append(known, r.ID)
	}
	if len(ids) == 0 {
		list = append(list, problem.Problem{Where: "/remedies", What: "no piece of work is named", Allowed: strings.Join(known, ", "), Kind: problem.Missing})
	}
	if len(ids) > mostRemedies {
		list = append(list, problem.Problem{Where: "/remedies", What: fmt.Sprintf("%d pieces of work", len(ids)), Allowed: fmt.Sprintf("up to %d in one procedure", mostRemedies), Kind: problem.TooLarge})
		ids = nil
	}
	for i, id := range ids {
		at := slices.Index(known, id)
		if at < 0 {
			list = append(list, problem.Problem{Where: fmt.Sprintf("/remedies/%d", i), What: fmt.Sprintf("there is no piece of work %q", id),
				Allowed: strings.Join(known, ", "), Hint: problem.DidYouMean(id, known), Kind: problem.Unknown})
		} else if !slices.Contains(ids[:i], id) {
			rows = append(rows, book.Remedies().At(at))
		}
	}
	return rows, list.Err()
}

// stepsOf lists the steps of remedies, each once, in the order of the work.
func stepsOf(book *rules.Book, rows []rules.Remedy) ([]rules.Step, error) {
	byID := map[string]rules.Step{}
	for _, s := range book.Steps().All() {
		byID[s.ID] = s
	}
	var steps []rules.Step
	seen := map[string]bool{}
	var list problem.List
	for i, r := range rows {
		for _, id := range r.Steps.All() {
			step, has := byID[id]
			if !has {
				list.Add(fmt.Sprintf("/remedies/%d", i), fmt.Sprintf("the work %q has a step %q that is not in the rule data", r.ID, id), "", "check the rule file")
			} else if !seen[id] {
				seen[id] = true
				steps = append(steps, step)
			}
		}
	}
	if len(list) > 0 {
		return nil, list.Err()
	}
	order, phase, err := workplan.InSequence(steps, phaseNames())
	if err != nil {
		return nil, err
	}
	sorted := make([]rules.Step, len(steps))
	for n, i := range order {
		sorted[n] = steps[i]
		sorted[n].Phase = phases[phase[i]].phase
	}
	return sorted, nil
}

func phaseNames() []string {
	names := make([]string, len(phases))
	for i, p := range phases {
		names[i] = p.phase
	}
	return names
}
