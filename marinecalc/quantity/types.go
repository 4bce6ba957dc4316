package quantity

// The unit types. Each is a plain float64 in the coherent SI unit named
// beside it; the kind of the same name, in kebab case, parses and prints it.
type (
	Length                float64 // m
	Area                  float64 // m²
	Volume                float64 // m³
	Mass                  float64 // kg
	Force                 float64 // N
	Torque                float64 // N·m
	Power                 float64 // W
	Energy                float64 // J
	Pressure              float64 // Pa, of fluids
	Stress                float64 // Pa, in solids
	RotationSpeed         float64 // rad/s
	Temperature           float64 // K
	TemperatureDifference float64 // K
	VolumeFlow            float64 // m³/s
	DripRate              float64 // drips per second
	Stiffness             float64 // N/m
	AngularStiffness      float64 // N·m/rad
	Time                  float64 // s
	Angle                 float64 // rad
	Direction             float64 // rad, clockwise from the top as one looks forward
	Ratio                 float64 // 1
	Density               float64 // kg/m³
	SpecificHeat          float64 // J/(kg·K)
	Conductance           float64 // W/K
	Conductivity          float64 // W/(m·K)
	HeatTransfer          float64 // W/(m²·K)
	DynamicViscosity      float64 // Pa·s
	KinematicViscosity    float64 // m²/s
	Frequency             float64 // Hz
	Velocity              float64 // m/s
	Inertia               float64 // kg·m²
	Money                 float64 // units of one currency, never converted
)
