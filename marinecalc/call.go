package marinecalc

import (
	"bytes"
	"context"
	"encoding/json"
	"fmt"

	"example.org/driveline/marinecalc/internal/calc"
	"example.org/driveline/marinecalc/internal/catalogue"
	"example.org/driveline/marinecalc/internal/day"
	"example.org/driveline/marinecalc/internal/diagnosis"
	"example.org/driveline/marinecalc/problem"
	"example.org/driveline/marinecalc/quantity"
	"example.org/driveline/marinecalc/sheet"
)

// Call is the one entry point for hosts that speak JSON: a request in
// (schemas/request.schema.json), a reply out (schemas/reply.schema.json), both
// UTF-8. It never panics; the reply carries the problems, its own mistakes
// among them. The rule files of the request are applied over the engine's rules.
func (e *Engine) Call(ctx context.Context, text []byte) (out []byte) {
	defer func() {
		if thrown := recover(); thrown != nil {
			out, _ = written(reply{Problems: problem.Panicked("this request", thrown)}) // plain texts always can
		}
	}()
	r, err := e.answer(ctx, text)
	if err != nil {
		r = reply{Problems: problem.Of(err), Warnings: r.Warnings}
	} else {
		r.OK = true
	}
	r.Warnings = r.Warnings.Few()
	out, err = written(r)
	if most := 2 * max(len(text), smallReply); err == nil && len(out) > most {
		err = fmt.Errorf("it is %d bytes long, and at most %d are handed out; ask for less at once", len(out), most)
	}
	if err != nil {
		out, _ = written(reply{Problems: problem.List{{What: "the reply cannot be written: " + err.Error(), Kind: problem.TooLarge}}}) // plain texts always can
	}
	return out
}

// smallReply is half of the longest reply to any request that is not longer
// itself, in bytes; a longer one is answered by twice its length at the most.
const smallReply = 1 << 20

// written is a reply as JSON. It is not meant to stand in HTML, where a boat's
// notes would grow six times as long.
func written(r reply) ([]byte, error) {
	var out bytes.Buffer
	e := json.NewEncoder(&out)
	e.SetEscapeHTML(false)
	err := e.Encode(r)
	return bytes.TrimSuffix(out.Bytes(), []byte("\n")), err
}

func (e *Engine) answer(ctx context.Context, text []byte) (reply, error) {
	r, problems := e.readRequest(text)
	if len(problems) > 0 {
		return reply{}, problems.Err()
	}
	if err := stopped(ctx, nil); err != nil {
		return reply{}, err
	}
	out, err := r.ask.answer(ctx, r)
	out.Warnings = append(out.Warnings, r.warnings...)
	for _, w := range e.Unused(r.options.Boat, r.options) {
		w.Where = "/boat" + w.Where
		out.Warnings = append(out.Warnings, w)
	}
	return out, stopped(ctx, err)
}

// reply is what a host gets back.
type reply struct {
	OK       bool         `json:"ok"`
	Problems problem.List `json:"problems,omitempty"`
	Warnings problem.List `json:"warnings,omitempty"` // what of the boat file is not used, what of the overlays is probably not meant; beside problems too

	Version      string                `json:"version,omitempty"`
	Trials       int                   `json:"trials,omitempty"`
	Calculations []Entry               `json:"calculations,omitempty"`
	Groups       []catalogue.Group     `json:"groups,omitempty"`
	Words        []wordEntry           `json:"words,omitempty"`
	Schema       json.RawMessage       `json:"schema,omitempty"`
	Choices      map[string][]Choice   `json:"choices,omitempty"`
	Given        map[string]calc.Given `json:"given,omitempty"`
	Places       map[string]string     `json:"places,omitempty"` // titles of groups of inputs, by member of the boat file
	Units        map[string][]string   `json:"units,omitempty"`
	Cautions     []sheet.Caution       `json:"cautions,omitempty"`
	Questions    []diagnosis.Question  `json:"questions,omitempty"` // of the form of fault-finding
	Sheet        *sheet.Sheet          `json:"sheet,omitempty"`
	Boat         *Boat                 `json:"boat,omitempty"`
	Days         []string              `json:"days,omitempty"` // with a reading of the boat, oldest first
	Kept         []keptInput           `json:"kept,omitempty"` // with the boat
	Left         []string              `json:"left,omitempty"` // the inputs for which the boat has no place
	Survey       *Survey               `json:"survey,omitempty"`
	Page         string                `json:"page,omitempty"` // a whole HTML text
	TorqueCard   *TorqueCard           `json:"torqueCard,omitempty"`
	Comparison   *Comparison           `json:"comparison,omitempty"`
	Calendar     string                `json:"calendar,omitempty"` // iCalendar, RFC 5545
	CSV          string                `json:"csv,omitempty"`      // RFC 4180
	Series       []Series              `json:"series,omitempty"`   // what can be followed and logged
	Line         *Line                 `json:"line,omitempty"`     // the boat at one look
	Parts        *PartsState           `json:"parts,omitempty"`    // how each stands
	Part         *PartView             `json:"part,omitempty"`
	Hits         []Hit                 `json:"hits,omitempty"`   // by what was typed, best first
	Charts       []ReadingChart        `json:"charts,omitempty"` // of what was read
	Daily        []string              `json:"daily,omitempty"`  // readings taken every day
	Text         string                `json:"text,omitempty"`   // a quantity with its unit
	SI           *float64              `json:"si,omitempty"`
	Rules        *RulesReport          `json:"rules,omitempty"`
	InForce      *RulesInForce         `json:"inForce,omitempty"`
	Form         json.RawMessage       `json:"form,omitempty"`
	Documents    []string              `json:"documents,omitempty"` // the names of the schemas
	Document     json.RawMessage       `json:"document,omitempty"`
	Converted    *Converted            `json:"converted,omitempty"`
	Procedures   []PartWork            `json:"procedures,omitempty"` // by the part that they are on
	Procedure    *Procedure            `json:"procedure,omitempty"`
	SignalK      *SignalK              `json:"signalK,omitempty"` // what became of its samples
	Checks       []CheckChapter        `json:"checks,omitempty"`  // published values computed anew
}

// wordEntry is a word of verdicts, for programs and for people.
type wordEntry struct {
	Word  sheet.Word `json:"word"`
	Reads string     `json:"reads"`
}

// keptInput is an input that is kept with the boat.
type keptInput struct {
	Input string `json:"input"`
	Title string `json:"title"`
}

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
