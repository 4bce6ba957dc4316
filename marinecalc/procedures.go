package marinecalc

import (
	"context"

	"example.org/driveline/marinecalc/internal/procedure"
)

type (
	// Procedure is work to go by, step by step, filled with what is known of a
	// boat (schemas/procedure.schema.json).
	// Its members are Boat, Cures, Drawings, Hours, LastTick, LeftOut, Made, Missing,
	// Moves, Phases, Prepare, Remedies, Steps, Ticked, Title, Tools and Warnings: what
	// each is stands with procedure.Procedure of the inner packages.
	Procedure = procedure.Procedure
	// ProcedureRequest says of which pieces of work.
	// Its members are Done and Remedies: what each is stands with procedure.Request of
	// the inner packages.
	ProcedureRequest = procedure.Request
	// Step is one step of it.
	// Its members are After, Bares, Cautions, Drawing, Due, Figures, For, Hold, Hours,
	// ID, LongHours, Move, Note, Number, Once, Parts, Place, Records, Safe, Text, Tick,
	// TickNote, Tightening, Title, Tools and WaitDays: what each is stands with
	// procedure.Step of the inner packages.
	Step = procedure.Step
	// StepFigure is a figure of the boat's sheets that a step needs.
	// Its members are Calculation, Interval, Maker, Needs, Of, Reads, RestsOn, Sentence,
	// Sheet, Table, Text, Title, Why and Word: what each is stands with procedure.Figure
	// of the inner packages.
	StepFigure = procedure.Figure
	// StepDrawing is a picture that steps refer to.
	// Its members are Calculation, Needs, Pictures and Sheet: what each is stands with
	// procedure.Drawing of the inner packages.
	StepDrawing = procedure.Drawing
	// StepMissing is what figures of the steps still need.
	// Its members are Calculation, Need, Sheet and Steps: what each is stands with
	// procedure.Missing of the inner packages.
	StepMissing = procedure.Missing
	// Prepare is what to measure or look up before beginning.
	// Its members are By, Steps and What: what each is stands with procedure.Prepare of
	// the inner packages.
	Prepare = procedure.Prepare
	// StepLimit is a limit that a reading at a step is held against.
	// Its members are Bound, Calculation, Guide, Sheet and Title: what each is stands
	// with procedure.Held of the inner packages.
	StepLimit = procedure.Held
	// PartWork is the work that there is on one part of the drivetrain.
	// Its members are Part and Work: what each is stands with procedure.PartWork of the
	// inner packages.
	PartWork = procedure.PartWork
	// TickRequest is what happened at one step of the work.
	// Its members are Day, Done, Note, Record, Remedies, Step and Time: what each is
	// stands with procedure.TickRequest of the inner packages.
	TickRequest = procedure.TickRequest
	// Noted is something written down there.
	// Its members are Title and Value: what each is stands with procedure.Noted of the
	// inner packages.
	Noted = procedure.Noted
)

// Procedure gives one piece of work, or several done together, step by step:
// in order by phases, each step with its cautions, tools, parts and figures for
// this boat, and with what has been ticked off. The boat may be nil; what is
// not known says what it needs. The error is an [*Error]: work or a step that
// there is not, with the closest name.
func (e *Engine) Procedure(ctx context.Context, b *Boat, r ProcedureRequest, o Options) (*Procedure, error) {
	o.Boat = b
	o, err := e.withBoat(o)
	if err != nil {
		return nil, err
	}
	p, err := procedure.Make(ctx, b, o, r)
	return made(ctx, p, err)
}

// Procedures lists the work that there is, by the part that it is on, and how
// much of each is ticked off. The boat may be nil.
func (e *Engine) Procedures(b *Boat) []PartWork { return procedure.List(e.rules(), b) }

// Tick returns the boat with what happened at one step: ticked off, or the tick
// taken back, a note, and what was read, which is kept among the boat's dated
// readings too where it is one of them. The error is an [*Error] with every
// fault at its place.
func (e *Engine) Tick(b *Boat, r TickRequest) (*Boat, error) {
	if b == nil {
		return nil, noBoat()
	}
	return procedure.KeepTick(e.rules(), b, r)
}

// CloseWork returns the boat with a job ended on that day: its ticks are
// cleared, so that it can be done anew another time, and an event says what was
// done. The error is an [*Error]: nothing of it is ticked off.
func (e *Engine) CloseWork(b *Boat, remedies []string, day string) (*Boat, error) {
	if b == nil {
		return nil, noBoat()
	}
	return procedure.Close(e.rules(), b, remedies, day)
}
