package main

import (
	"context"
	"encoding/json"
	"flag"
	"fmt"
	"io"
	"slices"
	"strings"

	"example.org/driveline/cmd/marinecalc/plain"
	"example.org/driveline/marinecalc"
)

// form prints the input of a calculation as a JSON Schema for a program that
// draws forms.
func (t *terminal) form(args []string) error {
	fs := flag.NewFlagSet("form", flag.ContinueOnError)
	fs.SetOutput(io.Discard)
	boat := fs.String("boat", "", "")
	var overlays several
	fs.Var(&overlays, "rules", "")
	names, err := parse(fs, args)
	if err != nil {
		return badFlag("form", err, flagsOf(fs), "")
	}
	if len(names) != 1 {
		return marinecalc.Problems{{Where: "form", What: "needs the name of one calculation", Allowed: `one of "marinecalc index"`}}.Err()
	}
	engine, err := t.engineWith(overlays)
	if err != nil {
		return err
	}
	var b *marinecalc.Boat
	if *boat != "" {
		if b, err = t.readBoat("--boat", *boat, marinecalc.Options{}); err != nil {
			return err
		}
	}
	text, err := engine.Form(context.Background(), names[0], b)
	if err != nil {
		return err
	}
	return plain.JSON(t.out, json.RawMessage(text))
}

// engineWith makes an engine with the rule files of --rules.
func (t *terminal) engineWith(overlays []string) (*marinecalc.Engine, error) {
	_, texts, err := t.readRules("--rules", overlays)
	if err != nil {
		return nil, err
	}
	return marinecalc.New(marinecalc.WithOverlays(texts...))
}

// convert prints a quantity in another unit.
func (t *terminal) convert(args []string) error {
	fs := flag.NewFlagSet("convert", flag.ContinueOnError)
	fs.SetOutput(io.Discard)
	kind, asJSON := fs.String("kind", "", ""), fs.Bool("json", false, "")
	words, err := parse(fs, args)
	if err != nil {
		return badFlag("convert", err, flagsOf(fs), "a number below nothing stands behind --")
	}
	if len(words) != 2 {
		return marinecalc.Problems{{Where: "convert", What: "needs a quantity and a unit", Allowed: `marinecalc convert "45 lbf·ft ± 5 %" N·m`}}.Err()
	}
	c, err := marinecalc.Convert(*kind, words[0], words[1])
	if err != nil {
		return err
	}
	if *asJSON {
		return plain.JSON(t.out, c)
	}
	_, err = fmt.Fprintln(t.out, c.Text)
	return err
}

// schemas prints the names of the schemas, or one of them.
func (t *terminal) schemas(args []string) error {
	switch len(args) {
	case 0:
		_, err := fmt.Fprintln(t.out, strings.Join(marinecalc.Schemas(), "\n"))
		return err
	case 1:
		text, err := marinecalc.Schema(args[0])
		if err != nil {
			return err
		}
		_, err = t.out.Write(text)
		return err
	}
	return marinecalc.Problems{{Where: "schemas", What: "needs one name at the most", Allowed: `one of "marinecalc schemas"`}}.Err()
}

// limits prints what results are held against, or tables its rows.
func (t *terminal) limits(args []string) error { return t.inForce("limits", args) }
func (t *terminal) tables(args []string) error { return t.inForce("tables", args) }

func (t *terminal) inForce(command string, args []string) error {
	fs := flag.NewFlagSet(command, flag.ContinueOnError)
	fs.SetOutput(io.Discard)
	asJSON := fs.Bool("json", false, "")
	var overlays several
	fs.Var(&overlays, "rules", "")
	names, err := parse(fs, args)
	if err != nil {
		return badFlag(command, err, flagsOf(fs), "")
	}
	if len(names) > 1 {
		return marinecalc.Problems{{Where: command, What: "needs one name at the most", Allowed: "marinecalc " + command + " [NAME] [--rules FILE] [--json]"}}.Err()
	}
	engine, err := t.engineWith(overlays)
	if err != nil {
		return err
	}
	name := strings.Join(names, "")
	var in *marinecalc.RulesInForce
	if command == "limits" {
		in, err = engine.InForce(name, "")
		if in != nil {
			in.Tables = nil
		}
	} else if in, err = engine.InForce("", name); in != nil {
		in.Limits = nil
	}
	switch {
	case err != nil:
		return err
	case *asJSON:
		return plain.JSON(t.out, in)
	}
	for _, l := range in.Limits {
		word := ""
		if l.Guide {
			word = ", a guide"
		}
		column(t.out, l.ID, fmt.Sprintf("%s, %s: %s%s [%s]", l.Calculation, l.Title, l.Text, word, l.Source))
	}
	for _, list := range in.Tables {
		column(t.out, list.Name, fmt.Sprintf("%s, %d rows", list.Title, list.Count))
	}
	if in.Table != nil {
		for _, r := range in.Table.Rows {
			var values []string
			for column, v := range r.Values {
				switch {
				case v.SI == nil:
					values = append(values, column+" "+v.Text)
				case v.Low != nil:
					values = append(values, fmt.Sprintf("%s %.4g (%.4g to %.4g)", column, *v.SI, *v.Low, *v.High))
				default:
					values = append(values, fmt.Sprintf("%s %.6g", column, *v.SI))
				}
			}
			slices.Sort(values)
			column(t.out, r.Pick, fmt.Sprintf("%s; in SI %s [%s]", r.Name, strings.Join(values, ", "), r.Source))
		}
	}
	return nil
}
