//go:build !reactor

package quantity

// The unit types in JSON: each has these methods, by the kind of its name.
// text.go says what they write and read. The reactor (wasm/) is built without
// them: it hands out numbers of sheets, and they would be 21 kB of the page.

// MarshalJSON gives the SI number, and null for a value that was not asked for.
func (v Length) MarshalJSON() ([]byte, error) { return asJSON(float64(v)) }

// UnmarshalJSON reads an SI number, a text with its unit, or null.
func (v *Length) UnmarshalJSON(text []byte) error { return fromJSON("length", text, (*float64)(v)) }

// MarshalJSON gives the SI number, and null for a value that was not asked for.
func (v Area) MarshalJSON() ([]byte, error) { return asJSON(float64(v)) }

// UnmarshalJSON reads an SI number, a text with its unit, or null.
func (v *Area) UnmarshalJSON(text []byte) error { return fromJSON("area", text, (*float64)(v)) }

// MarshalJSON gives the SI number, and null for a value that was not asked for.
func (v Volume) MarshalJSON() ([]byte, error) { return asJSON(float64(v)) }

// UnmarshalJSON reads an SI number, a text with its unit, or null.
func (v *Volume) UnmarshalJSON(text []byte) error { return fromJSON("volume", text, (*float64)(v)) }

// MarshalJSON gives the SI number, and null for a value that was not asked for.
func (v Mass) MarshalJSON() ([]byte, error) { return asJSON(float64(v)) }

// UnmarshalJSON reads an SI number, a text with its unit, or null.
func (v *Mass) UnmarshalJSON(text []byte) error { return fromJSON("mass", text, (*float64)(v)) }

// MarshalJSON gives the SI number, and null for a value that was not asked for.
func (v Force) MarshalJSON() ([]byte, error) { return asJSON(float64(v)) }

// UnmarshalJSON reads an SI number, a text with its unit, or null.
func (v *Force) UnmarshalJSON(text []byte) error { return fromJSON("force", text, (*float64)(v)) }

// MarshalJSON gives the SI number, and null for a value that was not asked for.
func (v Torque) MarshalJSON() ([]byte, error) { return asJSON(float64(v)) }

// UnmarshalJSON reads an SI number, a text with its unit, or null.
func (v *Torque) UnmarshalJSON(text []byte) error { return fromJSON("torque", text, (*float64)(v)) }

// MarshalJSON gives the SI number, and null for a value that was not asked for.
func (v Power) MarshalJSON() ([]byte, error) { return asJSON(float64(v)) }

// UnmarshalJSON reads an SI number, a text with its unit, or null.
func (v *Power) UnmarshalJSON(text []byte) error { return fromJSON("power", text, (*float64)(v)) }

// MarshalJSON gives the SI number, and null for a value that was not asked for.
func (v Energy) MarshalJSON() ([]byte, error) { return asJSON(float64(v)) }

// UnmarshalJSON reads an SI number, a text with its unit, or null.
func (v *Energy) UnmarshalJSON(text []byte) error { return fromJSON("energy", text, (*float64)(v)) }

// MarshalJSON gives the SI number, and null for a value that was not asked for.
func (v Pressure) MarshalJSON() ([]byte, error) { return asJSON(float64(v)) }

// UnmarshalJSON reads an SI number, a text with its unit, or null.
func (v *Pressure) UnmarshalJSON(text []byte) error { return fromJSON("pressure", text, (*float64)(v)) }

// MarshalJSON gives the SI number, and null for a value that was not asked for.
func (v Stress) MarshalJSON() ([]byte, error) { return asJSON(float64(v)) }

// UnmarshalJSON reads an SI number, a text with its unit, or null.
func (v *Stress) UnmarshalJSON(text []byte) error { return fromJSON("stress", text, (*float64)(v)) }

// MarshalJSON gives the SI number, and null for a value that was not asked for.
func (v RotationSpeed) MarshalJSON() ([]byte, error) { return asJSON(float64(v)) }

// UnmarshalJSON reads an SI number, a text with its unit, or null.
func (v *RotationSpeed) UnmarshalJSON(text []byte) error {
	return fromJSON("rotation-speed", text, (*float64)(v))
}

// MarshalJSON gives the SI number, and null for a value that was not asked for.
func (v Temperature) MarshalJSON() ([]byte, error) { return asJSON(float64(v)) }

// UnmarshalJSON reads an SI number, a text with its unit, or null.
func (v *Temperature) UnmarshalJSON(text []byte) error {
	return fromJSON("temperature", text, (*float64)(v))
}

// MarshalJSON gives the SI number, and null for a value that was not asked for.
func (v TemperatureDifference) MarshalJSON() ([]byte, error) { return asJSON(float64(v)) }

// UnmarshalJSON reads an SI number, a text with its unit, or null.
func (v *TemperatureDifference) UnmarshalJSON(text []byte) error {
	return fromJSON("temperature-difference", text, (*float64)(v))
}

// MarshalJSON gives the SI number, and null for a value that was not asked for.
func (v VolumeFlow) MarshalJSON() ([]byte, error) { return asJSON(float64(v)) }

// UnmarshalJSON reads an SI number, a text with its unit, or null.
func (v *VolumeFlow) UnmarshalJSON(text []byte) error {
	return fromJSON("volume-flow", text, (*float64)(v))
}

// MarshalJSON gives the SI number, and null for a value that was not asked for.
func (v DripRate) MarshalJSON() ([]byte, error) { return asJSON(float64(v)) }

// UnmarshalJSON reads an SI number, a text with its unit, or null.
func (v *DripRate) UnmarshalJSON(text []byte) error {
	return fromJSON("drip-rate", text, (*float64)(v))
}

// MarshalJSON gives the SI number, and null for a value that was not asked for.
func (v Stiffness) MarshalJSON() ([]byte, error) { return asJSON(float64(v)) }

// UnmarshalJSON reads an SI number, a text with its unit, or null.
func (v *Stiffness) UnmarshalJSON(text []byte) error {
	return fromJSON("stiffness", text, (*float64)(v))
}

// MarshalJSON gives the SI number, and null for a value that was not asked for.
func (v AngularStiffness) MarshalJSON() ([]byte, error) { return asJSON(float64(v)) }

// UnmarshalJSON reads an SI number, a text with its unit, or null.
func (v *AngularStiffness) UnmarshalJSON(text []byte) error {
	return fromJSON("angular-stiffness", text, (*float64)(v))
}

// MarshalJSON gives the SI number, and null for a value that was not asked for.
func (v Time) MarshalJSON() ([]byte, error) { return asJSON(float64(v)) }

// UnmarshalJSON reads an SI number, a text with its unit, or null.
func (v *Time) UnmarshalJSON(text []byte) error { return fromJSON("time", text, (*float64)(v)) }

// MarshalJSON gives the SI number, and null for a value that was not asked for.
func (v Angle) MarshalJSON() ([]byte, error) { return asJSON(float64(v)) }

// UnmarshalJSON reads an SI number, a text with its unit, or null.
func (v *Angle) UnmarshalJSON(text []byte) error { return fromJSON("angle", text, (*float64)(v)) }

// MarshalJSON gives the SI number, and null for a value that was not asked for.
func (v Direction) MarshalJSON() ([]byte, error) { return asJSON(float64(v)) }

// UnmarshalJSON reads an SI number, a text with its unit, or null.
func (v *Direction) UnmarshalJSON(text []byte) error {
	return fromJSON("direction", text, (*float64)(v))
}

// MarshalJSON gives the SI number, and null for a value that was not asked for.
func (v Ratio) MarshalJSON() ([]byte, error) { return asJSON(float64(v)) }

// UnmarshalJSON reads an SI number, a text with its unit, or null.
func (v *Ratio) UnmarshalJSON(text []byte) error { return fromJSON("ratio", text, (*float64)(v)) }

// MarshalJSON gives the SI number, and null for a value that was not asked for.
func (v Density) MarshalJSON() ([]byte, error) { return asJSON(float64(v)) }

// UnmarshalJSON reads an SI number, a text with its unit, or null.
func (v *Density) UnmarshalJSON(text []byte) error { return fromJSON("density", text, (*float64)(v)) }

// MarshalJSON gives the SI number, and null for a value that was not asked for.
func (v SpecificHeat) MarshalJSON() ([]byte, error) { return asJSON(float64(v)) }

// UnmarshalJSON reads an SI number, a text with its unit, or null.
func (v *SpecificHeat) UnmarshalJSON(text []byte) error {
	return fromJSON("specific-heat", text, (*float64)(v))
}

// MarshalJSON gives the SI number, and null for a value that was not asked for.
func (v Conductance) MarshalJSON() ([]byte, error) { return asJSON(float64(v)) }

// UnmarshalJSON reads an SI number, a text with its unit, or null.
func (v *Conductance) UnmarshalJSON(text []byte) error {
	return fromJSON("conductance", text, (*float64)(v))
}

// MarshalJSON gives the SI number, and null for a value that was not asked for.
func (v Conductivity) MarshalJSON() ([]byte, error) { return asJSON(float64(v)) }

// UnmarshalJSON reads an SI number, a text with its unit, or null.
func (v *Conductivity) UnmarshalJSON(text []byte) error {
	return fromJSON("conductivity", text, (*float64)(v))
}

// MarshalJSON gives the SI number, and null for a value that was not asked for.
func (v HeatTransfer) MarshalJSON() ([]byte, error) { return asJSON(float64(v)) }

// UnmarshalJSON reads an SI number, a text with its unit, or null.
func (v *HeatTransfer) UnmarshalJSON(text []byte) error {
	return fromJSON("heat-transfer", text, (*float64)(v))
}

// MarshalJSON gives the SI number, and null for a value that was not asked for.
func (v DynamicViscosity) MarshalJSON() ([]byte, error) { return asJSON(float64(v)) }

// UnmarshalJSON reads an SI number, a text with its unit, or null.
func (v *DynamicViscosity) UnmarshalJSON(text []byte) error {
	return fromJSON("dynamic-viscosity", text, (*float64)(v))
}

// MarshalJSON gives the SI number, and null for a value that was not asked for.
func (v KinematicViscosity) MarshalJSON() ([]byte, error) { return asJSON(float64(v)) }

// UnmarshalJSON reads an SI number, a text with its unit, or null.
func (v *KinematicViscosity) UnmarshalJSON(text []byte) error {
	return fromJSON("kinematic-viscosity", text, (*float64)(v))
}

// MarshalJSON gives the SI number, and null for a value that was not asked for.
func (v Frequency) MarshalJSON() ([]byte, error) { return asJSON(float64(v)) }

// UnmarshalJSON reads an SI number, a text with its unit, or null.
func (v *Frequency) UnmarshalJSON(text []byte) error {
	return fromJSON("frequency", text, (*float64)(v))
}

// MarshalJSON gives the SI number, and null for a value that was not asked for.
func (v Velocity) MarshalJSON() ([]byte, error) { return asJSON(float64(v)) }

// UnmarshalJSON reads an SI number, a text with its unit, or null.
func (v *Velocity) UnmarshalJSON(text []byte) error { return fromJSON("velocity", text, (*float64)(v)) }

// MarshalJSON gives the SI number, and null for a value that was not asked for.
func (v Inertia) MarshalJSON() ([]byte, error) { return asJSON(float64(v)) }

// UnmarshalJSON reads an SI number, a text with its unit, or null.
func (v *Inertia) UnmarshalJSON(text []byte) error { return fromJSON("inertia", text, (*float64)(v)) }

// MarshalJSON gives the SI number, and null for a value that was not asked for.
func (v Money) MarshalJSON() ([]byte, error) { return asJSON(float64(v)) }

// UnmarshalJSON reads an SI number, a text with its unit, or null.
func (v *Money) UnmarshalJSON(text []byte) error { return fromJSON("money", text, (*float64)(v)) }
