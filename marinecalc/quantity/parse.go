// Quantities with unit and accuracy.

package quantity

// maxText is the longest text that is read, in bytes.
const maxText = 64

// Reading is a quantity as read from text.
type Reading struct {
	SI       float64 // value in the kind's coherent SI unit, finite
	Accuracy float64 // half-width of the accuracy given with it, in SI, 0 if none
	Unit     string  // unit as written; "" for a plain ratio; the currency code for money
}

// Parse reads a quantity with its unit and, if written, its accuracy:
// "32 mm", "1-11/16 in", "0,05 mm", "45 lbf·ft ± 5 %", "0.05 ± 0.02 mm".
//
// Only a ratio may go without a unit. A percentage as accuracy is of the value,
// except that "75 % ± 5 %" means from 70 % to 80 %. An accuracy of a
// temperature is a difference. A clock position ("3 o'clock") is the angle
// clockwise from 12, which itself is 0. The error is a [problem.Problem].
func (k *Kind) Parse(text string) (Reading, error) {
	if !k.defined() {
		return Reading{}, errNoKind
	}
	s, err := k.admit(text)
	if err != nil {
		return Reading{}, err
	}
	value, tail, has := cutAccuracy(s)
	x, name, err := scanNumber(value)
	if err != nil {
		return Reading{}, k.explain(err)
	}
	var half float64
	var halfName string
	if has {
		if half, halfName, err = k.scanHalf(tail); err != nil {
			return Reading{}, err
		}
		if name == "" && !isPercent(halfName) {
			name = halfName // "0.05 ± 0.02 mm"
		}
	}
	u, ok := k.find(name)
	if !ok && name == "" && x == 0 && k.Name != "temperature" && !k.isMoney() {
		u, ok = &k.units[0], true // none is none in every unit
	}
	if !ok {
		if name == "" && isPercent(halfName) {
			return Reading{}, k.refuseBare(value, tail)
		}
		return Reading{}, k.refuseUnit(value, name)
	}
	if err := k.inRange(x, u, value); err != nil {
		return Reading{}, err
	}
	r := Reading{SI: u.toSI(x), Unit: name}
	if has {
		if r.Accuracy, err = k.halfWidth(tail, half, halfName, r.SI, u, name); err != nil {
			return Reading{}, err
		}
	}
	return r, nil
}

// admit refuses text that is too long or empty, asks where it can mean several
// things, and cleans the rest.
func (k *Kind) admit(text string) (string, error) {
	if len(text) > maxText {
		return "", k.refuseLong(text)
	}
	s := clean(text)
	if s == "" {
		return "", k.refuseEmpty()
	}
	if err := k.asked(s); err != nil {
		return "", err
	}
	return k.everyday(s), nil
}

// inRange refuses what cannot be: temperatures below absolute zero and hours
// no clock shows.
func (k *Kind) inRange(x float64, u *unit, text string) error {
	switch {
	case k.Name == "temperature" && x+u.shift < 0:
		return refusal(quote(text)+" is below absolute zero", "temperatures from -273.15 °C (0 K) up", "check the sign and the unit")
	case u.style == clock && (x < 0 || x >= 13):
		return refusal(quote(text)+" is on no clock face", "clock positions from 0 to 12 o'clock", `write "3 o'clock", or the angle as "90°"`)
	}
	return nil
}
