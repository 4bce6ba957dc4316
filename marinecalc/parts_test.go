package marinecalc_test

import (
	"context"
	"maps"
	"slices"
	"strconv"
	"strings"
	"testing"

	"example.org/driveline/marinecalc"
	"example.org/driveline/marinecalc/internal/testboat"
	"example.org/driveline/marinecalc/rules"
)

// counted is how many of each part there are, by its title; −1 where the number
// is no count or is not known.
func counted(list map[string]float64, title, amount string) {
	n, err := strconv.ParseFloat(strings.TrimSuffix(strings.Fields(amount)[0], "×"), 64)
	if err != nil || !strings.Contains(amount, "×") || list[title] < 0 {
		n, list[title] = -1, 0
	}
	list[title] += n
}

// What the plan buys is what the steps take, part for part and piece for piece,
// for every piece of work on a demonstration boat, and on each boat of the whole
// jobs for what cures the causes found there.
func TestPlanBuysWhatTheStepsTake(t *testing.T) {
	alone(t)
	var all []string
	for _, r := range rules.Standard().Remedies().All() {
		all = append(all, r.ID)
	}
	check := func(name string, b *marinecalc.Boat, work []string) {
		o := marinecalc.Options{Boat: b, NoRanges: true}
		for _, id := range work {
			p, err := new(marinecalc.Engine).Procedure(context.Background(), b, marinecalc.ProcedureRequest{Remedies: []string{id}}, o)
			if err != nil {
				t.Fatal(err)
			}
			takes := map[string]float64{}
			for _, phase := range p.Phases {
				for _, s := range phase.Steps {
					for _, part := range s.Parts {
						counted(takes, part.Title, part.Amount)
					}
				}
			}
			s := testboat.Run(t, "work-plan", `{"today": "2027-01-04", "lies": "afloat", "remedies": [{"remedy": "`+id+`"}]}`, o)
			buys := map[string]float64{}
			if shopping := s.Table("shopping"); shopping != nil {
				for _, r := range shopping.Rows {
					counted(buys, shopping.Reader(r)("part"), shopping.Reader(r)("amount"))
				}
			}
			if !maps.Equal(takes, buys) {
				t.Errorf("%s, %s: the steps take %v, the plan buys %v", name, id, takes, buys)
			}
		}
	}
	check("kittiwake", testboat.Demo(t, "kittiwake"), all)
	eachJob(t, func(name string, j *job, b *marinecalc.Boat) {
		var work []string
		for _, day := range j.Days {
			for _, list := range day.PlansOneOf {
				for _, id := range list {
					if !slices.Contains(work, id) {
						work = append(work, id)
					}
				}
			}
		}
		check(name, b, work)
	})
}
