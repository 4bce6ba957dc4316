// Package agree finds figures of the boat file that contradict each other:
// counts, lengths that do not sum, two torques of one joint. All of it is
// arithmetic of what the members mean.
package agree

import (
	"encoding/json"
	"fmt"
	"math"
	"sort"

	"example.org/driveline/marinecalc/internal/boat"
	"example.org/driveline/marinecalc/internal/contract"
	"example.org/driveline/marinecalc/problem"
	"example.org/driveline/marinecalc/quantity"
	"example.org/driveline/marinecalc/rules"
)

// Disagreement is a contradiction between figures of the boat file.
type Disagreement struct {
	Code    string // what disagrees, for programs
	Title   string
	Text    string
	Figures []Given // the newest first
}

// Given is a figure as the boat file has it.
type Given struct {
	Pointer string
	Title   string
	Text    string
	SI      float64
	Date    string // of the reading; "" where it is undated
}

// Of finds them in a boat; nil where all figures agree as far as is known. The
// book says how far figures of one thing may be apart: the table boat-agreement.
func Of(b *boat.Boat, book *rules.Book) []Disagreement {
	if b == nil {
		return nil
	}
	a := agreement{boat: b, book: book}
	a.shaft()
	a.parts()
	a.bolts()
	a.torques()
	a.rest()
	a.proportions()
	a.log()
	return a.list
}

// Meter finds in a boat's log what of the hour meter contradicts the dates: that it
// stood higher before. It takes no rules; nil where nothing does.
func Meter(b *boat.Boat) []Disagreement {
	if b == nil {
		return nil
	}
	a := agreement{boat: b}
	a.log()
	return a.list
}

// agreement is the figures under comparison.
type agreement struct {
	boat *boat.Boat
	book *rules.Book
	list []Disagreement
}

// apart is how far two figures may be apart where one of them is si: by the row's
// share of it, and by no less than the row's length.
func (a *agreement) apart(row string, si float64) float64 {
	r := a.book.Table("boat-agreement").Find(row, nil)
	if r == nil {
		return 0 // a test finds every row that is asked for
	}
	return max(r.Values.Of("share").SI*si, r.Values.Of("least").SI)
}

// at reads a figure; ok is false where the boat has none.
func (a *agreement) at(pointer string) (g Given, ok bool) {
	value, _, date, ok := a.boat.Find(pointer)
	c, err := boat.Contract()
	if !ok || err != nil {
		return g, false
	}
	p, whole := c.Root.At(contract.Tokens(boat.SchemaPointer(pointer)))
	if !whole {
		return g, false
	}
	si, ok := boat.Number(p.Kind, value)
	if !ok {
		return g, false
	}
	text := fmt.Sprint(value)
	if _, bare := value.(json.Number); bare && p.Kind != nil {
		text = p.Shown.Print(si, quantity.Metric)
	}
	return Given{Pointer: pointer, Title: p.Title, Text: text, SI: si, Date: date}, true
}

// all reads several figures, and tells whether all are there.
func (a *agreement) all(pointers ...string) (list []Given, ok bool) {
	for _, p := range pointers {
		g, has := a.at(p)
		if !has {
			return nil, false
		}
		list = append(list, g)
	}
	return list, true
}

func (a *agreement) tell(code, title, text string, figures ...Given) {
	sort.SliceStable(figures, func(i, j int) bool { return figures[i].Date > figures[j].Date }) // the newest first
	a.list = append(a.list, Disagreement{code, title, text + ". One of them is wrong, or not of this boat as she is: measure again.", figures})
}

// most tells where a figure is larger than another that it cannot exceed.
func (a *agreement) most(small, large, title, because string) {
	if g, ok := a.all(small, large); ok && g[0].SI > g[1].SI*(1+1e-9)+1e-9 {
		a.tell("more-than", title, fmt.Sprintf("%s is %s, %s is %s: %s", g[0].Title, g[0].Text, problem.MidSentence(g[1].Title), g[1].Text, because), g...)
	}
}

func mm(si float64) string {
	k, _ := quantity.Lookup("length")
	return k.In("mm", "in").Print(si, quantity.Both)
}

// entries reads a list of the boat: each entry's numbers by name, 0 for none.
func (a *agreement) entries(pointer string) []map[string]float64 {
	value, _, _, _ := a.boat.Find(pointer)
	c, err := boat.Contract()
	if err != nil {
		return nil
	}
	p, whole := c.Root.At(contract.Tokens(pointer))
	if !whole || p.Items == nil {
		return nil
	}
	var list []map[string]float64
	for _, m := range boat.Objects(value) {
		numbers := map[string]float64{}
		for _, child := range p.Items.Properties {
			if si, ok := boat.Number(child.Kind, m[child.Name]); ok && child.Kind != nil {
				numbers[child.Name] = si
			}
		}
		list = append(list, numbers)
	}
	return list
}

// shaft holds sections, bearings and propeller against each other along the
// shaft.
func (a *agreement) shaft() {
	sections, bearings := a.entries("/shaft/sections"), a.entries("/shaft/bearings")
	total, thinnest := 0.0, math.Inf(1)
	for _, s := range sections {
		total += s["length"]
		thinnest = min(thinnest, s["diameter"])
	}
	list := func(pointer, title, text string, si float64) Given {
		_, _, date, _ := a.boat.Find(pointer)
		return Given{Pointer: pointer, Title: title, Text: text, SI: si, Date: date}
	}
	sum := list("/shaft/sections", "Length of all sections", mm(total), total)
	if d, ok := a.at("/shaft/diameter"); ok && len(sections) > 0 && thinnest > 0 && math.Abs(d.SI-thinnest) > a.apart("shaft-diameter", d.SI) {
		a.tell("shaft-diameter", "Shaft diameter", fmt.Sprintf("Shaft diameter is %s, and the thinnest of the sections has %s", d.Text, mm(thinnest)), d, list("/shaft/sections", "Thinnest section", mm(thinnest), thinnest))
	}
	if len(bearings) == 0 {
		return
	}
	last := bearings[len(bearings)-1]
	aft := list("/shaft/bearings", "Middle of the aftmost bearing", mm(last["at"]), last["at"])
	if len(sections) > 0 {
		overhang, hung := a.at("/propeller/overhang")
		hung = hung && overhang.SI > 0
		ends := last["at"] + overhang.SI
		hub, has := a.at("/propeller/hubLength")
		behind := max(a.apart("past-propeller", total), hub.SI)
		switch {
		case total < last["at"]*(1-1e-9):
			a.tell("bearing-past-shaft", "Length of the shaft", fmt.Sprintf("The sections of the shaft are %s long together, and the aftmost bearing stands at %s", sum.Text, aft.Text), sum, aft)
		case hung && ends > total*(1+1e-9):
			a.tell("propeller-past-shaft", "Place of the propeller", fmt.Sprintf("The propeller hangs %s aft of the aftmost bearing, which is %s from the forward end, and the sections end at %s", overhang.Text, mm(ends), sum.Text), overhang, sum)
		case hung && total-ends > behind:
			text := fmt.Sprintf("The sections go %s past the middle of the propeller (overhang %s)", mm(total-ends), overhang.Text)
			if has {
				text += ", more than its whole hub of " + hub.Text
			}
			a.tell("shaft-past-propeller", "Place of the propeller", text, overhang, sum)
		}
	}
	if in, ok := a.at("/shaft/inboard"); ok && last["length"] > 0 {
		if end := last["at"] + last["length"]/2; math.Abs(in.SI-end) > a.apart("along-shaft", in.SI) {
			a.tell("inboard", "Length of shaft inside", fmt.Sprintf("Length of shaft inside is %s, and the aftmost bearing ends at %s", in.Text, mm(end)), in, aft)
		}
	}
	if own, ok := a.at("/sternBearing/length"); ok && last["length"] > 0 && math.Abs(own.SI-last["length"]) > a.apart("along-shaft", own.SI) {
		a.tell("bearing-length", "Length of the stern bearing", fmt.Sprintf("The stern bearing is %s long, and the aftmost bearing of the list %s", own.Text, mm(last["length"])), own, aft)
	}
	if g, ok := a.all("/shaft/freeLength", "/shaft/spanBehind"); ok && g[1].SI > 0 {
		span, nearest := g[0].SI+g[1].SI, math.Inf(1)
		for _, bearing := range bearings {
			if math.Abs(bearing["at"]-span) < math.Abs(nearest-span) {
				nearest = bearing["at"]
			}
		}
		if math.Abs(nearest-span) > a.apart("along-shaft", span) {
			a.tell("spans", "Spans of the shaft", fmt.Sprintf("Free length %s and span behind %s make %s, and no bearing stands there; the nearest is at %s", g[0].Text, g[1].Text, mm(span), mm(nearest)), append(g, aft)...)
		}
	}
}

// parts holds the figures of one part against each other.
func (a *agreement) parts() {
	if g, ok := a.all("/gland/packedLength", "/gland/followerDepth", "/gland/boxDepth"); ok && g[0].SI+g[1].SI > g[2].SI+a.apart("packed-length", g[2].SI) {
		a.tell("packed-length", "Packed length", fmt.Sprintf("Packed length %s and follower %s make %s, and the box is %s deep", g[0].Text, g[1].Text, mm(g[0].SI+g[1].SI), g[2].Text), g...)
	}
	if g, ok := a.all("/rollingBearing/balls", "/rollingBearing/ballDiameter", "/rollingBearing/pitchDiameter"); ok && g[0].SI*g[1].SI > math.Pi*g[2].SI {
		a.tell("balls", "Balls of the rolling bearing", fmt.Sprintf("%.0f balls of %s side by side take %s, and their pitch circle of %s is %s round", g[0].SI, g[1].Text, mm(g[0].SI*g[1].SI), g[2].Text, mm(math.Pi*g[2].SI)), g...)
	}
	a.most("/shaft/diameter", "/gland/boxBore", "Stuffing-box bore", "the shaft does not go through")
	a.most("/shaft/grooveDiameter", "/shaft/diameter", "Diameter in the groove", "a groove is thinner than the shaft")
	a.most("/shaft/bore", "/shaft/diameter", "Bore of the shaft", "the bore is wider than the shaft")
	a.most("/shaft/key/length", "/propeller/hubLength", "Length of the key", "a key does not bear beyond its hub")
	a.most("/coupling/socketDepth", "/coupling/length", "Depth of the coupling's socket", "the socket is deeper than the flange is long")
	a.most("/coupling/boltCircle", "/coupling/diameter", "Bolt circle", "the bolts stand outside the flange")
	a.most("/fluid/dipDepth", "/fluid/depth", "Dipstick", "the dipstick reaches below the bottom of the sump")
	a.most("/fluid/leftVolume", "/fluid/volume", "Fluid that never drains", "more stays than is in the system")
	a.most("/fluid/filterVolume", "/fluid/volume", "Fluid in the filter", "more is in the filter than in the system")
	a.most("/bilge/cycleVolume", "/bilge/floodVolume", "Bilge", "more is pumped out than goes in before harm begins")
	a.most("/bilge/switchVolume", "/bilge/floodVolume", "Bilge", "harm begins before the pump switches on")
	a.most("/wornPart/depth", "/wornPart/thickness", "Worn part", "the wear is deeper than the part was thick")
	a.most("/engine/idleSpeed", "/engine/speed", "Speeds of the engine", "she idles faster than her rated speed")
}

// rest holds the readings against the boat and each other.
func (a *agreement) rest() {
	deepest, where := 0.0, 0
	for i, m := range a.entries("/mounts") {
		if m["deflectionNow"] > deepest {
			deepest, where = m["deflectionNow"], i
		}
	}
	if g, ok := a.at(boat.LatestReading + "mountDeflection"); ok && deepest > 0 && math.Abs(g.SI-deepest) > a.apart("mount-deflection", deepest) {
		a.tell("mount-deflection", "Deflection of the worst mount", fmt.Sprintf("Read as %s, and the largest of the list of mounts is %s", g.Text, mm(deepest)), g, Given{Pointer: "/mounts", Title: fmt.Sprintf("Deflection of mount %d", where+1), Text: mm(deepest), SI: deepest})
	}
	for _, pair := range [][2]string{{"code6", "code4"}, {"code14", "code6"}, {"count6", "count4"}, {"count14", "count6"}} {
		if g, ok := a.all(boat.LatestReading+pair[0], boat.LatestReading+pair[1]); ok && g[0].Date == g[1].Date && g[0].SI > g[1].SI {
			a.tell("cumulative", "Particles of the sample", fmt.Sprintf("%s: %s, and %s: %s, which counts the larger ones too", g[0].Title, g[0].Text, problem.MidSentence(g[1].Title), g[1].Text), g...)
		}
	}
	if g, ok := a.all("/wornPart/serviceTime", boat.LatestReading+"engineHours"); ok && g[0].SI > g[1].SI*(1+1e-9) {
		a.tell("service-time", "Hours of the worn part", fmt.Sprintf("The worn part was in service for %s, and the hour meter stands at %s; one that was renewed would say so", g[0].Text, g[1].Text), g...)
	}
	if g, ok := a.all(boat.LatestReading+"engineSpeed", "/engine/speed"); ok && g[0].SI > g[1].SI+a.apart("rated-speed", g[1].SI) {
		a.tell("engine-speed", "Speed of the engine", fmt.Sprintf("Read at %s, and the rated speed is %s", g[0].Text, g[1].Text), g...)
	}
}

// log holds the hour meter against the dates.
func (a *agreement) log() {
	type stand struct {
		entry *boat.Entry
		hours float64
	}
	var list []stand
	for e := range a.boat.Readings() {
		if hours, known := e.EngineHours(); known {
			list = append(list, stand{e, hours})
		}
	}
	sort.SliceStable(list, func(i, j int) bool { return list[i].entry.When() < list[j].entry.When() })
	var later, earlier *stand // of the newest fall
	highest := 0
	for i := range list {
		if list[i].hours < list[highest].hours {
			later, earlier = &list[i], &list[highest]
		} else {
			highest = i
		}
	}
	if later == nil {
		return
	}
	given := func(s *stand) Given {
		text, _ := s.entry.Value("engineHours")
		return Given{Pointer: fmt.Sprintf("/readings/%d/engineHours", s.entry.Index), Title: "Engine hours", Text: fmt.Sprint(text), SI: s.hours, Date: s.entry.Date}
	}
	l, o := given(later), given(earlier)
	a.tell("hour-meter", "Hour meter", fmt.Sprintf("It stood at %s on %s and at %s on %s before", l.Text, l.Date, o.Text, o.Date), l, o)
}
