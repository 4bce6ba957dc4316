package survey

import (
	"fmt"
	"slices"
	"strings"

	"example.org/driveline/marinecalc/internal/boat"
	"example.org/driveline/marinecalc/internal/boat/agree"
	"example.org/driveline/marinecalc/internal/calc"
	"example.org/driveline/marinecalc/internal/contract"
	"example.org/driveline/marinecalc/internal/day"
	"example.org/driveline/marinecalc/internal/diagnosis"
	"example.org/driveline/marinecalc/problem"
	"example.org/driveline/marinecalc/rules"
	"example.org/driveline/marinecalc/sheet"
)

// Found is something that is wrong with the boat. What was seen or measured
// stands before what comes out of a calculation.
type Found struct {
	Kind        FoundKind `json:"kind"`
	Title       string    `json:"title"`
	Text        string    `json:"text"` // by what it was found, and what it means
	Calculation string    `json:"calculation"`
	Sheet       string    `json:"sheet"`
	Limit       string    `json:"limit,omitempty"`
	Row         string    `json:"row,omitempty"` // id of the cause or the look, or name of the reading that jumped
}

// FoundKind says how it was found.
type FoundKind string

// The kinds, in the order in which they lead.
const (
	FoundStill    FoundKind = "still"    // why the shaft must not run
	FoundCause    FoundKind = "cause"    // a settling look showed it
	FoundLook     FoundKind = "look"     // a look was answered with yes and no cause is settled by that
	FoundWear     FoundKind = "wear"     // wear that was measured, with no verdict that it may stay
	FoundMeasured FoundKind = "measured" // over a limit, by what was read on the boat
	FoundComputed FoundKind = "computed" // over a limit, by calculation
)

// found gathers it.
func (s *Survey) found(session *calc.Session) []Found {
	list := []Found{}
	if why, by := session.Still(), session.StillBy(); why != "" {
		list = append(list, Found{Kind: FoundStill, Title: "Do not run the shaft.", Text: why, Calculation: by.Calculation, Sheet: by.Title})
	}
	list = append(list, s.foundByLooking(session)...)
	list = append(list, s.wear()...)
	measured, computed := s.leaps(session), []Found(nil)
	s.mostUrgentFirst()
	for _, f := range s.Findings {
		if f.Verdict.Word != sheet.Beyond || s.saidByOwn(f) {
			continue
		}
		title := f.Verdict.Title
		switch of := s.subject(f.Calculation); {
		case f.Reading != "":
			title = f.Sheet + ": " + problem.MidSentence(title)
		case of == "":
		case f.Verdict.Limit == "trend-horizon" && !s.reached(f.Calculation):
			title = of + ", which does not last until it can be mended"
		case f.Verdict.Limit == "trend-horizon" || f.Verdict.Limit == "trend-not-reached":
			title = of + ", against its limit"
		default:
			title = of + ": " + problem.MidSentence(title)
		}
		over := Found{Kind: FoundComputed, Title: title, Text: f.Verdict.Sentence, Calculation: f.Calculation, Sheet: f.Sheet, Limit: f.Verdict.Limit}
		if f.Reading != "" || s.wasRead(session, f.Calculation, f.Verdict.On) {
			over.Kind = FoundMeasured
			measured = append(measured, over)
		} else {
			computed = append(computed, over)
		}
	}
	return append(append(list, measured...), computed...)
}

// subject is the reading that a sheet is of, where that is chosen on it: without
// its name a verdict says that a limit is reached, and not which.
func (s *Survey) subject(id string) string {
	if one := s.sheet(id); one != nil {
		if of := one.Input("reading"); of != nil {
			return of.Text
		}
	}
	return ""
}

// saidByOwn tells whether a trend at its limit says only what the reading against the
// owner's own limit does.
func (s *Survey) saidByOwn(trend Finding) bool {
	one := s.sheet(trend.Calculation)
	if trend.Verdict.Limit != "trend-not-reached" && trend.Verdict.Limit != "trend-horizon" || one.Input("reading") == nil {
		return false
	}
	id := rules.OwnLimit(one.Input("reading").Word)
	return slices.ContainsFunc(s.Findings, func(f Finding) bool { return f.Verdict.Limit == id && f.Verdict.Word == sheet.Beyond })
}

// reached tells whether the reading that a sheet is of is at its limit already.
func (s *Survey) reached(id string) bool {
	v := s.sheet(id).Verdict("trend-not-reached")
	return v != nil && v.Word == sheet.Beyond
}

// foundByLooking lists the causes that the fault finding says were found, and
// the looks that showed something without settling a cause.
func (s *Survey) foundByLooking(session *calc.Session) []Found {
	list := []Found{}
	out := s.sheet(diagnosis.FaultFinding)
	if out == nil {
		return list
	}
	settled := map[string]bool{} // questions, by id
	evidence := session.Book.Evidence()
	for n := 0; out.Cell("ranking", n, "cause") != nil; n++ {
		known := out.Cell("ranking", n, "known")
		if known == nil || known.Text == "" {
			continue
		}
		text := problem.Capital(known.Text)
		for _, c := range session.Book.Causes().All() {
			for _, e := range evidence.All() {
				if c.ID == out.Cell("ranking", n, "cause").Text && e.ID == c.Confirm {
					settled[e.ID] = true
					text += " (“" + e.Title + "” yes)"
				}
			}
		}
		if part := out.Cell("ranking", n, "part"); part != nil && part.Text != "" {
			text += "; part: " + part.Text
		}
		for m := 0; out.Cell("cureOrder", m, "cause") != nil; m++ {
			if out.Cell("cureOrder", m, "cause").Text != out.Cell("ranking", n, "cause").Text {
				continue
			}
			if because := out.Cell("cureOrder", m, "because"); because != nil && because.Text != "" {
				text += "; it brings on: " + strings.TrimSuffix(because.Text, ".")
			}
			if cure := out.Cell("cureOrder", m, "remedies"); cure != nil && cure.Text != "" {
				text += "; cure: " + cure.Text
			}
		}
		list = append(list, Found{Kind: FoundCause, Title: out.Cell("ranking", n, "name").Text, Text: text + ".", Calculation: out.Calculation, Sheet: out.Title, Row: out.Cell("ranking", n, "cause").Text})
	}
	points := ""
	if cause, sure := out.Result("cause"), out.Result("probability"); cause != nil {
		points = " It points to"
		if sure != nil && sure.SI != nil && *sure.SI < diagnosis.Judgement(session.Book, "sure-open") {
			points += ", among others"
		}
		points += ": " + out.Cell("ranking", 0, "name").Text
		if sure != nil {
			points += " (" + sure.Text + ")"
		}
		points += "."
	}
	for n := 0; out.Cell("weights", n, "question") != nil; n++ {
		question, from := out.Cell("weights", n, "evidence").Text, out.Cell("weights", n, "from").Text
		if out.Cell("weights", n, "answer").Text != "yes" || settled[question] || out.Cell("weights", n, "limit").Text != "" {
			continue
		}
		for _, e := range evidence.All() {
			if e.ID == question && (e.Kind == "check" || strings.HasPrefix(from, "reading")) {
				text := "Yes, by the " + from + "."
				if weight := out.Cell("weights", n, "decibans"); weight.SI != nil && *weight.SI > 0 {
					text += points // evidence for the leading cause
				}
				list = append(list, Found{Kind: FoundLook, Title: e.Title, Text: text, Calculation: out.Calculation, Sheet: out.Title, Row: e.ID})
			}
		}
	}
	return list
}

// wear is wear that was measured and of which no verdict says that it may stay.
func (s *Survey) wear() []Found {
	out := s.sheet("wear-debris")
	if out == nil {
		return nil
	}
	depth := out.Input("wearDepth")
	if depth == nil || depth.Origin != sheet.FromBoat {
		return nil
	}
	if v := out.Verdict("wear-depth"); v != nil && v.Word != sheet.CannotTell && v.Word != sheet.NotMeasured {
		return nil // over its limit it stands there, inside it it is no finding
	}
	text := depth.Text + " deep"
	if metal := out.Input("metal"); metal != nil {
		text += ", " + strings.ToLower(metal.Text)
	}
	return []Found{{Kind: FoundWear, Title: "Worn part measured", Text: text + ". Nobody has said how much wear the part may have: ask its maker before it is used again.", Calculation: out.Calculation, Sheet: out.Title}}
}

// sheet is the sheet of a calculation, or nil.
func (s *Survey) sheet(id string) *sheet.Sheet {
	for _, one := range s.Sheets {
		if one.Calculation == id {
			return one
		}
	}
	return nil
}

// wasRead tells whether a result or input rests on what was read on the boat,
// and not on what she was built with alone.
func (s *Survey) wasRead(session *calc.Session, id, on string) bool {
	c, err := session.Find(id)
	if err != nil {
		return false
	}
	k, err := c.Form()
	if err != nil {
		return false
	}
	if id == "reading-trend" {
		return true // of the boat's dated readings
	}
	out := s.sheet(id)
	for _, p := range restsOn(k.Calculation, on) {
		in := out.Input(p.Name)
		read := strings.HasPrefix(p.Boat, boat.LatestReading) || strings.HasPrefix(p.Boat, "/wornPart/")
		if in != nil && in.Origin == sheet.FromBoat && p.Name != "date" && (read || strings.HasPrefix(in.Source, "reading of ")) {
			return true
		}
	}
	return false
}

// restsOn are the inputs that an input or result rests on, by formula or
// method.
func restsOn(k *contract.Calculation, on string) []*contract.Property {
	names := []string{on}
	if k.Result.Child(on) != nil {
		names = k.Formulas.Rests(on)
	}
	var inputs []*contract.Property
	for _, name := range names {
		if p := k.Input.Child(name); p != nil {
			inputs = append(inputs, p)
		}
	}
	return inputs
}

// Disagreement is something that does not agree, on the sheet that says so; a
// contradiction inside the boat file stands alone.
type Disagreement struct {
	Calculation string         `json:"calculation,omitempty"`
	Sheet       string         `json:"sheet,omitempty"`
	Conflict    sheet.Conflict `json:"conflict"`
}

// disagree gathers what does not agree, each once.
func (s *Survey) disagree(ofBoat []agree.Disagreement) []Disagreement {
	list := []Disagreement{}
	seen := map[string]bool{}
	for _, d := range ofBoat {
		c := sheet.Conflict{Code: sheet.TwoFigures, On: d.Code, Title: d.Title, Text: d.Title + ": " + problem.MidSentence(d.Text)}
		for _, f := range d.Figures {
			c.Values = append(c.Values, sheet.ConflictValue{Title: f.Title, Text: f.Text, SI: f.SI, Origin: sheet.FromBoat, Date: f.Date})
		}
		seen[strings.ToLower(c.Text)] = true
		list = append(list, Disagreement{Conflict: c})
	}
	for _, one := range s.Sheets {
		for _, c := range one.Conflicts {
			if key := strings.ToLower(c.Text); !seen[key] {
				seen[key] = true
				list = append(list, Disagreement{one.Calculation, one.Title, c})
			}
		}
	}
	return list
}

// Choice is what was decided, and what is planned.
type Choice struct {
	Decided string `json:"decided,omitempty"`
	Planned string `json:"planned,omitempty"`
	Finish  string `json:"finish,omitempty"` // of the plan
	Text    string `json:"text"`
}

// calls tells whether something was found that asks for work.
func (s *Survey) calls() bool {
	return slices.ContainsFunc(s.Found, func(f Found) bool {
		return slices.Contains([]FoundKind{FoundCause, FoundMeasured, FoundComputed}, f.Kind)
	})
}

// worthNaming tells whether the first cause is likely enough to be named.
func (s *Survey) worthNaming(book *rules.Book) bool {
	p := s.sheet(diagnosis.FaultFinding).Result("probability")
	return p == nil || p.SI == nil || *p.SI >= diagnosis.Judgement(book, "worth-suspecting")
}

// overdue is how much care the service schedule tells to be overdue, by limit or guide.
func (s *Survey) overdue() (n int) {
	for _, name := range []string{"overdue", "overdueGuide"} {
		if r := s.sheet("service-schedule").Result(name); r != nil && r.SI != nil {
			n += int(*r.SI)
		}
	}
	return n
}

// choice names decision and plan once.
func (s *Survey) choice(book *rules.Book) *Choice {
	text := func(id string, results ...string) string {
		for _, name := range results {
			if r := s.sheet(id).Result(name); r != nil && r.Text != "" {
				return r.Text
			}
		}
		return ""
	}
	c := Choice{Decided: text("repair-or-replace", "decided", "cheapest"), Planned: text("work-plan", "planned"), Finish: text("work-plan", "finish")}
	var parts []string
	suspected := false
	if known := s.sheet(diagnosis.FaultFinding).Result("known"); known != nil && known.Text == "suspected" && s.worthNaming(book) {
		suspected = true
		parts = append(parts, "suspected: "+s.sheet(diagnosis.FaultFinding).Cell("ranking", 0, "name").Text+" ("+text(diagnosis.FaultFinding, "probability")+")")
	}
	table := s.sheet("work-plan").Table("schedule")
	nothing := c.Planned != "" && (table == nil || len(table.Rows) == 0)
	if nothing {
		c.Decided = "" // nothing is to be done, so that nothing was decided
	}
	if c.Decided != "" {
		parts = append(parts, "decided: "+c.Decided)
	}
	if c.Planned != "" {
		plan := "planned: " + c.Planned
		switch list := s.sheet("work-plan").Input("remedies"); {
		case !nothing || list == nil: // no list, or none that is empty
		case text("work-plan", "trouble") != "":
			plan = "planned: nothing, the list of work is empty; what was found or decided is not on it"
		case s.calls():
			plan = "planned: nothing, the list of work is empty; what is over or found is not on it"
		}
		if n := s.overdue(); nothing && n > 0 {
			plan += fmt.Sprintf("; care overdue: %d, see the service schedule", n)
		}
		if suspected && !nothing && text("work-plan", "suspected") != "" {
			plan += " (on that suspicion: order nothing yet)"
		}
		switch dated, err := day.Parse(c.Finish); {
		case c.Finish == "":
		case err != nil: // it says why there is none, at length
			plan += ", no date yet: see the work plan"
		default:
			plan += ", ready " + day.Text(dated)
		}
		parts = append(parts, plan)
	}
	if len(parts) == 0 {
		return nil
	}
	c.Text = strings.Join(parts, "; ")
	c.Text = problem.Capital(c.Text) + "."
	return &c
}
