package verdict

import (
	"math"
	"slices"
	"strings"

	"example.org/driveline/marinecalc/internal/boat"
	"example.org/driveline/marinecalc/internal/calc/inputs"
	"example.org/driveline/marinecalc/internal/contract"
	"example.org/driveline/marinecalc/quantity"
	"example.org/driveline/marinecalc/rules"
	"example.org/driveline/marinecalc/sheet"
)

// OwnOf is the id of the limit that an owner may set for an input; "" for one that is
// no reading of the boat's that is a quantity.
func OwnOf(p *contract.Property) string {
	if name, is := strings.CutPrefix(p.Boat, boat.LatestReading); is && p.Kind != nil {
		return rules.OwnLimit(name)
	}
	return ""
}

// holdOwn holds each reading that the boat file has a limit for against that,
// beside the limits of the rules: an owner who wants fewer drips than a guide
// allows reads no OK while they are more.
func (r *Judgement) holdOwn(list []held) []held {
	for _, f := range r.In.Request.Boat.Follows() {
		for i, p := range r.In.Form.Input.Properties {
			id := OwnOf(p)
			k := &r.In.Values[i]
			if id == "" || id != rules.OwnLimit(f.Reading) || f.Limit == "" || !k.Known || k.OnlyUsual() || slices.ContainsFunc(list, func(h held) bool { return h.ID == id }) {
				continue
			}
			list = append(list, r.own(&f, p))
		}
	}
	return list
}

// own is a limit that the owner set, as one of the rules.
func (r *Judgement) own(f *boat.Follow, p *contract.Property) held {
	l := rules.Limit{ID: rules.OwnLimit(f.Reading), Calculation: r.In.Form.ID, On: p.Name, Title: p.Title + ", against your own limit", How: p.Description,
		Why:        "That is the limit which you set for it: what you meant to do at it is due.",
		Provenance: rules.Provenance{Source: rules.NewSource("set in the boat file", "", ""), Basis: rules.AsEntered}}
	h := held{Limit: &l, on: p, value: r.Place(p.Name), asRead: true}
	si, fault := r.readOwn(f, p)
	if fault != "" {
		h.unread = "the limit of the boat file cannot be read: " + fault
	}
	if l.Max = rules.BoundAt(si); r.ownSide(f.Reading) == sheet.AtLeast {
		l.Max, l.Min = rules.Bound{}, l.Max
	}
	return h
}

// ownSide is the side of a reading on which its limit lies.
func (r *Judgement) ownSide(reading string) sheet.Side {
	row := r.In.Request.Book.Table("trend-readings").Find(reading, nil)
	if row != nil && row.Values.Of("limitSide").Text == "least" {
		return sheet.AtLeast
	}
	return sheet.AtMost
}

// readOwn reads the limit in SI, or says what is wrong with it. A rise is one
// above the sea.
func (r *Judgement) readOwn(f *boat.Follow, p *contract.Property) (si float64, fault string) {
	if rise, is := boat.RiseOf(f.Limit); is && p.Kind.Name == quantity.KindTemperature {
		if sea, known := r.value("waterTemperature"); known && !math.IsNaN(sea.si) {
			return sea.si + rise, ""
		}
		return math.NaN(), "it is a rise above the sea, whose temperature is not known"
	}
	si, _, err := inputs.Numeric(p, f.Limit)
	if err != nil {
		return math.NaN(), err.Error()
	}
	return si, ""
}
