// Units of length, area, volume and angle.

package quantity

import "math"

var geometryKinds = []*Kind{
	{Name: "length", metric: "mm", us: "in", units: []unit{
		{name: "m", mul: 1, div: 1, also: "metre,metres,meter,meters"},
		{name: "mm", mul: 1, div: 1e3, also: "MM,millimetre,millimetres,millimeter,millimeters", smaller: step{0.001, "µm"}},
		{name: "cm", mul: 1, div: 1e2},
		{name: "µm", mul: 1, div: 1e6, also: "micron,microns", larger: step{1000, "mm"}},
		{name: "km", mul: 1e3, div: 1},
		{name: "in", mul: inch * 1e4, div: 1e4, also: `",inch,inches`, style: workshop},
		{name: "thou", mul: inch * 1e4, div: 1e7, also: "mil,mils", style: coarse},
		{name: "ft", mul: foot * 1e4, div: 1e4, also: "',foot,feet"},
		{name: "yd", mul: yard * 1e4, div: 1e4, also: "yard,yards"},
		{name: "nmi", mul: nauticalMile, div: 1, also: "nautical mile,nautical miles"},
	}},
	{Name: "area", metric: "mm²", us: "in²", units: []unit{
		{name: "m²", mul: 1, div: 1, also: "sq m"},
		{name: "mm²", mul: 1, div: 1e6, also: "sq mm"},
		{name: "cm²", mul: 1, div: 1e4, also: "sq cm"},
		{name: "in²", mul: inch * inch * 1e8, div: 1e8, also: "sq in"},
		{name: "ft²", mul: foot * foot * 1e8, div: 1e8, also: "sq ft"},
	}},
	{Name: "volume", metric: "L", us: "US gal", units: []unit{
		{name: "m³", mul: 1, div: 1, also: "cubic m,cu m"},
		{name: "L", mul: 1, div: 1e3, also: "litre,litres,liter,liters,dm³"},
		{name: "mL", mul: 1, div: 1e6, also: "millilitre,millilitres,milliliter,milliliters"},
		{name: "cm³", mul: 1, div: 1e6, also: "cc"},
		{name: "mm³", mul: 1, div: 1e9, also: "cubic mm,cu mm"},
		{name: "in³", mul: inch * inch * inch * 1e12, div: 1e12, also: "cubic in,cu in,cubic inch,cubic inches"},
		{name: "ft³", mul: foot * foot * foot * 1e12, div: 1e12, also: "cubic ft,cu ft,cubic foot,cubic feet"},
		{name: "US gal", mul: usGallon * 1e12, div: 1e12, also: "gal (US),gal US,US gallon,US gallons"},
		{name: "US qt", mul: usGallon * 1e12, div: 4e12, also: "qt (US),qt US,US quart,US quarts"},
		{name: "US pt", mul: usGallon * 1e12, div: 8e12, also: "pt (US),pt US,US pint,US pints"},
		{name: "US fl oz", mul: usGallon * 1e12, div: 128e12, also: "fl oz (US),fl oz US"},
		{name: "imp gal", mul: ukGallon * 1e8, div: 1e8, also: "gal (imp),gal (UK),UK gal,imperial gallon,imperial gallons"},
	}},
	// Slopes are read as small angles, tangent = angle: 1 mm/m is 1/1000 rad,
	// off by less than 0.01 % up to 17 mm/m.
	{Name: "angle", metric: "°", us: "°", units: []unit{
		{name: "rad", mul: 1, div: 1, also: "radian,radians"},
		{name: "mrad", mul: 1, div: 1e3},
		{name: "°", mul: math.Pi, div: 180, also: "deg,degree,degrees"},
		{name: "arcmin", mul: math.Pi, div: 180 * 60},
		{name: "turn", mul: 2 * math.Pi, div: 1, also: "turns,rev,revolution,revolutions"},
		{name: "flat", mul: math.Pi, div: 3, also: "flats"}, // of a hexagon nut
		{name: "o'clock", mul: math.Pi, div: 6, also: "oclock", style: clock},
		{name: "mm/m", mul: 1, div: 1e3},
		{name: "µm/m", mul: 1, div: 1e6},
		{name: "thou/in", mul: 1, div: 1e3, also: "mil/in,mils/in,thou/inch"},
	}},
	// A direction across the line, clockwise from the top as one looks forward.
	// Unlike an angle it has no beginning and no end.
	{Name: "direction", metric: "°", us: "°", units: []unit{
		{name: "rad", mul: 1, div: 1, also: "radian,radians"},
		{name: "°", mul: math.Pi, div: 180, also: "deg,degree,degrees"},
		{name: "o'clock", mul: math.Pi, div: 6, also: "oclock", style: clock},
	}},
}
