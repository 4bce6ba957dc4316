package main

import (
	"flag"
	"io"
	"os"
	"strings"

	"example.org/driveline/marinecalc"
)

// readings writes the dated readings of a boat file as CSV, or adds those of a
// CSV file to it and writes the new boat file.
func readings(args []string, out, errs io.Writer) error {
	fs := flag.NewFlagSet("readings", flag.ContinueOnError)
	fs.SetOutput(io.Discard)
	add, to := fs.String("add", "", ""), fs.String("out", "", "")
	files, err := parse(fs, args)
	if err != nil {
		return marinecalc.Problems{{Where: "readings", What: err.Error(), Allowed: "--add FILE, --out FILE"}}.Err()
	}
	if len(files) != 1 {
		return marinecalc.Problems{{Where: "readings", What: "needs one boat file", Allowed: "marinecalc readings BOATFILE [--add FILE] [--out FILE]"}}.Err()
	}
	b, err := readBoat("readings", files[0], marinecalc.Options{}, errs)
	if err != nil {
		return err
	}
	if *add == "" {
		return deliver(out, *to, marinecalc.ReadingsCSV(b))
	}
	table, err := os.ReadFile(*add)
	if err != nil {
		return unreadable("--add", err)
	}
	b, err = marinecalc.AddReadingsCSV(b, table)
	if err != nil {
		list := marinecalc.ProblemsOf(err)
		for i := range list {
			list[i].Where = strings.Replace(list[i].Where, "/csv", *add, 1)
		}
		return list.Err()
	}
	if *to == "" {
		return printJSON(out, b)
	}
	var text strings.Builder
	if err := printJSON(&text, b); err != nil {
		return err
	}
	return deliver(out, *to, []byte(text.String()))
}

// deliver writes a text to a file, or to standard output where none is named.
func deliver(out io.Writer, file string, text []byte) error {
	if file == "" {
		_, err := out.Write(text)
		return err
	}
	if err := os.WriteFile(file, text, 0o644); err != nil {
		return unwritable("--out", err)
	}
	return nil
}
