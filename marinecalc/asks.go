package marinecalc

import (
	"context"
	"fmt"
	"strings"

	"example.org/driveline/marinecalc/internal/boat"
	"example.org/driveline/marinecalc/internal/boat/agree"
	"example.org/driveline/marinecalc/internal/calc"
	"example.org/driveline/marinecalc/internal/calc/inputs"
	"example.org/driveline/marinecalc/internal/catalogue"
	"example.org/driveline/marinecalc/internal/contract"
	"example.org/driveline/marinecalc/internal/day"
	"example.org/driveline/marinecalc/internal/diagnosis"
	"example.org/driveline/marinecalc/internal/host"
	"example.org/driveline/marinecalc/internal/overview"
	"example.org/driveline/marinecalc/problem"
	"example.org/driveline/marinecalc/quantity"
	"example.org/driveline/marinecalc/rules"
	"example.org/driveline/marinecalc/sheet"
)

var (
	runMembers  = []string{"calculation", "input", "boat", "leaveOut", "units", "trials", "noRanges", "seed", "brief", "overlays", "date"}
	boatMembers = []string{"boat", "leaveOut", "units", "trials", "noRanges", "seed", "brief", "overlays"}
)

// asks is everything that a host can ask for.
var asks = []ask{
	{name: "contents", answer: askContents},
	{name: "blank", answer: askBlank, members: []string{"calculation", "boat", "leaveOut", "units", "overlays", "date"}},
	{name: "run", answer: askRun, members: runMembers},
	{name: "boat", answer: askBoat, members: []string{"boat", "overlays"}, givesBoat: true},
	{name: "survey", answer: askSurvey, members: boatMembers},
	{name: "jobsheet", answer: askJobSheet, members: boatMembers},
	{name: "torque-card", answer: askTorqueCard, members: boatMembers},
	{name: "compare", answer: askCompare, members: append([]string{"before", "after"}, boatMembers...)},
	{name: "calendar", answer: askCalendar, members: runMembers},
	{name: "csv", answer: askCSV, members: append([]string{"table"}, runMembers...)},
	{name: "line", answer: askLine, members: []string{"boat", "leaveOut", "date", "units", "overlays"}},
	{name: "parts", answer: askParts, members: boatMembers},
	{name: "part", answer: askPart, members: append([]string{"part", "date"}, boatMembers...)},
	{name: "find", answer: askFind, members: []string{"text", "overlays"}},
	{name: "readings", answer: askReadings, members: []string{"boat", "leaveOut", "date", "units"}},
	{name: "add-readings", answer: askAddReadings, members: []string{"boat", "csv"}, givesBoat: true},
	{name: "add-signal-k", answer: askAddSignalK, members: []string{"boat", "signalK", "engine", "every"}, givesBoat: true},
	{name: "log", answer: askLog, members: []string{"boat", "reading"}, givesBoat: true},
	{name: "keep", answer: askKeep, members: []string{"boat", "calculation", "input", "date"}, givesBoat: true},
	{name: "procedures", answer: askProcedures, members: []string{"boat", "calculation", "leaveOut", "overlays"}},
	{name: "procedure", answer: askProcedure, members: append([]string{"remedies", "done", "date"}, boatMembers...)},
	{name: "tick", answer: askTick, members: []string{"boat", "remedies", "step", "ticked", "date", "time", "note", "record", "overlays"}, givesBoat: true},
	{name: "close-work", answer: askCloseWork, members: []string{"boat", "remedies", "date", "overlays"}, givesBoat: true},
	{name: "quantity", answer: askQuantity, members: []string{"quantity", "text", "unit"}},
	{name: "convert", answer: askConvert, members: []string{"quantity", "text", "unit", "to"}},
	{name: "form", answer: askForm, members: []string{"calculation", "boat", "leaveOut", "overlays"}},
	{name: "fits", answer: askFits, members: []string{"calculation", "input", "boat", "leaveOut", "units", "overlays", "date"}},
	{name: "schemas", answer: askSchemas, members: []string{"document"}},
	{name: "rules", answer: askRules, members: []string{"calculation", "table", "text", "file", "overlays"}},
	{name: "check-overlay", answer: askCheckOverlay, members: []string{"text", "file", "overlays"}},
	{name: "checks", answer: askChecks, members: []string{"checks"}},
	{name: "warm", answer: askWarm, members: []string{"overlays"}},
}

func askContents(context.Context, *request) (reply, error) {
	out := reply{Calculations: Calculations(), Groups: catalogue.Groups(), Version: Version, Trials: DefaultTrials, Units: unitNames()}
	for _, w := range sheet.Words() {
		out.Words = append(out.Words, wordEntry{w, w.Reads("")})
	}
	return out, nil
}

// unitNames lists, for every kind of quantity, the units that can be typed.
func unitNames() map[string][]string {
	names := map[string][]string{}
	for _, k := range quantity.Kinds() {
		names[k.Name] = k.Units()
	}
	return names
}

// askBlank answers with the form of a calculation: its schema, what can be
// chosen, what the boat gives already, and what to beware of.
func askBlank(ctx context.Context, r *request) (reply, error) {
	c, err := calc.Find(catalogue.Calculations, r.calculation)
	if err != nil {
		return reply{}, err
	}
	k, err := c.Form()
	if err != nil {
		return reply{}, err
	}
	schema, err := contract.Whole(k.ID)
	if err != nil {
		return reply{}, err
	}
	out := reply{Schema: schema, Choices: map[string][]Choice{}}
	addChoices(out.Choices, k.Input, r.options.Rules)
	for _, p := range k.Input.Properties {
		if p.Rows == inputs.Gauges {
			out.Choices[inputs.Gauges+p.Pointer] = host.Choices(p, k.Input, r.options.Rules)
		}
	}
	for _, c := range r.options.Rules.Cautions(r.calculation).All() {
		out.Cautions = append(out.Cautions, c.Said())
	}
	if r.calculation == diagnosis.FaultFinding {
		out.Questions = diagnosis.Questions(r.options.Rules)
	}
	if out.Places, err = groupsOfMembers(); err != nil {
		return reply{}, err
	}
	out.Given, err = given(ctx, c, r.options)
	return out, err
}

// groupsOfMembers are the titles under which inputs stand together, by the member
// of the boat file that gives them.
func groupsOfMembers() (map[string]string, error) {
	c, err := boat.Contract()
	if err != nil {
		return nil, err
	}
	titles := map[string]string{}
	for _, p := range c.Root.Properties {
		if p.Group != "" {
			titles[p.Name] = p.Group
		}
	}
	return titles, nil
}

// addChoices lists the picks of every table that a property, or one inside
// it, is picked from.
func addChoices(to map[string][]Choice, p *contract.Property, book *rules.Book) {
	if p == nil {
		return
	}
	if p.Rows != "" && to[p.Rows] == nil {
		to[p.Rows] = host.Choices(p, nil, book)
	}
	addChoices(to, p.Items, book)
	for _, child := range p.Properties {
		addChoices(to, child, book)
	}
}

// typed is the input of the request, empty where nothing was typed.
func (r *request) typed() any {
	if r.input == nil {
		return map[string]any{}
	}
	return r.input
}

func askRun(ctx context.Context, r *request) (reply, error) {
	s, err := r.engine.run(ctx, r.calculation, r.typed(), r.options, r.kept)
	return reply{Sheet: s}, err
}

func askBoat(_ context.Context, r *request) (reply, error) {
	c, err := boat.Contract()
	if err != nil {
		return reply{}, err
	}
	schema, err := contract.Whole(c.Name)
	if err != nil {
		return reply{}, err
	}
	out := reply{Schema: schema, Boat: r.options.Boat, Choices: map[string][]Choice{}}
	addChoices(out.Choices, c.Root, r.options.Rules)
	if r.options.Boat != nil {
		out.Days = r.options.Boat.Dates()
	}
	return out, nil
}

func askSurvey(ctx context.Context, r *request) (reply, error) {
	s, err := r.engine.Check(ctx, r.options.Boat, r.options)
	return reply{Survey: s}, err
}

func askJobSheet(ctx context.Context, r *request) (reply, error) {
	s, err := r.engine.CheckToPrint(ctx, r.options.Boat, r.options)
	return reply{Page: JobSheet(s)}, err
}

func askTorqueCard(ctx context.Context, r *request) (reply, error) {
	card, err := r.engine.TorqueCard(ctx, r.options.Boat, r.options)
	return reply{TorqueCard: card, Page: TorquePage(card)}, err
}

func askCompare(ctx context.Context, r *request) (reply, error) {
	c, err := r.engine.Compare(ctx, r.options.Boat, r.before, r.after, r.options)
	return reply{Comparison: c}, err
}

// askCalendar answers with the dates of a work plan for the person's calendar.
func askCalendar(ctx context.Context, r *request) (reply, error) {
	if r.calculation == "" {
		r.calculation = "work-plan"
	}
	out, err := askRun(ctx, r)
	if err != nil {
		return reply{}, err
	}
	text, err := Calendar(out.Sheet)
	return reply{Calendar: string(text)}, err
}

// askCSV answers with one list of a sheet for a spreadsheet.
func askCSV(ctx context.Context, r *request) (reply, error) {
	out, err := askRun(ctx, r)
	if err != nil {
		return reply{}, err
	}
	text, err := CSVOf(out.Sheet, r.table)
	return reply{CSV: string(text)}, err
}

// askReadings answers with the dated readings of the boat for a spreadsheet,
// and with what can be followed and logged.
func askReadings(_ context.Context, r *request) (reply, error) {
	if r.options.Boat == nil {
		return reply{}, noBoat()
	}
	var warnings problem.List
	for _, d := range agree.Meter(r.options.Boat) { // said where it is written down; surveys and sheets say it by themselves
		warnings.Add("/boat"+d.Figures[0].Pointer, d.Title+": "+d.Text, "", "")
	}
	return reply{Warnings: warnings, CSV: string(ReadingsCSV(r.options.Boat)), Series: SeriesOf(r.options.Boat), Charts: overview.Charts(r.options.Boat, r.options, r.options.Day), Daily: overview.Daily(r.options)}, nil
}

// askLog answers with the boat and one reading put into its log.
func askLog(_ context.Context, r *request) (reply, error) {
	if r.options.Boat == nil {
		return reply{}, noBoat()
	}
	if r.reading == (Reading{}) {
		return reply{}, problem.List{{Where: "/reading", What: "there is no reading", Allowed: `{"reading": …, "value": …, "date": …}`, Kind: problem.Missing}}.Err()
	}
	b, err := Log(r.options.Boat, r.reading)
	list := problem.Of(err)
	for i := range list {
		if !strings.HasPrefix(list[i].Where, "/boat") {
			list[i].Where = "/reading" + list[i].Where
		}
	}
	return reply{Boat: b}, list.Err()
}

// askAddReadings answers with the boat and the readings of a table added.
func askAddReadings(_ context.Context, r *request) (reply, error) {
	b, err := AddReadingsCSV(r.options.Boat, []byte(r.csv))
	return reply{Boat: b}, err
}

// askAddSignalK answers with the boat and what became of the samples.
func askAddSignalK(_ context.Context, r *request) (reply, error) {
	b, report, err := AddSignalK(r.options.Boat, []byte(r.samples), r.signalK)
	return reply{Boat: b, SignalK: report}, err
}

// askKeep answers with the boat and what was typed for a calculation written
// into it, and says what it has no place for.
func askKeep(_ context.Context, r *request) (reply, error) {
	c, err := calc.Find(catalogue.Calculations, r.calculation)
	if err != nil {
		return reply{}, err
	}
	k, err := c.Form()
	if err != nil {
		return reply{}, err
	}
	if r.options.Boat == nil {
		return reply{}, noBoat()
	}
	if _, err := day.Parse(r.options.Day); err != nil {
		return reply{}, problem.List{{Where: "/date", What: err.Error(), Allowed: "year-month-day"}}.Err()
	}
	input, ok := r.typed().(map[string]any)
	if !ok {
		return reply{}, noObject()
	}
	if problems := k.CheckInput(input); len(problems) > 0 {
		return reply{}, problems.Err()
	}
	var out reply
	var typed []boat.Typed
	for _, p := range k.Input.Properties {
		value, has := input[p.Name]
		switch {
		case !has:
		case boat.Keeps(p.Boat):
			typed = append(typed, boat.Typed{Input: p.Name, Pointer: p.Boat, Value: value})
			out.Kept = append(out.Kept, keptInput{p.Name, p.Title})
		default:
			out.Left = append(out.Left, p.Name)
		}
	}
	out.Boat, err = r.options.Boat.Keep(typed, r.options.Day)
	return out, err
}

// askQuantity reads what a person typed as a quantity.
func askQuantity(_ context.Context, r *request) (reply, error) {
	kind, ok := quantity.Lookup(r.quantity)
	if !ok {
		return reply{}, problem.List{{Where: "/quantity", What: fmt.Sprintf("%q is not a kind of quantity", r.quantity), Kind: problem.Unknown, Hint: "see the units of the contents"}}.Err()
	}
	text, read, err := host.Read(kind, strings.TrimSpace(r.text), r.unit)
	if err != nil {
		return reply{}, problem.List{{Where: "/text", What: err.Error(), Allowed: strings.Join(kind.Units(), ", ")}}.Err()
	}
	return reply{Text: text, SI: &read.SI}, nil
}
