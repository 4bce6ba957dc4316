package book

import (
	"context"
	"slices"
	"sort"
	"strings"

	"example.org/driveline/marinecalc/internal/calc"
	"example.org/driveline/marinecalc/internal/catalogue"
	"example.org/driveline/marinecalc/internal/contract"
	"example.org/driveline/marinecalc/rules"
)

// Chapter is the checks of one calculation, of one table of the rules, or of
// what all calculations share.
type Chapter struct {
	ID       string  `json:"id"` // of a calculation, "tables/<name>", or "shared/<what>"
	Title    string  `json:"title"`
	Checks   []Check `json:"checks"`
	Off      int     `json:"off"`      // how many do not hold
	Sources  int     `json:"sources"`  // how many there are
	Farthest float64 `json:"farthest"` // the largest share of what is allowed
}

// Name is the chapter that a row belongs to.
func (row *Row) Name() string {
	switch {
	case row.Calculation != "":
		return row.Calculation
	case row.Table != "":
		return "tables/" + row.Table
	}
	for name, s := range shared {
		if slices.Contains(s.checks, row.Check) {
			return name
		}
	}
	return "shared/" + row.Check
}

var shared = map[string]struct {
	title  string
	checks []string
}{
	"shared/trials":   {"Ranges, verdicts and counts by trials", []string{"spread", "conformity", "count"}},
	"shared/readings": {"Lines through readings", []string{"student", "theil-sen"}},
	"shared/water":    {"Water", []string{"water-density", "water-specific-heat", "fresh-water"}},
	"shared/mounts":   {"Vibration through mounts", []string{"transmissibility"}},
}

// title is what a chapter is called, and where it stands: calculations as in
// the catalogue, then tables, then what is shared.
func title(id string) (string, int) {
	const behindAll = 1000
	if i := slices.IndexFunc(catalogue.Calculations, func(c calc.Calculation) bool { return c.ID == id }); i >= 0 {
		if h, err := contract.HeadingOf(id); err == nil {
			return h.Title, i
		}
	}
	if name, is := strings.CutPrefix(id, "tables/"); is {
		if table := rules.Standard().Table(name); table != nil {
			return table.Title, behindAll
		}
	}
	if s, is := shared[id]; is {
		return s.title, 2 * behindAll
	}
	return id, 3 * behindAll
}

// All computes rows, by chapter. The error is that of a context that ends.
func All(ctx context.Context, rows []Row) ([]Chapter, error) {
	at := map[string]int{}
	var list []Chapter
	sources := map[string]map[string]bool{}
	for i := range rows {
		if err := ctx.Err(); err != nil {
			return nil, err
		}
		name := rows[i].Name()
		if _, has := at[name]; !has {
			at[name] = len(list)
			text, _ := title(name)
			list = append(list, Chapter{ID: name, Title: text})
			sources[name] = map[string]bool{}
		}
		c := &list[at[name]]
		made := Compute(ctx, rows[i])
		if !made.Holds() {
			c.Off++
		}
		for _, v := range made.Values {
			c.Farthest = max(c.Farthest, v.Share)
		}
		sources[name][made.Source] = true
		c.Sources = len(sources[name])
		c.Checks = append(c.Checks, made)
	}
	sort.SliceStable(list, func(i, j int) bool {
		_, m := title(list[i].ID)
		_, n := title(list[j].ID)
		return m < n || m == n && list[i].Title < list[j].Title
	})
	return list, nil
}
