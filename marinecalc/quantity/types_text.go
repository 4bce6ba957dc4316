//go:build !reactor

package quantity

// The unit types as text: each has these methods, by the kind of its name.
// text.go says what they write and read. The reactor (wasm/) is built without
// them: it hands out numbers of sheets, and they would be 21 kB of the page.

// String gives the value in the usual metric unit, rounded for reading.
func (v Length) String() string { return written("length", float64(v)) }

// MarshalText gives the value with its unit, to be read back without loss.
func (v Length) MarshalText() ([]byte, error) { return asText("length", float64(v)) }

// UnmarshalText reads a value with its unit.
func (v *Length) UnmarshalText(text []byte) error { return fromText("length", text, (*float64)(v)) }

// String gives the value in the usual metric unit, rounded for reading.
func (v Area) String() string { return written("area", float64(v)) }

// MarshalText gives the value with its unit, to be read back without loss.
func (v Area) MarshalText() ([]byte, error) { return asText("area", float64(v)) }

// UnmarshalText reads a value with its unit.
func (v *Area) UnmarshalText(text []byte) error { return fromText("area", text, (*float64)(v)) }

// String gives the value in the usual metric unit, rounded for reading.
func (v Volume) String() string { return written("volume", float64(v)) }

// MarshalText gives the value with its unit, to be read back without loss.
func (v Volume) MarshalText() ([]byte, error) { return asText("volume", float64(v)) }

// UnmarshalText reads a value with its unit.
func (v *Volume) UnmarshalText(text []byte) error { return fromText("volume", text, (*float64)(v)) }

// String gives the value in the usual metric unit, rounded for reading.
func (v Mass) String() string { return written("mass", float64(v)) }

// MarshalText gives the value with its unit, to be read back without loss.
func (v Mass) MarshalText() ([]byte, error) { return asText("mass", float64(v)) }

// UnmarshalText reads a value with its unit.
func (v *Mass) UnmarshalText(text []byte) error { return fromText("mass", text, (*float64)(v)) }

// String gives the value in the usual metric unit, rounded for reading.
func (v Force) String() string { return written("force", float64(v)) }

// MarshalText gives the value with its unit, to be read back without loss.
func (v Force) MarshalText() ([]byte, error) { return asText("force", float64(v)) }

// UnmarshalText reads a value with its unit.
func (v *Force) UnmarshalText(text []byte) error { return fromText("force", text, (*float64)(v)) }

// String gives the value in the usual metric unit, rounded for reading.
func (v Torque) String() string { return written("torque", float64(v)) }

// MarshalText gives the value with its unit, to be read back without loss.
func (v Torque) MarshalText() ([]byte, error) { return asText("torque", float64(v)) }

// UnmarshalText reads a value with its unit.
func (v *Torque) UnmarshalText(text []byte) error { return fromText("torque", text, (*float64)(v)) }

// String gives the value in the usual metric unit, rounded for reading.
func (v Power) String() string { return written("power", float64(v)) }

// MarshalText gives the value with its unit, to be read back without loss.
func (v Power) MarshalText() ([]byte, error) { return asText("power", float64(v)) }

// UnmarshalText reads a value with its unit.
func (v *Power) UnmarshalText(text []byte) error { return fromText("power", text, (*float64)(v)) }

// String gives the value in the usual metric unit, rounded for reading.
func (v Energy) String() string { return written("energy", float64(v)) }

// MarshalText gives the value with its unit, to be read back without loss.
func (v Energy) MarshalText() ([]byte, error) { return asText("energy", float64(v)) }

// UnmarshalText reads a value with its unit.
func (v *Energy) UnmarshalText(text []byte) error { return fromText("energy", text, (*float64)(v)) }

// String gives the value in the usual metric unit, rounded for reading.
func (v Pressure) String() string { return written("pressure", float64(v)) }

// MarshalText gives the value with its unit, to be read back without loss.
func (v Pressure) MarshalText() ([]byte, error) { return asText("pressure", float64(v)) }

// UnmarshalText reads a value with its unit.
func (v *Pressure) UnmarshalText(text []byte) error { return fromText("pressure", text, (*float64)(v)) }

// String gives the value in the usual metric unit, rounded for reading.
func (v Stress) String() string { return written("stress", float64(v)) }

// MarshalText gives the value with its unit, to be read back without loss.
func (v Stress) MarshalText() ([]byte, error) { return asText("stress", float64(v)) }

// UnmarshalText reads a value with its unit.
func (v *Stress) UnmarshalText(text []byte) error { return fromText("stress", text, (*float64)(v)) }

// String gives the value in the usual metric unit, rounded for reading.
func (v RotationSpeed) String() string { return written("rotation-speed", float64(v)) }

// MarshalText gives the value with its unit, to be read back without loss.
func (v RotationSpeed) MarshalText() ([]byte, error) { return asText("rotation-speed", float64(v)) }

// UnmarshalText reads a value with its unit.
func (v *RotationSpeed) UnmarshalText(text []byte) error {
	return fromText("rotation-speed", text, (*float64)(v))
}

// String gives the value in the usual metric unit, rounded for reading.
func (v Temperature) String() string { return written("temperature", float64(v)) }

// MarshalText gives the value with its unit, to be read back without loss.
func (v Temperature) MarshalText() ([]byte, error) { return asText("temperature", float64(v)) }

// UnmarshalText reads a value with its unit.
func (v *Temperature) UnmarshalText(text []byte) error {
	return fromText("temperature", text, (*float64)(v))
}

// String gives the value in the usual metric unit, rounded for reading.
func (v TemperatureDifference) String() string { return written("temperature-difference", float64(v)) }

// MarshalText gives the value with its unit, to be read back without loss.
func (v TemperatureDifference) MarshalText() ([]byte, error) {
	return asText("temperature-difference", float64(v))
}

// UnmarshalText reads a value with its unit.
func (v *TemperatureDifference) UnmarshalText(text []byte) error {
	return fromText("temperature-difference", text, (*float64)(v))
}

// String gives the value in the usual metric unit, rounded for reading.
func (v VolumeFlow) String() string { return written("volume-flow", float64(v)) }

// MarshalText gives the value with its unit, to be read back without loss.
func (v VolumeFlow) MarshalText() ([]byte, error) { return asText("volume-flow", float64(v)) }

// UnmarshalText reads a value with its unit.
func (v *VolumeFlow) UnmarshalText(text []byte) error {
	return fromText("volume-flow", text, (*float64)(v))
}

// String gives the value in the usual metric unit, rounded for reading.
func (v DripRate) String() string { return written("drip-rate", float64(v)) }

// MarshalText gives the value with its unit, to be read back without loss.
func (v DripRate) MarshalText() ([]byte, error) { return asText("drip-rate", float64(v)) }

// UnmarshalText reads a value with its unit.
func (v *DripRate) UnmarshalText(text []byte) error {
	return fromText("drip-rate", text, (*float64)(v))
}

// String gives the value in the usual metric unit, rounded for reading.
func (v Stiffness) String() string { return written("stiffness", float64(v)) }

// MarshalText gives the value with its unit, to be read back without loss.
func (v Stiffness) MarshalText() ([]byte, error) { return asText("stiffness", float64(v)) }

// UnmarshalText reads a value with its unit.
func (v *Stiffness) UnmarshalText(text []byte) error {
	return fromText("stiffness", text, (*float64)(v))
}

// String gives the value in the usual metric unit, rounded for reading.
func (v AngularStiffness) String() string { return written("angular-stiffness", float64(v)) }

// MarshalText gives the value with its unit, to be read back without loss.
func (v AngularStiffness) MarshalText() ([]byte, error) {
	return asText("angular-stiffness", float64(v))
}

// UnmarshalText reads a value with its unit.
func (v *AngularStiffness) UnmarshalText(text []byte) error {
	return fromText("angular-stiffness", text, (*float64)(v))
}

// String gives the value in the usual metric unit, rounded for reading.
func (v Time) String() string { return written("time", float64(v)) }

// MarshalText gives the value with its unit, to be read back without loss.
func (v Time) MarshalText() ([]byte, error) { return asText("time", float64(v)) }

// UnmarshalText reads a value with its unit.
func (v *Time) UnmarshalText(text []byte) error { return fromText("time", text, (*float64)(v)) }

// String gives the value in the usual metric unit, rounded for reading.
func (v Angle) String() string { return written("angle", float64(v)) }

// MarshalText gives the value with its unit, to be read back without loss.
func (v Angle) MarshalText() ([]byte, error) { return asText("angle", float64(v)) }

// UnmarshalText reads a value with its unit.
func (v *Angle) UnmarshalText(text []byte) error { return fromText("angle", text, (*float64)(v)) }

// String gives the value in the usual metric unit, rounded for reading.
func (v Direction) String() string { return written("direction", float64(v)) }

// MarshalText gives the value with its unit, to be read back without loss.
func (v Direction) MarshalText() ([]byte, error) { return asText("direction", float64(v)) }

// UnmarshalText reads a value with its unit.
func (v *Direction) UnmarshalText(text []byte) error {
	return fromText("direction", text, (*float64)(v))
}

// String gives the value in the usual metric unit, rounded for reading.
func (v Ratio) String() string { return written("ratio", float64(v)) }

// MarshalText gives the value with its unit, to be read back without loss.
func (v Ratio) MarshalText() ([]byte, error) { return asText("ratio", float64(v)) }

// UnmarshalText reads a value with its unit.
func (v *Ratio) UnmarshalText(text []byte) error { return fromText("ratio", text, (*float64)(v)) }

// String gives the value in the usual metric unit, rounded for reading.
func (v Density) String() string { return written("density", float64(v)) }

// MarshalText gives the value with its unit, to be read back without loss.
func (v Density) MarshalText() ([]byte, error) { return asText("density", float64(v)) }

// UnmarshalText reads a value with its unit.
func (v *Density) UnmarshalText(text []byte) error { return fromText("density", text, (*float64)(v)) }

// String gives the value in the usual metric unit, rounded for reading.
func (v SpecificHeat) String() string { return written("specific-heat", float64(v)) }

// MarshalText gives the value with its unit, to be read back without loss.
func (v SpecificHeat) MarshalText() ([]byte, error) { return asText("specific-heat", float64(v)) }

// UnmarshalText reads a value with its unit.
func (v *SpecificHeat) UnmarshalText(text []byte) error {
	return fromText("specific-heat", text, (*float64)(v))
}

// String gives the value in the usual metric unit, rounded for reading.
func (v Conductance) String() string { return written("conductance", float64(v)) }

// MarshalText gives the value with its unit, to be read back without loss.
func (v Conductance) MarshalText() ([]byte, error) { return asText("conductance", float64(v)) }

// UnmarshalText reads a value with its unit.
func (v *Conductance) UnmarshalText(text []byte) error {
	return fromText("conductance", text, (*float64)(v))
}

// String gives the value in the usual metric unit, rounded for reading.
func (v Conductivity) String() string { return written("conductivity", float64(v)) }

// MarshalText gives the value with its unit, to be read back without loss.
func (v Conductivity) MarshalText() ([]byte, error) { return asText("conductivity", float64(v)) }

// UnmarshalText reads a value with its unit.
func (v *Conductivity) UnmarshalText(text []byte) error {
	return fromText("conductivity", text, (*float64)(v))
}

// String gives the value in the usual metric unit, rounded for reading.
func (v HeatTransfer) String() string { return written("heat-transfer", float64(v)) }

// MarshalText gives the value with its unit, to be read back without loss.
func (v HeatTransfer) MarshalText() ([]byte, error) { return asText("heat-transfer", float64(v)) }

// UnmarshalText reads a value with its unit.
func (v *HeatTransfer) UnmarshalText(text []byte) error {
	return fromText("heat-transfer", text, (*float64)(v))
}

// String gives the value in the usual metric unit, rounded for reading.
func (v DynamicViscosity) String() string { return written("dynamic-viscosity", float64(v)) }

// MarshalText gives the value with its unit, to be read back without loss.
func (v DynamicViscosity) MarshalText() ([]byte, error) {
	return asText("dynamic-viscosity", float64(v))
}

// UnmarshalText reads a value with its unit.
func (v *DynamicViscosity) UnmarshalText(text []byte) error {
	return fromText("dynamic-viscosity", text, (*float64)(v))
}

// String gives the value in the usual metric unit, rounded for reading.
func (v KinematicViscosity) String() string { return written("kinematic-viscosity", float64(v)) }

// MarshalText gives the value with its unit, to be read back without loss.
func (v KinematicViscosity) MarshalText() ([]byte, error) {
	return asText("kinematic-viscosity", float64(v))
}

// UnmarshalText reads a value with its unit.
func (v *KinematicViscosity) UnmarshalText(text []byte) error {
	return fromText("kinematic-viscosity", text, (*float64)(v))
}

// String gives the value in the usual metric unit, rounded for reading.
func (v Frequency) String() string { return written("frequency", float64(v)) }

// MarshalText gives the value with its unit, to be read back without loss.
func (v Frequency) MarshalText() ([]byte, error) { return asText("frequency", float64(v)) }

// UnmarshalText reads a value with its unit.
func (v *Frequency) UnmarshalText(text []byte) error {
	return fromText("frequency", text, (*float64)(v))
}

// String gives the value in the usual metric unit, rounded for reading.
func (v Velocity) String() string { return written("velocity", float64(v)) }

// MarshalText gives the value with its unit, to be read back without loss.
func (v Velocity) MarshalText() ([]byte, error) { return asText("velocity", float64(v)) }

// UnmarshalText reads a value with its unit.
func (v *Velocity) UnmarshalText(text []byte) error { return fromText("velocity", text, (*float64)(v)) }

// String gives the value in the usual metric unit, rounded for reading.
func (v Inertia) String() string { return written("inertia", float64(v)) }

// MarshalText gives the value with its unit, to be read back without loss.
func (v Inertia) MarshalText() ([]byte, error) { return asText("inertia", float64(v)) }

// UnmarshalText reads a value with its unit.
func (v *Inertia) UnmarshalText(text []byte) error { return fromText("inertia", text, (*float64)(v)) }

// String gives the value in the usual metric unit, rounded for reading.
func (v Money) String() string { return written("money", float64(v)) }

// MarshalText gives the value with its unit, to be read back without loss.
func (v Money) MarshalText() ([]byte, error) { return asText("money", float64(v)) }

// UnmarshalText reads a value with its unit.
func (v *Money) UnmarshalText(text []byte) error { return fromText("money", text, (*float64)(v)) }
