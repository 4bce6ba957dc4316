package marinecalc

import (
	"slices"

	"example.org/driveline/marinecalc/internal/boat"
)

// Reading is one reading to put into a boat's log.
// Its members are Baseline, Date, Gauge, Note, Source, Time and Value: what each is
// stands with boat.Reading of the inner packages.
type Reading = boat.Reading

// Series is a reading of the boat that can be logged and followed.
type Series struct {
	Reading  string   `json:"reading"` // the name by which it is followed
	Title    string   `json:"title"`
	Kind     string   `json:"kind"`  // of quantity
	Units    []string `json:"units"` // shown in, metric and US; "" for a plain number
	Readings int      `json:"readings"`
	Newest   string   `json:"newest,omitempty"`
	Date     string   `json:"date,omitempty"`
	Time     string   `json:"time,omitempty"`
	Source   string   `json:"source,omitempty"`
	Gauge    string   `json:"gauge,omitempty"`    // that the newest was read with
	Baseline bool     `json:"baseline,omitempty"` // one of them was read while all was well
	Loggable bool     `json:"loggable"`           // one at a time, with Log
	Aside    bool     `json:"aside,omitempty"`    // it says how another was read, and is none to look at by itself
}

// Log is the boat with one reading put into its log. The error is an [*Error]
// with the places of the reading's members.
func Log(b *Boat, r Reading) (*Boat, error) {
	if b == nil {
		return nil, noBoat()
	}
	return b.Log(r)
}

// SeriesOf lists what can be followed of a boat: first what it has readings
// of, then what can be logged.
func SeriesOf(b *Boat) []Series {
	list := []Series{}
	if b == nil {
		return list
	}
	loggable := b.Loggable()
	for _, f := range b.Followable() {
		list = append(list, Series{Reading: f.Name, Title: f.Title, Kind: f.Kind.Name, Units: f.Units[:], Readings: f.Readings, Newest: f.Newest.Written(f.Kind), Date: f.Newest.Date, Time: f.Newest.Time,
			Source: f.Newest.Source(), Gauge: f.Newest.GaugeOf(f.Name), Baseline: f.Baseline, Loggable: slices.Contains(loggable, f.Name), Aside: f.Aside()})
	}
	for _, name := range loggable {
		if slices.ContainsFunc(list, func(s Series) bool { return s.Reading == name }) {
			continue
		}
		if q, ok := b.Describe(name); ok {
			list = append(list, Series{Reading: name, Title: q.Title, Kind: q.Kind.Name, Units: q.Units[:], Loggable: true})
		}
	}
	return list
}

// ReadingsCSV writes the dated readings of a boat as a table (RFC 4180).
func ReadingsCSV(b *Boat) []byte {
	if b == nil {
		return nil
	}
	return boat.ReadingsCSV(b)
}

// AddReadingsCSV is the boat with the readings of a table added. The error is
// an [*Error] with a place "/csv/<line>/<column>" for each cell that cannot be
// read; nothing is added then.
func AddReadingsCSV(b *Boat, text []byte) (*Boat, error) {
	if b == nil {
		return nil, noBoat()
	}
	return boat.AddReadingsCSV(b, text)
}
