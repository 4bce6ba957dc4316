// The shaft line checked and cut into elements.

package shaft

import (
	"fmt"
	"math"

	"example.org/driveline/marinecalc/problem"
	"example.org/driveline/marinecalc/quantity"
)

const (
	mostParts = 12   // sections, bearings or masses
	endSlack  = 0.01 // of the shaft's length, by which a place's accuracy may take it beyond an end
)

// lay checks the line and cuts it into a beam, with its nodes at every end of
// a section, bearing and mass, and between them.
func (in *WhirlInput) lay(b *beam) (WhirlResult, error) {
	var out WhirlResult
	faults := in.validate()
	if len(faults) > 0 {
		return out, faults.Err()
	}
	length := 0.0
	for _, s := range in.Sections {
		length += float64(s.Length)
	}
	out.ShaftLength = quantity.Length(length)
	out.EntrainedPropellerMass = in.PropellerMass * quantity.Mass(1+in.EntrainedWater)

	var bearings [mostParts]place
	for i, r := range in.Bearings {
		bearings[i] = place{float64(r.At), float64(r.Length), i}
	}
	held := bearings[:len(in.Bearings)]
	sortPlaces(held)
	out.place(in, held, length)
	in.placed(&faults, length, out.PropellerPlace)
	out.spans(&faults, held, length)
	if len(faults) > 0 {
		return out, faults.Err()
	}

	var stops stations
	stops.add(0, length)
	stops.add(length, length)
	end := 0.0
	for _, s := range in.Sections {
		end += float64(s.Length)
		stops.add(end, length)
	}
	for _, p := range held {
		stops.add(p.at, length)
	}
	in.eachMass(out.PropellerPlace, func(_ string, at, _ float64) { stops.add(at, length) })
	b.cut(&stops, float64(out.LongestSpan)/inASpan)
	for _, p := range held {
		b.held[b.nearest(p.at)] = true
	}
	in.eachMass(out.PropellerPlace, func(_ string, at, mass float64) { b.hung[b.nearest(at)] += mass })
	if !out.stiffen(in, b) {
		return out, problem.List{{Where: "/sections", What: fmt.Sprintf("thick and thin lengths, down to %s, differ too much to be calculated as one shaft", problem.Millimetres(float64(out.LeastDiameter))),
			Allowed: "sections of one shaft", Hint: "leave out short thick parts, or put them in as masses; is a unit wrong?"}}.Err()
	}
	return out, nil
}

// place is a bearing's middle and length, and its number in the input.
type place struct {
	at, length float64
	number     int
}

func sortPlaces(p []place) {
	for i := 1; i < len(p); i++ {
		for j := i; j > 0 && p[j].at < p[j-1].at; j-- {
			p[j], p[j-1] = p[j-1], p[j]
		}
	}
}

// spans finds the longest and the shortest span, and refuses bearings that
// lie on each other.
func (out *WhirlResult) spans(faults *problem.List, held []place, length float64) {
	out.ShortestSpan = quantity.Length(math.Inf(1))
	for i := 1; i < len(held); i++ {
		fore, aft := held[i-1], held[i]
		span := aft.at - fore.at
		if least := max((fore.length+aft.length)/2, 5*sameNode*length); span < least {
			faults.Add(fmt.Sprintf("/bearings/%d/at", aft.number), fmt.Sprintf("the span between bearings %d and %d is %s, shorter than the bearings themselves", fore.number+1, aft.number+1, problem.Millimetres(span)),
				"at least "+problem.Millimetres(least), "measure to the middle of each bearing, from the forward end of the shaft")
		}
		out.LongestSpan = max(out.LongestSpan, quantity.Length(span))
		out.ShortestSpan = min(out.ShortestSpan, quantity.Length(span))
	}
}

// place finds where the propeller hangs: where it was typed, by its overhang,
// or at the aft end of the shaft.
func (out *WhirlResult) place(in *WhirlInput, held []place, length float64) {
	at := in.PropellerAt
	switch {
	case in.PropellerMass == 0:
		at = quantity.Length(math.NaN())
	case at == 0 && in.PropellerOverhang > 0:
		at = quantity.Length(held[len(held)-1].at) + in.PropellerOverhang
	case at == 0:
		at = quantity.Length(length)
	}
	out.PropellerPlace, out.ShaftBeyond = at, quantity.Length(length)-at
}

// forward is the node of the bearing at the forward end that a gearbox flange
// may clamp, within a tenth of the first span; free where there is none.
func (b *beam) forward() int {
	first := free
	for i := range b.nodes {
		switch {
		case !b.held[i]:
		case first == free:
			first = i
		case b.x[first] <= (b.x[i]-b.x[first])/10:
			return first
		default:
			return free
		}
	}
	return free
}

// eachMass goes through what hangs on the shaft; a place a hair beyond an end
// is taken for the end.
func (in *WhirlInput) eachMass(propeller quantity.Length, do func(where string, at, mass float64)) {
	if in.PropellerMass > 0 {
		where := "/propellerAt"
		if in.PropellerAt == 0 && in.PropellerOverhang > 0 {
			where = "/propellerOverhang"
		}
		do(where, float64(propeller), float64(in.PropellerMass)*float64(1+in.EntrainedWater))
	}
	if in.CouplingMass > 0 {
		do("/couplingAt", float64(in.CouplingAt), float64(in.CouplingMass))
	}
	for i, m := range in.Masses {
		do(massNames[i], float64(m.At), float64(m.Mass))
	}
}

// massNames are the places of the masses in the input, written out so that
// nothing is allocated.
var massNames = func() (names [mostParts]string) {
	for i := range names {
		names[i] = fmt.Sprintf("/masses/%d/at", i)
	}
	return names
}()

// placed refuses bearings and masses beyond the shaft's ends.
func (in *WhirlInput) placed(faults *problem.List, length float64, propeller quantity.Length) {
	check := func(where, what string, at float64) {
		if !(at >= -endSlack*length && at <= length*(1+endSlack)) {
			faults.Add(where, fmt.Sprintf("%s at %s lies beyond the shaft, whose sections add up to %s", what, problem.Millimetres(at), problem.Millimetres(length)),
				"0 to "+problem.Millimetres(length), "measure from the forward end of the shaft")
		}
	}
	for i, r := range in.Bearings {
		if at := float64(r.At); !(at >= -endSlack*length && at <= length*(1+endSlack)) {
			check(fmt.Sprintf("/bearings/%d/at", i), "a bearing", at)
		}
	}
	in.eachMass(propeller, func(where string, at, _ float64) { check(where, "a mass", at) })
}

// stations are the places where a node must be, in order.
type stations struct {
	at [3*mostParts + 4]float64
	n  int
}

func (s *stations) add(at, length float64) {
	at = min(max(at, 0), length)
	i := s.n
	for i > 0 && s.at[i-1] > at {
		i--
	}
	near := sameNode * length
	if i > 0 && at-s.at[i-1] < near || i < s.n && s.at[i]-at < near {
		return
	}
	copy(s.at[i+1:s.n+1], s.at[i:s.n])
	s.at[i] = at
	s.n++
}

// cut lays nodes at the stations and, between them, no farther apart than
// step.
func (b *beam) cut(s *stations, step float64) {
	step = max(step, s.at[s.n-1]/(mostNodes-float64(len(s.at))-1))
	for i := range s.n - 1 {
		from, to := s.at[i], s.at[i+1]
		parts := max(1, int(math.Ceil((to-from)/step-1e-9)))
		for k := range parts {
			b.x[b.nodes] = from + (to-from)*float64(k)/float64(parts)
			b.nodes++
		}
	}
	b.x[b.nodes] = s.at[s.n-1]
	b.nodes++
}

// nearest is the node nearest to a place.
func (b *beam) nearest(at float64) int {
	best := 0
	for i := range b.nodes {
		if math.Abs(b.x[i]-at) < math.Abs(b.x[best]-at) {
			best = i
		}
	}
	return best
}

// stiffen gives the beam its stiffness and its own mass; it fails as factor
// does.
func (out *WhirlResult) stiffen(in *WhirlInput, b *beam) bool {
	section, end := 0, float64(in.Sections[0].Length)
	out.LeastDiameter = in.Sections[0].Diameter
	for _, s := range in.Sections {
		out.LeastDiameter = min(out.LeastDiameter, s.Diameter)
		out.ShaftMass += quantity.Mass(float64(in.ShaftDensity) * area(float64(s.Diameter), float64(s.Bore)) * float64(s.Length))
	}
	for i := range b.nodes - 1 {
		middle := (b.x[i] + b.x[i+1]) / 2
		for middle > end && section < len(in.Sections)-1 {
			section++
			end += float64(in.Sections[section].Length)
		}
		d, bore := float64(in.Sections[section].Diameter), float64(in.Sections[section].Bore)
		b.addElement(i, float64(in.ElasticModulus)*secondMoment(d, bore))
		b.own[i] = float64(in.ShaftDensity) * area(d, bore) * (b.x[i+1] - b.x[i]) / 420
	}
	b.hold()
	return b.factor()
}

// validate lists everything that cannot be, one by one; how the parts lie to
// each other is checked by lay.
func (in *WhirlInput) validate() problem.List {
	var faults problem.List
	count := func(where, what string, n, least int) {
		if n < least || n > mostParts {
			faults.Add(where, fmt.Sprintf("%d %s", n, what), fmt.Sprintf("%d to %d", least, mostParts), "")
		}
	}
	count("/sections", "sections of shaft", len(in.Sections), 1)
	count("/bearings", "bearings", len(in.Bearings), 2)
	count("/masses", "masses", len(in.Masses), 0)
	for i, s := range in.Sections {
		if ok := s.Length > 0 && s.Diameter > 0 && s.Bore >= 0 && s.Bore < s.Diameter && s.Length < 1e3 && s.Diameter < 1e3; !ok {
			at := fmt.Sprintf("/sections/%d", i)
			faults.Above(at+"/length", "length of the section", float64(s.Length))
			faults.Above(at+"/diameter", "diameter of the section", float64(s.Diameter))
			boreFits(&faults, at+"/bore", float64(s.Bore), float64(s.Diameter))
		}
	}
	for i, r := range in.Bearings {
		if !(r.Length >= 0) || math.IsInf(float64(r.Length), 1) {
			faults.Add(fmt.Sprintf("/bearings/%d/length", i), "the bearing's length is negative or not a number", "0 for not given, or above 0", "")
		}
	}
	for i, m := range in.Masses {
		if !(m.Mass >= 0) || math.IsInf(float64(m.Mass), 1) {
			faults.Add(fmt.Sprintf("/masses/%d/mass", i), "the mass is negative or not a number", "above 0", "")
		}
	}
	faults.NotNegative("/propellerMass", "mass of the propeller", float64(in.PropellerMass))
	faults.NotNegative("/entrainedWater", "share of entrained water", float64(in.EntrainedWater))
	faults.NotNegative("/propellerOverhang", "overhang of the propeller", float64(in.PropellerOverhang))
	if in.Blades < 0 {
		faults.Add("/blades", fmt.Sprintf("%d blades", in.Blades), "1 or more", "0 when not known")
	}
	for _, share := range [...]struct {
		where, what string
		v           quantity.Ratio
	}{{"/endFixity", "hold of the gearbox end", in.EndFixity}, {"/supportFactor", "factor for soft bearings", in.SupportFactor}} {
		if !(share.v >= 0 && share.v <= 1) {
			faults.Add(share.where, "the "+share.what+" is not between 0 and 1", "0 to 1", "")
		}
	}
	faults.NotNegative("/couplingMass", "mass of the coupling flange", float64(in.CouplingMass))
	faults.Above("/shaftSpeed", "shaft speed", float64(in.ShaftSpeed))
	faults.NotNegative("/idleSpeed", "idle speed", float64(in.IdleSpeed))
	faults.NotNegative("/gearRatioAhead", "gear ratio ahead", float64(in.GearRatioAhead))
	faults.Above("/elasticModulus", "stiffness of the metal", float64(in.ElasticModulus))
	faults.Above("/shaftDensity", "density of the metal", float64(in.ShaftDensity))
	faults.NotNegative("/spanGuideFast", "class guide's K2", float64(in.SpanGuideFast))
	faults.NotNegative("/spanGuideSlow", "class guide's K1", float64(in.SpanGuideSlow))
	return faults
}
