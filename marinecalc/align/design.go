// What all trials of a coupling have in common: where was read.

package align

// design is what the places of the readings give a fit, whatever was read
// there. Trials move what was read and leave the places, so that it is worked
// out once: a trial of four readings in each of four turns takes 2.1 in place of
// 3.2 µs, of four readings 0.9 in place of 1.2.
type design struct {
	places   []place
	turns    int
	readings []float64 // in each turn of the shaft
	mean     row       // of the first turn
	sums     products  // but for the values
}

// place is one reading's: its row less the mean of its turn, the value left out.
type place struct {
	clock, turn float64
	group       int
	row         row
}

// of tells whether the design is that of these places.
func (d *design) of(p points) bool {
	if len(p) != len(d.places) {
		return false
	}
	for i := range p {
		if p[i].clock != d.places[i].clock || p[i].turn != d.places[i].turn {
			return false
		}
	}
	return true
}

// take makes the design that of these places.
func (d *design) take(p, known points) {
	var mean [mostPlaces]row
	d.turns = p.fillRows(known, &mean)
	d.mean, d.sums = mean[0], p.centred(&mean, d.turns > 1)
	d.readings = make([]float64, d.turns)
	d.places = make([]place, 0, len(p))
	for i := range p {
		r := &p[i]
		d.places = append(d.places, place{r.clock, r.turn, r.group, r.row})
		d.readings[r.group]++
	}
}

// fit is points.fit by the design: the same steps in the same order, less those
// that only the places go into.
func (d *design) fit(f *plane, p points) (ok bool) {
	s := d.sums
	s.upValue, s.rightValue, s.turningUpValue, s.turningRightValue = 0, 0, 0, 0
	var room [4]float64
	mean := room[:]
	if d.turns > len(room) {
		mean = make([]float64, d.turns)
	}
	for i := range p {
		mean[d.places[i].group] += p[i].value
	}
	for g := range d.turns {
		mean[g] /= d.readings[g]
	}
	for i := range p {
		at := &d.places[i]
		r, value := &at.row, p[i].value-mean[at.group]
		s.upValue += r.up * value
		s.rightValue += r.right * value
		if d.turns > 1 {
			s.turningUpValue += r.turningUp * value
			s.turningRightValue += r.turningRight * value
		}
	}
	f.turns = d.turns
	if !f.solve(&s, len(p)) {
		return false
	}
	first := d.mean
	first.value = mean[0]
	f.mean = tidy(first.value - f.of(&first))
	return true
}
