// Readings that nobody follows and whose newest has jumped.

package survey

import (
	"math"
	"sort"

	"example.org/driveline/marinecalc/internal/boat"
	"example.org/driveline/marinecalc/internal/calc"
	"example.org/driveline/marinecalc/problem"
	"example.org/driveline/marinecalc/rules"
	"example.org/driveline/marinecalc/sheet"
)

const (
	// fewestForALeap are the readings of a run from which the trend tells that the newest is off.
	fewestForALeap = 4
	// farLeap is how far off it is, of what the scatter of the others allows with 95 %: of ten
	// readings looked at, one would be past that by chance every other time; past twice of it
	// hardly ever (Student's t of two degrees of freedom: 1.3 %, of six: 0.3 %).
	farLeap = 2
	// someLeap is from where on it is to be read again. Of steady readings at most one in 150
	// lies between this and farLeap on the bad side (0.2 to 0.7 % of 20,000 simulated series
	// of 4 to 20 readings), past 1 one in 40, which were every fifth survey of ten readings.
	someLeap = 1.5
)

// leaps are the readings of the boat, but for that which the trend follows, whose
// newest lies far on the bad side of what the earlier ones lead to: a gearbox that ran at 55 °C
// all summer and at 90 °C today is not “nothing found”, though no limit is given for it.
// One that lies off by less is told to be read again, and is not found. One that is worse
// than when all was well by more than the scatter of then is found too, without a jump.
func (s *Survey) leaps(session *calc.Session) (list []Found) {
	c, err := session.Find("reading-trend")
	if err != nil || session.Boat == nil {
		return nil
	}
	followed, _, _, _ := session.Boat.Find("/follow/reading")
	for _, row := range session.Book.Table("trend-readings").Rows.All() {
		if row.Pick == followed || !mayLeap(session.Boat.Series(row.Pick), &row) {
			continue
		}
		out, _, problems := session.Run(c, map[string]any{"reading": row.Pick})
		if out == nil || len(problems) > 0 {
			continue
		}
		v, off, says := out.Sheet.Verdict("trend-newest"), out.Sheet.Result("newestDeviation"), out.Sheet.Result("says")
		tell := func(v *sheet.Verdict, text string) {
			list = append(list, Found{Kind: FoundMeasured, Title: row.Name + ": " + problem.MidSentence(v.Title), Text: text, Calculation: c.ID, Sheet: out.Sheet.Title + ": " + problem.MidSentence(row.Name), Limit: v.Limit, Row: row.Pick})
		}
		leapt := v != nil && off != nil && says != nil && v.Word.Plain() == sheet.Beyond && off.SI != nil
		if worse := out.Sheet.Verdict("trend-baseline"); worse != nil && worse.Word.Plain() == sheet.Beyond && !(leapt && *off.SI >= farLeap) {
			tell(worse, worse.Sentence) // it crept there, by no jump
			continue
		}
		if !leapt || *off.SI < someLeap {
			continue
		}
		if *off.SI < farLeap {
			points, way := session.Boat.Series(row.Pick), "higher"
			if row.Values.Of("limitSide").Text == "least" {
				way = "lower"
			}
			newest := &points[latest(points)]
			v.Word, v.Reads, v.Sentence = sheet.CannotTell, "read again", row.Name+": "+newest.Text+" on "+newest.Date+", "+way+" than the earlier ones: read it again, alike."
			s.Findings = append(s.Findings, Finding{c.ID, row.Name, *v, row.Pick})
			continue
		}
		tell(v, says.Text+" Was it read alike: warm, at the same speed, the sea as warm?")
	}
	return list
}

// latest is the place of the newest.
func latest(points []boat.Point) (last int) {
	for i := range points {
		if points[i].When() >= points[last].When() {
			last = i
		}
	}
	return last
}

// mayLeap tells whether a trend of the readings is worth the work: the newest is worse
// than the middle half of the earlier ones by some of its span. One that jumped before
// and stands is so too. Readings at another speed of the engine are none like it, and of
// what the sea warms, where nobody read the sea beside it, a season's swing is no jump.
func mayLeap(points []boat.Point, row *rules.Row) bool {
	const some = 0.5
	last := latest(points)
	var earlier []float64
	swing := row.Values.Of("swing").SI
	for i := range points {
		if i == last || !alike(points[i].Entry, points[last].Entry) {
			continue
		}
		earlier = append(earlier, points[i].SI)
		if by := row.Values.Of("surroundedBy").Text; has(points[i].Entry, by) && has(points[last].Entry, by) {
			swing = 0 // the trend takes it off
		}
	}
	if len(earlier) < fewestForALeap-1 {
		return false
	}
	sort.Float64s(earlier)
	newest, low, high := points[last].SI, earlier[len(earlier)/4], earlier[(3*len(earlier)-1)/4]
	if row.Values.Of("limitSide").Text == "least" {
		return newest < low-max(some*(high-low), swing)
	}
	return newest > high+max(some*(high-low), swing)
}

// alike tells whether two entries were read at about the same speed of the engine, as
// far as it was noted.
func alike(a, b *boat.Entry) bool {
	const apart = 0.1 // common practice, no source
	x, isX := a.Number("engineSpeed", "rotation-speed")
	y, isY := b.Number("engineSpeed", "rotation-speed")
	return !isX || !isY || math.Abs(x-y) <= apart*max(x, y)
}

// has tells whether an entry has a reading.
func has(e *boat.Entry, name string) bool { _, is := e.Value(name); return is }
