package calc

import (
	"fmt"
	"maps"

	"example.org/driveline/marinecalc/internal/calc/inputs"
	"example.org/driveline/marinecalc/internal/contract"
	"example.org/driveline/marinecalc/sheet"
)

// Given is what the boat gives for an input that nobody typed.
type Given struct {
	Text   string       `json:"text"`
	Origin sheet.Origin `json:"origin"`
	Date   string       `json:"date,omitempty"`   // of the reading, year-month-day
	Source string       `json:"source,omitempty"` // of a maker's figure, or the title of an earlier sheet
	Value  []any        `json:"value,omitempty"`  // of a list: as it stands in the file
}

// Fits tells, by the names of the inputs, which picks go with what is typed and what
// the boat gives, where their rows ask for other inputs. What is typed and cannot be
// used counts as not known.
func (s *Session) Fits(c Calculation, typed map[string]any) map[string]inputs.Fit {
	k, err := c.Form()
	if err != nil {
		return nil
	}
	typed = maps.Clone(typed)
	for _, p := range k.CheckInput(typed) {
		if names := contract.Tokens(p.Where); len(names) > 0 {
			delete(typed, names[0])
		}
	}
	buf := scratches.Get().(*scratch)
	in := inputs.Fill(&s.Request, k, &c.open(k, s).Call, typed, &buf.inputs)
	defer buf.takeBack(in)
	return in.Fits()
}

// Given tells, by the names of the inputs, what the boat, its maker's figures
// and earlier results give for a calculation.
func (s *Session) Given(c Calculation) map[string]Given {
	given := map[string]Given{}
	k, err := c.Form()
	if err != nil {
		return given
	}
	buf := scratches.Get().(*scratch)
	in := inputs.Fill(&s.Request, k, &c.open(k, s).Call, map[string]any{}, &buf.inputs)
	defer buf.takeBack(in)
	for i, p := range k.Input.Properties {
		v := &in.Values[i]
		if !v.Known || v.Origin != sheet.FromBoat && v.Origin != sheet.MakersFigure && v.Origin != sheet.Earlier {
			continue
		}
		text := v.Text
		if text == "" && v.Raw != nil {
			text = fmt.Sprint(v.Raw) // something else in the boat is wrong, so that nothing was read
		}
		g := Given{Text: text, Origin: v.Origin, Date: v.Date, Source: v.Source}
		if list, ok := v.Raw.([]any); ok {
			g.Value = list
		}
		given[p.Name] = g
	}
	return given
}
