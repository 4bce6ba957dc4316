package due

import "sort"

// Method is a way of looking for wear debris in a fluid: how much of it, as a
// share of the fluid's mass, it takes to show, and which part of the debris it
// sees at all.
type Method struct{ Threshold, Sees float64 }

// ShowsAfter is for how many hours after a change of the fluid a wear that adds
// so much debris an hour must go on until a method shows it.
func (m Method) ShowsAfter(perHour float64) float64 { return m.Threshold / (m.Sees * perHour) }

// FirstShown is at how many hours on the meter a method first would have told,
// or will: in the first run between two changes of the fluid that is long
// enough. The wear began at from; changes are hours on the meter. After the last
// change the fluid stays.
func (m Method) FirstShown(perHour, from float64, changes []float64) float64 {
	after := m.ShowsAfter(perHour)
	for _, c := range changes {
		if c <= from {
			continue
		}
		if from+after <= c {
			return from + after
		}
		from = c
	}
	return from + after
}

// Waiting shares the wait for a repair among its parts. Ordered on one day they
// are all there after the longest of their lead times; each part bears a like
// share of every stretch of the wait that it is still missing in. It is the
// Shapley value of a longest (Littlechild and Owen, Management Science 20 (1973)
// 370-372, from memory): what a spare saves on average over every order in
// which spares are bought.
func Waiting(lead []float64) []float64 {
	out, order := make([]float64, len(lead)), make([]int, len(lead))
	for i := range order {
		order[i] = i
	}
	sort.SliceStable(order, func(i, j int) bool { return lead[order[i]] < lead[order[j]] })
	was, each := 0.0, 0.0
	for n, i := range order {
		each += (lead[i] - was) / float64(len(lead)-n)
		out[i], was = each, lead[i]
	}
	return out
}
