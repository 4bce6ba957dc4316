// Kinds of quantity.

package quantity

import (
	"slices"
	"strings"
)

// Kind is one kind of quantity: what is measured, and the units it is read
// and printed in. [Lookup] and [Kinds] give them; a nil or zero Kind reads
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
	return k, ok
}

// Kinds gives all kinds, in the order of the unit types' families.
func Kinds() []*Kind { return slices.Clone(kinds) }

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
