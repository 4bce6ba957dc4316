package fluid_test

import (
	"fmt"

	"example.org/driveline/marinecalc/fluid"
	q "example.org/driveline/marinecalc/quantity"
)

// UNESCO Technical Papers in Marine Science 44 (1983), EOS-80 at atmospheric
// pressure: practical salinity 40 at 40 °C (IPTS-68) is 1021.6788 kg/m³.
func ExampleSea() {
	water, err := fluid.Sea(q.Celsius(40/1.00024), 0.040)
	fmt.Printf("%.4f kg/m³, %v\n", float64(water.Density), err)
	// Output: 1021.6788 kg/m³, <nil>
}
