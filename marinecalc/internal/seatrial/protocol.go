package seatrial

import (
	"fmt"
	"maps"
	"math"
	"slices"
	"strings"

	"example.org/driveline/marinecalc/internal/calc"
	"example.org/driveline/marinecalc/internal/seatrial/proof"
	"example.org/driveline/marinecalc/problem"
	"example.org/driveline/marinecalc/quantity"
	"example.org/driveline/marinecalc/rules"
)

// trial is one trial under way.
type trial struct {
	session *calc.Session
	in      *Input
	runs    map[string]*Run // by stage
	count   proof.Count
	doubted map[string]bool // by stage and reading: did not pass a limit, so that it is no baseline
	failed  []string        // what failed, in words
	again   []string
	left    []string // stages that this boat must not run
	out     Result
}

// check refuses what cannot be: stages that there are not or twice, and a
// rated speed under the idle.
func (t *trial) check() error {
	var list problem.List
	if t.in.EngineSpeed <= t.in.IdleSpeed {
		list.Add("/engineSpeed", "the rated engine speed is not above the idle speed", "above the idle speed", "take both from the engine's plate or manual")
	}
	known := map[string]bool{}
	for _, row := range t.stages() {
		known[row.ID] = true
	}
	t.runs = map[string]*Run{}
	for i := range t.in.Runs {
		r := &t.in.Runs[i]
		where := fmt.Sprintf("/runs/%d/stage", i)
		switch {
		case !known[r.Stage]:
			hint := ""
			if best, ok := problem.Closest(r.Stage, slices.Sorted(maps.Keys(known))); ok {
				hint = fmt.Sprintf("did you mean %q?", best)
			}
			list.Add(where, fmt.Sprintf("there is no stage %q", r.Stage), strings.Join(slices.Sorted(maps.Keys(known)), ", "), hint)
		case t.runs[r.Stage] != nil:
			list.Add(where, fmt.Sprintf("the stage %q stands here twice", r.Stage), "each stage once", "keep the run that counts")
		}
		t.runs[r.Stage] = r
	}
	return list.Err()
}

func (t *trial) stages() []rules.Row {
	var list []rules.Row
	for _, row := range t.session.Book.Table("trial-stages").Rows.All() {
		if len(list) < mostStages {
			list = append(list, row)
		}
	}
	return list
}

func (t *trial) checks() []rules.Row {
	var list []rules.Row
	for _, row := range t.session.Book.Table("trial-checks").Rows.All() {
		list = append(list, row)
	}
	return list
}

// speed is the engine speed of a stage; NaN where the engine stands.
func (t *trial) speed(stage *rules.Row) float64 {
	idle, rated := float64(t.in.IdleSpeed), float64(t.in.EngineSpeed)
	switch stage.Values.Of("speed").Text {
	case "idle":
		return idle
	case "share":
		return proof.Speed(idle, rated, stage.Values.Of("share").SI)
	case "full":
		return rated
	}
	return math.NaN()
}

// shaftSpeed is the speed of the shaft at an engine speed.
func (t *trial) shaftSpeed(engine float64, lever string) float64 {
	ratio := float64(t.in.RatioAhead)
	if lever == "astern" {
		ratio = float64(t.in.RatioAstern)
	}
	if lever != "ahead" && lever != "astern" || ratio == 0 {
		return math.NaN()
	}
	return engine / ratio
}

// make lays out the stages with their readings, and words the whole.
func (t *trial) make() {
	stages, checks := t.stages(), t.checks()
	n, line := 0, 0
	for i := range stages {
		stage := &stages[i]
		if t.leaves(stage) {
			continue
		}
		text := func(column string) string { return stage.Values.Of(column).Text }
		engine := t.speed(stage)
		minutes := quantity.Time(stage.Values.Of("minutes").SI)
		t.out.Minutes += minutes
		var read []string
		for c := range checks {
			check := &checks[c]
			if !slices.Contains(strings.Fields(check.Values.Of("stages").Text), stage.ID) {
				continue
			}
			read = append(read, check.Name)
			if n < mostChecks {
				t.out.Checks[n] = t.hold(stage, check, engine)
				n++
			}
		}
		t.out.Protocol[line] = StageLine{Stage: stage.Name, Lever: text("lever"), EngineSpeed: rounded(engine),
			ShaftSpeed: quantity.RotationSpeed(t.shaftSpeed(float64(rounded(engine)), text("lever"))), Minutes: minutes, Do: text("do"), Read: strings.Join(read, "; "), Stop: text("stop")}
		line++
	}
	t.out.ReadingsWanted = n
	t.out.ReadingsTaken = n - t.count.NotRead
	t.words()
}

// rounded is a speed as a tachometer is held to: to 10 rpm.
func rounded(speed float64) quantity.RotationSpeed {
	const step = 10 * float64(quantity.RevolutionPerMinute)
	return quantity.RotationSpeed(math.Round(speed/step) * step)
}
