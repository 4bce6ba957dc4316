package quantity_test

import (
	"encoding/json"
	"fmt"

	"example.org/driveline/marinecalc/quantity"
)

func ExampleKind_Parse() {
	length, _ := quantity.Lookup("length")
	for _, text := range []string{"32 mm", "1-11/16 in", "0.05 ± 0.02 mm"} {
		r, err := length.Parse(text)
		if err != nil {
			fmt.Println(err)
			continue
		}
		fmt.Printf("%.7f m ± %.2g m\n", r.SI, r.Accuracy)
	}
	// Output:
	// 0.0320000 m ± 0 m
	// 0.0428625 m ± 0 m
	// 0.0000500 m ± 2e-05 m
}

func ExampleKind_Print() {
	length, _ := quantity.Lookup("length")
	fmt.Println(length.Print(0.0111125, quantity.Both, "mm", "in"))
	// Output: 11.11 mm (7/16 in)
}

func ExampleLength() {
	shaft := 32 * quantity.Millimetre
	fmt.Printf("%v is %.2f in\n", shaft, float64(shaft/quantity.Inch))

	var fromFile struct{ Diameter quantity.Length }
	err := json.Unmarshal([]byte(`{"Diameter": "1-1/4 in"}`), &fromFile)
	fmt.Printf("%.5f m, %v\n", float64(fromFile.Diameter), err)
	// Output:
	// 32 mm is 1.26 in
	// 0.03175 m, <nil>
}

func ExampleCelsius() {
	fmt.Println(quantity.Celsius(60), quantity.Fahrenheit(140))
	// Output: 60 °C 60 °C
}
