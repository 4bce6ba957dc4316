// What a host that speaks JSON gets back.

package marinecalc

import (
	"encoding/json"

	"example.org/driveline/marinecalc/internal/calc"
	"example.org/driveline/marinecalc/internal/catalogue"
	"example.org/driveline/marinecalc/internal/diagnosis"
	"example.org/driveline/marinecalc/problem"
	"example.org/driveline/marinecalc/sheet"
)

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
	Fits         map[string]Fit        `json:"fits,omitzero"`       // which picks go with what is known; empty where none asks for another input
	Documents    []string              `json:"documents,omitempty"` // the names of the schemas
	Document     json.RawMessage       `json:"document,omitempty"`
	Converted    *Converted            `json:"converted,omitempty"`
	Procedures   []PartWork            `json:"procedures,omitzero"` // by the part that they are on; empty where no work is on it
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
