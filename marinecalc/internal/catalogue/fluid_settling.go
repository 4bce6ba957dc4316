package catalogue

import (
	"sync"

	"example.org/driveline/marinecalc/fluid"
	"example.org/driveline/marinecalc/internal/calc"
	"example.org/driveline/marinecalc/quantity"
	"example.org/driveline/marinecalc/rules"
)

// fluidSettling lists the usual sizes where no others were typed.
func fluidSettling(s *calc.Session, in fluid.SettlingInput) (fluid.SettlingResult, error) {
	if len(in.Sizes) == 0 {
		in.Sizes = sizesOf(s.Book)
	}
	return fluid.Settling(in)
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
	if book == rules.Standard() { // books with overlays come and go
		sizesRead.Store(book, list)
	}
	return list
}
