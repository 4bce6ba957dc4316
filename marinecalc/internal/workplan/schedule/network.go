// What comes before what, and what belongs to the time in which she lies open.

package schedule

import "slices"

// Stage is where in the job a task stands.
type Stage uint8

// The stages. What has no other stage is Working: it belongs to the open
// interval where it comes after a task that opens, and is free where it does not.
const (
	Working    Stage = iota
	AsFound          // read before anything is opened
	Opens            // from it on she has no drive, or her line lies open
	Trial            // proves the work, and ends the open interval
	Afterwards       // due some time after the trial; it is not planned here
)

// network is the tasks with all that comes before each, what the stages add
// among it.
type network struct {
	tasks []Task
	after [][]int
	open  []bool // belongs to the open interval
	order []int  // each after those it rests on
}

// newNetwork adds to what the tasks say: she is opened when all is done that
// the work waits for, a designer's answer or a reading as found, and tried when
// all work is done. A reading afloat of a boat that is mended ashore is taken
// before the run to the lift, and waits for no task that opens.
func newNetwork(tasks []Task) *network {
	n := &network{tasks: tasks, after: make([][]int, len(tasks))}
	for i := range tasks {
		n.after[i] = slices.Clone(tasks[i].After)
	}
	ashore := slices.ContainsFunc(tasks, func(t Task) bool { return t.Place == Ashore && t.Stage != AsFound && t.Stage != Afterwards })
	for i := range tasks {
		if t := &tasks[i]; t.Stage == AsFound && t.Place == Afloat && ashore {
			n.after[i] = slices.DeleteFunc(n.after[i], func(b int) bool { return tasks[b].Stage == Opens })
		}
	}
	n.open = make([]bool, len(tasks))
	tried := make([]bool, len(tasks)) // follows a trial
	for _, i := range sorted(n.after) {
		n.open[i] = tasks[i].Stage == Opens || tasks[i].LaysUp
		for _, b := range n.after[i] {
			n.open[i] = n.open[i] || n.open[b]
			tried[i] = tried[i] || tasks[i].Stage != Trial && (tried[b] || tasks[b].Stage == Trial)
		}
		n.open[i] = n.open[i] && !tried[i] && tasks[i].Stage != Afterwards
	}
	n.readyFirst()
	for i := range tasks { // all work of the interval before its trial
		if tasks[i].Stage != Trial || !n.open[i] {
			continue
		}
		for b := range tasks {
			if n.open[b] && tasks[b].Stage != Trial && !slices.Contains(n.after[i], b) {
				n.after[i] = append(n.after[i], b)
			}
		}
	}
	n.order = sorted(n.after)
	return n
}

// readyFirst puts readings as found, and what the open interval waits for,
// before every task with which the interval can begin.
func (n *network) readyFirst() {
	waited := make([]bool, len(n.tasks))
	for i := range n.tasks {
		waited[i] = n.tasks[i].Stage == AsFound
		if !n.open[i] {
			continue
		}
		for _, b := range n.after[i] {
			waited[b] = waited[b] || !n.open[b]
		}
	}
	begins := make([]bool, len(n.tasks))
	for i := range n.tasks {
		begins[i] = n.tasks[i].Stage == Opens || n.open[i] && !slices.ContainsFunc(n.after[i], func(b int) bool { return n.open[b] })
	}
	for b, is := range waited {
		if !is {
			continue
		}
		for i := range n.tasks {
			if begins[i] && i != b && !n.follows(b, i) && !slices.Contains(n.after[i], b) {
				n.after[i] = append(n.after[i], b)
			}
		}
	}
}

// follows tells whether a task rests on another, directly or not.
func (n *network) follows(i, on int) bool {
	return slices.ContainsFunc(n.after[i], func(b int) bool { return b == on || n.follows(b, on) })
}

// opens tells whether any task lays her open.
func (n *network) opens() bool { return slices.Contains(n.open, true) }

// sorted orders the tasks so that each comes after those it rests on; those
// in a circle are left out.
func sorted(after [][]int) []int {
	before := make([]int, len(after))
	then := make([][]int, len(after))
	for i := range after {
		for _, b := range after[i] {
			before[i]++
			then[b] = append(then[b], i)
		}
	}
	var order []int
	for i, n := range before {
		if n == 0 {
			order = append(order, i)
		}
	}
	for k := 0; k < len(order); k++ {
		for _, next := range then[order[k]] {
			if before[next]--; before[next] == 0 {
				order = append(order, next)
			}
		}
	}
	return order
}

// cycle names the tasks of one circle in their order, or gives nil.
func cycle(tasks []Task) []string {
	after := make([][]int, len(tasks))
	for i := range tasks {
		after[i] = tasks[i].After
	}
	inOrder := make([]bool, len(tasks))
	for _, i := range sorted(after) {
		inOrder[i] = true
	}
	at := slices.Index(inOrder, false)
	if at < 0 {
		return nil
	}
	// Every task left has one left before it: going back must come round.
	var path []int
	for !slices.Contains(path, at) {
		path = append(path, at)
		for _, b := range tasks[at].After {
			if !inOrder[b] {
				at = b
				break
			}
		}
	}
	path = path[slices.Index(path, at):]
	slices.Reverse(path)
	names := make([]string, 0, len(path)+1)
	for _, i := range path {
		names = append(names, "“"+tasks[i].Name+"”")
	}
	return append(names, names[0])
}
