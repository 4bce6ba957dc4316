package quantity

import (
	"math"
)

// The unit types: what a value means and its coherent SI unit. Each is a plain
// float64; the kind of the same name, in kebab case, parses and prints it. The
// usual ranges tell what the drivetrain of a boat mostly has, for orientation
// (common practice, no source); nothing checks them.

// Length is a length, a diameter, a gap or a deflection. SI unit: m; usual:
// 0.01 mm of a feeler gauge to 20 m of shaft.
type Length float64

// Area is an area, such as the stress area of a thread. SI unit: m²; usual: 10
// mm² to 0.1 m².
type Area float64

// Volume is a volume of fluid or of worn metal. SI unit: m³; usual: 0.05 mL of
// a drip to 1 m³ of a bilge.
type Volume float64

// Mass is a mass; what a scale shows. SI unit: kg; usual: 1 g of worn metal to
// 5 t of engine.
type Mass float64

// Force is a force: clamp load, thrust or weight. SI unit: N; usual: 1 N to 1
// MN.
type Force float64

// Torque is a torque or a bending moment. SI unit: N·m; usual: 1 N·m of a
// small bolt to 10 kN·m of a shaft.
type Torque float64

// Power is a power, mechanical, electrical or of heat. SI unit: W; usual: 1 W
// of standing load to 1 MW of an engine.
type Power float64

// Energy is an energy. SI unit: J; usual: 1 J to 100 MJ of a battery bank.
type Energy float64

// Pressure is a pressure of a fluid. SI unit: Pa; usual: 1 kPa to 10 MPa.
type Pressure float64

// Stress is a stress in a solid, its strength, or its modulus of elasticity.
// SI unit: Pa; usual: 0.1 MPa of packing to 210 GPa.
type Stress float64

// RotationSpeed is a speed of rotation. SI unit: rad/s; usual: 10 rad/s to 500
// rad/s, about 100 to 5000 rpm.
type RotationSpeed float64

// Temperature is a temperature, counted from absolute zero. SI unit: K; usual:
// 253 K to 473 K, -20 to 200 °C.
type Temperature float64

// TemperatureDifference is a difference of two temperatures. SI unit: K;
// usual: 0.5 K to 100 K.
type TemperatureDifference float64

// VolumeFlow is a flow of fluid by volume. SI unit: m³/s; usual: 1 mL/h to 200
// L/min.
type VolumeFlow float64

// DripRate is drips counted in a time, as of a stuffing box. SI unit: drips
// per second; usual: 0 to 20 drips per second.
type DripRate float64

// Stiffness is a force for each unit of deflection. SI unit: N/m; usual: 10
// N/mm of a soft mount to 10 MN/mm of a bolted joint.
type Stiffness float64

// AngularStiffness is a torque for each unit of angle. SI unit: N·m/rad;
// usual: 10 N·m/rad to 1 MN·m/rad.
type AngularStiffness float64

// Time is a time, from one turn of a shaft to years of service. SI unit: s;
// usual: 1 ms to 30 years.
type Time float64

// Angle is an angle between two lines, or turned through. SI unit: rad; usual:
// 0.01 mrad of misalignment to several turns.
type Angle float64

// Direction is a direction across the line, clockwise from the top as one
// looks forward. SI unit: rad; usual: 0 to 2π.
type Direction float64

// Ratio is a ratio, a share, a factor or a coefficient, without unit. SI unit:
// 1; usual: 1 ppm to 1000.
type Ratio float64

// Density is a mass for each unit of volume. SI unit: kg/m³; usual: 800 kg/m³
// of oil to 9000 kg/m³ of bronze.
type Density float64

// SpecificHeat is the heat that warms a unit of mass by a kelvin. SI unit:
// J/(kg·K); usual: 400 J/(kg·K) of steel to 4200 J/(kg·K) of water.
type SpecificHeat float64

// Conductance is a flow of heat for each kelvin between two places. SI unit:
// W/K; usual: 0.01 W/K to 100 W/K.
type Conductance float64

// Conductivity is a material's conduction of heat. SI unit: W/(m·K); usual:
// 0.1 W/(m·K) of packing to 400 W/(m·K) of copper.
type Conductivity float64

// HeatTransfer is a flow of heat through a unit of area for each kelvin. SI
// unit: W/(m²·K); usual: 5 W/(m²·K) in still air to 5 kW/(m²·K) in water.
type HeatTransfer float64

// DynamicViscosity is a fluid's shear stress over its rate of shear. SI unit:
// Pa·s; usual: 0.5 mPa·s of warm water to 1 Pa·s of cold oil.
type DynamicViscosity float64

// KinematicViscosity is a dynamic viscosity over the density. SI unit: m²/s;
// usual: 0.5 mm²/s of warm water to 1000 mm²/s of cold oil.
type KinematicViscosity float64

// Frequency is repeats in a second, of a vibration for example. SI unit: Hz;
// usual: 0.5 Hz to 2 kHz.
type Frequency float64

// Velocity is a speed along a line, of a boat or of a vibration. SI unit: m/s;
// usual: 0.1 mm/s of vibration to 30 m/s of a rubbing surface.
type Velocity float64

// Inertia is a mass moment of inertia. SI unit: kg·m²; usual: 0.001 kg·m² to
// 1000 kg·m².
type Inertia float64

// Money is an amount of one currency, never converted into another. SI unit:
// that currency's unit; usual: 1 to 1 000 000.
type Money float64

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

// Times. The year is of 365 days (NIST SP 811, Appendix B), a month its twelfth.
const (
	Second      Time = 1
	Millisecond Time = 1e-3
	Minute      Time = minute
	Hour        Time = hour
	Day         Time = day
	Week        Time = 7 * day
	Month       Time = year / 12
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
