// What of a boat is read again and again, and so can be followed.

package boat

import (
	"encoding/json"
	"fmt"
	"math"
	"slices"
	"sort"
	"strconv"
	"strings"

	"example.org/driveline/marinecalc/internal/contract"
	"example.org/driveline/marinecalc/quantity"
)

// Quantity is one number of the boat that dated readings have: a reading, an
// own reading ("own/oilPressure"), a member of a section ("gland/followerDepth")
// or of a list by its key ("mounts/front port/deflectionNow"; where only one
// member counts "mountHeights/front port", "couplingGaps/90°").
type Quantity struct {
	Name string
	contract.Property
	Side  string // "most", "least" or "" where the boat does not say
	Gauge string // it is usually read with; "" where the boat does not say
}

// Point is a quantity as it was read once.
type Point struct {
	*Entry
	SI       float64
	Accuracy float64 // written with it; 0 for none
	Text     string
	Where    string // in the boat file

	of Quantity
}

// Series are the readings of a quantity in the order of the file. What an
// entry has more than once, such as the gap at one clock position for several
// turns of the shaft, is the mean of these.
func (b *Boat) Series(name string) []Point {
	if b == nil || b.series == nil {
		return nil
	}
	return slices.Clone(b.series()[name])
}

// readSeries reads every entry once, for all series.
func (b *Boat) readSeries() map[string][]Point {
	series := map[string][]Point{}
	own := b.OwnReadings()
	for _, e := range b.entries {
		alike := map[string]float64{}
		for _, p := range e.read(own) {
			list := series[p.of.Name]
			n := alike[p.of.Name]
			alike[p.of.Name]++
			if n == 0 {
				series[p.of.Name] = append(list, p)
				continue
			}
			mean := &list[len(list)-1]
			mean.SI += (p.SI - mean.SI) / (n + 1)
			mean.Accuracy = max(mean.Accuracy, p.Accuracy)
		}
	}
	return series
}

// Followed is a quantity with how often and when it was read.
type Followed struct {
	Quantity
	Readings int
	Newest   Point
	Baseline bool // one of them was read while all was well
}

// Aside tells whether it only says how something else was read, as how far the shaft
// stood turned.
func (f Followed) Aside() bool { return strings.HasSuffix(f.Name, "/turn") }

// Followable lists every quantity of which the boat has a reading, in the
// order of the boat's schema.
func (b *Boat) Followable() []Followed {
	if b == nil {
		return nil
	}
	own := b.OwnReadings()
	at := map[string]int{}
	var list []Followed
	for _, e := range b.entries {
		seen := map[string]bool{}
		for _, p := range e.read(own) {
			i, known := at[p.of.Name]
			if !known {
				i = len(list)
				at[p.of.Name] = i
				list = append(list, Followed{Quantity: p.of, Newest: p})
			}
			f := &list[i]
			if !seen[p.of.Name] {
				f.Readings++
			}
			seen[p.of.Name] = true
			f.Baseline = f.Baseline || e.Baseline()
			if e.When() >= f.Newest.When() {
				f.Newest = p
			}
		}
	}
	order := orderOfReadings()
	sort.SliceStable(list, func(i, j int) bool { return order[head(list[i].Name)] < order[head(list[j].Name)] })
	return list
}

// Describe is the quantity of a name, read or not yet; ok is false where the
// boat has no place for it.
func (b *Boat) Describe(name string) (q Quantity, ok bool) {
	if series := b.Series(name); len(series) > 0 {
		return series[0].of, true
	}
	for _, q := range b.OwnReadings() {
		if "own/"+q.Name == name {
			q.Name = name
			return q, true
		}
	}
	tokens := tokensOf(name)
	p := entryMember(tokens[0])
	if p != nil && p.Name == "mountHeights" && len(tokens) == 2 {
		return quantityOf(name, single(p.Items), p.Title+", "+tokens[1]), true
	}
	for _, token := range tokens[1:] {
		if p != nil {
			p = p.Child(token)
		}
	}
	if p == nil || !numeric(p) {
		return Quantity{}, false
	}
	return quantityOf(name, p, ""), true
}

// entryMember is a member of a dated entry by the boat's schema, or nil.
func entryMember(name string) *contract.Property {
	c, err := Contract()
	if err != nil {
		return nil // a test opens the boat's schema
	}
	return c.Root.Child("readings").Items.Child(name)
}

// OwnPaths are the own readings that name a Signal K path, by that.
func (b *Boat) OwnPaths() map[string]string {
	paths := map[string]string{}
	if b == nil {
		return paths
	}
	for _, m := range Objects(b.document["ownReadings"]) {
		if path, _ := m["path"].(string); path != "" {
			paths[path], _ = m["name"].(string)
		}
	}
	return paths
}

// OwnReadings are what else is read on this boat, by its own list.
func (b *Boat) OwnReadings() []Quantity {
	if b == nil {
		return nil
	}
	var list []Quantity
	for _, m := range Objects(b.document["ownReadings"]) {
		text := func(name string) string { t, _ := m[name].(string); return t }
		q := Quantity{Name: text("name"), Side: text("side"), Gauge: text("gauge")}
		q.Property.Name, q.Title = q.Name, text("title")
		kind, known := quantity.Lookup(text("kind"))
		if !known { // a plain number
			kind, _ = quantity.Lookup("ratio")
			if unit := text("unit"); unit != "" {
				q.Title += ", " + unit
			}
			q.Units = [2]string{"", ""}
		} else {
			q.Units = [2]string{kind.Usual(quantity.Metric), kind.Usual(quantity.US)}
			if unit := text("unit"); slices.Contains(kind.Units(), unit) {
				q.Units = [2]string{unit, unit}
			}
		}
		q.Kind = kind
		q.Shown = kind.In(q.Units[0], q.Units[1])
		list = append(list, q)
	}
	return list
}

// notFollowed are the numbers of an entry that say when or how it was read.
var notFollowed = []string{"engineHours", "fluidHours"}

// read are all numbers of an entry.
func (e *Entry) read(own []Quantity) []Point {
	c, err := Contract()
	if err != nil {
		return nil // a test opens the boat's schema
	}
	var list []Point
	for _, p := range c.Root.Child("readings").Items.Properties {
		value, has := e.values[p.Name]
		if !has || slices.Contains(notFollowed, p.Name) {
			continue
		}
		where := fmt.Sprintf("/readings/%d/%s", e.Index, p.Name)
		if p.Name == "own" {
			list = append(list, e.readOwn(value, where, own)...)
			continue
		}
		list = append(list, e.numbers(p, p.Name, "", where, value)...)
	}
	return list
}

// numbers are those of a value and of what is in it.
func (e *Entry) numbers(p *contract.Property, name, title, where string, value any) (list []Point) {
	switch v := value.(type) {
	case map[string]any:
		for _, child := range p.Properties {
			if inside, has := v[child.Name]; has {
				list = append(list, e.numbers(child, name+"/"+child.Name, titled(title, p.Title), where+"/"+child.Name, inside)...)
			}
		}
	case []any:
		if p.Items == nil || len(p.Items.Properties) == 0 {
			return nil
		}
		key := p.Items.Properties[0]
		for i, entry := range v {
			m, _ := entry.(map[string]any)
			which := keyOf(key, m[key.Name])
			if which == "" {
				continue
			}
			for _, child := range p.Items.Properties[1:] {
				inside, has := m[child.Name]
				if !has {
					continue
				}
				full, of := name+"/"+which+"/"+child.Name, titled(title, p.Title+", "+which)
				if single(p.Items) == child {
					list = append(list, e.one(child, quantityOf(name+"/"+which, child, of), fmt.Sprintf("%s/%d/%s", where, i, child.Name), inside)...)
					continue
				}
				list = append(list, e.numbers(child, full, of, fmt.Sprintf("%s/%d/%s", where, i, child.Name), inside)...)
			}
		}
	default:
		if numeric(p) {
			list = e.one(p, quantityOf(name, p, title), where, value)
		}
	}
	return list
}

func (e *Entry) one(p *contract.Property, q Quantity, where string, value any) []Point {
	point := Point{Entry: e, Text: fmt.Sprint(value), Where: where, of: q}
	if !point.take(q.Kind, value) {
		return nil
	}
	if volume, counted := e.values["sampleVolume"]; counted && slices.Contains(counts, p.Name) {
		kind, _ := quantity.Lookup("volume")
		of, ok := Number(kind, volume)
		if !ok || !(of > 0) {
			return nil
		}
		point.SI *= 1e-6 / of // in one millilitre, whatever was counted
	}
	return []Point{point}
}

// counts are the readings that hold for the sample volume beside them.
var counts = []string{"count4", "count6", "count14"}

func (e *Entry) readOwn(value any, where string, own []Quantity) (list []Point) {
	for i, m := range Objects(value) {
		at := slices.IndexFunc(own, func(q Quantity) bool { return q.Name == m["reading"] })
		if at < 0 {
			continue // a warning says so
		}
		q := own[at]
		point := Point{Entry: e, Text: fmt.Sprint(m["value"]), Where: fmt.Sprintf("%s/%d/value", where, i), of: q}
		point.of.Name = "own/" + q.Name
		if point.take(q.Kind, m["value"]) {
			list = append(list, point)
		}
	}
	return list
}

// Number is a value of the boat file as a number of a kind, in SI; nil stands
// for a plain number.
func Number(kind *quantity.Kind, value any) (si float64, ok bool) {
	if kind == nil {
		kind, _ = quantity.Lookup("ratio")
	}
	p := Point{}
	ok = p.take(kind, value)
	return p.SI, ok
}

// take reads a value; it is false for what is no such number.
func (p *Point) take(kind *quantity.Kind, value any) bool {
	switch v := value.(type) {
	case string:
		r, err := kind.Parse(v)
		p.SI, p.Accuracy = r.SI, r.Accuracy
		return err == nil
	case json.Number:
		f, err := v.Float64()
		p.SI = f
		return err == nil
	}
	return false
}

// numeric tells whether a property is one number.
func numeric(p *contract.Property) bool {
	return p.Items == nil && p.Properties == nil && (p.Kind != nil && p.Kind.Name != "money" || slices.Contains(p.Types, "integer"))
}

// single is the one member of a list's entries that is a number and must be
// there, beside the key; nil where there are several.
func single(items *contract.Property) (one *contract.Property) {
	for _, p := range items.Properties[1:] {
		if slices.Contains(items.Required, p.Name) && numeric(p) {
			if one != nil {
				return nil
			}
			one = p
		}
	}
	if one != nil && len(items.Required) > 2 {
		return nil
	}
	return one
}

func quantityOf(name string, p *contract.Property, of string) Quantity {
	q := Quantity{Name: name, Property: *p}
	q.Title = titled(of, p.Title)
	if q.Kind == nil {
		q.Kind, _ = quantity.Lookup("ratio")
		q.Units = [2]string{"", ""}
		q.Shown = q.Kind.In("", "")
	}
	if slices.Contains(counts, name) {
		q.Title += ", in 1 mL"
	}
	return q
}

func titled(of, title string) string {
	if of == "" {
		return title
	}
	return of + ": " + title
}

// keyOf writes the key of a list's entry; a clock position in degrees, so that
// 3 o'clock and 90° are one.
func keyOf(p *contract.Property, value any) string {
	if p.Kind == nil {
		text, _ := value.(string)
		return text
	}
	key := Point{}
	if !key.take(p.Kind, value) || math.IsNaN(key.SI) {
		return ""
	}
	if degrees, ok := p.Kind.Convert(key.SI, "°"); ok {
		return strconv.FormatFloat(math.Round(10*degrees)/10, 'f', -1, 64) + "°"
	}
	return p.Shown.Print(key.SI, quantity.Metric)
}

// orderOfReadings is the place of each member of an entry in the schema.
func orderOfReadings() map[string]int {
	order := map[string]int{}
	if c, err := Contract(); err == nil {
		for i, p := range c.Root.Child("readings").Items.Properties {
			order[p.Name] = i
		}
	}
	return order
}

func head(name string) string { return tokensOf(name)[0] }

func tokensOf(name string) []string { return contract.Tokens("/" + name) }
