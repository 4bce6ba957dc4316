// Package conflict finds in one run what was given twice and does not agree: two ways
// to one quantity, a figure typed over another that the boat file has, two figures of
// one thing, two that cannot stand in that order, one thing read by two gauges.
package conflict

import (
	"fmt"
	"math"
	"reflect"
	"slices"
	"sort"
	"strings"

	"example.org/driveline/marinecalc/internal/boat"
	"example.org/driveline/marinecalc/internal/calc/inputs"
	"example.org/driveline/marinecalc/internal/calc/results"
	"example.org/driveline/marinecalc/internal/contract"
	"example.org/driveline/marinecalc/internal/spread"
	"example.org/driveline/marinecalc/problem"
	"example.org/driveline/marinecalc/sheet"
)

// Finder looks in one run for what does not agree.
type Finder struct {
	*results.Run
	Twice     []Twice // on which no verdict rests
	Conflicts []sheet.Conflict
}

// Twice is one quantity by two ways that disagree by more than their
// accuracies explain.
type Twice struct {
	Doubt, Remedy string
	Moved         []*contract.Property // what is another by the other way
	Before        []*contract.Property // what is left out for the other way; none where it cannot be taken by itself
}

// CompareWays works every result that can be had by several ways out by each
// of those that were given. The first one goes before the others; where
// another disagrees with it by more than their accuracies explain, no verdict
// rests on either: the normalised error, the difference over its expanded
// uncertainty of k = 2, is then above 1 (ISO 13528:2015, 9.7, from memory).
func (r *Finder) CompareWays() {
	for _, p := range r.In.Form.Result.Properties {
		m := r.Buf.ByProperty[p.Index]
		if len(p.Ways) < 2 || m == nil || m.Number == nil {
			continue
		}
		var given []*contract.Property
		told := len(r.Conflicts)
		for _, name := range p.Ways {
			if q := r.In.Form.Input.Child(name); q != nil && r.givenByHand(q) && r.Field(q) != nil {
				given = append(given, q)
			}
		}
		var lead []*contract.Property // those that find it
		for i := 1; i < len(given); i++ {
			if r.compareWay(m, given[:i], given[i]) {
				lead = append(lead, given[i])
			}
		}
		if p.Level == sheet.Main && !math.IsNaN(m.Si) && len(given) > 0 {
			if r.finds(m, given[0]) {
				lead = append([]*contract.Property{given[0]}, lead...)
			}
			r.Notes = append(r.Notes, byWhich(p, lead, len(r.Conflicts)-told)...)
		}
	}
}

// finds tells whether a result rests on an input, and is another or none without it.
func (r *Finder) finds(m *results.Measure, by *contract.Property) bool {
	value, ok := r.Without([]*contract.Property{by}, func() float64 { return *m.Number })
	r.Again()
	return !ok || value != m.Si
}

// byWhich says which of the ways to a result that it has stands on the sheet,
// and what the others say of it: a figure that one reading gave stands alone.
func byWhich(p *contract.Property, given []*contract.Property, disagree int) []string {
	if len(given) == 0 {
		return nil
	}
	called := func(p *contract.Property) string { return "“" + p.Title + "”" }
	text, others := p.Title+": by "+called(given[0]), make([]string, 0, len(given)-1)
	for _, q := range given[1:] {
		others = append(others, called(q))
	}
	switch {
	case len(others) == 0:
		text += " alone. No second way was read that could contradict it."
	case disagree > 0:
		text += ", which goes before " + strings.Join(others, ", ") + ". They do not agree: none of them decides until it is known which is wrong."
	case len(others) == 1:
		text += ", which goes before " + others[0] + ". That agrees with it."
	default:
		text += ", which goes before " + strings.Join(others, ", ") + ". These agree with it."
	}
	return []string{text}
}

// givenByHand tells whether a person gave an input, and no table or usual value.
func (r *Finder) givenByHand(p *contract.Property) bool {
	k := &r.In.Values[p.Index]
	return k.Known && (k.Origin == sheet.Typed || k.Origin == sheet.FromBoat || k.Origin == sheet.MakersFigure)
}

// compareWay holds a result, as it is found by the first of the ways before,
// against itself by another, and tells whether that finds it at all.
func (r *Finder) compareWay(m *results.Measure, before []*contract.Property, other *contract.Property) bool {
	first := m.Si
	var moved []*contract.Property
	second, ok := r.Without(before, func() float64 {
		moved = r.moved(moved)
		return *m.Number
	})
	if !ok || math.IsNaN(second) {
		r.Again()
		return false
	}
	variance := 0.0
	for i := range r.In.Variates {
		v := &r.In.Variates[i]
		*v.To = v.Factor.Estimate + v.Factor.StdDev()
		if r.In.Call.Run() == nil {
			one := *m.Number
			if two, ok := r.Without(before, func() float64 { return *m.Number }); ok {
				change := two - one - (second - first)
				variance += change * change
			}
		}
		*v.To = v.Factor.Estimate
	}
	r.Again()
	reach := 2 * math.Sqrt(variance)
	if variance == 0 { // no accuracy is known of either
		reach = math.Abs(first) * loosely
	}
	if math.Abs(second-first) <= reach+1e-9*math.Abs(first) {
		return true
	}
	values := []sheet.ConflictValue{r.valueBy(m.Property, first, before[0]), r.valueBy(m.Property, second, other)}
	newestFirst(values)
	t := Twice{Moved: append(moved, append(slices.Clone(before), other)...), Before: before, Remedy: "Measure again, and leave out the one that was wrong."}
	t.Doubt = "two ways to “" + m.Property.Title + "” disagree: " + says(&values[0]) + ", " + says(&values[1]) + ", further apart than their accuracies explain"
	r.contradict(sheet.TwoWays, m.Property, t, values)
	return true
}

// moved adds the results that came out otherwise than on the estimates.
func (r *Finder) moved(list []*contract.Property) []*contract.Property {
	for i := range r.Measures {
		if o := &r.Measures[i]; o.Number != nil && !(math.Abs(*o.Number-o.Si) <= 1e-9*math.Abs(o.Si)) {
			list = append(list, o.Property)
		}
	}
	return list
}

// contradict tells that two things cannot both be, and keeps verdicts off what
// rests on them.
func (r *Finder) contradict(code sheet.ConflictCode, on *contract.Property, t Twice, values []sheet.ConflictValue) {
	r.Twice = append(r.Twice, t)
	r.Conflicts = append(r.Conflicts, sheet.Conflict{Code: code, On: on.Name, Title: on.Title,
		Text: problem.Capital(t.Doubt) + ". " + t.Remedy, Values: values, Doubt: t.Doubt, Remedy: t.Remedy})
}

// Without runs the function with inputs taken as not given, and puts them back.
func (r *Finder) Without(inputs []*contract.Property, read func() float64) (value float64, ok bool) {
	defer r.TakenAway(inputs)()
	if ok = r.In.Call.Run() == nil; ok {
		value = read()
	}
	return value, ok
}

// TakenAway takes inputs as not given until they are put back.
func (r *Finder) TakenAway(inputs []*contract.Property) (putBack func()) {
	kept := make([]float64, len(inputs))
	for i, p := range inputs {
		to := r.Field(p)
		kept[i] = *to
		*to = r.In.Form.Inputs.NotGiven(p)
	}
	return func() {
		for i, p := range inputs {
			*r.Field(p) = kept[i]
		}
	}
}

// valueBy is a value of a property, found by an input.
func (r *Finder) valueBy(p *contract.Property, si float64, by *contract.Property) sheet.ConflictValue {
	k := &r.In.Values[by.Index]
	v := sheet.ConflictValue{Input: by.Name, Title: by.Title, Text: r.In.Show(p, si), SI: si, Origin: k.Origin, Date: k.Date}
	if k.Origin == sheet.Typed {
		v.Date = r.In.Request.Day
	}
	return v
}

// says is a value of a conflict with where it comes from.
func says(v *sheet.ConflictValue) string {
	by := v.Text + " by " + problem.MidSentence(v.Title)
	switch {
	case v.Date != "" && v.Origin == sheet.Typed:
		return by + " (typed, " + v.Date + ")"
	case v.Date != "":
		return by + " (read " + v.Date + ")"
	case v.Origin == sheet.Typed:
		return by + " (typed, without a date)"
	case v.Origin == sheet.MakersFigure:
		return by + " (maker's figure)"
	}
	return by + " (boat file, without a date)"
}

// newestFirst sorts by date; what was typed without one stands first.
func newestFirst(values []sheet.ConflictValue) {
	sort.SliceStable(values, func(i, j int) bool {
		a, b := &values[i], &values[j]
		undated := func(v *sheet.ConflictValue) bool { return v.Date == "" && v.Origin == sheet.Typed }
		if undated(a) != undated(b) {
			return undated(a)
		}
		return a.Date > b.Date
	})
}

// OverTyped tells of figures that were typed over others which the boat file
// has, where the two differ by more than their accuracies. What was typed on a
// known day after the boat's reading is the newer one, and nothing is told.
func (r *Finder) OverTyped() {
	if r.In.Request.Boat == nil {
		return
	}
	r.boatDisagrees()
	for i, p := range r.In.Form.Input.Properties {
		k := &r.In.Values[i]
		if k.Known && k.Origin == sheet.FromBoat && p.After != "" {
			r.besideEarlier(p, k)
		}
		if k.Known && k.Origin == sheet.FromBoat && p.Kind != nil {
			r.besideTrial(p, k)
		}
		if !k.Known || k.Origin != sheet.Typed || planned(p) {
			continue
		}
		other := inputs.Known{}
		if !r.In.Elsewhere(p, &other) || r.agrees(p, k, &other) {
			continue
		}
		typed := sheet.ConflictValue{Input: p.Name, Title: p.Title, Text: k.Text, SI: k.Si, Origin: sheet.Typed, Date: r.In.Request.Day}
		kept := sheet.ConflictValue{Input: p.Name, Title: p.Title, Text: other.Text, SI: other.Si, Origin: other.Origin, Date: other.Date}
		if typed.Date != "" && kept.Date != "" && typed.Date >= kept.Date {
			continue
		}
		text, has := fmt.Sprintf("%s: %s typed here is used; ", p.Title, typed.Text), kept.Text
		if p.Items != nil {
			text, has = fmt.Sprintf("%s: what is typed here is used; ", p.Title), "other ones"
		}
		switch other.Origin {
		case sheet.Earlier:
			text += fmt.Sprintf("from the boat file %s comes out (%s)", has, other.Source)
		case sheet.MakersFigure:
			text += fmt.Sprintf("the maker's figure is %s (%s)", has, other.Source)
		default:
			text += "the boat file has " + has
		}
		switch {
		case kept.Date == "":
			text += ". One of the two is not of this boat as she is."
		case typed.Date == "":
			text += ", read " + kept.Date + ". If that is the newer one, clear this field."
		default:
			text += ", read " + kept.Date + ", which is newer: clear this field."
		}
		r.Conflicts = append(r.Conflicts, sheet.Conflict{Code: sheet.TypedOver, On: p.Name, Title: p.Title, Text: text, Values: []sheet.ConflictValue{typed, kept}})
	}
}

// besideEarlier tells of a figure of the boat file that another sheet works out
// otherwise.
func (r *Finder) besideEarlier(p *contract.Property, k *inputs.Known) {
	other := inputs.Known{}
	if !r.In.TakeEarlier(p, &other) || r.agrees(p, k, &other) || math.Abs(k.Si-other.Si) <= loosely*math.Abs(k.Si) {
		return
	}
	r.Conflicts = append(r.Conflicts, sheet.Conflict{Code: sheet.TwoFigures, On: p.Name, Title: p.Title,
		Text: fmt.Sprintf("%s: the boat file has %s, and by the sheet “%s” it is %s. The boat file's is used: mend what is wrong.", p.Title, k.Text, other.Source, other.Word),
		Values: []sheet.ConflictValue{
			{Input: p.Name, Title: p.Title, Text: k.Text, SI: k.Si, Origin: k.Origin, Date: k.Date},
			{Title: other.Source, Text: other.Word, SI: other.Si, Origin: other.Origin},
		}})
}

// boatDisagrees tells of figures of the boat file that contradict each other,
// where one of them is used here and came from there.
func (r *Finder) boatDisagrees() {
	for _, d := range r.In.Request.Disagreements() {
		c := sheet.Conflict{Code: sheet.TwoFigures, Title: d.Title, Text: d.Title + ": " + problem.MidSentence(d.Text)}
		for _, f := range d.Figures {
			v := sheet.ConflictValue{Title: f.Title, Text: f.Text, SI: f.SI, Origin: sheet.FromBoat, Date: f.Date}
			for i, p := range r.In.Form.Input.Properties {
				if k := &r.In.Values[i]; p.Boat == f.Pointer && k.Known && k.Origin == sheet.FromBoat {
					v.Input = p.Name
					c.On = p.Name
				}
			}
			c.Values = append(c.Values, v)
		}
		if c.On != "" {
			r.Conflicts = append(r.Conflicts, c)
		}
	}
}

// planned tells of inputs that are no figure of the boat as she is: the day of
// a sheet, and what is to be done or weighed.
func planned(p *contract.Property) bool {
	return p.Boat == boat.LatestReading+"date" || strings.HasPrefix(p.Boat, "/work/") || strings.HasPrefix(p.Boat, "/choice/") || strings.HasPrefix(p.Boat, "/follow/")
}

// agrees tells whether two of one input are the same, or a number as near as
// their accuracies let it be.
func (r *Finder) agrees(p *contract.Property, a, b *inputs.Known) bool {
	if list, is := a.Raw.([]any); is {
		return reflect.DeepEqual(list, b.Raw)
	}
	if p.Kind == nil && (a.Word != "" || b.Word != "") {
		return a.Word == b.Word
	}
	reach := 0.0
	for _, k := range []*inputs.Known{a, b} {
		if k.Factor.Shape != spread.Exact {
			reach += (k.Factor.High - k.Factor.Low) / 2
		}
	}
	return math.Abs(a.Si-b.Si) <= reach+1e-9*math.Abs(a.Si)
}

// loosely is how far apart two figures of one thing may be of which no accuracy
// is known: as far as two people come that measure along a shaft to middles
// which nobody marked (common practice, no source).
const loosely = 0.05
