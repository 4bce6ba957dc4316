// What the fluid carries: metal, dirt, water. Top-ups thin it and leaks take it
// away; from one change to the next what came into the fluid is followed, not
// what is left in it.

package trend

import (
	"fmt"
	"math"
	"sort"

	"example.org/driveline/marinecalc/internal/boat"
	"example.org/driveline/marinecalc/internal/day"
	"example.org/driveline/marinecalc/internal/trend/series"
	"example.org/driveline/marinecalc/quantity"
)

// carriage is everything that was done to the fluid, with the samples.
type carriage struct {
	entries  []flow
	fillings []charge
	worth    float64 // what was added back to the newest sample, as a share of it
}

// flow is one dated entry of the log.
type flow struct {
	at         float64 // day and time
	hours      float64 // on the hour meter; NaN: not written down
	fluidHours float64 // since the change; NaN: not written down
	added      float64 // poured in after the sample, m³
	changed    bool    // after the sample
	sample     int     // place among the points; −1: no sample was taken
}

// charge is one filling of the fluid.
type charge struct {
	since           float64 // day of the change; of the first sample where that is not known
	changed         bool    // the change itself is known
	hours           float64 // that it has served at its last sample; NaN: not known
	samples         int
	perHour         float64 // rise of what came in, 1/h; NaN: not known
	start, last     float64 // of what came in: at the change, at the last sample
	firstAt, hours0 float64 // what came in by the first sample, and the hour meter then
}

func (c *carriage) take(e *boat.Entry, sample int) {
	f := flow{at: float64(dayOf(e.Date)) + timeOf(e.Time), hours: math.NaN(), fluidHours: math.NaN(), changed: e.FluidChanged(), sample: sample}
	if seconds, ok := e.EngineHours(); ok {
		f.hours = seconds / 3600
	}
	if seconds, ok := e.Number("fluidHours", "time"); ok {
		f.fluidHours = seconds / 3600
	}
	f.added, _ = e.Number("fluidAdded", "volume")
	if sample >= 0 || f.changed || f.added > 0 {
		c.entries = append(c.entries, f)
	}
}

// renumber follows the points where some were left out.
func (c *carriage) renumber(moved map[int]int) {
	for i := range c.entries {
		e := &c.entries[i]
		if to, kept := moved[e.sample]; kept {
			e.sample = to
		} else {
			e.sample = -1
		}
	}
}

// meterAsItStands forgets the hours of entries by date that an hour meter showed
// before it was renewed or misread: none are counted across.
func meterAsItStands(entries []flow) {
	var metered []int
	for i := range entries {
		if math.IsNaN(entries[i].hours) {
			continue
		}
		if n := len(metered); n > 0 && series.MeterOff(entries[metered[n-1]].at, entries[metered[n-1]].hours, entries[i].at, entries[i].hours) != "" {
			for _, before := range metered {
				entries[before].hours = math.NaN()
			}
			metered = nil
		}
		metered = append(metered, i)
	}
}

// addBack turns the samples of each filling into what came into the fluid. With
// the sump always filled to the same mark, V, the metal that came in between
// two samples is what is there less what was there, and what left with the
// fluid that was topped up since:
//
//	W = c₂·(V − a) − c₁·V + L·(c₁ + c₂)/2
//
// where c₁ stands after what was poured in at the first sample, a is missing
// at the second one and L is all that went missing between them, at the mean
// concentration. Over V that is the rise as it would be without any loss.
func (t *follower) addBack(in *Input) {
	v := float64(in.FluidVolume)
	entries := t.carried.entries
	sort.SliceStable(entries, func(i, j int) bool { return entries[i].at < entries[j].at })
	meterAsItStands(entries)
	ownHours, topped := true, false
	for _, e := range entries {
		topped = topped || e.added > 0
		ownHours = ownHours && (e.sample < 0 || math.IsNaN(e.hours))
	}
	known := v > 0
	if topped && !known {
		t.notes = append(t.notes, "top-ups are not added back, as the volume of the fluid is not known")
	}
	var now charge
	now.hours, now.perHour, now.hours0 = math.NaN(), math.NaN(), math.NaN()
	started := false
	before, lost, came, change := 0.0, 0.0, 0.0, math.NaN() // concentration after the last event, loss since, what came in, hour meter at the change
	last := 0.0
	fresh := false
	for _, e := range entries {
		if e.sample >= 0 {
			p := &t.series.Points[e.sample]
			c := p.Value
			if ownHours {
				p.Hours = e.fluidHours
			}
			ran := e.hours
			if ownHours {
				ran = e.fluidHours
			}
			if !started {
				started, now.since = true, e.at
				before, came, now.start = c, c, c
				lost = 0
			} else if known && (now.samples > 0 || now.changed) {
				missing := lost + e.added
				came += (c*(v-e.added) - before*v + missing*(before+c)/2) / v
			} else {
				came = c
			}
			if fresh {
				p.Changed, fresh = true, false
			}
			if now.samples == 0 {
				now.firstAt, now.hours0 = came, ran
			}
			now.samples++
			now.last = came
			now.count(&e, ran, came, change)
			if c > 0 && p.Value != came {
				t.carried.worth = came/c - 1
			} else {
				t.carried.worth = 0
			}
			p.Over, p.Value = came-c, came
			before, lost, last = c, 0, c
			if known {
				before = c * (v - e.added) / v
			}
		} else if e.added > 0 {
			lost += e.added
		}
		if e.changed {
			if now.samples > 0 {
				t.carried.fillings = append(t.carried.fillings, now)
			}
			if ownHours { // the hours of an earlier filling are on no common axis with those of this one
				for _, earlier := range entries {
					if earlier.sample >= 0 && earlier.at <= e.at {
						t.series.Points[earlier.sample].Hours = math.NaN()
					}
				}
			}
			left := 0.0
			if l := float64(in.LeftVolume); known && l > 0 && l < v {
				left = last * l / v
			}
			now = charge{since: e.at, changed: true, hours: math.NaN(), perHour: math.NaN(), hours0: math.NaN(), start: left, last: left}
			started, fresh, before, lost, came, change = true, true, left, 0, left, e.hours
		}
	}
	if now.samples > 0 {
		t.carried.fillings = append(t.carried.fillings, now)
	}
}

// count counts a sample: the hours of the filling, and the pace. Between two
// samples the pace does not hang on how much of the old fluid was left; of one
// alone it is that since the change.
func (c *charge) count(e *flow, hours, came, change float64) {
	start := c.start
	switch {
	case !math.IsNaN(e.fluidHours):
		c.hours = e.fluidHours
	case c.changed && e.hours > change:
		c.hours = e.hours - change
	}
	if !c.changed {
		start = 0 // what was in it at the change is not known
	}
	switch {
	case c.samples > 1 && hours > c.hours0:
		c.perHour = (came - c.firstAt) / (hours - c.hours0)
	case c.hours > 0:
		c.perHour = (came - start) / c.hours
	}
}

// perFilling writes the fillings, the newest first, and the pace of the one
// that is in.
func (t *follower) perFilling() {
	list := t.carried.fillings
	t.out.RateGrowth = quantity.Ratio(math.NaN())
	if len(list) == 0 {
		return
	}
	per := func(c *charge) string {
		if math.IsNaN(c.perHour) {
			return ""
		}
		return t.property.Shown.PrintTo(c.perHour, 0.02*math.Abs(c.perHour), t.session.Units) + " an hour"
	}
	now := &list[len(list)-1]
	t.out.PerHour = per(now)
	if t.carried.worth > 0.005 {
		t.out.AddedBack = fmt.Sprintf("%.0f %% of the newest sample", 100*t.carried.worth)
	}
	var sum, hours float64 // of the fillings before, by their hours
	for i := len(list) - 2; i >= 0; i-- {
		if c := &list[i]; c.perHour > 0 && c.hours > 0 {
			sum, hours = sum+c.perHour*c.hours, hours+c.hours
		}
	}
	if hours > 0 && !math.IsNaN(now.perHour) {
		t.out.RateGrowth = quantity.Ratio(digits(now.perHour/(sum/hours), 2))
	}
	for i := range min(len(list), len(t.out.Fillings)) {
		c := &list[len(list)-1-i]
		f := filling{Since: day.Text(int(c.since)), Samples: fmt.Sprint(c.samples), PerHour: per(c)}
		if !c.changed {
			f.Since = "before " + f.Since
		}
		if !math.IsNaN(c.hours) {
			f.Hours = fmt.Sprintf("%.0f h", c.hours)
		}
		t.out.Fillings[i] = f
	}
}
