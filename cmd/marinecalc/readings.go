package main

import (
	"bytes"
	"flag"
	"fmt"
	"io"
	"maps"
	"slices"
	"strings"

	"example.org/driveline/cmd/marinecalc/disk"
	"example.org/driveline/cmd/marinecalc/plain"
	"example.org/driveline/marinecalc"
)

// log puts one reading into the log of a boat file and writes the new boat file.
func (t *terminal) log(args []string) error {
	var r marinecalc.Reading
	fs := flag.NewFlagSet("log", flag.ContinueOnError)
	fs.SetOutput(io.Discard)
	const allowed = "--reading NAME --value TEXT --date DAY [--time HH:MM] [--source TEXT] [--gauge NAME] [--baseline] [--note TEXT] [--out FILE]"
	for name, to := range map[string]*string{"reading": &r.Reading, "value": &r.Value, "date": &r.Date, "time": &r.Time, "source": &r.Source, "gauge": &r.Gauge, "note": &r.Note} {
		fs.StringVar(to, name, "", "")
	}
	fs.BoolVar(&r.Baseline, "baseline", false, "")
	to := fs.String("out", "", "")
	files, err := parse(fs, args)
	if err != nil {
		return badFlag("log", err, flagsOf(fs), "")
	}
	if len(files) != 1 {
		return marinecalc.Problems{{Where: "log", What: "needs one boat file", Allowed: "marinecalc log BOATFILE " + allowed}}.Err()
	}
	b, err := t.readBoat("log", files[0], marinecalc.Options{})
	if err != nil {
		return err
	}
	if b, err = marinecalc.Log(b, r); err != nil {
		list := marinecalc.ProblemsOf(err)
		for i := range list {
			list[i].Where = strings.Replace(list[i].Where, "/", "--", 1)
		}
		return list.Err()
	}
	return t.deliverBoat(*to, b)
}

// printSeries lists what can be followed of a boat.
func printSeries(out io.Writer, b *marinecalc.Boat) {
	for _, s := range marinecalc.SeriesOf(b) {
		line := s.Title
		if s.Readings > 0 {
			line += fmt.Sprintf(": %d, newest %s on %s", s.Readings, s.Newest, s.Date)
			for _, more := range []string{s.Time, s.Gauge, s.Source} {
				if more != "" {
					line += ", " + more
				}
			}
			if s.Baseline {
				line += "; with a baseline"
			}
		}
		plain.Column(out, "", 35, s.Reading, line)
	}
}

// readings writes the dated readings of a boat file as CSV, or adds those of a
// CSV file to it and writes the new boat file, or lists what can be followed.
func (t *terminal) readings(args []string) error {
	fs := flag.NewFlagSet("readings", flag.ContinueOnError)
	fs.SetOutput(io.Discard)
	add, to, list := fs.String("add", "", ""), fs.String("out", "", ""), fs.Bool("list", false, "")
	engine, every := fs.String("engine", "", ""), fs.String("every", "1 h", "")
	files, err := parse(fs, args)
	if err != nil {
		return badFlag("readings", err, flagsOf(fs), "")
	}
	if len(files) != 1 {
		return marinecalc.Problems{{Where: "readings", What: "needs one boat file", Allowed: "marinecalc readings BOATFILE [--list] [--add FILE] [--out FILE]"}}.Err()
	}
	b, err := t.readBoat("readings", files[0], marinecalc.Options{})
	if err != nil {
		return err
	}
	if *list {
		printSeries(t.out, b)
		return nil
	}
	if *add == "" {
		return t.deliver(*to, marinecalc.ReadingsCSV(b))
	}
	table, err := t.Load("--add", *add)
	if err != nil {
		return err
	}
	if isJSON(table) {
		return t.addSignalK(b, table, *add, *engine, *every, *to)
	}
	b, err = marinecalc.AddReadingsCSV(b, table)
	if err != nil {
		list := marinecalc.ProblemsOf(err)
		for i := range list {
			list[i].Where = strings.Replace(list[i].Where, "/csv", *add, 1)
		}
		return list.Err()
	}
	return t.deliverBoat(*to, b)
}

// isJSON tells a text of JSON from a table.
func isJSON(text []byte) bool {
	text = disk.Trimmed(text)
	return len(text) > 0 && (text[0] == '{' || text[0] == '[')
}

// addSignalK writes the boat file with the samples of a Signal K text, and
// tells what became of these.
func (t *terminal) addSignalK(b *marinecalc.Boat, text []byte, name, engine, every, to string) error {
	stretch, err := marinecalc.ReadTime(every)
	if err != nil {
		return marinecalc.Problems{{Where: "--every", What: err.Error(), Allowed: "a time from 1 min to 24 h"}}.Err()
	}
	b, report, err := marinecalc.AddSignalK(b, text, marinecalc.SignalKChoice{Engine: engine, Every: stretch})
	if err != nil {
		list := marinecalc.ProblemsOf(err)
		for i := range list {
			switch where := list[i].Where; where {
			case "/engine", "/every":
				list[i].Where = "--" + where[1:]
			default:
				list[i].Where = strings.Replace(where, "/signalK", name, 1)
			}
		}
		return list.Err()
	}
	tell := func(format string, args ...any) {
		fmt.Fprintln(t.errs, plain.Wrapped("", fmt.Sprintf(format, args...)))
	}
	tell("%s: %d entries made of its samples, %d of them new.", name, report.Entries, report.Added)
	for _, c := range report.Taken {
		tell("taken: %s, %d samples, as %s", c.Path, c.Samples, c.Reading)
	}
	for _, c := range report.Unknown {
		tell("left: %s, %d samples, no reading goes with it", c.Path, c.Samples)
	}
	if report.More > 0 {
		tell("left: %d other paths", report.More)
	}
	for _, reading := range slices.Sorted(maps.Keys(report.Left)) {
		tell("left: %s, %d values beyond what a boat file takes", reading, report.Left[reading])
	}
	if report.Others > 0 {
		tell("left: %d of other vessels", report.Others)
	}
	if report.Timeless > 0 {
		tell("left: %d numbers without a time", report.Timeless)
	}
	return t.deliverBoat(to, b)
}

// deliverBoat writes a boat file as deliver does.
func (t *terminal) deliverBoat(file string, b *marinecalc.Boat) error {
	var text bytes.Buffer
	if err := plain.JSON(&text, b); err != nil {
		return err
	}
	return t.deliver(file, text.Bytes())
}

// deliver writes a text to a file, or to standard output where none is named.
func (t *terminal) deliver(file string, text []byte) error {
	if file == "" {
		_, err := t.out.Write(text)
		return err
	}
	return t.Save("--out", file, text)
}
