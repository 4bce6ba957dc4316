package calc

import (
	"fmt"

	"example.org/driveline/marinecalc/internal/contract"
	"example.org/driveline/marinecalc/quantity"
)

// All money of one run is in one currency: amounts are never converted, so
// that two currencies cannot be reckoned together. A bare number is taken to
// be in the currency of the others.

// isMoney tells whether a property is an amount of money.
func isMoney(p *contract.Property) bool { return p.Kind != nil && p.Kind.Name == "money" }

// sameCurrency notes the currency of an amount, and refuses a second one.
func (in *inputs) sameCurrency(p *contract.Property, k *known) {
	text, written := k.raw.(string)
	if !isMoney(p) || !written {
		return
	}
	r, err := p.Kind.Parse(text)
	switch {
	case err != nil: // said where the number was read
	case in.currency == "":
		in.currency = r.Unit
	case in.currency != r.Unit:
		in.problems.Add(k.blameAt, fmt.Sprintf("%s is in %s, other amounts are in %s", p.Title, r.Unit, in.currency),
			"one currency for all amounts; nothing is converted", "write it in "+in.currency)
	}
}

// show prints a value of the run in the unit system in force.
func (in *inputs) show(p *contract.Property, si float64) string {
	return in.showIn(p, si, in.session.Units)
}

// showIn prints a value of the run in a unit system, money in its currency.
func (in *inputs) showIn(p *contract.Property, si float64, units quantity.System) string {
	if isMoney(p) {
		return p.Kind.Print(si, units, in.currency, in.currency)
	}
	return Show(p, si, units)
}

// showSpan prints a range of the run in the unit system in force. One that
// reaches to what never comes has no upper end.
func (in *inputs) showSpan(p *contract.Property, low, high float64) string {
	if neverComes(p, high) {
		return in.show(p, low) + " or more"
	}
	if isMoney(p) {
		return p.Kind.In(in.currency, in.currency).PrintSpan(low, high, in.session.Units)
	}
	return showSpan(p, low, high, in.session.Units)
}

// showBeside prints a range beside its value, or nothing where both of its
// ends print as the value does.
func (in *inputs) showBeside(p *contract.Property, si, low, high float64) string {
	text := in.showSpan(p, low, high)
	if text == in.showSpan(p, si, si) {
		return ""
	}
	return text
}
