package quantity

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
