package boat

import "sort"

// Points are all readings of every quantity by its name, each in the order of
// time: one pass over the log, where [Boat.Series] makes one for each name.
func (b *Boat) Points() map[string][]Point {
	all := map[string][]Point{}
	if b == nil {
		return all
	}
	own := b.OwnReadings()
	for _, e := range b.entries {
		first := map[string]int{} // of each name in this entry, one more than how often
		for _, p := range e.read(own) {
			list := all[p.of.Name]
			if n := first[p.of.Name]; n > 0 { // the mean of several, as Series has it
				last := &list[len(list)-1]
				last.SI += (p.SI - last.SI) / float64(n+1)
			} else {
				list = append(list, p)
			}
			first[p.of.Name]++
			all[p.of.Name] = list
		}
	}
	for _, list := range all {
		sort.SliceStable(list, func(i, j int) bool { return list[i].When() < list[j].When() })
	}
	return all
}

// NewestOf is the newest day on which one of these was read or written down:
// members of a dated entry by their names. "" where there is none.
func (b *Boat) NewestOf(names []string) (day string) {
	if b == nil {
		return ""
	}
	for _, e := range b.entries {
		for _, name := range names {
			if _, has := e.values[name]; has && e.Date > day {
				day = e.Date
			}
		}
	}
	return day
}
