package marinecalc

import (
	"context"

	"example.org/driveline/marinecalc/internal/export"
)

type (
	// TorqueCard is every joint of a boat that is set with a wrench.
	// Its members are Boat, Day and Joints: what each is stands with export.TorqueCard
	// of the inner packages.
	TorqueCard = export.TorqueCard
	// TorqueJoint is one joint of it.
	// Its members are Again, Joint, Look, Lubrication, Maker, Order, Range, Source,
	// Thread, Title, Torque, Unsettled and Wanted: what each is stands with
	// export.TorqueJoint of the inner packages.
	TorqueJoint = export.TorqueJoint
)

// TorqueCard gathers the torques of all the boat's joints: the maker's first, as
// the boat file has them, else what the sheets give. Of a joint that is not
// known it says which figure is wanted. The error is an [*Error].
func (e *Engine) TorqueCard(ctx context.Context, b *Boat, o Options) (*TorqueCard, error) {
	s, err := e.CheckToPrint(ctx, b, o)
	if err != nil {
		return nil, err
	}
	o, err = e.with(o)
	if err != nil {
		return nil, err
	}
	return export.Torques(s, b, o.Rules), nil
}

// TorquePage writes a torque card as one HTML file that prints on one page.
func TorquePage(card *TorqueCard) string {
	if card == nil {
		return ""
	}
	return export.TorquePage(card)
}
