package upkeep

import (
	"fmt"
	"slices"
	"sort"
	"strings"

	"example.org/driveline/marinecalc/internal/upkeep/due"
	"example.org/driveline/marinecalc/quantity"
	"example.org/driveline/marinecalc/rules"
)

// saving is what a spare of one part saves.
type saving struct {
	part   rules.Part
	days   float64 // without drive, in a year
	causes []string
}

// spares finds how many days without drive a spare of each part would save: how
// often a trouble comes, times how often it leaves her without drive, times how
// long its parts take to arrive, shared among them.
func (k *keeper) spares() {
	causes, all := k.session.Book.Causes(), 0.0
	for _, c := range causes.All() {
		all += c.Prior
	}
	saved := map[string]*saving{}
	for _, c := range causes.All() {
		parts := k.partsFor(&c)
		lead := make([]float64, len(parts))
		for i, p := range parts {
			lead[i] = p.LeadDays
		}
		often := float64(k.in.FaultsPerYear) * c.Prior / all * k.strands(c.ID)
		for i, days := range due.Waiting(lead) {
			p := parts[i]
			if saved[p.ID] == nil {
				saved[p.ID] = &saving{part: p}
			}
			saved[p.ID].days += often * days
			saved[p.ID].causes = append(saved[p.ID].causes, c.Title)
		}
	}
	var list []*saving
	for _, p := range k.session.Book.Parts().All() { // in the order of the rows, whatever the map's
		if s := saved[p.ID]; s != nil && s.days > 0 {
			list = append(list, s)
		}
	}
	sort.SliceStable(list, func(i, j int) bool { return list[i].days > list[j].days })
	for i, s := range list[:min(len(list), mostSpares)] {
		k.out.SparesBy[i] = k.spare(s)
	}
}

func (k *keeper) spare(s *saving) SpareLine {
	l := SpareLine{Part: s.part.Title, Aboard: "no", Saves: perYear(s.days), LeadTime: quantity.Time(s.part.LeadDays * secondsPerDay), For: strings.Join(s.causes, "; ")}
	i := slices.IndexFunc(k.in.Spares, func(a Spare) bool { return a.Part == s.part.ID })
	if i < 0 {
		return l
	}
	if k.in.Spares[i].Aboard {
		l.Aboard = "yes"
	}
	if price := float64(k.in.Spares[i].Price); price > 0 {
		l.PerPrice = perYear(100 * s.days / price)
	}
	if mass := float64(k.in.Spares[i].Mass); mass > 0 {
		l.PerMass = perYear(s.days / mass)
	}
	return l
}

// perYear writes days a year to two figures, in hours where it is little.
func perYear(days float64) string {
	if days < 2 {
		return fmt.Sprintf("%.2g h a year", 24*days)
	}
	return fmt.Sprintf("%.2g days a year", days)
}

// strands is how often a cause leaves her without drive.
func (k *keeper) strands(cause string) float64 {
	row := k.session.Book.Table("stranding").Find(cause, k.known)
	if row != nil {
		return row.Values.Of("strands").SI
	}
	for _, r := range k.session.Book.Table("stranding").Rows.All() {
		if r.Pick == cause {
			return 0 // not on this boat
		}
	}
	return float64(k.in.StrandsUsual)
}

// partsFor are the parts of the first remedy of a cause that this boat takes,
// each once, and not what any toolbox holds or is taken only where asked for.
func (k *keeper) partsFor(c *rules.Cause) (list []rules.Part) {
	if c.Remedies.Len() == 0 {
		return nil
	}
	steps := map[string]bool{}
	for _, r := range k.session.Book.Remedies().All() {
		if r.ID == c.Remedies.At(0) {
			for _, id := range r.Steps.All() {
				steps[id] = true
			}
		}
	}
	needed := map[string]bool{}
	for _, s := range k.session.Book.Steps().All() {
		if steps[s.ID] {
			for _, need := range s.Parts.All() {
				needed[need.Part] = true
			}
		}
	}
	for _, p := range k.session.Book.Parts().All() {
		if needed[p.ID] && !p.Sundry && !p.Asked && k.session.Takes(p) {
			list = append(list, p)
		}
	}
	return list
}
