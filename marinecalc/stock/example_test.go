package stock_test

import (
	"fmt"

	"example.org/driveline/marinecalc/stock"
)

func ExampleAmount() {
	fmt.Println(stock.Amount("1-3/4"), stock.Amount("12.5"), stock.Amount("a dozen"))
	// Output: 1.75 12.5 NaN
}
