package verdict

import (
	"math"
	"slices"

	"example.org/driveline/marinecalc/internal/contract"
	"example.org/driveline/marinecalc/internal/spread"
)

// corner is a run of trials with unverified figures as they stand at the ends of
// their brackets. Several limits of a sheet often have the same worst ends: one run
// tells of all of them.
type corner struct {
	figures []standing
	places  []*float64 // that nature varies, in order
	trials  int
	limits  []*held
	out     spread.Outcome    // of what is left of each of these
	space   *spread.Workspace // in which that lies
}

// standing is a figure and where it stands.
type standing struct {
	to *float64
	at float64
}

// cornered runs trials with the figures as they stand and nature varying round
// them, or finds those that were run there for another limit.
func (r *Judgement) cornered(h *held, limit spread.Limit, figures []figure, trials int) (left *spread.Range, failed int, err error) {
	factors, places := r.nature(figures)
	for _, c := range r.room.corners {
		if at := slices.Index(c.limits, h); at >= 0 && c.trials == trials && c.standsAs(figures) && slices.Equal(c.places, places) {
			return &c.out.Results[at], c.out.Failed, nil
		}
	}
	c := &corner{trials: trials, places: slices.Clone(places), limits: []*held{h}, space: spread.Borrow()}
	for i := range figures {
		c.figures = append(c.figures, standing{figures[i].to, *figures[i].to})
	}
	bounds := r.alsoOver(figures, c, limit)
	if c.out, err = r.tryHere(c.space, factors, places, trials, c.limits, bounds); err != nil {
		c.space.Return()
		return nil, 0, err
	}
	r.room.corners = append(r.room.corners, c)
	return &c.out.Results[0], c.out.Failed, nil
}

// tryHere runs trials with the figures as they stand, and says what they leave of limits.
func (r *Judgement) tryHere(space *spread.Workspace, factors []spread.Factor, places []*float64, trials int, limits []*held, bounds []spread.Limit) (spread.Outcome, error) {
	margins := make([]*float64, len(limits))
	var results []string // that they are on
	for i, h := range limits {
		margins[i] = &h.margin
		for _, name := range [...]string{h.On, h.boundOf()} {
			if r.Result(name) != nil {
				results = append(results, name)
			}
		}
	}
	defer func() {
		for i, to := range places {
			*to = factors[i].Estimate
		}
	}()
	run := r.In.Request.UntilCancelled(r.In.Call.For(results))
	return space.Run(factors, spread.Plan{Trials: trials, Seed: r.In.Request.Seed, Stopped: r.In.Request.Stopped, Shares: spread.NoShares},
		spread.Model{Factors: places, Results: margins, Run: func() bool {
			if run() != nil {
				return false
			}
			for i, h := range limits {
				h.move(bounds[i])
			}
			return true
		}})
}

// standsAs tells whether the figures are those of the corner and stand there.
func (c *corner) standsAs(figures []figure) bool {
	return len(c.figures) == len(figures) && !slices.ContainsFunc(figures, func(f figure) bool {
		return !slices.Contains(c.figures, standing{f.to, *f.to})
	})
}

// alsoOver adds to a corner's limit the others that are still to be judged over the
// same figures, and gives the bounds of all.
func (r *Judgement) alsoOver(figures []figure, c *corner, limit spread.Limit) []spread.Limit {
	bounds := []spread.Limit{limit}
	for i := range r.limits {
		h := &r.limits[i]
		if h == c.limits[0] || h.told != nil || h.value == nil || h.Chance {
			continue
		}
		limit, behind, ok := r.limit(h.Limit, h.on)
		if j, measured := r.value(h.On); ok && measured && sameInputs(j.restsOn(behind), figures) && !math.IsNaN(h.move(limit)) {
			c.limits, bounds = append(c.limits, h), append(bounds, limit)
		}
	}
	return bounds
}

// sameInputs tells whether the figures are those inputs.
func sameInputs(list []*contract.Property, figures []figure) bool {
	return len(list) == len(figures) && !slices.ContainsFunc(figures, func(f figure) bool { return !slices.Contains(list, f.input) })
}

// leaveCorners gives back the memory of the trials at corners.
func (r *Judgement) leaveCorners() {
	for _, c := range r.room.corners {
		c.space.Return()
	}
	clear(r.room.corners)
	r.room.corners = r.room.corners[:0]
}
