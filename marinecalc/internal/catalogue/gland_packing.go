package catalogue

import (
	"example.org/driveline/marinecalc/gland"
	"example.org/driveline/marinecalc/internal/calc"
	"example.org/driveline/marinecalc/internal/drawing/stern"
	"example.org/driveline/marinecalc/stock"
)

// glandPacking finds the packing by the measurements as they are; in the trials
// it is that packing which meets a box as it may truly be. Were a size chosen
// anew in each trial, every calliper would find one that fits.
func glandPacking(*calc.Session) calc.PerRun[gland.PackingInput, gland.PackingResult] {
	var bought stock.List
	return calc.PerRun[gland.PackingInput, gland.PackingResult]{Compute: func(in gland.PackingInput) (gland.PackingResult, error) {
		if bought != "" {
			in.StockSections = bought
		}
		out, err := gland.Packing(in)
		if err == nil && bought == "" {
			bought = stock.List(out.SoldAs)
		}
		return out, err
	}, Draw: stern.GlandPacking}
}
