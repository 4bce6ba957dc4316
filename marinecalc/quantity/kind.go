// Kinds of quantity.
package quantity

import (
	"slices"
	"strings"
)

// Kind is one kind of quantity: what is measured, and the units it is read
// and printed in. [Lookup], [Kinds] and [Infer] give copies, with which a caller
// may do what he likes; [Kind.Is] compares them. A nil or zero Kind reads
// nothing, has no units, and prints plain numbers.
type Kind struct {
	// Name is the unit type's name in kebab case: "length", "rotation-speed".
	Name string

	metric, us string // usual units
	units      []unit // the first is the coherent SI unit
	noun       string // "a length"
	spellings  map[string]*unit
	folded     map[string]fold
}

var (
	kinds  = slices.Concat(geometryKinds, forceKinds, motionKinds, heatKinds, otherKinds)
	byName = map[string]*Kind{}
)

func init() {
	for _, k := range kinds {
		byName[k.Name] = k
		k.noun = withArticle(strings.ReplaceAll(k.Name, "-", " "))
		k.learnSpellings()
	}
}

// Lookup gives the kind of that name, and whether there is one.
func Lookup(name string) (*Kind, bool) {
	k, ok := byName[name]
	return k.copied(), ok
}

// copied is a kind whose name is the caller's; what else it has nobody can change.
func (k *Kind) copied() *Kind {
	if k == nil {
		return nil
	}
	own := *k
	return &own
}

// Is tells whether two are one kind, or neither is any.
func (k *Kind) Is(other *Kind) bool {
	return k == other || k != nil && other != nil && k.Name == other.Name
}

// Kinds gives all kinds, in the order of the unit types' families.
func Kinds() []*Kind {
	list := slices.Clone(kinds)
	for i := range list {
		list[i] = list[i].copied()
	}
	return list
}

// Units gives the names of the accepted units, the coherent SI unit first.
// Other spellings ("Nm" for "N·m") are accepted too but not listed. A ratio's
// SI unit is "", a plain number. Money has no list: any currency code serves.
func (k *Kind) Units() []string {
	if !k.defined() {
		return nil
	}
	names := make([]string, len(k.units))
	for i := range k.units {
		names[i] = k.units[i].name
	}
	return names
}

// SIUnit is the name of the coherent SI unit, "" for a plain number and for
// money.
func (k *Kind) SIUnit() string {
	if !k.defined() || len(k.units) == 0 {
		return ""
	}
	return k.units[0].name
}

// Usual gives the unit the kind is printed in when no other is preferred; for
// [Both] the metric one. Money has none.
func (k *Kind) Usual(s System) string {
	if !k.defined() {
		return ""
	}
	if s == US {
		return k.us
	}
	return k.metric
}

// Convert gives a value of the coherent SI unit in the named unit, and whether
// the kind has that unit. Clock positions come out from 0 up to 12.
func (k *Kind) Convert(si float64, unit string) (float64, bool) {
	if !k.defined() {
		return 0, false
	}
	u, ok := k.find(unit)
	if !ok {
		return 0, false
	}
	return u.fromSI(si), true
}

func withArticle(noun string) string {
	switch {
	case noun == "money":
		return "an amount of money"
	case strings.ContainsRune("aeio", rune(noun[0])):
		return "an " + noun
	}
	return "a " + noun
}

// moneyUnit serves every currency: amounts are never converted.
var moneyUnit = unit{mul: 1, div: 1, style: currency}

// isMoney tells whether the kind is amounts of money.
func (k *Kind) isMoney() bool { return k.Name == "money" }

// isCurrency tells whether s has the form of an ISO 4217 currency code, three
// capital letters. Whether a country issues it is not checked.
func isCurrency(s string) bool {
	if len(s) != 3 {
		return false
	}
	for i := range 3 {
		if s[i] < 'A' || s[i] > 'Z' {
			return false
		}
	}
	return true
}

// Infer reads a quantity whose unit alone tells its kind, as rule data writes
// its limits: "0.25 in" is a length, "1200 rpm" a rotation speed, "0.9" and
// "90 %" a ratio. Where several kinds share a unit the first of [Kinds] that
// has it is taken, so that "60 °C" is a temperature and not a difference;
// write a difference in K. The error is a [problem.Problem].
func Infer(text string) (Reading, *Kind, error) {
	s := clean(text)
	value, tail, has := cutAccuracy(s)
	_, name, err := scanNumber(value)
	if err == nil && has && name == "" {
		_, name, err = scanNumber(tail)
	}
	if err == nil {
		for _, k := range kinds {
			if _, ok := k.find(name); ok && k.Name != "money" {
				r, err := k.Parse(text)
				return r, k.copied(), err
			}
		}
	}
	ratio := byName["ratio"]
	r, err := ratio.Parse(text) // its error says what is wrong
	return r, ratio.copied(), err
}

// System is the choice of units a boat is shown in.
type System uint8

// The systems of units.
const (
	Metric System = iota // SI and the metric units of the trade
	US                   // US customary units
	Both                 // metric, with US customary in parentheses
)

// ParseSystem reads "metric", "us" or "both", in any case of letters.
func ParseSystem(text string) (System, error) {
	for s := Metric; s <= Both; s++ {
		if strings.EqualFold(strings.TrimSpace(text), s.String()) {
			return s, nil
		}
	}
	return Metric, refusal(quote(text)+" is no system of units", "metric, us, both", `write "metric"`)
}

// String gives the name that [ParseSystem] reads.
func (s System) String() string {
	switch s {
	case US:
		return "us"
	case Both:
		return "both"
	}
	return "metric"
}

// The names of the kinds of quantity, as sheets and schemas have them.
const (
	KindLength                = "length"
	KindArea                  = "area"
	KindVolume                = "volume"
	KindAngle                 = "angle"
	KindDirection             = "direction"
	KindMass                  = "mass"
	KindForce                 = "force"
	KindTorque                = "torque"
	KindEnergy                = "energy"
	KindPower                 = "power"
	KindPressure              = "pressure"
	KindStress                = "stress"
	KindStiffness             = "stiffness"
	KindAngularStiffness      = "angular-stiffness"
	KindTime                  = "time"
	KindFrequency             = "frequency"
	KindRotationSpeed         = "rotation-speed"
	KindVelocity              = "velocity"
	KindInertia               = "inertia"
	KindVolumeFlow            = "volume-flow"
	KindDripRate              = "drip-rate"
	KindTemperature           = "temperature"
	KindTemperatureDifference = "temperature-difference"
	KindSpecificHeat          = "specific-heat"
	KindConductance           = "conductance"
	KindConductivity          = "conductivity"
	KindHeatTransfer          = "heat-transfer"
	KindRatio                 = "ratio"
	KindDensity               = "density"
	KindDynamicViscosity      = "dynamic-viscosity"
	KindKinematicViscosity    = "kinematic-viscosity"
	KindMoney                 = "money"
)
