package main

import (
	"flag"
	"os"

	"example.org/driveline/marinecalc"
)

// exports are the files that a sheet is also written to.
type exports struct{ calendar, csv, table string }

func (e *exports) define(fs *flag.FlagSet) {
	fs.StringVar(&e.calendar, "calendar", "", "")
	fs.StringVar(&e.csv, "csv", "", "")
	fs.StringVar(&e.table, "table", "", "")
}

// write writes the files that were asked for.
func (e *exports) write(s *marinecalc.Sheet) error {
	if e.table != "" && e.csv == "" {
		return marinecalc.Problems{{Where: "--table", What: "names a list, but no file to write it to", Allowed: "--csv FILE --table NAME"}}.Err()
	}
	if e.calendar != "" {
		text, err := marinecalc.Calendar(s)
		if err != nil {
			return err
		}
		if err := os.WriteFile(e.calendar, text, 0o644); err != nil {
			return unwritable("--calendar", err)
		}
	}
	if e.csv != "" {
		text, err := marinecalc.CSVOf(s, e.table)
		if err != nil {
			return err
		}
		if err := os.WriteFile(e.csv, text, 0o644); err != nil {
			return unwritable("--csv", err)
		}
	}
	return nil
}

func unwritable(where string, err error) error {
	return marinecalc.Problems{{Where: where, What: err.Error(), Allowed: "a file that can be written", Hint: "check its name and folder"}}.Err()
}
