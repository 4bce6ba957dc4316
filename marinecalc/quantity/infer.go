// Quantities whose unit tells their kind.

package quantity

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
				return r, k, err
			}
		}
	}
	ratio := byName["ratio"]
	r, err := ratio.Parse(text) // its error says what is wrong
	return r, ratio, err
}
