package picture

import (
	"math"

	"example.org/driveline/marinecalc/quantity"
)

// Brush gives the drawings the unit system and the currency in force. It
// prints a quantity as drawings do: a length in mm or in, unless another unit
// is asked for by Print.
type Brush struct {
	Units    quantity.System
	Currency string
	Titles   func(result, code string) string // what people read for the code that a result has
	Open     func(result string) bool         // whether a result tells nothing, as a direction that may be any; nil: all tell
}

// Tells says whether a result is worth drawing.
func (b Brush) Tells(result string) bool { return b.Open == nil || !b.Open(result) }

// Words gives what people read for the code that a result has.
func (b Brush) Words(result, code string) string { return b.Titles(result, code) }

// Single is the brush for letters in a drawing that have no space for two
// systems.
func (b Brush) Single() Brush {
	if b.Units == quantity.Both {
		b.Units = quantity.Metric
	}
	return b
}

const finestGauge = 1e-5 // m; what a dial reads

// Print prints a value of a kind of quantity in the unit of each system, to
// three digits: a picture says no more than its sheet. Lengths and money keep
// theirs, as they are cut and paid, lengths as far as a gauge reads.
func (b Brush) Print(kind string, si float64, metric, us string) string {
	k, _ := quantity.Lookup(kind)
	switch {
	case kind == "length" && math.Abs(si) >= finestGauge:
		return k.In(metric, us).PrintTo(si, finestGauge, b.Units)
	case kind == "length": // of particles
		return k.In(metric, us).PrintFigures(si, 2, b.Units)
	case kind == "money":
		return k.Print(si, b.Units, metric, us)
	}
	return string(k.In(metric, us).AppendFigures(nil, si, 3, b.Units))
}

// Length prints a length in mm or in.
func (b Brush) Length(v quantity.Length) string { return b.Print("length", float64(v), "mm", "in") }

// SmallLength prints a gap, a move or a droop in mm or thousandths of an inch:
// below a millimetre to two digits, which no feeler or dial goes beyond, above
// to three.
func (b Brush) SmallLength(v quantity.Length) string {
	k, _ := quantity.Lookup("length")
	size, shown := math.Abs(float64(v)), k.In("mm", "thou")
	switch {
	case size < finestGauge: // by a dial's reading it is hardly there
		return shown.PrintTo(float64(v), finestGauge, b.Units)
	case size < 0.9995e-3:
		return shown.PrintFigures(float64(v), 2, b.Units)
	}
	return shown.PrintFigures(float64(v), 3, b.Units)
}

// SetLength prints a length that a hand sets, in mm to a hundredth or in thousandths
// of an inch, as its sheet does.
func (b Brush) SetLength(v quantity.Length) string {
	k, _ := quantity.Lookup("length")
	return k.In("mm", "thou").PrintTo(float64(v), 20*finestGauge, b.Units)
}

// Torque prints a torque in N·m or lbf·ft.
func (b Brush) Torque(v quantity.Torque) string {
	return b.Print("torque", float64(v), "N·m", "lbf·ft")
}

// Force prints a force in N or lbf.
func (b Brush) Force(v quantity.Force) string {
	metric := "N"
	if math.Abs(float64(v)) >= 1e4 {
		metric = "kN"
	}
	return b.Print("force", float64(v), metric, "lbf")
}

// Percent prints a share.
func (b Brush) Percent(v quantity.Ratio) string { return b.Print("ratio", float64(v), "%", "%") }

// RotationSpeed prints a speed of rotation in rpm.
func (b Brush) RotationSpeed(v quantity.RotationSpeed) string {
	return b.Print("rotation-speed", float64(v), "rpm", "rpm")
}

// Frequency prints a frequency in Hz.
func (b Brush) Frequency(v quantity.Frequency) string {
	return b.Print("frequency", float64(v), "Hz", "Hz")
}

// Money prints an amount in the currency of the run, as a guess: in tens and more.
func (b Brush) Money(amount quantity.Money) string {
	k, _ := quantity.Lookup("money")
	return k.In(b.Currency, b.Currency).PrintTo(float64(amount), 0.05*math.Abs(float64(amount)), b.Units)
}
