package marinecalc

import (
	"context"

	"example.org/driveline/marinecalc/internal/export"
)

type (
	// TorqueCard is every joint of a boat that is set with a wrench.
	TorqueCard = export.TorqueCard
	// TorqueJoint is one joint of it.
	TorqueJoint = export.TorqueJoint
)

// TorqueCard gathers the torques of all the boat's joints: the maker's first, as
// the boat file has them, else what the sheets give. Of a joint that is not
// known it says which figure is wanted. The error is an [*Error].
func (e *Engine) TorqueCard(ctx context.Context, b *Boat, o Options) (*TorqueCard, error) {
	o.Trials = e.printed(o)
	s, err := e.Check(ctx, b, o)
	if err != nil {
		return nil, err
	}
	o, err = e.with(o)
	if err != nil {
		return nil, err
	}
	return export.Torques(s, b, o.Rules), nil
}

// printed is how many trials what is printed has: all of them everywhere, since
// people go by its figures.
func (e *Engine) printed(o Options) int {
	if o.Trials > 0 || o.NoRanges || e != nil && 0 < e.maxTrials && e.maxTrials < DefaultTrials {
		return o.Trials
	}
	return DefaultTrials
}

// TorquePage writes a torque card as one HTML file that prints on one page.
func TorquePage(card *TorqueCard) string {
	if card == nil {
		return ""
	}
	return export.TorquePage(card)
}
