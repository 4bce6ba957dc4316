package main

import (
	"context"
	"encoding/json"
	"flag"
	"fmt"
	"io"
	"strconv"
	"strings"

	"example.org/driveline/cmd/marinecalc/plain"
	"example.org/driveline/marinecalc"
	"example.org/driveline/marinecalc/problem"
)

// ticking is what the flags say has happened at a step.
type ticking struct {
	tick, untick, date, time, note, to string
	record                             several
	end                                bool
}

func (t *ticking) define(fs *flag.FlagSet) {
	fs.StringVar(&t.tick, "tick", "", "")
	fs.StringVar(&t.untick, "untick", "", "")
	fs.StringVar(&t.date, "date", "", "")
	fs.StringVar(&t.time, "time", "", "")
	fs.StringVar(&t.note, "note", "", "")
	fs.StringVar(&t.to, "out", "", "")
	fs.Var(&t.record, "record", "")
	fs.BoolVar(&t.end, "end", false, "")
}

// procedure prints work to go by, or what work there is, or the boat file with
// a step of it ticked off.
func (t *terminal) procedure(args []string) error {
	var c common
	var k ticking
	fs := flag.NewFlagSet("procedure", flag.ContinueOnError)
	c.define(fs)
	k.define(fs)
	boatFile := fs.String("boat", "", "")
	var work []string
	for len(args) > 0 && !strings.HasPrefix(args[0], "-") {
		work, args = append(work, args[0]), args[1:]
	}
	onlyOnce(fs)
	if err := fs.Parse(args); err != nil {
		return badFlag("procedure", err, flagsOf(fs), "")
	}
	if fs.NArg() > 0 {
		return marinecalc.Problems{{Where: fs.Arg(0), What: "stands behind the flags", Allowed: "marinecalc procedure WORK … [flags]"}}.Err()
	}
	o, err := c.options(t)
	if err != nil {
		return err
	}
	var b *marinecalc.Boat
	if *boatFile != "" {
		if b, err = t.readBoat("--boat", *boatFile, o); err != nil {
			return err
		}
	}
	engine, err := marinecalc.New(marinecalc.WithRules(o.Rules))
	if err != nil {
		return err
	}
	if k.tick != "" || k.untick != "" || k.end {
		after, err := k.happened(engine, b, work)
		if err != nil {
			return named(err)
		}
		return t.deliverBoat(k.to, after)
	}
	if len(work) == 0 {
		list := engine.Procedures(b)
		if c.json {
			return plain.JSON(t.out, list)
		}
		printWorkList(t.out, list)
		return nil
	}
	p, err := engine.Procedure(context.Background(), b, marinecalc.ProcedureRequest{Remedies: work}, o)
	if err != nil {
		return named(err)
	}
	if c.json {
		return plain.JSON(t.out, p)
	}
	printProcedure(t.out, p)
	return nil
}

// happened is the boat with what happened at a step.
func (t *ticking) happened(engine *marinecalc.Engine, b *marinecalc.Boat, work []string) (*marinecalc.Boat, error) {
	if b == nil {
		return nil, marinecalc.Problems{{Where: "--boat", What: "a tick needs a boat file to stand in", Allowed: "--boat FILE"}}.Err()
	}
	if t.tick != "" && t.untick != "" {
		return nil, marinecalc.Problems{{Where: "--untick", What: "stands beside --tick", Allowed: "one of them"}}.Err()
	}
	if t.end && t.tick+t.untick != "" {
		return nil, marinecalc.Problems{{Where: "--end", What: "stands beside a tick", Allowed: "one of them"}}.Err()
	}
	if t.end {
		return engine.CloseWork(b, work, t.date)
	}
	done := t.tick != ""
	r := marinecalc.TickRequest{Remedies: work, Step: t.tick + t.untick, Done: &done, Day: t.date, Time: t.time}
	if t.note != "" {
		r.Note = &t.note
	}
	for _, text := range t.record {
		what, value, ok := strings.Cut(text, "=")
		if !ok {
			return nil, marinecalc.Problems{{Where: "--record", What: strconv.Quote(text) + " has no value", Allowed: `"WHAT=VALUE", as the step names it`}}.Err()
		}
		read, err := readValue(strings.TrimSpace(value))
		if err != nil {
			return nil, err
		}
		r.Record = append(r.Record, marinecalc.Noted{Title: strings.TrimSpace(what), Value: read})
	}
	return engine.Tick(b, r)
}

// readValue is a text, or a list that is given as JSON.
func readValue(text string) (any, error) {
	if !strings.HasPrefix(text, "[") {
		return text, nil
	}
	var list []any
	if err := json.Unmarshal([]byte(text), &list); err != nil {
		return nil, marinecalc.Problems{{Where: "--record", What: "the list cannot be read: " + err.Error(), Allowed: `JSON such as [{"clock": "12 o'clock", "gap": "0.3 mm"}]`}}.Err()
	}
	return list, nil
}

// named gives problems the names of the command line.
func named(err error) error {
	list := marinecalc.ProblemsOf(err)
	for i := range list {
		p := &list[i]
		switch place, _, _ := strings.Cut(strings.TrimPrefix(p.Where, "/"), "/"); place {
		case "remedies":
			p.Where = "procedure"
		case "step":
			p.Where = "--tick"
		case "date", "time", "note", "record":
			p.Where = "--" + place
		}
	}
	return list.Err()
}

// printWorkList writes the work that there is, by the part that it is on.
func printWorkList(w io.Writer, list []marinecalc.PartWork) {
	for _, part := range list {
		fmt.Fprintf(w, "%s\n", part.Part)
		for _, one := range part.Work {
			state := ""
			if one.Ticked > 0 {
				state = fmt.Sprintf("  (%d of %d ticked off)", one.Ticked, one.Steps)
			}
			fmt.Fprintf(w, "  %-26s %s%s\n", one.ID, one.Title, state)
		}
	}
}

// printProcedure writes work to go by in words, with boxes to tick. A caution
// stands in full at the first step that it belongs to, and by that step's
// number after it.
func printProcedure(w io.Writer, p *marinecalc.Procedure) {
	fmt.Fprintf(w, "%s\n%s\n", p.Title, strings.Repeat("=", len([]rune(p.Title))))
	about := fmt.Sprintf("%d of %d steps ticked off, %s of work.", p.Ticked, p.Steps, plain.Hours(p.Hours))
	if p.Steps == 0 {
		about = "Nothing to do on this boat."
	}
	if p.Boat != "" {
		about = p.Boat + ". " + about
	}
	if p.LastTick != nil {
		about += " Last ticked " + p.LastTick.Date + ": before going on, see that what was made safe still is."
	}
	fmt.Fprintln(w, plain.Wrapped("  ", about))
	for _, words := range p.LeftOut {
		fmt.Fprintln(w, plain.Wrapped("  ", words))
	}
	for _, r := range p.Remedies {
		fmt.Fprintln(w, plain.Wrapped("  ", r.Text))
	}
	if len(p.Remedies) > 1 && p.Moves > 1 {
		fmt.Fprintln(w, plain.Wrapped("  ", fmt.Sprintf("In this order she is moved %d times, ashore and afloat: one piece of work after the other may need fewer.", p.Moves)))
	}
	if len(p.Tools) > 0 {
		fmt.Fprintln(w, plain.Wrapped("  ", "Tools: "+strings.Join(p.Tools, ", ")+"."))
	}
	said := map[string]int{}
	for _, phase := range p.Phases {
		fmt.Fprintf(w, "\n%s\n", strings.ToUpper(phase.Title))
		for i := range phase.Steps {
			plain.Step(w, &phase.Steps[i], said)
			if phase.Steps[i].Number == 1 {
				printPrepare(w, p.Prepare)
			}
		}
	}
	fmt.Fprintln(w, "\n"+plain.Wrapped("", "The maker's figures, local codes and licensed practice go before this."))
}

// printPrepare writes what to measure or look up before beginning, in one go,
// behind the first thing to do.
func printPrepare(w io.Writer, list []marinecalc.Prepare) {
	if len(list) == 0 {
		return
	}
	var words []string
	for _, p := range list {
		by := p.By
		if by == "" {
			by = "marks, papers, a look"
		}
		var what []string
		for _, title := range p.What {
			what = append(what, problem.MidSentence(title))
		}
		words = append(words, problem.MidSentence(by)+": "+strings.Join(what, ", "))
	}
	fmt.Fprintln(w, "\n"+plain.Wrapped("       ", "Measure or look up before you begin, by "+strings.Join(words, "; by ")+". marinecalc blank says how each is taken."))
}
