// Package quantity reads and writes quantities as people in a workshop write
// them ("1-11/16 in", "24 thou", "45 lbf·ft ± 5 %") and holds the exact
// factors between their units and the coherent SI unit.
//
// A [Kind] is what is measured (a length, a torque); it parses text, prints
// values, and names its units. Every value inside the library is a float64 in
// the coherent SI unit of its kind, given by the unit types ([Length], …).
//
// All refusals are [problem.Problem] values with Where left empty for the
// caller to fill.
package quantity
