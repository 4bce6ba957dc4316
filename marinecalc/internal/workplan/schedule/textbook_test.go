package schedule

import "testing"

// Hillier and Lieberman, Introduction to Operations Research, chapter on
// project management with PERT and CPM: the Reliable Construction Co. project,
// in weeks; figures from memory, page not known. 44 weeks, critical path
// A-B-C-E-F-J-L-N, slack of D, G, H and M 4, of I 2, of K 1.
func TestTextbookNetworkOfAHouse(t *testing.T) {
	const a, b, c, d, e, f, g, h, i, j, k, l, m, n = 0, 1, 2, 3, 4, 5, 6, 7, 8, 9, 10, 11, 12, 13
	weeks := []int{2, 4, 10, 6, 4, 5, 7, 9, 7, 8, 4, 5, 2, 6}
	after := [][]int{nil, {a}, {b}, {c}, {c}, {e}, {d}, {e, g}, {c}, {f, i}, {j}, {j}, {h}, {k, l}}
	earliest := []Moment{0, 2, 6, 16, 16, 20, 22, 29, 16, 25, 33, 33, 38, 38}
	slack := []int{d: 4, g: 4, h: 4, i: 2, k: 1, m: 4, n: 0}
	tasks := make([]Task, len(weeks))
	for x := range tasks {
		tasks[x] = Task{Name: string(rune('A' + x)), Minutes: weeks[x], After: after[x]}
	}
	p := mustMake(t, tasks, always(len(tasks)))
	if p.Finish != 44 {
		t.Errorf("it takes %d weeks, published 44", p.Finish)
	}
	for x := range tasks {
		if p.Tasks[x].Start != earliest[x] || p.Slack(x) != slack[x] {
			t.Errorf("%s starts at %d with slack %d, published %d and %d", tasks[x].Name, p.Tasks[x].Start, p.Slack(x), earliest[x], slack[x])
		}
	}
	tasks[a].Stage, tasks[n].Stage = Opens, Trial // all work comes before a trial: M too, done after 40 weeks
	if p := mustMake(t, tasks, always(len(tasks))); p.Finish != 46 || p.Tasks[n].Start != 40 {
		t.Errorf("with a trial at the end it takes %d weeks, by hand 40 + 6", p.Finish)
	}
}
