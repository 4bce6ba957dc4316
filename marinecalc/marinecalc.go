package marinecalc

import (
	"context"

	"example.org/driveline/marinecalc/internal/boat"
	"example.org/driveline/marinecalc/internal/export"
	"example.org/driveline/marinecalc/problem"
	"example.org/driveline/marinecalc/sheet"
)

// standard is the engine behind the functions of the package.
var standard Engine

// Run is [Engine.Run] by the standard rules, without a context.
func Run(id string, input []byte, o Options) (*Sheet, error) {
	return standard.Run(context.Background(), id, input, o)
}

// Check is [Engine.Check] by the standard rules, without a context.
func Check(b *Boat, o Options) (*Survey, error) {
	return standard.Check(context.Background(), b, o)
}

// CheckToPrint is [Engine.CheckToPrint] by the standard rules, without a context.
func CheckToPrint(b *Boat, o Options) (*Survey, error) {
	return standard.CheckToPrint(context.Background(), b, o)
}

// Compare is [Engine.Compare] by the standard rules, without a context.
func Compare(b *Boat, before, after string, o Options) (*Comparison, error) {
	return standard.Compare(context.Background(), b, before, after, o)
}

// Call is [Engine.Call] by the standard rules, without a context.
func Call(request []byte) []byte { return standard.Call(context.Background(), request) }

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

func noSheet() error {
	return problem.List{{What: "this needs a sheet", Hint: "run a calculation first", Kind: problem.Missing}}.Err()
}

type (
	// Sheet is the document that every calculation returns.
	Sheet = sheet.Sheet
	// Table is a result that is a list.
	Table = sheet.Table
	// Problem is one thing wrong with an input.
	Problem = problem.Problem
	// Problems is a list of them.
	Problems = problem.List
	// Error, used by pointer, is the error of every function here that takes
	// input: all its problems at once.
	Error = problem.Error
)

// What errors.Is can tell of an [*Error]: one of its problems is of that kind.
var (
	ErrUnknown   = problem.ErrUnknown   // no such calculation, table or ask
	ErrMissing   = problem.ErrMissing   // an input that no origin gave
	ErrTooLarge  = problem.ErrTooLarge  // a text, list or number of trials above what is taken
	ErrCancelled = problem.ErrCancelled // the context ended
	ErrFailed    = problem.ErrFailed    // a mistake of the calculator's own, that would have been a panic
)

// ProblemsOf gives the problems that an error is made of, and none for nil.
func ProblemsOf(err error) Problems { return problem.Of(err) }
