package overview

import (
	"slices"
	"sort"
	"strings"

	"example.org/driveline/marinecalc/internal/boat"
	"example.org/driveline/marinecalc/internal/calc/inputs"
	"example.org/driveline/marinecalc/internal/catalogue"
	"example.org/driveline/marinecalc/internal/contract"
	"example.org/driveline/marinecalc/rules"
	"example.org/driveline/marinecalc/sheet"
)

// Ask is something that a calculation must know and that the boat file holds
// with a part.
type Ask struct {
	Pointer string   `json:"pointer"` // in the boat file
	Title   string   `json:"title"`
	Known   bool     `json:"known"`
	For     []string `json:"for"` // titles of the calculations that ask for it
}

// asksOf lists what the calculations must know of a part, in the order of the
// boat file, which is that in which it is read off.
func asksOf(row *rules.Row, book *rules.Book, b *boat.Boat) ([]Ask, error) {
	list := []Ask{}
	holds := strings.Fields(row.Values.Of("holds").Text)
	order, err := placesOf(holds)
	if err != nil {
		return nil, err
	}
	if err = gatherAsks(&list, holds, book, b, false); err == nil && len(list) == 0 {
		err = gatherAsks(&list, holds, book, b, true)
	}
	if err != nil {
		return nil, err
	}
	sort.SliceStable(list, func(i, j int) bool { return order[list[i].Pointer] < order[list[j].Pointer] })
	return list, nil
}

// gatherAsks adds what the calculations must know of the places, or where
// nothing is a must, what they ask first.
func gatherAsks(to *[]Ask, holds []string, book *rules.Book, b *boat.Boat, mainToo bool) error {
	list := *to
	for _, c := range catalogue.Calculations {
		k, err := c.Form()
		if err != nil {
			return err
		}
		if !catalogue.Aboard(c.ID, b) {
			continue
		}
		for _, p := range asked(k.Calculation, book, mainToo) {
			if !slices.ContainsFunc(holds, func(h string) bool { return p.Boat == h || strings.HasPrefix(p.Boat, h+"/") }) {
				continue
			}
			i := slices.IndexFunc(list, func(a Ask) bool { return a.Pointer == p.Boat })
			if i < 0 {
				i = len(list)
				_, _, _, known := b.Find(p.Boat)
				list = append(list, Ask{Pointer: p.Boat, Title: p.Title, Known: known, For: []string{}})
			}
			if !slices.Contains(list[i].For, k.Title) {
				list[i].For = append(list[i].For, k.Title)
			}
		}
	}
	*to = list
	return nil
}

// asked are the inputs that a calculation must know and the boat may hold: what
// a table's row fills is asked for by that row.
func asked(k *contract.Calculation, book *rules.Book, mainToo bool) []*contract.Property {
	var list []*contract.Property
	for _, p := range k.Input.Properties {
		if p.Boat == "" || strings.HasPrefix(p.Boat, "/readings/") {
			continue
		}
		if mainToo && p.Level != sheet.Detail || slices.ContainsFunc(k.Input.Needs, func(need string) bool { return need == p.Name && !picked(k, book, need) || fills(p, book, need) }) {
			list = append(list, p)
		}
	}
	return list
}

// picked tells whether a row that the boat may name fills an input.
func picked(k *contract.Calculation, book *rules.Book, input string) bool {
	return slices.ContainsFunc(k.Input.Properties, func(p *contract.Property) bool { return p.Boat != "" && fills(p, book, input) })
}

// fills tells whether a row picked here fills an input.
func fills(p *contract.Property, book *rules.Book, input string) bool {
	if p.Rows == "" || p.Rows == inputs.Gauges {
		return false
	}
	for _, to := range p.Fills {
		if to == input {
			return true
		}
	}
	table := book.Table(p.Rows)
	if table == nil || len(p.Fills) > 0 {
		return false
	}
	_, has := table.Kind(input)
	return has
}

// placesOf numbers the places of the boat file below these, in its order.
func placesOf(holds []string) (map[string]int, error) {
	c, err := boat.Contract()
	if err != nil {
		return nil, err
	}
	order := map[string]int{}
	var walk func(pointer string, p *contract.Property)
	walk = func(pointer string, p *contract.Property) {
		order[pointer] = len(order)
		for _, child := range p.Properties {
			walk(pointer+"/"+child.Name, child)
		}
	}
	for _, pointer := range holds {
		if p := c.Root.Child(strings.TrimPrefix(pointer, "/")); p != nil {
			walk(pointer, p)
		}
	}
	return order, nil
}
