package catalogue

import (
	"fmt"

	"example.org/driveline/marinecalc/bearing"
	"example.org/driveline/marinecalc/internal/calc"
	"example.org/driveline/marinecalc/internal/drawing/gearing"
	"example.org/driveline/marinecalc/problem"
	"example.org/driveline/marinecalc/rules"
)

// bearingLife works out the life of a rolling bearing, whose X, Y and e may come
// from a row of ISO 281's table that belongs to another thrust. Such a row is
// refused at the estimates; in the trials the thrust may stray past it.
func bearingLife(s *calc.Session) calc.PerRun[bearing.LifeInput, bearing.LifeResult] {
	checked := false
	return calc.PerRun[bearing.LifeInput, bearing.LifeResult]{Compute: func(in bearing.LifeInput) (bearing.LifeResult, error) {
		out, err := bearing.Life(in)
		if err == nil && !checked {
			checked = true
			err = axialRowFits(s.Book.Table("axial-load-factors"), float64(in.AxialRow), float64(out.AxialShare))
		}
		return out, err
	}, Draw: gearing.BearingLife}
}

// axialRowFits asks that no row of the table lies between the one picked and
// thrust over static rating. Where either is not known there is nothing to
// hold against the other.
func axialRowFits(table *rules.Table, picked, share float64) error {
	if picked == 0 || !(share > 0) {
		return nil
	}
	var below, above *rules.Row // the rows next to the share
	var from, to float64
	for i := range table.Rows.Len() {
		row := table.Rows.At(i)
		at, ok := row.Values.Find("axialRow")
		switch {
		case !ok:
		case at.SI <= share && (below == nil || at.SI > from):
			below, from = &row, at.SI
		case at.SI > share && (above == nil || at.SI < to):
			above, to = &row, at.SI
		}
	}
	if above == nil && below != nil && share > from*(1+1e-9) && picked == from {
		return problem.List{{Where: "/axialFactors",
			What:    fmt.Sprintf("the thrust is %.2g of the static rating, and the table of X, Y and e ends at %.2g", share, from),
			Allowed: fmt.Sprintf("a thrust up to %.2g of the static rating", from),
			Hint:    "it needs a larger bearing, or its maker's X, Y and e for such a thrust",
		}}.Err()
	}
	if below != nil && picked == from || above != nil && picked == to || below == nil && above == nil {
		return nil
	}
	fits := ""
	for _, row := range []*rules.Row{below, above} {
		switch {
		case row == nil:
		case fits == "":
			fits = row.Pick
		default:
			fits += " or " + row.Pick
		}
	}
	return problem.List{{Where: "/axialFactors",
		What:    fmt.Sprintf("the thrust is %.2g of the static rating, and the row is for %.2g: its X, Y and e belong to another load", share, picked),
		Allowed: fits,
		Hint:    "take the nearer of these, or the smaller, which is on the safe side; leave it empty where X, Y and e are typed from the maker's page",
	}}.Err()
}
