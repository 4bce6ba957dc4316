// Units of temperature and heat.

package quantity

var heatKinds = []*Kind{
	{Name: "temperature", metric: "°C", us: "°F", units: []unit{
		{name: "K", mul: 1, div: 1, also: "kelvin"},
		{name: "°C", mul: 1, div: 1, shift: 273.15, also: "C,deg C", style: degrees},
		{name: "°F", mul: 5, div: 9, shift: 459.67, also: "F,deg F", style: degrees},
	}},
	{Name: "temperature-difference", metric: "°C", us: "°F", units: []unit{
		{name: "K", mul: 1, div: 1, also: "kelvin"},
		{name: "°C", mul: 1, div: 1, also: "C,deg C"},
		{name: "°F", mul: 5, div: 9, also: "F,deg F"},
	}},
	{Name: "specific-heat", metric: "kJ/(kg·K)", us: "Btu/(lb·°F)", units: []unit{
		{name: "J/(kg·K)", mul: 1, div: 1, also: "J/(kg·°C),J/kg/K"},
		{name: "kJ/(kg·K)", mul: 1e3, div: 1, also: "kJ/(kg·°C),kJ/kg/K"},
		{name: "Btu/(lb·°F)", mul: 41868, div: 10, also: "Btu/(lb·F),Btu/lb/°F"},
	}},
	{Name: "conductance", metric: "W/K", us: "Btu/(h·°F)", units: []unit{
		{name: "W/K", mul: 1, div: 1, also: "W/°C"},
		{name: "kW/K", mul: 1e3, div: 1, also: "kW/°C"},
		{name: "Btu/(h·°F)", mul: btu, div: hour * fahrenheit, also: "Btu/(h·F),Btu/h/°F"},
	}},
	{Name: "conductivity", metric: "W/(m·K)", us: "Btu/(h·ft·°F)", units: []unit{
		{name: "W/(m·K)", mul: 1, div: 1, also: "W/(m·°C),W/m/K"},
		{name: "Btu/(h·ft·°F)", mul: btu, div: hour * foot * fahrenheit, also: "Btu/(h·ft·F),Btu/h/ft/°F"},
		{name: "Btu·in/(h·ft²·°F)", mul: btu * inch, div: hour * foot * foot * fahrenheit, also: "Btu·in/(h·ft²·F)"},
	}},
	{Name: "heat-transfer", metric: "W/(m²·K)", us: "Btu/(h·ft²·°F)", units: []unit{
		{name: "W/(m²·K)", mul: 1, div: 1, also: "W/(m²·°C),W/m²/K"},
		{name: "kW/(m²·K)", mul: 1e3, div: 1, also: "kW/(m²·°C)"},
		{name: "Btu/(h·ft²·°F)", mul: btu, div: hour * foot * foot * fahrenheit, also: "Btu/(h·ft²·F),Btu/h/ft²/°F"},
	}},
}
