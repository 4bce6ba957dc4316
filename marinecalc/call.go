package marinecalc

import (
	"encoding/json"
	"fmt"

	"example.org/driveline/marinecalc/internal/boat"
	"example.org/driveline/marinecalc/internal/calc"
	"example.org/driveline/marinecalc/internal/catalogue"
	"example.org/driveline/marinecalc/internal/contract"
	"example.org/driveline/marinecalc/internal/diagnosis"
	"example.org/driveline/marinecalc/problem"
	"example.org/driveline/marinecalc/quantity"
	"example.org/driveline/marinecalc/rules"
	"example.org/driveline/marinecalc/sheet"
)

// request is what a host sends in.
type request struct {
	ask         string
	calculation string
	input       any
	boat        any // as decoded; options has it as read
	overlays    []any
	before      string // days, for a comparison
	after       string
	table       string // of a sheet, for csv; "" is its first one
	csv         string // readings to add to the boat
	options     Options
}

// reply is what a host gets back.
type reply struct {
	OK       bool         `json:"ok"`
	Problems problem.List `json:"problems,omitempty"`

	Version      string               `json:"version,omitempty"`
	Trials       int                  `json:"trials,omitempty"`
	Calculations []Entry              `json:"calculations,omitempty"`
	Schema       json.RawMessage      `json:"schema,omitempty"`
	Choices      map[string][]Choice  `json:"choices,omitempty"`
	Units        map[string][]string  `json:"units,omitempty"`
	Cautions     []sheet.Caution      `json:"cautions,omitempty"`
	Questions    []diagnosis.Question `json:"questions,omitempty"` // of the form of fault-finding
	Sheet        *sheet.Sheet         `json:"sheet,omitempty"`
	Boat         *Boat                `json:"boat,omitempty"`
	Survey       *Survey              `json:"survey,omitempty"`
	Page         string               `json:"page,omitempty"` // a whole HTML text
	Comparison   *Comparison          `json:"comparison,omitempty"`
	Calendar     string               `json:"calendar,omitempty"` // iCalendar, RFC 5545
	CSV          string               `json:"csv,omitempty"`      // RFC 4180
}

// asks are the questions a host can put, each with what answers it.
var asks = map[string]func(*request) (reply, error){
	"contents": askContents,
	"blank":    askBlank,
	"run":      askRun,
	"boat":     askBoat,
	"survey":   askSurvey,
	"jobsheet": askJobSheet,
	"compare":  askCompare,
	"calendar": askCalendar,
	"csv":      askCSV,

	"readings":     askReadings,
	"add-readings": askAddReadings,
}

// askNames lists the asks for people.
const askNames = "contents, blank, run, boat, survey, jobsheet, compare, calendar, csv, readings, add-readings"

// Call is the one door for hosts that speak JSON: a request in, a reply out,
// both UTF-8. It never panics on bad input; the reply carries the problems.
func Call(text []byte) []byte {
	r, err := answer(text)
	if err != nil {
		r = reply{Problems: problem.Of(err)}
	} else {
		r.OK = true
	}
	out, err := json.Marshal(r)
	if err != nil {
		out, _ = json.Marshal(reply{Problems: problem.List{{What: "the reply cannot be written: " + err.Error()}}}) // plain texts always can
	}
	return out
}

func answer(text []byte) (reply, error) {
	r, problems := readRequest(text)
	if len(problems) > 0 {
		return reply{}, problems.Err()
	}
	return asks[r.ask](r)
}

// readRequest takes a request apart. Unknown members are refused, so that a
// slip in a name is not lost.
func readRequest(text []byte) (*request, problem.List) {
	value, problems := contract.Decode(text)
	if len(problems) > 0 {
		return nil, problems
	}
	object, ok := value.(map[string]any)
	if !ok {
		return nil, problem.List{{What: "the request is not an object", Allowed: `{"ask": …}`}}
	}
	r := &request{}
	str := func(name string, to *string, v any) {
		if *to, ok = v.(string); !ok {
			problems.Add("/"+name, name+" is not a text", "a text", "")
		}
	}
	whole := func(name string, most float64, v any) float64 {
		n, _ := v.(json.Number)
		f, err := n.Float64()
		if err != nil || f < 0 || f > most || f != float64(int64(f)) {
			problems.Add("/"+name, name+" is not a whole number that can be used", fmt.Sprintf("0 to %.0f", most), "")
			return 0
		}
		return f
	}
	for name, v := range object {
		switch name {
		case "ask":
			str(name, &r.ask, v)
		case "calculation":
			str(name, &r.calculation, v)
		case "units":
			str(name, &r.options.Units, v)
		case "before":
			str(name, &r.before, v)
		case "after":
			str(name, &r.after, v)
		case "table":
			str(name, &r.table, v)
		case "csv":
			str(name, &r.csv, v)
		case "input":
			r.input = v
		case "boat":
			r.boat = v
		case "trials":
			if r.options.Trials = int(whole(name, 1<<20, v)); r.options.Trials == 0 {
				r.options.Trials = -1 // asked for none
			}
		case "seed":
			r.options.Seed = uint64(whole(name, 1<<53, v))
		case "brief":
			if r.options.Brief, ok = v.(bool); !ok {
				problems.Add("/brief", "brief is not a yes or no", "true, false", "")
			}
		case "overlays":
			if r.overlays, ok = v.([]any); !ok {
				problems.Add("/overlays", "overlays is not a list", "a list of rule files", "")
			}
		default:
			problems.Add(contract.Pointer([]string{name}), fmt.Sprintf("%q is not part of a request", name), "ask, calculation, input, boat, before, after, units, trials, seed, brief, overlays, table, csv", "")
		}
	}
	if _, known := asks[r.ask]; !known && len(problems) == 0 {
		problems.Add("/ask", fmt.Sprintf("%q is no question", r.ask), askNames, "")
	}
	r.layOver(&problems)
	r.takeBoat(&problems)
	return r, problems.Sorted()
}

// layOver lays the request's rule files over the standard ones.
func (r *request) layOver(problems *problem.List) {
	texts := make([][]byte, len(r.overlays))
	for i, o := range r.overlays {
		texts[i], _ = json.Marshal(o) // what was decoded can be written again
	}
	book, err := Overlay(texts...)
	for _, f := range problem.Of(err) {
		f.Where = "/overlays" + f.Where
		*problems = append(*problems, f)
	}
	r.options.Rules = book
}

func (r *request) takeBoat(problems *problem.List) {
	if r.boat == nil {
		return
	}
	b, err := boat.From(r.boat)
	if err != nil {
		for _, p := range problem.Of(err) {
			p.Where = "/boat" + p.Where
			*problems = append(*problems, p)
		}
		return
	}
	r.options.Boat = b
}

func askContents(*request) (reply, error) {
	return reply{Calculations: Calculations(), Version: Version, Trials: DefaultTrials, Units: unitNames()}, nil
}

// unitNames lists, for every kind of quantity, the units that can be typed.
func unitNames() map[string][]string {
	names := map[string][]string{}
	for _, k := range quantity.Kinds() {
		names[k.Name] = k.Units()
	}
	return names
}

func askBlank(r *request) (reply, error) {
	c, err := calc.Find(catalogue.Calculations, r.calculation)
	if err != nil {
		return reply{}, err
	}
	k, err := c.Form()
	if err != nil {
		return reply{}, err
	}
	out := reply{Schema: k.Text, Choices: map[string][]Choice{}}
	addChoices(out.Choices, k.Input, r.options.Rules)
	for _, p := range k.Input.Properties {
		if p.Rows == calc.Gauges {
			out.Choices[calc.Gauges+p.Pointer] = choices(p, k.Input, r.options.Rules)
		}
	}
	for _, c := range r.options.Rules.Cautions(r.calculation).All() {
		out.Cautions = append(out.Cautions, sheet.Caution{Signal: c.Signal, Text: c.Text, Source: c.Source.String()})
	}
	if r.calculation == diagnosis.FaultFinding {
		out.Questions = diagnosis.Questions(r.options.Rules)
	}
	return out, nil
}

// addChoices lists the picks of every table that a property, or one inside
// it, is picked from.
func addChoices(to map[string][]Choice, p *contract.Property, book *rules.Book) {
	if p == nil {
		return
	}
	if p.Rows != "" && to[p.Rows] == nil {
		to[p.Rows] = choices(p, nil, book)
	}
	addChoices(to, p.Items, book)
	for _, child := range p.Properties {
		addChoices(to, child, book)
	}
}

func askRun(r *request) (reply, error) {
	input := r.input
	if input == nil {
		input = map[string]any{}
	}
	s, err := runDecoded(r.calculation, input, r.options)
	return reply{Sheet: s}, err
}

func askBoat(r *request) (reply, error) {
	c, err := boat.Contract()
	if err != nil {
		return reply{}, err
	}
	out := reply{Schema: c.Text, Boat: r.options.Boat, Choices: map[string][]Choice{}}
	addChoices(out.Choices, c.Root, r.options.Rules)
	return out, nil
}

func askSurvey(r *request) (reply, error) {
	s, err := r.survey()
	return reply{Survey: s}, err
}

func askJobSheet(r *request) (reply, error) {
	s, err := r.survey()
	if err != nil {
		return reply{}, err
	}
	return reply{Page: JobSheet(s)}, nil
}

func (r *request) survey() (*Survey, error) {
	if err := r.needsBoat(); err != nil {
		return nil, err
	}
	return Check(r.options.Boat, r.options)
}

func (r *request) needsBoat() error {
	if r.options.Boat == nil {
		return problem.List{{Where: "/boat", What: "this needs a boat", Allowed: "a boat file", Hint: "send the boat with the request"}}.Err()
	}
	return nil
}

func askCompare(r *request) (reply, error) {
	if err := r.needsBoat(); err != nil {
		return reply{}, err
	}
	c, err := Compare(r.options.Boat, r.before, r.after, r.options)
	return reply{Comparison: c}, err
}

// askCalendar answers with the dates of a work plan for the person's calendar.
func askCalendar(r *request) (reply, error) {
	if r.calculation == "" {
		r.calculation = "work-plan"
	}
	out, err := askRun(r)
	if err != nil {
		return reply{}, err
	}
	text, err := Calendar(out.Sheet)
	return reply{Calendar: string(text)}, err
}

// askCSV answers with one list of a sheet for a spreadsheet.
func askCSV(r *request) (reply, error) {
	out, err := askRun(r)
	if err != nil {
		return reply{}, err
	}
	text, err := CSVOf(out.Sheet, r.table)
	return reply{CSV: string(text)}, err
}

// askReadings answers with the dated readings of the boat for a spreadsheet.
func askReadings(r *request) (reply, error) {
	if err := r.needsBoat(); err != nil {
		return reply{}, err
	}
	return reply{CSV: string(ReadingsCSV(r.options.Boat))}, nil
}

// askAddReadings answers with the boat and the readings of a table added.
func askAddReadings(r *request) (reply, error) {
	if err := r.needsBoat(); err != nil {
		return reply{}, err
	}
	b, err := AddReadingsCSV(r.options.Boat, []byte(r.csv))
	return reply{Boat: b}, err
}
