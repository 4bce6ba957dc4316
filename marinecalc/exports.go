// Boat files in, papers and files out.

package marinecalc

import (
	"context"

	"example.org/driveline/marinecalc/internal/boat"
	"example.org/driveline/marinecalc/internal/export"
)

// ReadBoat reads a boat file (schemas/boat.schema.json). The error is an
// [*Error] with every fault at its place.
func ReadBoat(text []byte) (*Boat, error) { return boat.Read(text) }

// JobSheet writes a survey as one HTML file to print and take aboard.
func JobSheet(s *Survey) string {
	if s == nil {
		return ""
	}
	return export.JobSheet(s)
}

// Calendar writes the dates of a work plan's sheet as an iCalendar object
// (RFC 5545) for the person's own calendar. The error is an [*Error]: another
// sheet, or a plan without a date.
func Calendar(s *Sheet) ([]byte, error) {
	if s == nil {
		return nil, noSheet()
	}
	return export.Calendar(s)
}

// CSV writes a list of results as comma-separated values (RFC 4180).
func CSV(t *Table) []byte {
	if t == nil {
		return nil
	}
	return export.CSV(t)
}

// CSVOf writes the list of results of that name, or the sheet's first one
// where name is empty. The error is an [*Error]: no such list.
func CSVOf(s *Sheet, name string) ([]byte, error) {
	if s == nil {
		return nil, noSheet()
	}
	return export.CSVOf(s, name)
}

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
