package marinecalc

import (
	"time"

	"example.org/driveline/marinecalc/internal/boat"
	"example.org/driveline/marinecalc/internal/signalk"
	"example.org/driveline/marinecalc/quantity"
)

// SignalK is what became of the samples of a Signal K text.
// Its members are Added, Entries, Left, More, Others, Paths, Taken, Timeless and
// Unknown: what each is stands with signalk.Report of the inner packages.
type SignalK = signalk.Report

// SignalKChoice is what the owner says of one.
type SignalKChoice struct {
	Engine string        // of several, by its name in the paths; "" for the only one
	Every  time.Duration // of how long a time one entry is made, 1 min to 24 h; 0 for an hour
}

// ReadTime reads a stretch of time such as "30 min".
func ReadTime(text string) (time.Duration, error) {
	kind, _ := quantity.Lookup(quantity.KindTime)
	read, err := kind.Parse(text)
	if err != nil {
		return 0, err
	}
	return time.Duration(read.SI * float64(time.Second)), nil
}

// AddSignalK is the boat with the samples of a Signal K text (signalk.org, an
// open standard) added to its dated readings: a whole document, a delta, a
// list of these, or a log with one a line. Of each hour in which the engine ran
// there is one entry, at the moment of its highest speed, with what was read
// within a minute of that; where it stood, at the last moment. An own reading
// of the boat that names a path takes that path's values. Dates and times are
// UTC, as the samples' are. What the boat has already is not added again. The
// error is an [*Error] with places below "/signalK".
func AddSignalK(b *Boat, text []byte, c SignalKChoice) (*Boat, *SignalK, error) {
	if b == nil {
		return nil, nil, noBoat()
	}
	entries, report, err := signalk.Take(text, signalk.Choice{Engine: c.Engine, Every: c.Every, Own: b.OwnPaths()})
	if err != nil {
		return nil, nil, err
	}
	moments := make([]boat.Moment, len(entries))
	for i, e := range entries {
		moments[i] = boat.Moment(e)
	}
	after, added, left, err := b.AddMoments(moments, "Signal K")
	if err != nil {
		return nil, nil, err
	}
	report.Added, report.Left = added, left
	return after, report, nil
}
