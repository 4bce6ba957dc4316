package quantity

import "math"

// Constants of the unit types, so that a value can be written with its unit:
// 10*quantity.Millimetre, 45*quantity.PoundForceFoot. Each is the exact
// factor between the unit and the coherent SI unit, rounded once to a float64;
// definitions.go has the definitions that they are products of, with their
// sources. The metric prefixes are those of the SI Brochure, 9th ed., table 7.

// Lengths. The inch is 25.4 mm exactly (NIST SP 811, Appendix B); a thou is 1/1000 in.
const (
	Metre        Length = 1
	Millimetre   Length = 1e-3
	Centimetre   Length = 1e-2
	Micrometre   Length = 1e-6
	Kilometre    Length = 1e3
	Inch         Length = inch
	Thou         Length = inch / 1000
	Foot         Length = foot
	Yard         Length = yard
	NauticalMile Length = nauticalMile
)

// Areas.
const (
	SquareMetre      Area = 1
	SquareMillimetre Area = 1e-6
	SquareCentimetre Area = 1e-4
	SquareInch       Area = inch * inch
	SquareFoot       Area = foot * foot
)

// Volumes. The US gallon is 231 in³ (NIST SP 811, Appendix B), the imperial gallon
// 4.54609 L.
const (
	CubicMetre      Volume = 1
	Litre           Volume = 1e-3
	Millilitre      Volume = 1e-6
	CubicMillimetre Volume = 1e-9
	CubicInch       Volume = inch * inch * inch
	CubicFoot       Volume = foot * foot * foot
	USGallon        Volume = usGallon
	ImperialGallon  Volume = ukGallon
)

// Masses.
const (
	Kilogram Mass = 1
	Gram     Mass = 1e-3
	Tonne    Mass = 1e3
	Pound    Mass = pound
	Ounce    Mass = ounce
)

// Forces. The pound-force is a pound at the standard acceleration of free
// fall, 9.80665 m/s² (NIST SP 811, Appendix B).
const (
	Newton        Force = 1
	Kilonewton    Force = 1e3
	PoundForce    Force = lbf
	KilogramForce Force = kgf
)

// Torques.
const (
	NewtonMetre        Torque = 1
	KilonewtonMetre    Torque = 1e3
	PoundForceFoot     Torque = lbfFoot
	PoundForceInch     Torque = lbfInch
	KilogramForceMetre Torque = kgf
)

// Powers. The horsepower is 550 ft·lbf/s, the metric one (PS) 75 kgf·m/s.
const (
	Watt             Power = 1
	Kilowatt         Power = 1e3
	Horsepower       Power = 550 * lbfFoot
	MetricHorsepower Power = 75 * kgf
)

// Energies. The Btu is that of the International Table.
const (
	Joule        Energy = 1
	Kilojoule    Energy = 1e3
	Megajoule    Energy = 1e6
	WattHour     Energy = hour
	KilowattHour Energy = 1e3 * hour
	Btu          Energy = btu
)

// Pressures of fluids.
const (
	Pascal             Pressure = 1
	Kilopascal         Pressure = 1e3
	Bar                Pressure = 1e5
	Millibar           Pressure = 1e2
	PoundPerSquareInch Pressure = lbf / (inch * inch)
	Atmosphere         Pressure = 101325
)

// Stresses in solids.
const (
	StressPascal             Stress = 1
	Megapascal               Stress = 1e6
	Gigapascal               Stress = 1e9
	StressPoundPerSquareInch Stress = lbf / (inch * inch)
	KilopoundPerSquareInch   Stress = 1e3 * lbf / (inch * inch)
)

// Speeds of rotation.
const (
	RadianPerSecond     RotationSpeed = 1
	RevolutionPerMinute RotationSpeed = math.Pi / 30
	RevolutionPerSecond RotationSpeed = 2 * math.Pi
)

// Kelvin is the only unit of temperature that begins at absolute zero; for the
// others see [Celsius] and [Fahrenheit].
const Kelvin Temperature = 1

// Differences of temperature.
const (
	KelvinDifference     TemperatureDifference = 1
	FahrenheitDifference TemperatureDifference = fahrenheit
)

// Flows by volume.
const (
	CubicMetrePerSecond VolumeFlow = 1
	LitrePerMinute      VolumeFlow = 1e-3 / minute
	LitrePerHour        VolumeFlow = 1e-3 / hour
	LitrePerDay         VolumeFlow = 1e-3 / day
	USGallonPerHour     VolumeFlow = usGallon / hour
)

// Drip rates.
const (
	DripPerSecond DripRate = 1
	DripPerMinute DripRate = 1.0 / minute
)

// Stiffnesses.
const (
	NewtonPerMetre      Stiffness = 1
	NewtonPerMillimetre Stiffness = 1e3
	PoundForcePerInch   Stiffness = lbf / inch
)

// Angular stiffnesses.
const (
	NewtonMetrePerRadian    AngularStiffness = 1
	NewtonMetrePerDegree    AngularStiffness = 180 / math.Pi
	PoundForceFootPerDegree AngularStiffness = lbfFoot * 180 / math.Pi
)

// Times. The year is of 365 days (NIST SP 811, Appendix B).
const (
	Second      Time = 1
	Millisecond Time = 1e-3
	Minute      Time = minute
	Hour        Time = hour
	Day         Time = day
	Week        Time = 7 * day
	Year        Time = year
)

// Angles. A millimetre per metre is a slope, read as a small angle.
const (
	Radian             Angle = 1
	Milliradian        Angle = 1e-3
	Degree             Angle = math.Pi / 180
	Turn               Angle = 2 * math.Pi
	MillimetrePerMetre Angle = 1e-3
)

// Directions. 3*quantity.OClock is to starboard as one looks forward.
const (
	DirectionRadian Direction = 1
	DirectionDegree Direction = math.Pi / 180
	OClock          Direction = math.Pi / 6
)

// Ratios.
const (
	One             Ratio = 1
	Percent         Ratio = 1e-2
	PartsPerMillion Ratio = 1e-6
)

// Densities.
const (
	KilogramPerCubicMetre Density = 1
	KilogramPerLitre      Density = 1e3
	PoundPerCubicFoot     Density = pound / (foot * foot * foot)
)

// Specific heats.
const (
	JoulePerKilogramKelvin     SpecificHeat = 1
	KilojoulePerKilogramKelvin SpecificHeat = 1e3
	BtuPerPoundFahrenheit      SpecificHeat = 4186.8
)

// Conductances of heat.
const (
	WattPerKelvin        Conductance = 1
	BtuPerHourFahrenheit Conductance = btu / (hour * fahrenheit)
)

// Conductivities of heat.
const (
	WattPerMetreKelvin       Conductivity = 1
	BtuPerHourFootFahrenheit Conductivity = btu / (hour * foot * fahrenheit)
)

// Coefficients of heat transfer.
const (
	WattPerSquareMetreKelvin       HeatTransfer = 1
	BtuPerHourSquareFootFahrenheit HeatTransfer = btu / (hour * foot * foot * fahrenheit)
)

// Dynamic viscosities.
const (
	PascalSecond      DynamicViscosity = 1
	MillipascalSecond DynamicViscosity = 1e-3
	Centipoise        DynamicViscosity = 1e-3
)

// Kinematic viscosities.
const (
	SquareMetrePerSecond      KinematicViscosity = 1
	SquareMillimetrePerSecond KinematicViscosity = 1e-6
	Centistokes               KinematicViscosity = 1e-6
)

// Frequencies.
const (
	Hertz          Frequency = 1
	Kilohertz      Frequency = 1e3
	CyclePerMinute Frequency = 1.0 / minute
)

// Velocities. The knot is a nautical mile in an hour.
const (
	MetrePerSecond      Velocity = 1
	MillimetrePerSecond Velocity = 1e-3
	KilometrePerHour    Velocity = 1e3 / hour
	Knot                Velocity = nauticalMile * 1.0 / hour
	FootPerSecond       Velocity = foot
	InchPerSecond       Velocity = inch
)

// Moments of inertia.
const (
	KilogramSquareMetre Inertia = 1
	PoundSquareFoot     Inertia = pound * foot * foot
)

// Celsius gives a temperature in degrees Celsius: 0 °C is 273.15 K exactly (SI
// Brochure, 9th ed., 2.3.1).
func Celsius(degrees float64) Temperature { return Temperature(degrees + 273.15) }

// Fahrenheit gives a temperature in degrees Fahrenheit: K = (°F + 459.67)·5/9
// exactly (NIST SP 811, Appendix B).
func Fahrenheit(degrees float64) Temperature { return Temperature((degrees + 459.67) * 5 / 9) }
