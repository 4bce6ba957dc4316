// Units of time, speed, inertia and flow.

package quantity

import "math"

var motionKinds = []*Kind{
	{Name: "time", metric: "h", us: "h", units: []unit{
		{name: "s", mul: 1, div: 1, also: "sec,second,seconds", larger: step{1000, "min"}},
		{name: "ms", mul: 1, div: 1e3},
		{name: "min", mul: minute, div: 1, also: "Min,MIN,mins,minute,minutes", smaller: step{0.1, "s"}, larger: step{300, "h"}},
		{name: "h", mul: hour, div: 1, also: "hr,hrs,hour,hours", smaller: step{0.1, "min"}},
		{name: "day", mul: day, div: 1, also: "d,days", smaller: step{0.1, "h"}, larger: step{1000, "year"}},
		{name: "week", mul: 7 * day, div: 1, also: "weeks"},
		{name: "year", mul: year, div: 1, also: "yr,yrs,years", smaller: step{0.1, "day"}},
	}},
	{Name: "frequency", metric: "Hz", us: "Hz", units: []unit{
		{name: "Hz", mul: 1, div: 1},
		{name: "kHz", mul: 1e3, div: 1},
		{name: "cpm", mul: 1, div: minute, also: "cycles/min,cycle/min"},
	}},
	{Name: "rotation-speed", metric: "rpm", us: "rpm", units: []unit{
		{name: "rad/s", mul: 1, div: 1},
		{name: "rpm", mul: math.Pi, div: 30, also: "r/min,rev/min,turns/min"},
		{name: "rev/s", mul: 2 * math.Pi, div: 1, also: "r/s,turns/s"},
		{name: "deg/s", mul: math.Pi, div: 180, also: "°/s"},
	}},
	{Name: "velocity", metric: "m/s", us: "ft/s", units: []unit{
		{name: "m/s", mul: 1, div: 1},
		{name: "mm/s", mul: 1, div: 1e3},
		{name: "km/h", mul: 1e3, div: hour},
		{name: "kn", mul: nauticalMile, div: hour, also: "kt,kts,knot,knots"},
		{name: "ft/s", mul: foot * 1e4, div: 1e4},
		{name: "ft/min", mul: foot * 1e4, div: minute * 1e4},
		{name: "in/s", mul: inch * 1e4, div: 1e4},
		{name: "mph", mul: mile * 1e3, div: hour * 1e3},
	}},
	{Name: "inertia", metric: "kg·m²", us: "lb·ft²", units: []unit{
		{name: "kg·m²", mul: 1, div: 1},
		{name: "kg·cm²", mul: 1, div: 1e4},
		{name: "lb·ft²", mul: pound * foot * foot, div: 1},
		{name: "lb·in²", mul: pound * inch * inch, div: 1},
	}},
	{Name: "volume-flow", metric: "L/h", us: "US gal/h", units: []unit{
		{name: "m³/s", mul: 1, div: 1},
		{name: "m³/h", mul: 1, div: hour, also: "m³/hr"},
		{name: "L/s", mul: 1, div: 1e3},
		{name: "L/min", mul: 1, div: 1e3 * minute},
		{name: "L/h", mul: 1, div: 1e3 * hour, also: "L/hr"},
		{name: "L/day", mul: 1, div: 1e3 * day, also: "L/d"},
		{name: "mL/s", mul: 1, div: 1e6},
		{name: "mL/min", mul: 1, div: 1e6 * minute, also: "cm³/min,cc/min"},
		{name: "mL/h", mul: 1, div: 1e6 * hour, also: "mL/hr"},
		{name: "US gal/min", mul: usGallon * 1e12, div: minute * 1e12, also: "gal (US)/min"},
		{name: "US gal/h", mul: usGallon * 1e12, div: hour * 1e12, also: "US gal/hr,gal (US)/h"},
		{name: "US gal/day", mul: usGallon * 1e12, div: day * 1e12, also: "US gal/d,gal (US)/day"},
	}},
	{Name: "drip-rate", metric: "drips/min", us: "drips/min", units: []unit{
		{name: "drips/s", mul: 1, div: 1, also: "drip/s,drops/s,drop/s"},
		{name: "drips/min", mul: 1, div: minute, also: "drip/min,drops/min,drop/min,drips per minute,drops per minute"},
		{name: "drips/h", mul: 1, div: hour, also: "drip/h,drops/h,drop/h,drips/hr"},
	}},
}
