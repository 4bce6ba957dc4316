package upkeep

import (
	"fmt"
	"slices"
	"sort"
	"strings"

	"example.org/driveline/marinecalc/internal/calc"
	"example.org/driveline/marinecalc/internal/upkeep/due"
	"example.org/driveline/marinecalc/quantity"
	"example.org/driveline/marinecalc/rules"
)

// Where a spare is fitted, the nearest first.
var fitted = [...]string{"afloat, with own tools", "once she is ashore", "beside a workshop's work"}

// reason is a trouble for which a part is wanted.
type reason struct {
	title              string
	share, strands     float64 // of all troubles, and how often one leaves her without drive
	lead, waits, saves float64 // days: of the order, of what takes its time anyway, and what the spare saves of them in a year
	fit                int     // of fitted
}

// saving is what a spare of one part saves.
type saving struct {
	part    rules.Part
	days    float64 // without drive, in a year
	fit     int     // where it saves most
	reasons []reason
}

// spares finds how many days without drive a spare of each part would save: how
// often a trouble comes, times how often it leaves her without drive, times how
// long its parts take to arrive beyond what she waits for a lift or a workshop
// anyway, shared among them. What can be fitted afloat stands first: on a
// cruise it alone brings her on.
func (k *keeper) spares() {
	causes, all := k.session.Book.Causes(), 0.0
	for _, c := range causes.All() {
		all += c.Prior
	}
	saved := map[string]*saving{}
	for _, c := range causes.All() {
		if _, cannot := calc.NotHers(k.session.Book, k.session.Boat, c); cannot {
			continue
		}
		parts, fit, waits := k.partsFor(&c)
		lead := make([]float64, len(parts))
		for i, p := range parts {
			lead[i] = max(0, p.LeadDays-waits)
		}
		share, strands := c.Prior/all, k.strands(c.ID)
		for i, days := range due.Waiting(lead) {
			p := parts[i]
			if saved[p.ID] == nil {
				saved[p.ID] = &saving{part: p}
			}
			if saves := float64(k.in.FaultsPerYear) * share * strands * days; saves > 0 {
				saved[p.ID].days += saves
				saved[p.ID].reasons = append(saved[p.ID].reasons, reason{c.Title, share, strands, p.LeadDays, waits, saves, fit})
			}
		}
	}
	var list []*saving
	for _, p := range k.session.Book.Parts().All() { // in the order of the rows, whatever the map's
		if s := saved[p.ID]; s != nil && s.days > 0 {
			sort.SliceStable(s.reasons, func(i, j int) bool { return s.reasons[i].saves > s.reasons[j].saves })
			s.fit = s.fitMost()
			list = append(list, s)
		}
	}
	sort.SliceStable(list, func(i, j int) bool {
		a, b := list[i], list[j]
		return a.fit < b.fit || a.fit == b.fit && a.days > b.days
	})
	for i, s := range list[:min(len(list), mostSpares)] {
		k.out.SparesBy[i] = k.spare(s)
	}
}

// fitMost is where the spare saves most days.
func (s *saving) fitMost() int {
	var days [len(fitted)]float64
	for _, r := range s.reasons {
		days[r.fit] += r.saves
	}
	most := 0
	for fit := range days {
		if days[fit] > days[most] {
			most = fit
		}
	}
	return most
}

// because says why a spare stands where it does: by the trouble for which it
// saves most.
func (s *saving) because() string {
	r := &s.reasons[0]
	words := fmt.Sprintf("%s: %s of 100 troubles of drivetrains, leaves her without drive in %.0f of 100 times, and the part takes %s", r.title, figure(100*r.share), 100*r.strands, dayText(r.lead))
	if r.waits > 0 {
		words += fmt.Sprintf(", %s beyond a lift or a workshop", dayText(r.lead-r.waits))
	}
	return words + "."
}

func dayText(days float64) string {
	if days == 1 {
		return "1 day"
	}
	return fmt.Sprintf("%.0f days", days)
}

// mostFor is how many troubles are named at a spare.
const mostFor = 3

func (k *keeper) spare(s *saving) SpareLine {
	var causes []string
	for _, r := range s.reasons[:min(len(s.reasons), mostFor)] {
		causes = append(causes, r.title)
	}
	if more := len(s.reasons) - mostFor; more > 0 {
		causes = append(causes, fmt.Sprintf("%d more", more))
	}
	l := SpareLine{Part: s.part.Title, Aboard: "no", Saves: perYear(s.days), Fit: fitted[s.fit], Because: s.because(), LeadTime: quantity.Time(s.part.LeadDays * secondsPerDay), For: strings.Join(causes, "; ")}
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
	row := k.session.Book.Table("stranding").Named(cause, k.known)
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

// partsFor are the parts of the first remedy of a cause, and of one that takes
// its place once more is seen, that this boat takes,
// each once, and not what any toolbox holds or is taken only where asked for;
// where they are fitted; and how many days its work waits for a lift or a
// workshop, whatever is aboard.
func (k *keeper) partsFor(c *rules.Cause) (list []rules.Part, fit int, waits float64) {
	if c.Remedies.Len() == 0 {
		return nil, 0, 0
	}
	steps := map[string]bool{}
	for _, r := range k.session.Book.Remedies().All() {
		if r.ID == c.Remedies.At(0) || rules.Contains(c.Remedies, r.ID) && r.OnceSeen.Len() > 0 {
			for _, id := range r.Steps.All() {
				steps[id] = true
			}
		}
	}
	needed := map[string]bool{}
	for _, s := range k.session.Book.Steps().All() {
		if !steps[s.ID] {
			continue
		}
		if _, hers := k.session.StepOn(s); !hers {
			continue
		}
		if s.Place == "ashore" {
			fit, waits = max(fit, 1), max(waits, float64(k.in.LiftWait)/secondsPerDay)
		}
		if s.WaitDays > 1 && s.Phase != "afterwards" {
			fit, waits = 2, max(waits, float64(s.WaitDays))
		}
		for _, need := range s.Parts.All() {
			needed[need.Part] = true
		}
	}
	for _, p := range k.session.Book.Parts().All() {
		if needed[p.ID] && !p.Sundry && !p.Asked && k.session.Takes(p) {
			list = append(list, p)
		}
	}
	return list, fit, waits
}
