package calc

import (
	"fmt"
	"math"
	"reflect"
	"slices"
	"sort"
	"strings"

	"example.org/driveline/marinecalc/internal/boat"
	"example.org/driveline/marinecalc/internal/contract"
	"example.org/driveline/marinecalc/internal/spread"
	"example.org/driveline/marinecalc/sheet"
)

// What was given twice and does not agree: two ways to one quantity, a figure
// typed over another that the boat file has, two figures of one thing.

// twoWays is one quantity by two ways that disagree by more than their
// accuracies explain.
type twoWays struct {
	doubt, remedy string
	moved         []*contract.Property // what is another by the other way
}

// contested is what stands between a limit and its verdict: its value, or the
// figure that it is, is another by another way.
func (r *judgement) contested(h *held) *twoWays {
	for i := range r.twice {
		t := &r.twice[i]
		if slices.Contains(t.moved, h.on) {
			return t
		}
		if of := h.boundOf(); of != "" && slices.Contains(t.moved, r.property(of)) {
			return t
		}
	}
	return nil
}

// compareWays works every result that can be had by several ways out by each
// of those that were given. The first one goes before the others; where
// another disagrees with it by more than their accuracies explain, no verdict
// rests on either: the normalised error, the difference over its expanded
// uncertainty of k = 2, is then above 1 (ISO 13528:2015, 9.7, from memory).
func (r *judgement) compareWays() {
	for _, p := range r.in.form.Result.Properties {
		m := r.buf.byProperty[p.Index]
		if len(p.Ways) < 2 || m == nil || m.number == nil {
			continue
		}
		var given []*contract.Property
		for _, name := range p.Ways {
			if q := r.in.form.Input.Child(name); q != nil && r.givenByHand(q) && r.field(q) != nil {
				given = append(given, q)
			}
		}
		for i := 1; i < len(given); i++ {
			r.compareWay(m, given[:i], given[i])
		}
	}
}

// givenByHand tells whether a person gave an input, and no table or usual value.
func (r *judgement) givenByHand(p *contract.Property) bool {
	k := &r.in.values[p.Index]
	return k.known && (k.origin == sheet.Typed || k.origin == sheet.FromBoat || k.origin == sheet.MakersFigure)
}

// compareWay holds a result, as it is found by the first of the ways before,
// against itself by another.
func (r *judgement) compareWay(m *measure, before []*contract.Property, other *contract.Property) {
	first := m.si
	var moved []*contract.Property
	second, ok := r.without(before, func() float64 {
		for i := range r.measures {
			if o := &r.measures[i]; o.number != nil && !(math.Abs(*o.number-o.si) <= 1e-9*math.Abs(o.si)) {
				moved = append(moved, o.property)
			}
		}
		return *m.number
	})
	if !ok || math.IsNaN(second) {
		r.again()
		return
	}
	variance := 0.0
	for i := range r.in.variates {
		v := &r.in.variates[i]
		*v.to = v.factor.Estimate + v.factor.StdDev()
		if r.in.call.Run() == nil {
			one := *m.number
			if two, ok := r.without(before, func() float64 { return *m.number }); ok {
				change := two - one - (second - first)
				variance += change * change
			}
		}
		*v.to = v.factor.Estimate
	}
	r.again()
	reach := 2 * math.Sqrt(variance)
	if variance == 0 { // no accuracy is known of either
		reach = math.Abs(first) * loosely
	}
	if math.Abs(second-first) <= reach+1e-9*math.Abs(first) {
		return
	}
	values := []sheet.ConflictValue{r.valueBy(m.property, first, before[0]), r.valueBy(m.property, second, other)}
	newestFirst(values)
	t := twoWays{moved: append(moved, append(before, other)...), remedy: "Measure again, and leave out the one that was wrong."}
	t.doubt = "two ways to “" + m.property.Title + "” disagree: " + says(&values[0]) + ", " + says(&values[1]) + ", further apart than their accuracies explain"
	r.twice = append(r.twice, t)
	r.conflicts = append(r.conflicts, sheet.Conflict{Code: sheet.TwoWays, On: m.property.Name, Title: m.property.Title,
		Text: strings.ToUpper(t.doubt[:1]) + t.doubt[1:] + ". " + t.remedy, Values: values})
}

// without runs the function with inputs taken as not given, and puts them back.
func (r *judgement) without(inputs []*contract.Property, read func() float64) (value float64, ok bool) {
	kept := make([]float64, len(inputs))
	for i, p := range inputs {
		to := r.field(p)
		kept[i] = *to
		*to = r.in.form.Inputs.NotGiven(p)
	}
	if ok = r.in.call.Run() == nil; ok {
		value = read()
	}
	for i, p := range inputs {
		*r.field(p) = kept[i]
	}
	return value, ok
}

// valueBy is a value of a property, found by an input.
func (r *judgement) valueBy(p *contract.Property, si float64, by *contract.Property) sheet.ConflictValue {
	k := &r.in.values[by.Index]
	v := sheet.ConflictValue{Input: by.Name, Title: by.Title, Text: r.in.show(p, si), SI: si, Origin: k.origin, Date: k.date}
	if k.origin == sheet.Typed {
		v.Date = r.in.request.day
	}
	return v
}

// says is a value of a conflict with where it comes from.
func says(v *sheet.ConflictValue) string {
	by := v.Text + " by " + midSentence(v.Title)
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

// overTyped tells of figures that were typed over others which the boat file
// has, where the two differ by more than their accuracies. What was typed on a
// known day after the boat's reading is the newer one, and nothing is told.
func (r *judgement) overTyped() {
	if r.in.request.Boat == nil {
		return
	}
	r.boatDisagrees()
	for i, p := range r.in.form.Input.Properties {
		k := &r.in.values[i]
		if k.known && k.origin == sheet.FromBoat && p.After != "" {
			r.besideEarlier(p, k)
		}
		if !k.known || k.origin != sheet.Typed || planned(p) {
			continue
		}
		other := known{}
		if !r.in.elsewhere(p, &other) || r.agrees(p, k, &other) {
			continue
		}
		typed := sheet.ConflictValue{Input: p.Name, Title: p.Title, Text: k.text, SI: k.si, Origin: sheet.Typed, Date: r.in.request.day}
		kept := sheet.ConflictValue{Input: p.Name, Title: p.Title, Text: other.text, SI: other.si, Origin: other.origin, Date: other.date}
		if typed.Date != "" && kept.Date != "" && typed.Date >= kept.Date {
			continue
		}
		text, has := fmt.Sprintf("%s: %s typed here is used; ", p.Title, typed.Text), kept.Text
		if p.Items != nil {
			text, has = fmt.Sprintf("%s: what is typed here is used; ", p.Title), "other ones"
		}
		switch other.origin {
		case sheet.Earlier:
			text += fmt.Sprintf("from the boat file %s comes out (%s)", has, other.source)
		case sheet.MakersFigure:
			text += fmt.Sprintf("the maker's figure is %s (%s)", has, other.source)
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
		r.conflicts = append(r.conflicts, sheet.Conflict{Code: sheet.TypedOver, On: p.Name, Title: p.Title, Text: text, Values: []sheet.ConflictValue{typed, kept}})
	}
}

// besideEarlier tells of a figure of the boat file that another sheet works out
// otherwise.
func (r *judgement) besideEarlier(p *contract.Property, k *known) {
	other := known{}
	if !r.in.takeEarlier(p, &other) || r.agrees(p, k, &other) || math.Abs(k.si-other.si) <= loosely*math.Abs(k.si) {
		return
	}
	r.conflicts = append(r.conflicts, sheet.Conflict{Code: sheet.TwoFigures, On: p.Name, Title: p.Title,
		Text: fmt.Sprintf("%s: the boat file has %s, and by the sheet “%s” it is %s. The boat file's is used: mend what is wrong.", p.Title, k.text, other.source, other.word),
		Values: []sheet.ConflictValue{
			{Input: p.Name, Title: p.Title, Text: k.text, SI: k.si, Origin: k.origin, Date: k.date},
			{Title: other.source, Text: other.word, SI: other.si, Origin: other.origin},
		}})
}

// boatDisagrees tells of figures of the boat file that contradict each other,
// where one of them is used here and came from there.
func (r *judgement) boatDisagrees() {
	for _, d := range r.in.request.disagreements() {
		c := sheet.Conflict{Code: sheet.TwoFigures, Title: d.Title, Text: d.Title + ": " + midSentence(d.Text)}
		for _, f := range d.Figures {
			v := sheet.ConflictValue{Title: f.Title, Text: f.Text, SI: f.SI, Origin: sheet.FromBoat, Date: f.Date}
			for i, p := range r.in.form.Input.Properties {
				if k := &r.in.values[i]; p.Boat == f.Pointer && k.known && k.origin == sheet.FromBoat {
					v.Input = p.Name
					c.On = p.Name
				}
			}
			c.Values = append(c.Values, v)
		}
		if c.On != "" {
			r.conflicts = append(r.conflicts, c)
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
func (r *judgement) agrees(p *contract.Property, a, b *known) bool {
	if list, is := a.raw.([]any); is {
		return reflect.DeepEqual(list, b.raw)
	}
	if p.Kind == nil && (a.word != "" || b.word != "") {
		return a.word == b.word
	}
	reach := 0.0
	for _, k := range []*known{a, b} {
		if k.factor.Shape != spread.Exact {
			reach += (k.factor.High - k.factor.Low) / 2
		}
	}
	return math.Abs(a.si-b.si) <= reach+1e-9*math.Abs(a.si)
}

// loosely is how far apart two figures of one thing may be of which no accuracy
// is known: as far as two people come that measure along a shaft to middles
// which nobody marked (common practice, no source).
const loosely = 0.05

// idleFigures tells of the maker's figures for limits of this calculation that
// do not apply here.
func (r *judgement) idleFigures() {
	for i := range r.ruled.limits {
		l := &r.ruled.limits[i]
		fig, ok := r.in.request.Boat.FigureOf(l.ID)
		if !ok || slices.ContainsFunc(r.limits, func(h held) bool { return h.ID == l.ID }) {
			continue
		}
		r.conflicts = append(r.conflicts, sheet.Conflict{Code: sheet.FigureIdle, On: l.ID, Title: l.Title,
			Text: fmt.Sprintf("The maker's figure for %s (%v, %s) is not used: that limit does not apply to what is given here.", midSentence(l.Title), fig.Value, fig.Source)})
	}
}
