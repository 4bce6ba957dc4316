// A request of a host that speaks JSON, taken apart.

package marinecalc

import (
	"context"
	"encoding/json"
	"fmt"
	"maps"
	"slices"
	"strings"

	"example.org/driveline/marinecalc/internal/boat"
	"example.org/driveline/marinecalc/internal/book"
	"example.org/driveline/marinecalc/internal/calc"
	"example.org/driveline/marinecalc/internal/contract"
	"example.org/driveline/marinecalc/internal/day"
	"example.org/driveline/marinecalc/internal/procedure"
	"example.org/driveline/marinecalc/problem"
	"example.org/driveline/marinecalc/quantity"
)

// request is what a host sends in.
type request struct {
	ask         ask
	engine      *Engine
	calculation string
	input       any
	warnings    problem.List // of the overlays
	before      string       // days, for a comparison
	after       string
	table       string  // of a sheet, for csv, where "" is its first one; or of the rules
	csv         string  // readings to add to the boat
	reading     Reading // to put into its log
	part        string  // of the line
	quantity    string  // a kind of quantity, to read text as
	text        string
	unit        string                // of a bare number in it
	to          string                // the unit to convert into
	document    string                // the name of a schema
	file        string                // the name of a rule file whose text it is
	happened    procedure.TickRequest // at a step, and the work it belongs to
	done        []string              // steps
	samples     string                // Signal K
	checks      []book.Row            // published values
	signalK     SignalKChoice
	leaveOut    bool // what of the boat cannot be used
	options     Options
	kept        *calc.Kept // its boat, to go on from; nil for none
}

// readRequest takes a request for one of the asks apart. Unknown members are refused, and those
// that the ask does not use, so that a slip in a name is not lost.
func (e *Engine) readRequest(text []byte, asks []ask) (*request, problem.List) {
	value, problems := contract.Decode(text)
	if len(problems) > 0 {
		return nil, problems
	}
	object, ok := value.(map[string]any)
	if !ok {
		return nil, problem.List{{What: "the request is not an object", Allowed: `{"ask": …}`}}
	}
	r := &request{engine: e}
	r.options.Rules = e.rules()
	name, _ := object["ask"].(string)
	i := slices.IndexFunc(asks, func(a ask) bool { return a.name == name })
	if i < 0 {
		return nil, problem.List{{Where: "/ask", What: fmt.Sprintf("%q is not something to ask for", name), Allowed: strings.Join(namesOf(asks), ", "), Hint: closest(name, namesOf(asks)), Kind: problem.Unknown}}
	}
	r.ask = asks[i]
	for _, name := range slices.Sorted(maps.Keys(object)) {
		if name == "ask" {
			continue
		}
		if len(problems) > enough {
			break
		}
		v := object[name]
		read, known := members[name]
		switch {
		case !known || !slices.Contains(r.ask.members, name):
			problems.Add(contract.Pointer([]string{name}), fmt.Sprintf("%q is not part of a request for %s", name, r.ask.name), strings.Join(append([]string{"ask"}, r.ask.members...), ", "), closestOf(problems, name, r.ask.members))
		default:
			read(r, name, v, &problems)
		}
	}
	if object["overlays"] != nil && r.ask.has("overlays") && len(problems) == 0 {
		r.applyOverlays(text, &problems)
	}
	if _, has := object["boat"]; has && r.ask.has("boat") {
		r.takeBoat(text, object, &problems)
	}
	return r, problems.Sorted()
}

const (
	enough   = 20 * problem.Most // problems, of which the first are told
	mostList = 1000              // items of a list in a request; its schema says the same
)

// tooMany refuses a list that is longer, before its items are looked at.
func tooMany(name string, list []any, problems *problem.List) bool {
	if len(list) <= mostList {
		return false
	}
	*problems = append(*problems, problem.Problem{Where: "/" + name, What: fmt.Sprintf("%s has %d entries", name, len(list)), Allowed: fmt.Sprintf("up to %d", mostList), Kind: problem.TooLarge})
	return true
}

// closestOf is closest as long as somebody reads it.
func closestOf(problems problem.List, name string, names []string) string {
	if len(problems) > problem.Most {
		return ""
	}
	return closest(name, names)
}

func closest(name string, names []string) string {
	if best, ok := problem.Closest(name, names); ok {
		return fmt.Sprintf("did you mean %q?", best)
	}
	return ""
}

// members read the parts of a request, apart from its ask.
var members = map[string]func(r *request, name string, v any, problems *problem.List){
	"calculation": textMember(func(r *request) *string { return &r.calculation }),
	"units":       readUnits,
	"before":      textMember(func(r *request) *string { return &r.before }),
	"after":       textMember(func(r *request) *string { return &r.after }),
	"table":       textMember(func(r *request) *string { return &r.table }),
	"csv":         textMember(func(r *request) *string { return &r.csv }),
	"reading":     readReading,
	"quantity":    textMember(func(r *request) *string { return &r.quantity }),
	"text":        textMember(func(r *request) *string { return &r.text }),
	"unit":        textMember(func(r *request) *string { return &r.unit }),
	"to":          textMember(func(r *request) *string { return &r.to }),
	"document":    textMember(func(r *request) *string { return &r.document }),
	"file":        textMember(func(r *request) *string { return &r.file }),
	"signalK":     textMember(func(r *request) *string { return &r.samples }),
	"engine":      textMember(func(r *request) *string { return &r.signalK.Engine }),
	"every":       readEvery,
	"part":        textMember(func(r *request) *string { return &r.part }),
	"date":        readDay,
	"remedies":    textsMember(func(r *request) *[]string { return &r.happened.Remedies }),
	"done":        textsMember(func(r *request) *[]string { return &r.done }),
	"step":        textMember(func(r *request) *string { return &r.happened.Step }),
	"time":        textMember(func(r *request) *string { return &r.happened.Time }),
	"note": textMember(func(r *request) *string {
		r.happened.Note = new(string)
		return r.happened.Note
	}),
	"ticked": flagMember(func(r *request) *bool {
		r.happened.Done = new(bool)
		return r.happened.Done
	}),
	"record":   readRecord,
	"checks":   readChecks,
	"noRanges": flagMember(func(r *request) *bool { return &r.options.NoRanges }),
	"brief":    flagMember(func(r *request) *bool { return &r.options.Brief }),
	"leaveOut": flagMember(func(r *request) *bool { return &r.leaveOut }),
	"input":    func(r *request, _ string, v any, _ *problem.List) { r.input = v },
	"boat":     func(*request, string, any, *problem.List) {}, // read last, by takeBoat
	"trials": func(r *request, name string, v any, problems *problem.List) {
		r.options.Trials = int(wholeNumber(name, v, calc.MaxTrials, problems))
	},
	"seed": func(r *request, name string, v any, problems *problem.List) {
		r.options.Seed = uint64(wholeNumber(name, v, 1<<53, problems))
	},
	"overlays": func(r *request, name string, v any, problems *problem.List) {
		list, ok := v.([]any)
		if !ok {
			problems.Add("/"+name, name+" is not a list", "a list of rule files", "")
		}
		tooMany(name, list, problems)
	},
}

// readEvery reads a time, such as "30 min".
func readEvery(r *request, name string, v any, problems *problem.List) {
	text, ok := v.(string)
	every, err := ReadTime(text)
	if !ok || err != nil {
		problems.Add("/"+name, name+" is not a time", `a text such as "1 h"`, "")
	}
	r.signalK.Every = every
}

// readReading reads the reading to log, member by member.
func readReading(r *request, name string, v any, problems *problem.List) {
	object, ok := v.(map[string]any)
	if !ok {
		problems.Add("/"+name, name+" is not an object", `{"reading": …, "value": …, "date": …}`, "")
		return
	}
	texts := map[string]*string{"reading": &r.reading.Reading, "value": &r.reading.Value, "date": &r.reading.Date, "time": &r.reading.Time, "source": &r.reading.Source, "gauge": &r.reading.Gauge, "note": &r.reading.Note}
	known := append(slices.Sorted(maps.Keys(texts)), "baseline")
	for _, needed := range []string{"reading", "value", "date"} {
		if _, has := object[needed]; !has {
			*problems = append(*problems, problem.Problem{Where: "/" + name, What: "the reading has no " + needed, Allowed: `{"reading": …, "value": …, "date": …}`, Kind: problem.Missing})
		}
	}
	for _, member := range slices.Sorted(maps.Keys(object)) {
		if len(*problems) > enough {
			break
		}
		value := object[member]
		to, is := texts[member]
		where := contract.Pointer([]string{name, member})
		switch {
		case member == "baseline":
			if r.reading.Baseline, ok = value.(bool); !ok {
				problems.Add(where, member+" is not true or false", "true, false", "")
			}
		case !is:
			problems.Add(where, fmt.Sprintf("%q is not part of a reading", member), strings.Join(known, ", "), closestOf(*problems, member, known))
		default:
			if *to, ok = value.(string); !ok {
				problems.Add(where, member+" is not a text", "a text", "")
			}
		}
	}
}

func textMember(at func(*request) *string) func(*request, string, any, *problem.List) {
	return func(r *request, name string, v any, problems *problem.List) {
		var ok bool
		if *at(r), ok = v.(string); !ok {
			problems.Add("/"+name, name+" is not a text", "a text", "")
		}
	}
}

func textsMember(at func(*request) *[]string) func(*request, string, any, *problem.List) {
	return func(r *request, name string, v any, problems *problem.List) {
		list, ok := v.([]any)
		if tooMany(name, list, problems) {
			return
		}
		for _, item := range list {
			text, is := item.(string)
			ok = ok && is
			*at(r) = append(*at(r), text)
		}
		if !ok {
			problems.Add("/"+name, name+" is not a list of texts", `a list such as ["…"]`, "")
		}
	}
}

// readRecord reads what was written down at a step.
func readRecord(r *request, name string, v any, problems *problem.List) {
	list, ok := v.([]any)
	if tooMany(name, list, problems) {
		return
	}
	for _, item := range list {
		one, _ := item.(map[string]any)
		title, is := one["title"].(string)
		_, has := one["value"]
		_, object := one["value"].(map[string]any)
		ok = ok && is && !object && (has && len(one) == 2 || !has && len(one) == 1)
		r.happened.Record = append(r.happened.Record, procedure.Noted{Title: title, Value: one["value"]})
	}
	if !ok {
		problems.Add("/"+name, name+" is not a list of what was written down", `a list such as [{"title": "…", "value": "…"}]`, "")
	}
}

func flagMember(at func(*request) *bool) func(*request, string, any, *problem.List) {
	return func(r *request, name string, v any, problems *problem.List) {
		var ok bool
		if *at(r), ok = v.(bool); !ok {
			problems.Add("/"+name, name+" is not true or false", "true, false", "")
		}
	}
}

func wholeNumber(name string, v any, most float64, problems *problem.List) float64 {
	n, _ := v.(json.Number)
	f, err := n.Float64()
	if err != nil || f < 0 || f > most || f != float64(int64(f)) {
		p := problem.Problem{Where: "/" + name, What: name + " is not a whole number that can be used", Allowed: fmt.Sprintf("0 to %.0f", most)}
		if f > most {
			p.Kind = problem.TooLarge
		}
		*problems = append(*problems, p)
		return 0
	}
	return f
}

// applyOverlays applies the request's rule files over the engine's rules, each
// as it is written, since its problems name lines.
func (r *request) applyOverlays(text []byte, problems *problem.List) {
	var overlays []json.RawMessage
	_ = json.Unmarshal(asWritten(text, "overlays"), &overlays) // it was decoded before
	files := make([][]byte, len(overlays))
	for i := range files {
		files[i] = overlays[i]
	}
	book, faults, warnings := applyAll(r.engine.rules(), files)
	*problems = append(*problems, below("/overlays", faults)...)
	r.warnings = below("/overlays", warnings)
	r.options.Rules = book
}

// takeBoat reads the boat of a request; where the reply gives it back, with
// its members in the owner's order. That boat is decoded once more, after the
// first one is let go: both at once do not fit where memory is short. One that is
// the same to the byte as that of the request before is kept from there.
func (r *request) takeBoat(text []byte, object map[string]any, problems *problem.List) {
	var b *Boat
	var err error
	if r.ask.givesBoat {
		delete(object, "boat")
		b, err = boat.Read(asWritten(text, "boat"))
	} else {
		own, read := asWritten(text, "boat"), boat.From
		if r.leaveOut {
			read = boat.FromSound
		}
		if r.kept = r.engine.keeper().Take(own, r.leaveOut); r.kept != nil {
			b = r.kept.Boat
		} else if b, err = read(object["boat"]); err == nil && len(*problems) == 0 {
			r.kept = calc.NewKept(own, r.leaveOut, b)
		}
	}
	for _, p := range problem.Of(err) {
		p.Where = "/boat" + p.Where
		*problems = append(*problems, p)
	}
	r.options.Boat = b
}

// ask is something that a host can ask for, and what answers it.
type ask struct {
	name      string
	answer    func(context.Context, *request) (reply, error)
	members   []string // of the request, besides ask
	givesBoat bool     // the reply holds the boat
}

func (a ask) has(member string) bool { return slices.Contains(a.members, member) }

func readDay(r *request, name string, v any, problems *problem.List) {
	r.options.Day, _ = v.(string)
	if _, err := day.Parse(r.options.Day); err != nil {
		problems.Add("/"+name, err.Error(), "year-month-day", "")
	}
}

func readUnits(r *request, name string, v any, problems *problem.List) {
	r.options.Units, _ = v.(string)
	if system, err := quantity.ParseSystem(r.options.Units); err != nil || system.String() != r.options.Units {
		problems.Add("/"+name, fmt.Sprintf("%q is not a system of units", fmt.Sprint(v)), "metric, us, both", "")
	}
}

// What one request may have computed, so that it is answered soon.
const (
	mostChecks = 200
	mostDrawn  = 30 // of which a hundred thousand draws and more are taken
)

func readChecks(r *request, name string, v any, problems *problem.List) {
	list, ok := v.([]any)
	if !ok {
		problems.Add("/"+name, name+" is not a list", "a list of published values", "")
		return
	}
	if len(list) > mostChecks {
		*problems = append(*problems, problem.Problem{Where: "/" + name, What: fmt.Sprintf("%s has %d entries", name, len(list)), Allowed: fmt.Sprintf("up to %d", mostChecks), Hint: "send them in several requests", Kind: problem.TooLarge})
		return
	}
	rows, wrong := book.Rows("/"+name, list)
	*problems = append(*problems, wrong...)
	drawn := 0
	for i := range rows {
		if rows[i].Draws() {
			drawn++
		}
	}
	if drawn > mostDrawn {
		*problems = append(*problems, problem.Problem{Where: "/" + name, What: fmt.Sprintf("%s has %d entries that take many draws", name, drawn), Allowed: fmt.Sprintf("up to %d", mostDrawn), Hint: "send them in several requests", Kind: problem.TooLarge})
	}
	r.checks = rows
}

func namesOf(asks []ask) []string {
	names := make([]string, len(asks))
	for i, a := range asks {
		names[i] = a.name
	}
	return names
}
