package marinecalc

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
func (f *filling) sameCurrency(p *contract.Property, k *known) {
	text, written := k.raw.(string)
	if !isMoney(p) || !written {
		return
	}
	r, err := p.Kind.Parse(text)
	switch {
	case err != nil: // said where the number was read
	case f.currency == "":
		f.currency = r.Unit
	case f.currency != r.Unit:
		f.problems.Add(k.where, fmt.Sprintf("%s is in %s, other amounts are in %s", p.Title, r.Unit, f.currency),
			"one currency for all amounts; nothing is converted", "write it in "+f.currency)
	}
}

// show prints a value of the run in the unit system in force.
func (f *filling) show(p *contract.Property, si float64) string {
	return f.showIn(p, si, f.session.units)
}

// showIn prints a value of the run in a unit system, money in its currency.
func (f *filling) showIn(p *contract.Property, si float64, units quantity.System) string {
	if isMoney(p) {
		return p.Kind.Print(si, units, f.currency, f.currency)
	}
	return show(p, si, units)
}

// showSpan prints a range of the run in the unit system in force. One that
// reaches to what never comes has no upper end.
func (f *filling) showSpan(p *contract.Property, low, high float64) string {
	if neverComes(p, high) {
		return f.show(p, low) + " or more"
	}
	if isMoney(p) {
		return p.Kind.In(f.currency, f.currency).PrintSpan(low, high, f.session.units)
	}
	return showSpan(p, low, high, f.session.units)
}

// showBeside prints a range beside its value, or nothing where both of its
// ends print as the value does.
func (f *filling) showBeside(p *contract.Property, si, low, high float64) string {
	text := f.showSpan(p, low, high)
	if text == f.showSpan(p, si, si) {
		return ""
	}
	return text
}

// money prints an amount in the currency of the run.
func (b brush) money(amount quantity.Money) string {
	kind, _ := quantity.Lookup("money")
	return kind.Print(float64(amount), b.units, b.currency, b.currency)
}
