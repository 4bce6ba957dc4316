package quantity

// The exact definitions that every factor is a product of. As untyped
// constants they are multiplied exactly and rounded once.
//
// Source: NIST SP 811 (2008), Appendix B, and SI Brochure, 9th ed.; values
// from memory, checked against each other in the tests.
const (
	inch         = 0.0254      // m, international inch
	foot         = 12 * inch   // m
	yard         = 3 * foot    // m
	nauticalMile = 1852        // m
	mile         = 1760 * yard // m, international mile

	pound    = 0.45359237 // kg, avoirdupois
	ounce    = pound / 16 // kg
	gravity  = 9.80665    // m/s², standard acceleration of free fall
	lbf      = pound * gravity
	kgf      = 1 * gravity
	lbfFoot  = lbf * foot
	lbfInch  = lbf * inch
	usGallon = 231 * inch * inch * inch // m³
	ukGallon = 0.00454609               // m³

	minute = 60
	hour   = 60 * minute
	day    = 24 * hour
	year   = 365 * day // the 365 d year of NIST SP 811

	fahrenheit = 5.0 / 9                     // K, one degree Fahrenheit
	btu        = 4186.8 * pound * fahrenheit // J, International Table British thermal unit
)
