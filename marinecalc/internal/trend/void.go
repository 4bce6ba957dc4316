// Readings that tell nothing: they contradict another figure of their own sheet,
// or cannot be.

package trend

import (
	"fmt"
	"maps"
	"math"
	"slices"

	"example.org/driveline/marinecalc/internal/day"
	"example.org/driveline/marinecalc/internal/trend/series"
	"example.org/driveline/marinecalc/problem"
)

// voided is the doubt of a series whose newest reading tells nothing.
const voided = "void"

// mostAsOf is how many earlier days are looked at for readings that contradict
// each other: the newest.
const mostAsOf = 24

// dropVoid leaves out of the series what tells nothing, and says so.
func (t *follower) dropVoid(reading string, bad *problem.List) {
	why := map[int]string{}
	t.colderThanTheSea(why)
	if t.read == nil || t.read[0].where != "" {
		t.contradicted(reading, why)
	}
	if len(why) == 0 {
		return
	}
	newest := 0
	for i := range t.series.Points {
		if a, b := &t.series.Points[newest], &t.series.Points[i]; !earlier(b, a) {
			newest = i
		}
	}
	var points []series.Point
	var read []gathered
	moved := map[int]int{}
	for i, p := range t.series.Points {
		says := fmt.Sprintf("%s of %s, which tells nothing", t.show(p.Value), day.Text(p.Day))
		switch {
		case why[i] == "":
			moved[i] = len(points)
			points, read = append(points, p), append(read, t.read[i])
			continue
		case i == newest:
			t.newestVoid = "The newest reading, " + says + ": " + why[i] + " Nothing is told by the others of how it stands today: read again."
		}
		t.notes = append(t.notes, "left out: "+says)
	}
	if len(points) == 0 {
		bad.Add("/readings", "no reading is left to follow: "+why[newest], "readings that do not contradict another figure", "read again")
		return
	}
	t.series.Points, t.read = points, read
	t.carried.renumber(moved)
}

// colderThanTheSea finds temperatures of what runs in the boat that lie further
// below the sea's than two thermometers may differ, with no air that could cool
// it so: heat does not flow from cold to warm.
func (t *follower) colderThanTheSea(why map[int]string) {
	if t.sea == nil || t.sea.Name != "waterTemperature" {
		return
	}
	for i := range t.read {
		r, p := &t.read[i], &t.series.Points[i]
		if p.Value < r.beside-math.Sqrt2*t.series.Accuracy && !(r.air < r.beside) {
			why[i] = "colder than the sea, " + t.sea.Shown.Print(r.beside, t.session.Units) + ", which nothing makes it; one of the two was read wrong."
		}
	}
}

// contradicted finds readings that their own sheet contradicts: the newest, and
// those of earlier days on which the same was read by other gauges too.
func (t *follower) contradicted(reading string, why map[int]string) {
	b := t.session.Boat
	newest, on := -1, ""
	days := map[string]int{} // earlier days with another gauge's reading, and the point
	for i, r := range b.Series(reading) {
		if when := r.Date + r.Time; newest < 0 || when >= on {
			newest, on = i, when
		}
		if b.ReadTwice(reading, r.Entry) {
			days[r.Date] = i
		}
	}
	if newest < 0 {
		return
	}
	if says := t.session.Void(reading); says != "" {
		why[newest] = says
	}
	delete(days, on[:len("2006-01-02")])
	dates := slices.Sorted(maps.Keys(days))
	for _, date := range dates[max(0, len(dates)-mostAsOf):] {
		if then, err := t.session.AsOf(date); err == nil {
			if says := then.Void(reading); says != "" {
				why[days[date]] = says
			}
		}
	}
}
