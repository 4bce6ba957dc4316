package catalogue

import (
	"sync"

	"example.org/driveline/marinecalc/fluid"
	"example.org/driveline/marinecalc/internal/calc"
	"example.org/driveline/marinecalc/quantity"
	"example.org/driveline/marinecalc/rules"
)

// settle lists the usual sizes where no others were typed.
func settle(s *calc.Session, in fluid.Settling) (fluid.Sediment, error) {
	if len(in.Sizes) == 0 {
		in.Sizes = sizesOf(s.Book)
	}
	return fluid.Settle(in)
}

// sizesRead keeps the sizes of a book, which trials ask for again and again.
var sizesRead sync.Map // *rules.Book -> []fluid.Size

func sizesOf(book *rules.Book) []fluid.Size {
	if list, ok := sizesRead.Load(book); ok {
		return list.([]fluid.Size)
	}
	var list []fluid.Size
	for _, row := range book.Table("particle-sizes").Rows.All() {
		if len(list) < fluid.MostSizes {
			list = append(list, fluid.Size{Name: row.Name, Size: quantity.Length(row.Values.Of("size").SI)})
		}
	}
	if book == rules.Standard() { // books laid over come and go
		sizesRead.Store(book, list)
	}
	return list
}

// classify gives a sample its code by the scale of the rule data.
func classify(s *calc.Session, in fluid.Counts) (fluid.Cleanliness, error) {
	rows := s.Book.Table("cleanliness-codes").Rows
	scale := make([]fluid.Step, rows.Len())
	for i, row := range rows.All() {
		scale[i] = fluid.Step{Code: int(row.Values.Of("code").SI), Most: row.Values.Of("most").SI}
	}
	return fluid.Classify(in, scale)
}
