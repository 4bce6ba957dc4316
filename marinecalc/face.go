package marinecalc

import (
	"example.org/driveline/marinecalc/internal/boat"
	"example.org/driveline/marinecalc/internal/calc"
	"example.org/driveline/marinecalc/internal/diagnosis"
	"example.org/driveline/marinecalc/internal/export"
	"example.org/driveline/marinecalc/internal/survey"
	"example.org/driveline/marinecalc/sheet"
)

// Version is marinecalc's own version, not that of its rule data.
const Version = calc.Version

// DefaultTrials is how many Monte Carlo trials a calculation runs when
// nothing else is asked for.
const DefaultTrials = calc.DefaultTrials

type (
	// Options say how a calculation is run. The zero value runs it without a
	// boat, in metric units, with 4096 trials, by the standard rules.
	Options = calc.Options
	// Boat is a boat file: the drivetrain written down once, with its maker's
	// figures and dated readings. A Boat is never changed after it is read.
	Boat = boat.Boat
	// Survey is everything a boat file allows to be calculated, in one pass.
	Survey = survey.Survey
	// Comparison is two dated states of one boat side by side.
	Comparison = survey.Comparison
	// Question is one question of the fault finding.
	Question = diagnosis.Question
	// Table is a result that is a list.
	Table = sheet.Table
)

// ReadBoat reads a boat file (schemas/boat.schema.json). The error, when
// there is one, is Problems: every fault by its place.
func ReadBoat(text []byte) (*Boat, error) { return boat.Read(text) }

// Check runs every calculation that the boat file allows and says for the
// rest what is missing and how to get it.
func Check(b *Boat, o Options) (*Survey, error) { return survey.Check(b, o) }

// Compare works the boat out as it was read up to each of two days (ISO 8601,
// the day itself included) and says what moved, and by how much more than the
// gauges can explain.
func Compare(b *Boat, before, after string, o Options) (*Comparison, error) {
	return survey.Compare(b, before, after, o)
}

// JobSheet writes a survey as one HTML file to print and take aboard.
func JobSheet(s *Survey) string { return export.JobSheet(s) }

// Calendar writes the dates of a work plan's sheet as an iCalendar object.
func Calendar(s *Sheet) ([]byte, error) { return export.Calendar(s) }

// CSV writes a list of results as comma-separated values (RFC 4180).
func CSV(t *Table) []byte { return export.CSV(t) }

// CSVOf writes the list of results of that name, or the sheet's first one.
func CSVOf(s *Sheet, name string) ([]byte, error) { return export.CSVOf(s, name) }

// ReadingsCSV writes the dated readings of a boat as comma-separated values.
func ReadingsCSV(b *Boat) []byte { return boat.ReadingsCSV(b) }

// AddReadingsCSV is the boat with the readings of a table added.
func AddReadingsCSV(b *Boat, text []byte) (*Boat, error) { return boat.AddReadingsCSV(b, text) }
