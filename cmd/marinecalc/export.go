package main

import (
	"flag"

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
func (e *exports) write(t *terminal, s *marinecalc.Sheet) error {
	if e.table != "" && e.csv == "" {
		return marinecalc.Problems{{Where: "--table", What: "names a list, but no file to write it to", Allowed: "--csv FILE --table NAME"}}.Err()
	}
	if e.calendar != "" {
		text, err := marinecalc.Calendar(s)
		if err != nil {
			return err
		}
		if err := t.save("--calendar", e.calendar, text); err != nil {
			return err
		}
	}
	if e.csv != "" {
		text, err := marinecalc.CSVOf(s, e.table)
		if err != nil {
			return err
		}
		if err := t.save("--csv", e.csv, text); err != nil {
			return err
		}
	}
	return nil
}
