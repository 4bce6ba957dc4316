package marinecalc

import (
	"encoding/csv"
	"fmt"
	"math"
	"slices"
	"strings"
	"testing"
	"time"

	"example.org/driveline/marinecalc/internal/calc"
	"example.org/driveline/marinecalc/internal/catalogue"
	"example.org/driveline/marinecalc/internal/day"
	"example.org/driveline/marinecalc/internal/survey"
	ics "github.com/arran4/golang-ical"

	"example.org/driveline/marinecalc/problem"
	"example.org/driveline/marinecalc/rules"
	"example.org/driveline/marinecalc/sheet"
)

const springWork = `{"today": "2026-03-02", "readyBy": "2026-04-20",
	"remedies": [{"remedy": "repack-gland"}, {"remedy": "align-coupling"}],
	"windows": [{"from": "2026-03-30", "to": "2026-04-09", "kind": "haul-out", "note": "slot; at the yard"},
		{"from": "2026-04-03", "to": "2026-04-06", "kind": "not", "note": "Easter"}]}`

func planned(t *testing.T, input string) *Sheet {
	t.Helper()
	return mustRun(t, "work-plan", input, Options{NoRanges: true})
}

// column reads a column of a list, by the name of another one's cell.
func column(t *testing.T, s *Sheet, table, key, name string) map[string]string {
	t.Helper()
	list := s.Table(table)
	if list == nil {
		t.Fatalf("there is no list %s", table)
	}
	out := map[string]string{}
	for _, r := range list.Rows {
		at := list.Reader(r)
		out[at(key)] = at(name)
	}
	return out
}

func TestStepsKeepTheirWindows(t *testing.T) {
	s := planned(t, springWork)
	start := column(t, s, "schedule", "step", "start")
	for step, within := range map[string][2]string{
		"Draw the old packing":                  {"2026-03-30", "2026-04-09"},
		"Pack the gland":                        {"2026-03-30", "2026-04-09"},
		"Look over the line as she is launched": {"2026-04-10", "2026-04-10"},
		"Read the coupling afloat":              {"2026-04-11", "2026-04-11"}, // a day to settle
	} {
		if at := start[step]; at < within[0] || at > within[1] || at >= "2026-04-03" && at <= "2026-04-06" {
			t.Errorf("%s on %q", step, at)
		}
	}
	if f := s.Result("finish").Text; f < "2026-04-11" || f > "2026-04-14" {
		t.Errorf("finish %s", f)
	}
	if in := s.Result("inTime").Text; !strings.HasPrefix(in, "Yes") {
		t.Errorf("in time: %s", in)
	}
	if w := s.Result("elsewhere").Text; !strings.Contains(w, "Draw the old packing") || !strings.Contains(w, "Trial under way") {
		t.Errorf("waits: %s", w)
	}
	if n := s.Result("now").Text; n != "nothing" { // nobody parts a coupling a month before it is read
		t.Errorf("now: %s", n)
	}
	s = planned(t, strings.Replace(springWork, `{"remedy": "repack-gland"}`, `{"remedy": "tighten-coupling-bolts"}, {"remedy": "repack-gland"}`, 1))
	if n := s.Result("now").Text; !strings.Contains(n, "Tighten the coupling bolts") || !strings.Contains(n, "Make safe") || strings.Contains(n, "Pack the gland") {
		t.Errorf("now: %s", n)
	}
}

// A step that several remedies share is done once.
func TestSharedStepsAreDoneOnce(t *testing.T) {
	one := planned(t, `{"today": "2026-03-02", "remedies": [{"remedy": "align-coupling"}]}`)
	both := planned(t, `{"today": "2026-03-02", "remedies": [{"remedy": "align-coupling"}, {"remedy": "tighten-mounts"}, {"remedy": "align-coupling"}]}`)
	seen := map[string]int{}
	for _, r := range both.Table("schedule").Rows {
		seen[r.Cells[0].Text]++
	}
	for step, n := range seen {
		if n > 1 {
			t.Errorf("%s %d times", step, n)
		}
	}
	if a, b := len(one.Table("schedule").Rows), len(seen); b != a+1 {
		t.Errorf("%d steps alone, %d with the mounts' feet", a, b)
	}
}

func TestOrdersComeInTime(t *testing.T) {
	input := strings.Replace(springWork, `"today"`, `"partsInHand": [{"part": "gland-packing", "leadTime": "25 days"}, {"part": "wood-plug", "onBoard": true}], "today"`, 1)
	s := planned(t, input)
	by, needed := column(t, s, "shopping", "part", "orderBy"), column(t, s, "shopping", "part", "neededOn")
	if by["Soft-wood plug that fits the stern tube"] != "on board" {
		t.Errorf("the plug: %q", by)
	}
	packing := "Gland packing"
	arrives, err := time.Parse(time.DateOnly, by[packing])
	if err != nil {
		t.Fatal(err)
	}
	// Ordered on the last day it comes before the slot ends; ordered at once, before the step as planned.
	if in := arrives.AddDate(0, 0, 25).Format(time.DateOnly); in > "2026-04-09" {
		t.Errorf("ordered by %s it arrives on %s", by[packing], in)
	}
	if needed[packing] < "2026-03-27" {
		t.Errorf("needed on %s, before it can be there", needed[packing])
	}
	if first := s.Result("firstOrder").Text; !strings.HasPrefix(first, packing) {
		t.Errorf("first order: %s", first)
	}
}

// Amounts and sizes come from the boat's own sheets, and where these are
// missing the list says which.
func TestAmountsComeFromTheSheets(t *testing.T) {
	b, err := ReadBoat([]byte(`{"name": "Test", "shaft": {"diameter": "25 mm"}, "coupling": {"boltCount": 6, "bolts": {"thread": "M10x1.5"}},
		"gland": {"boxBore": "41 mm", "boxDepth": "48 mm", "followerDepth": "10 mm"}, "fluid": {"volume": "2.2 L", "leftVolume": "0.7 L"}}`))
	if err != nil {
		t.Fatal(err)
	}
	const input = `{"today": "2026-03-02", "lies": "ashore", "remedies": [{"remedy": "repack-gland"}, {"remedy": "replace-coupling-bolts"}, {"remedy": "flush-gearbox-fluid"}]}`
	packing, err := Run("gland-packing", []byte(`{}`), Options{Boat: b, NoRanges: true})
	if err != nil {
		t.Fatal(err)
	}
	s := mustRun(t, "work-plan", input, Options{Boat: b, NoRanges: true})
	amounts, sizes := column(t, s, "shopping", "part", "amount"), column(t, s, "shopping", "part", "size")
	if got, want := amounts["Gland packing"], packing.Result("totalLength").Text; math.Abs(amount(t, got, nil)-amount(t, want, nil)) > 5e-3*amount(t, want, nil) { // three figures
		t.Errorf("%q, the sheet of the gland says %q", got, want)
	}
	if got := amounts["Coupling bolts"]; got != "6 × piece" {
		t.Errorf("%q bolts", got)
	}
	if got := sizes["Coupling bolts"]; !strings.Contains(got, "M10") {
		t.Errorf("bolts: %q", got)
	}
	flush := mustRun(t, "fluid-flush", `{}`, Options{Boat: b, NoRanges: true})
	if got, want := amount(t, amounts["Gearbox fluid, as the maker names it"], nil), 2**flush.Result("volumePerChange").SI; math.Abs(got-want) > 5e-3*want {
		t.Errorf("%g m³ of fluid for two changes, want %g", got, want)
	}
	s = planned(t, input)
	if got := column(t, s, "shopping", "part", "amount")["Gland packing"]; !strings.Contains(got, "not known") {
		t.Errorf("without a boat: %q", got)
	}
}

// New nuts are bought of the sort that the boat has.
func TestNutsAreOfTheBoatsSort(t *testing.T) {
	for nut, want := range map[string]string{"plain-nut": "Coupling nuts", "ne-7/16-14": "Coupling nuts with insert", "": "Coupling nuts"} {
		text := `{"name": "Test", "coupling": {"boltCount": 4, "bolts": {"thread": "7/16-14 UNC"}}}`
		if nut != "" {
			text = strings.Replace(text, `"bolts": {`, `"bolts": {"nut": "`+nut+`", `, 1)
		}
		b, err := ReadBoat([]byte(text))
		if err != nil {
			t.Fatal(err)
		}
		s := mustRun(t, "work-plan", `{"today": "2026-03-02", "remedies": [{"remedy": "replace-coupling-bolts"}]}`, Options{Boat: b, NoRanges: true})
		var got []string
		for part := range column(t, s, "shopping", "part", "amount") {
			if strings.HasPrefix(part, "Coupling nuts") {
				got = append(got, part)
			}
		}
		if len(got) != 1 || got[0] != want {
			t.Errorf("with %q: %q", nut, got)
		}
	}
}

// A list of work that is there and empty plans nothing, whatever the answers.
func TestAnEmptyListIsNothingToDo(t *testing.T) {
	b, err := ReadBoat([]byte(`{"name": "Test", "symptoms": [{"evidence": "knock-into-gear", "answer": "yes"}], "work": {"remedies": []}}`))
	if err != nil {
		t.Fatal(err)
	}
	s := mustRun(t, "work-plan", `{"today": "2026-03-02"}`, Options{Boat: b, NoRanges: true})
	if got := s.Result("planned").Text; got != "nothing is to be done" || len(s.Tables) > 0 || s.Result("finish") != nil {
		t.Errorf("planned is %q, %+v", got, s.Tables)
	}
}

// No order is due after the part is needed, and what opens the line is done
// no more than a few days before what it is opened for, and not before a lift.
func TestOrdersAndOpenLines(t *testing.T) {
	for _, name := range []string{"kittiwake", "juniper"} {
		on := map[string]string{"kittiwake": "2025-10-04", "juniper": "2025-10-11"}[name]
		s := pageOf(t, checkedOn(t, demoBoat(t, name), on), "work-plan")
		by, needed := column(t, s, "shopping", "part", "orderBy"), column(t, s, "shopping", "part", "neededOn")
		for part := range by {
			if by[part] > needed[part] {
				t.Errorf("%s: ordered by %s, needed on %s", part, by[part], needed[part])
			}
		}
		start := column(t, s, "schedule", "step", "start")
		parted, err := day.Parse(start["Part the coupling"])
		if err != nil {
			t.Fatal(err)
		}
		drawn, ashore := start["Pull the coupling flange off the shaft"]
		needs := start["Close the coupling"]
		if ashore { // the whole winter ashore may lie between, but not the lift
			needs = drawn
		}
		if next, _ := day.Parse(needs); next-parted > 3 || ashore && day.Text(parted) < "2026-02-02" {
			t.Errorf("%s: parted on %s, wanted on %s", name, day.Text(parted), needs)
		}
	}
}

// Every amount and size of the rule data leads to a result or an input.
func TestAmountsAndSizesLeadSomewhere(t *testing.T) {
	p := &calc.Session{Calculations: catalogue.Calculations}
	for _, s := range rules.Standard().Steps().All() {
		for _, n := range s.Parts.All() {
			if of := n.Quantity.Of; of != "" && (p.Property(of) == nil || p.Property(of).Title == "") {
				t.Errorf("step %s takes %q, which is nowhere", s.ID, of)
			}
		}
	}
	for _, part := range rules.Standard().Parts().All() {
		for _, of := range part.Sizes.All() {
			if p.Property(of) == nil {
				t.Errorf("part %s is sized by %q, which is nowhere", part.ID, of)
			}
		}
	}
}

func TestWhatStandsInTheWayIsSaid(t *testing.T) {
	cases := []struct{ name, input, result, says string }{
		{"a window that never opens", `{"today": "2026-03-02", "remedies": [{"remedy": "repack-gland"}]}`, "trouble", "No day ashore"},
		{"a window that is over", `{"today": "2026-03-02", "remedies": [{"remedy": "repack-gland"}], "windows": [{"from": "2026-01-05", "to": "2026-01-09", "kind": "haul-out"}]}`, "trouble", "ended before 2026-03-02"},
		{"a window too short", `{"today": "2026-03-02", "hoursPerDay": "1 h", "remedies": [{"remedy": "repack-gland"}], "windows": [{"from": "2026-03-09", "to": "2026-03-09", "kind": "haul-out"}]}`, "trouble", "long enough"},
		{"a date that has passed", `{"today": "2026-03-02", "readyBy": "2026-02-20", "remedies": [{"remedy": "adjust-gland"}]}`, "inTime", "already passed"},
		{"a date that is too soon", `{"today": "2026-03-02", "readyBy": "2026-03-03", "remedies": [{"remedy": "replace-mounts"}]}`, "inTime", "No: it ends"},
		{"no end", `{"today": "2026-03-02", "remedies": [{"remedy": "repack-gland"}]}`, "finish", "cannot be given"},
	}
	for _, c := range cases {
		t.Run(c.name, func(t *testing.T) {
			if text := planned(t, c.input).Result(c.result).Text; !strings.Contains(text, c.says) {
				t.Errorf("says %q", text)
			}
		})
	}
}

func TestPlansRefuse(t *testing.T) {
	cases := []struct{ name, input, where string }{
		{"no such remedy", `{"today": "2026-03-02", "remedies": [{"remedy": "paint-her-red"}]}`, "/remedies/0/remedy"},
		{"no such part", `{"today": "2026-03-02", "remedies": [{"remedy": "adjust-gland"}], "partsInHand": [{"part": "anchor"}]}`, "/partsInHand/0/part"},
		{"no such day", `{"today": "2026-02-30", "remedies": [{"remedy": "adjust-gland"}]}`, "/today"},
		{"a window from the end to the beginning", `{"today": "2026-03-02", "remedies": [{"remedy": "adjust-gland"}], "windows": [{"from": "2026-04-10", "to": "2026-04-01", "kind": "not"}]}`, "/windows/0/to"},
		{"nothing to do", `{"today": "2026-03-02"}`, "/remedies"},
		{"no day", `{"remedies": [{"remedy": "adjust-gland"}]}`, "/today"},
	}
	for _, c := range cases {
		t.Run(c.name, func(t *testing.T) {
			_, err := Run("work-plan", []byte(c.input), Options{})
			list := problem.Of(err)
			if len(list) != 1 || list[0].Where != c.where {
				t.Errorf("got %v", err)
			}
		})
	}
	circle, err := Overlay([]byte(`{"title": "Yard", "steps": [
		{"id": "make-safe", "title": "Make safe", "text": "-", "after": ["trial-run"], "hours": 1, "place": "either", "tools": [], "hazards": [], "safe": "test", "source": {"document": "Test"}, "basis": "maker"}]}`))
	if err != nil {
		t.Fatal(err)
	}
	_, err = Run("work-plan", []byte(`{"today": "2026-03-02", "remedies": [{"remedy": "align-coupling"}]}`), Options{Rules: circle})
	if err == nil || !strings.Contains(err.Error(), "circle") || !strings.Contains(err.Error(), "Trial under way") {
		t.Errorf("a circle of steps: %v", err)
	}
}

// Every remedy can be planned to its end on an open calendar, keeps the order
// of its rows, and shows every caution of its steps.
func TestEveryRemedyCanBePlanned(t *testing.T) {
	book := rules.Standard()
	steps := map[string]rules.Step{}
	for _, s := range book.Steps().All() {
		steps[s.ID] = s
	}
	for _, r := range book.Remedies().All() {
		s := planned(t, fmt.Sprintf(`{"today": "2026-01-05", "hands": 2, "remedies": [{"remedy": %q}], "windows": [{"from": "2026-04-01", "to": "2026-08-01", "kind": "ashore"}]}`, r.ID))
		if trouble := s.Result("trouble"); trouble != nil {
			t.Errorf("%s: %s", r.ID, trouble.Text)
		}
		end := column(t, s, "schedule", "step", "end")
		start := column(t, s, "schedule", "step", "start")
		atSteps := map[string]string{}
		if s.Table("dangers") != nil {
			atSteps = column(t, s, "dangers", "text", "atSteps")
		}
		for _, id := range r.Steps.All() {
			step := steps[id]
			for _, b := range step.After.All() {
				if rules.Contains(r.Steps, b) && end[steps[b].Title] > start[step.Title] {
					t.Errorf("%s: %s on %s, before %s", r.ID, id, start[step.Title], b)
				}
			}
			for _, c := range book.AllCautions().All() {
				if rules.Contains(step.Hazards, c.ID) && !slices.Contains(strings.Split(atSteps[c.Text], "; "), step.Title) {
					t.Errorf("%s: the caution %s of %s is not shown", r.ID, c.ID, id)
				}
			}
		}
	}
}

// With nothing picked, the plan is for the first remedy of the most probable
// cause of the boat's fault finding.
func TestTheLeadingCauseIsPlanned(t *testing.T) {
	b, err := ReadBoat([]byte(`{"name": "Test", "symptoms": [{"evidence": "knock-into-gear", "answer": "yes"}]}`))
	if err != nil {
		t.Fatal(err)
	}
	fault := mustRun(t, "fault-finding", `{}`, Options{Boat: b, NoRanges: true})
	want := ""
	for _, c := range rules.Standard().Causes().All() {
		if c.ID == fault.Result("cause").Text {
			want = c.Remedies.At(0)
		}
	}
	s := mustRun(t, "work-plan", `{"today": "2026-03-02"}`, Options{Boat: b, NoRanges: true})
	for _, r := range rules.Standard().Remedies().All() {
		if r.ID == want && s.Result("planned").Text != r.Title {
			t.Errorf("planned is %q, the cause wants %q", s.Result("planned").Text, r.Title)
		}
	}
}

// A boat that does not say what is to be done lacks that; it is no fault.
func TestSurveySaysThatNoWorkIsChosen(t *testing.T) {
	b, err := ReadBoat([]byte(`{"name": "Test", "readings": [{"date": "2026-03-02", "dripRate": "5 drips/min"}]}`))
	if err != nil {
		t.Fatal(err)
	}
	s, err := Check(b, Options{NoRanges: true})
	if err != nil {
		t.Fatal(err)
	}
	if !slices.ContainsFunc(s.Missing, func(m survey.Missing) bool {
		return m.Calculation == "work-plan" && len(m.Needs) == 1 && m.Needs[0].Input == "remedies"
	}) {
		t.Errorf("missing %+v, faults %+v", s.Missing, s.Faults)
	}
}

func TestScheduleIsDrawn(t *testing.T) {
	s := planned(t, springWork)
	if len(s.Drawings) != 1 {
		t.Fatalf("%d drawings", len(s.Drawings))
	}
	svg := s.Drawings[0].SVG
	if problem := wellFormed(svg); problem != "" {
		t.Error(problem)
	}
	if strings.Count(svg, "● ") < 2 || !strings.Contains(svg, "no work") || !strings.Contains(svg, "lifted out") || strings.Contains(svg, "style=") {
		t.Error("critical steps or windows are not told apart by marks and words")
	}
}

// RFC 5545, read by an independent parser: every dated step and every order
// is an all-day event with its own id, and the texts come back whole.
func TestCalendarReadsBack(t *testing.T) {
	s := planned(t, springWork)
	text, err := Calendar(s)
	if err != nil {
		t.Fatal(err)
	}
	lines := strings.Split(string(text), "\r\n")
	for _, l := range lines {
		if len(l) > 75 || strings.ContainsAny(l, "\r\n") {
			t.Errorf("a line of %d octets: %q", len(l), l)
		}
	}
	if lines[len(lines)-1] != "" || strings.Count(string(text), "\n") != strings.Count(string(text), "\r\n") {
		t.Error("not every line ends with CR LF")
	}
	cal, err := ics.ParseCalendar(strings.NewReader(string(text)))
	if err != nil {
		t.Fatal(err)
	}
	start, end := column(t, s, "schedule", "step", "start"), column(t, s, "schedule", "step", "end")
	how := column(t, s, "schedule", "step", "how")
	ids := map[string]bool{}
	orders := 0
	for _, e := range cal.Events() {
		if ids[e.Id()] {
			t.Errorf("the id %s is there twice", e.Id())
		}
		ids[e.Id()] = true
		summary := e.GetProperty(ics.ComponentPropertySummary).Value
		first, err := e.GetAllDayStartAt()
		if err != nil {
			t.Fatal(err)
		}
		after, err := e.GetAllDayEndAt()
		if err != nil {
			t.Fatal(err)
		}
		if stamp, err := e.GetDtStampTime(); err != nil || stamp.Format(time.DateOnly) != "2026-03-02" {
			t.Errorf("stamped %v, %v", stamp, err)
		}
		if strings.HasPrefix(summary, "Order: ") {
			orders++
			continue
		}
		if first.Format(time.DateOnly) != start[summary] || after.AddDate(0, 0, -1).Format(time.DateOnly) != end[summary] {
			t.Errorf("%s from %v to %v, planned %s to %s", summary, first, after, start[summary], end[summary])
		}
		if !strings.HasSuffix(e.GetProperty(ics.ComponentPropertyDescription).Value, how[summary]) {
			t.Errorf("%s: %q does not end with %q", summary, e.GetProperty(ics.ComponentPropertyDescription).Value, how[summary])
		}
		delete(start, summary)
	}
	if len(start) > 0 || orders == 0 {
		t.Errorf("%d steps are not in the calendar, %d orders are", len(start), orders)
	}
	again, err := Calendar(planned(t, springWork))
	if err != nil || string(again) != string(text) {
		t.Error("the same plan gives another calendar")
	}
}

// RFC 4180, read by encoding/csv: every cell comes back as on the sheet.
func TestCSVReadsBack(t *testing.T) {
	s := planned(t, springWork)
	for i := range s.Tables {
		list := &s.Tables[i]
		records, err := csv.NewReader(strings.NewReader(string(CSV(list)))).ReadAll()
		if err != nil {
			t.Fatal(err)
		}
		if len(records) != len(list.Rows)+1 || records[0][0] != list.Columns[0].Title {
			t.Fatalf("%s: %d lines for %d rows", list.Name, len(records), len(list.Rows))
		}
		for n, r := range list.Rows {
			for c := range r.Cells {
				if records[n+1][c] != r.Cells[c].Text {
					t.Errorf("%s: %q comes back as %q", list.Name, r.Cells[c].Text, records[n+1][c])
				}
			}
		}
	}
	odd := &calc.Table{Columns: []sheet.Column{{Title: "a"}, {Title: `b, "c"`}}, Rows: []sheet.Row{{Cells: []sheet.Cell{{Text: "=1+1"}, {Text: "-5 mm"}}}}}
	if got, want := string(CSV(odd)), "a,\"b, \"\"c\"\"\"\r\n'=1+1,-5 mm\r\n"; got != want {
		t.Errorf("got %q, want %q", got, want)
	}
}

func TestCallExports(t *testing.T) {
	for request, has := range map[string]string{
		`{"ask": "calendar", "input": ` + springWork + `}`:                                                                                      `"calendar":"BEGIN:VCALENDAR\r\n`,
		`{"ask": "csv", "calculation": "work-plan", "table": "shopping", "input": ` + springWork + `}`:                                          `"csv":"Part,Amount`,
		`{"ask": "csv", "calculation": "work-plan", "table": "songs", "input": ` + springWork + `}`:                                             `no list`,
		`{"ask": "calendar", "calculation": "work-plan", "input": {"today": "2026-03-02", "remedies": [{"remedy": "repack-gland"}]}}`:           `has a date`,
		`{"ask": "calendar", "calculation": "shaft-torque", "input": {"enginePower": "20 kW", "engineSpeed": "2400 rpm", "gearRatioAhead": 2}}`: `holds no dates`,
	} {
		if out := string(Call([]byte(request))); !strings.Contains(out, has) {
			t.Errorf("%s gives %.300s", request, out)
		}
	}
}

// Money keeps to one currency, and the results are in it.
func TestOneCurrency(t *testing.T) {
	b, err := ReadBoat([]byte(`{"name": "Test", "prices": {"yardHour": "85 EUR"}}`))
	if err != nil {
		t.Fatal(err)
	}
	s := mustRun(t, "repair-or-replace", `{"seasons": 5, "repairParts": "100 EUR", "replaceParts": 300, "repairYardTime": "2 h"}`, Options{Boat: b})
	for _, name := range []string{"repairFirstCost", "replaceExpected", "saving"} {
		if r := s.Result(name); !strings.HasSuffix(r.Text, " EUR") || r.Low != nil && !strings.HasSuffix(r.Interval, " EUR") {
			t.Errorf("%s is %q, %v", name, r.Text, r.Spread)
		}
	}
	if c := s.Result("replacingCheaperChance"); c == nil || *c.SI <= 0 || *c.SI >= 1 {
		t.Errorf("the chance is %+v", c)
	}
	if !strings.Contains(s.Drawings[0].SVG, "EUR") || wellFormed(s.Drawings[0].SVG) != "" {
		t.Error("the drawing has no currency, or is not well formed")
	}
	_, err = Run("repair-or-replace", []byte(`{"seasons": 5, "repairParts": "100 USD", "replaceParts": "300 USD"}`), Options{Boat: b})
	list := problem.Of(err)
	if len(list) != 1 || list[0].Where != "/boat/prices/yardHour" {
		t.Errorf("two currencies: %v", err)
	}
	if s := mustRun(t, "repair-or-replace", `{"seasons": 5, "repairParts": "100 EUR", "replaceParts": "300 EUR"}`, Options{NoRanges: true}); s.Result("replacingCheaperChance") != nil {
		t.Error("a chance without trials")
	}
}
