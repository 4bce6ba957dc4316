package main

import (
	"encoding/json"
	"flag"
	"fmt"
	"io"
	"strings"
	"time"
	"unicode"

	"example.org/driveline/cmd/marinecalc/disk"
	"example.org/driveline/cmd/marinecalc/plain"
	"example.org/driveline/marinecalc"
)

// common are the flags that fill and survey share.
type common struct {
	rules  several
	units  string
	trials int
	plain  bool // no ranges
	seed   uint64
	work   bool
	json   bool
}

// several collects a flag that may be repeated.
type several []string

func (f *several) String() string     { return strings.Join(*f, ",") }
func (f *several) Set(v string) error { *f = append(*f, v); return nil }

// once is a flag that may be given once: of two that differ neither is meant
// more than the other.
type once struct {
	flag.Value
	given bool
}

func (o *once) Set(v string) error {
	if o.given && v != o.String() {
		return fmt.Errorf("it was given as %q before", o.String())
	}
	o.given = true
	return o.Value.Set(v)
}

// IsBoolFlag tells whether it takes no value.
func (o *once) IsBoolFlag() bool {
	b, is := o.Value.(interface{ IsBoolFlag() bool })
	return is && b.IsBoolFlag()
}

func (c *common) define(fs *flag.FlagSet) {
	fs.SetOutput(io.Discard) // what is wrong is said once, by complain
	fs.Var(&c.rules, "rules", "")
	fs.StringVar(&c.units, "units", "", "")
	fs.IntVar(&c.trials, "trials", 0, "")
	fs.BoolVar(&c.plain, "no-ranges", false, "")
	fs.Uint64Var(&c.seed, "seed", 1, "")
	fs.BoolVar(&c.work, "work", false, "")
	fs.BoolVar(&c.json, "json", false, "")
}

// options turns the flags into the options of a run.
func (c *common) options(t *terminal) (marinecalc.Options, error) {
	o := marinecalc.Options{Units: c.units, Trials: c.trials, NoRanges: c.plain, Seed: c.seed}
	_, texts, err := t.readRules("--rules", c.rules)
	if err != nil {
		return o, err
	}
	o.Rules, err = marinecalc.Overlay(texts...)
	return o, err
}

// fill works one calculation out.
func (t *terminal) fill(args []string) (int, error) {
	id, args := takeCalculation(args)
	if id == "" {
		return 0, marinecalc.Problems{{Where: "fill", What: "names no calculation", Allowed: `one of "marinecalc index"`}}.Err()
	}
	form, err := marinecalc.Open(id)
	if err != nil {
		return 0, err
	}
	var c common
	var files exports
	fs := flag.NewFlagSet("fill", flag.ContinueOnError)
	c.define(fs)
	files.define(fs)
	o, input, inputFile, err := t.known(fs, form, &c, args)
	if err != nil {
		return 0, err
	}
	s, err := marinecalc.Run(form.ID, input, o)
	if err != nil {
		return 0, pointToFlags(err, form, inputFile)
	}
	if err := files.write(t, s); err != nil {
		return 0, err
	}
	if c.json {
		err = plain.JSON(t.out, s)
	} else {
		plain.Sheet(t.out, s, c.work)
	}
	return codeFor(s.Beyond()), err
}

// known reads what is known for a calculation: its inputs, from flags and file, and
// the boat.
func (t *terminal) known(fs *flag.FlagSet, form *marinecalc.Blank, c *common, args []string) (o marinecalc.Options, input []byte, inputFile string, err error) {
	fs.SetOutput(io.Discard)
	boatFile := fs.String("boat", "", "")
	fs.StringVar(&inputFile, "input", "", "")
	byFlag := make(map[string]marinecalc.BlankInput, len(form.Inputs))
	for _, i := range form.Inputs {
		fs.String(flagName(i.Name), "", i.Title)
		byFlag[flagName(i.Name)] = i
	}
	onlyOnce(fs)
	if err := fs.Parse(args); err != nil {
		return o, nil, "", badFlag(fs.Name()+" "+form.ID, err, flagsOf(fs), fmt.Sprintf("see %q", "marinecalc blank "+form.ID))
	}
	if fs.NArg() > 0 {
		return o, nil, "", marinecalc.Problems{{Where: fs.Arg(0), What: "is neither a flag nor its value", Hint: "put values with spaces in quotes"}}.Err()
	}
	if o, err = c.options(t); err != nil {
		return o, nil, "", err
	}
	if *boatFile != "" {
		if o.Boat, err = t.readBoat("--boat", *boatFile, o); err != nil {
			return o, nil, "", err
		}
	}
	input, err = t.gather(fs, byFlag, inputFile)
	return o, input, inputFile, err
}

func codeFor(beyond bool) int {
	if beyond {
		return exitBeyond
	}
	return exitDone
}

// gather merges the input file with the inputs given as flags; a flag wins.
func (t *terminal) gather(fs *flag.FlagSet, byFlag map[string]marinecalc.BlankInput, file string) ([]byte, error) {
	merged := map[string]json.RawMessage{}
	if file != "" {
		text, err := t.LoadUpTo(marinecalc.MaxBytes, "--input", file)
		if err != nil {
			return nil, err
		}
		given := 0
		fs.Visit(func(f *flag.Flag) {
			if _, ok := byFlag[f.Name]; ok {
				given++
			}
		})
		if given == 0 {
			return text, nil // as it is, so that every fault is found in it
		}
		if err := json.Unmarshal(text, &merged); err != nil {
			return nil, marinecalc.Problems{{Where: "--input", What: "is not a JSON object: " + err.Error(), Allowed: `an object such as {"name": "value"}`}}.Err()
		}
	}
	var problems marinecalc.Problems
	fs.Visit(func(f *flag.Flag) {
		in, ok := byFlag[f.Name]
		if !ok {
			return
		}
		value := f.Value.String()
		if in.JSON {
			if !json.Valid([]byte(value)) {
				problems.Add("--"+f.Name, "is not JSON", "a JSON value", "put it in single quotes")
				return
			}
			merged[in.Name] = json.RawMessage(value)
			return
		}
		text, err := json.Marshal(value)
		if err == nil { // a text always can be written
			merged[in.Name] = text
		}
	})
	if err := problems.Err(); err != nil {
		return nil, err
	}
	return json.Marshal(merged)
}

// flagName writes an input's name as a flag: "shaftDiameter" is
// "shaft-diameter". An input of the name of one of our own flags gets "the-".
func flagName(name string) string {
	var b strings.Builder
	for _, r := range name {
		if unicode.IsUpper(r) {
			b.WriteByte('-')
		}
		b.WriteRune(unicode.ToLower(r))
	}
	switch f := b.String(); f {
	case "boat", "input", "rules", "units", "trials", "no-ranges", "seed", "work", "json", "calendar", "csv", "table":
		return "the-" + f
	default:
		return f
	}
}

// pointToFlags writes the places of problems as flags when the inputs were
// given as flags.
func pointToFlags(err error, form *marinecalc.Blank, inputFile string) error {
	if inputFile != "" {
		return err
	}
	list := marinecalc.ProblemsOf(err)
	for i, p := range list {
		for _, in := range form.Inputs {
			if rest, ok := strings.CutPrefix(p.Where, "/"+in.Name); ok && (rest == "" || rest[0] == '/') {
				list[i].Where = strings.TrimSpace("--" + flagName(in.Name) + " " + rest)
			}
		}
	}
	return list.Err()
}

// readBoat reads a boat file, and warns of what in it is not used.
func (t *terminal) readBoat(where, file string, o marinecalc.Options) (*marinecalc.Boat, error) {
	text, err := t.LoadUpTo(marinecalc.MaxBytes, where, file)
	if err != nil {
		return nil, err
	}
	b, err := marinecalc.ReadBoat(text)
	list := marinecalc.ProblemsOf(err)
	for i := range list {
		list[i].Where = file + list[i].Where
	}
	o.Day = time.Now().Format(time.DateOnly)
	for _, w := range new(marinecalc.Engine).Unused(b, o) {
		w.Where = file + w.Where
		fmt.Fprintln(t.errs, "warning:", w)
	}
	return b, list.Err()
}

// exports are the files that a sheet is also written to.
type exports struct{ calendar, csv, table string }

func (e *exports) define(fs *flag.FlagSet) {
	fs.StringVar(&e.calendar, "calendar", "", "")
	fs.StringVar(&e.csv, "csv", "", "")
	fs.StringVar(&e.table, "table", "", "")
}

// write writes the files that were asked for, all of them or none.
func (e *exports) write(t *terminal, s *marinecalc.Sheet) error {
	if e.table != "" && e.csv == "" {
		return marinecalc.Problems{{Where: "--table", What: "names a list, but no file to write it to", Allowed: "--csv FILE --table NAME"}}.Err()
	}
	var outputs []disk.Output
	if e.calendar != "" {
		text, err := marinecalc.Calendar(s)
		if err != nil {
			return err
		}
		outputs = append(outputs, disk.Output{Where: "--calendar", Name: e.calendar, Text: text})
	}
	if e.csv != "" {
		text, err := marinecalc.CSVOf(s, e.table)
		if err != nil {
			return err
		}
		outputs = append(outputs, disk.Output{Where: "--csv", Name: e.csv, Text: text})
	}
	return t.SaveAll(outputs...)
}
