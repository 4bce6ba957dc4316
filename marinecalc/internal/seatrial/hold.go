package seatrial

import (
	"math"
	"slices"
	"sort"
	"strings"

	"example.org/driveline/marinecalc/internal/boat"
	"example.org/driveline/marinecalc/internal/calc/inputs"
	"example.org/driveline/marinecalc/internal/contract"
	"example.org/driveline/marinecalc/internal/seatrial/proof"
	"example.org/driveline/marinecalc/problem"
	"example.org/driveline/marinecalc/quantity"
	"example.org/driveline/marinecalc/rules"
	"example.org/driveline/marinecalc/sheet"
)

// hold holds one reading of one stage against its limits and the baseline.
func (t *trial) hold(stage, check *rules.Row, engine float64) CheckLine {
	text := func(column string) string { return check.Values.Of(column).Text }
	line := CheckLine{Stage: stage.Name, Reading: check.Name}
	run := t.runs[stage.ID]
	if run == nil {
		run = unread()
	}
	name := text("reading")
	word := proof.NotRead
	if good := text("good"); good != "" {
		word = t.look(&line, run.word(name), name, good)
	} else {
		word = t.measure(&line, run, stage, check, engine)
	}
	line.Word = string(word)
	t.count.Add(word)
	said := problem.MidSentence(check.Name) + " (" + problem.MidSentence(stage.Name) + ")"
	switch word {
	case proof.Fail:
		t.failed = append(t.failed, said)
	case proof.LookAgain:
		t.again = append(t.again, said)
	}
	return line
}

var nanValue = math.NaN()

// look holds what was seen against what it should be.
func (t *trial) look(line *CheckLine, seen, name, good string) proof.Word {
	p := t.property(name)
	line.Limit = p.Words(good)
	if seen == "" {
		return proof.NotRead
	}
	line.Read = p.Words(seen)
	if seen == good {
		return proof.Pass
	}
	line.Reason = "It must be: " + p.Words(good) + "."
	return proof.Fail
}

func (t *trial) property(name string) *contract.Property {
	return t.session.Property("sea-trial/runs").Items.Child(name)
}

// measure holds a number against its limits, the surest first, and against the
// boat's own baseline. The gravest word counts.
func (t *trial) measure(line *CheckLine, run *Run, stage, check *rules.Row, engine float64) proof.Word {
	text := func(column string) string { return check.Values.Of(column).Text }
	name := text("reading")
	r, shown := run.reading(name), t.property(name).Shown
	of := 1.0
	if name == "engineSpeed" { // limits are on its share of the rated speed
		of = float64(t.in.EngineSpeed)
	}
	if above := text("above"); above != "" {
		r, shown = r.Above(run.reading(above)), t.session.Property("sea-trial/glandRise").Shown
	}
	word := proof.Noted
	var said, limits []string
	var bounds []proof.Bound
	add := func(b proof.Bound, what string) {
		w, doubt := b.Hold(r)
		word = proof.Worse(word, w)
		switch {
		case w == proof.Fail && b.Guide:
			said = append(said, "More than twice "+what+": that is past what a guide leaves open.")
		case w == proof.Fail:
			said = append(said, "Outside "+what+".")
		case doubt:
			said = append(said, "The gauge cannot tell whether it is "+what+": read again, or with a finer one.")
		case w == proof.LookAgain:
			said = append(said, "Outside "+what+", which is a guide: find out why.")
		}
	}
	refs := strings.Fields(text("limits"))
	if sign := text("notWith"); sign != "" && t.session.Boat.Answered(sign, "yes") {
		refs = nil
	}
	for _, ref := range refs {
		calculation, id, _ := strings.Cut(ref, "/")
		held, ok := t.session.LimitOf(calculation, id)
		if !ok {
			continue
		}
		b := proof.Bound{Most: held.SI * of, Fewest: nanValue, Guide: held.Guide}
		if held.Side == sheet.AtLeast {
			b.Most, b.Fewest = nanValue, held.SI*of
		}
		bounds = append(bounds, b)
		if w, _ := b.Hold(r); w == proof.Pass && text("ceiling") != "" {
			continue // to lie under it proves nothing
		}
		limits = append(limits, held.Text+" ("+held.Authority+")")
		add(b, held.Text+" ("+held.Authority+")")
	}
	line.Limit = strings.Join(limits, "; ")
	if b, words, own, ok := t.baseline(check, run, engine); ok && slices.ContainsFunc(bounds, func(b proof.Bound) bool { return b.Broken(own) }) {
		said = append(said, "Her own baseline, "+words+", is itself past a limit: it counts for nothing.")
	} else if ok {
		line.Baseline = words
		if _, doubt := b.Hold(r); doubt {
			said = append(said, "Not read finely enough to compare with her baseline.") // itself a reading: it neither passes nor holds up
		} else {
			add(b, "what her own baseline leads to, "+string(sheet.AtMost)+" "+shown.Print(b.Most, t.session.Units))
		}
	}
	if math.IsNaN(r.Value) {
		return proof.NotRead
	}
	low, high := r.Interval()
	line.Read = shown.PrintTo(r.Value, (high-low)/2, t.session.Units)
	if high > low {
		line.Read += " (" + shown.PrintSpan(low, high, t.session.Units) + ")"
	}
	if text("above") != "" && high < 0 {
		word, said = proof.Worse(word, proof.LookAgain), append(said, "Colder than the sea cannot be: read both again.")
	}
	if name == "glandTemperature" && stage.ID == settles && word != proof.Fail && !proof.Steady(float64(run.GlandTemperature), float64(run.GlandBefore), float64(t.in.SteadyWithin)) {
		word = proof.LookAgain
		if math.IsNaN(float64(run.GlandBefore)) {
			said = append(said, "Nobody read it five minutes before: whether it has settled is not known.")
		} else {
			said = append(said, "It has not settled: run on until two readings five minutes apart agree.")
		}
	}
	place := stage.ID + " " + name
	t.doubted[place] = t.doubted[place] || word == proof.Fail || word == proof.LookAgain
	switch {
	case word == proof.Noted && t.doubted[place]:
		said = append(said, "No baseline: it did not pass its limit.")
	case word == proof.Noted && len(said) == 0:
		said = append(said, "Nothing to hold it against: keep it as the baseline.")
	}
	line.Reason = strings.Join(said, " ")
	return word
}

// settles is the stage at whose end the gland must have settled.
const settles = "cruise"

// alikeSpeed is how far apart two engine speeds are that readings are compared
// at, relative.
const alikeSpeed = 0.1

// baseline is what the boat's own readings of a healthy time lead to: those
// marked so, or else the first after the part was last renewed or adjusted, at
// about the same engine speed and before the day of the trial. base is what was
// read then.
func (t *trial) baseline(check *rules.Row, run *Run, engine float64) (b proof.Bound, words string, base float64, ok bool) {
	name, from := check.Values.Of("baseline").Text, check.Values.Of("baselineFrom").Text
	if name == "" || t.session.Boat == nil {
		return b, "", nanValue, false
	}
	if at := float64(run.EngineSpeed); at > 0 {
		engine = at
	}
	form, err := boat.Contract()
	if err != nil {
		return b, "", nanValue, false // a test opens the boat's schema
	}
	reading := form.Root.Child("readings").Items
	value := func(e *boat.Entry, name string) float64 {
		raw, has := e.Value(name)
		if !has {
			return nanValue
		}
		si, _, err := inputs.Numeric(reading.Child(name), raw)
		if err != nil {
			return nanValue
		}
		return si
	}
	e := t.healthy(name, func(e *boat.Entry) bool {
		if from != "" && math.IsNaN(value(e, from)) || math.IsNaN(value(e, name)) {
			return false
		}
		at := value(e, "engineSpeed")
		return math.IsNaN(engine) || math.Abs(at-engine) <= alikeSpeed*engine
	})
	if e == nil {
		return b, "", nanValue, false
	}
	shown := reading.Child(name).Shown
	base = value(e, name)
	if from != "" {
		base -= value(e, from)
		shown = t.session.Property("sea-trial/glandRise").Shown
	}
	most := base
	if times := check.Values.Of("times").SI; times > 0 {
		most *= times
	}
	most += check.Values.Of("moreBy").SI
	return proof.Bound{Most: most, Fewest: nanValue, Guide: true, Own: true}, shown.Print(base, t.session.Units) + " on " + e.Date, base, true
}

// healthy is the entry that a baseline is taken from, or nil.
func (t *trial) healthy(name string, fits func(*boat.Entry) bool) *boat.Entry {
	var list []*boat.Entry
	for e := range t.session.Boat.Readings() {
		if t.in.Date == "" || e.Date < t.in.Date {
			list = append(list, e)
		}
	}
	sort.SliceStable(list, func(i, j int) bool { return list[i].Date < list[j].Date })
	for _, e := range slices.Backward(list) {
		if well, _ := e.Value("baseline"); well == true && fits(e) {
			return e
		}
	}
	since := ""
	for _, e := range list {
		if e.Changed() {
			since = e.Date
		}
	}
	for ev := range t.session.Boat.Events() {
		if ev.Begins(name) && (t.in.Date == "" || ev.Date < t.in.Date) {
			since = max(since, ev.Date)
		}
	}
	for _, e := range list {
		if since != "" && e.Date >= since && fits(e) {
			return e
		}
	}
	return nil
}

// unread is a stage at which nothing was read.
func unread() *Run {
	return &Run{EngineSpeed: quantity.RotationSpeed(nanValue), BoatSpeed: quantity.Velocity(nanValue), GlandTemperature: quantity.Temperature(nanValue),
		GlandBefore: quantity.Temperature(nanValue), GearboxTemperature: quantity.Temperature(nanValue), WaterTemperature: quantity.Temperature(nanValue),
		AirTemperature: quantity.Temperature(nanValue), VibrationVelocity: quantity.Velocity(nanValue), DripRate: quantity.DripRate(nanValue)}
}
