package marinecalc

import (
	"context"
	"strings"

	"example.org/driveline/marinecalc/internal/day"
	"example.org/driveline/marinecalc/internal/overview"
	"example.org/driveline/marinecalc/internal/survey"
	"example.org/driveline/marinecalc/problem"
)

type (
	// Line is a boat at one look: drawn from engine to propeller, with what is
	// known of each part and what is due (schemas/line.schema.json).
	// Its members are Boat, Caption, Drawing, Due, MoreDue and Parts: what each is
	// stands with overview.Line of the inner packages.
	Line = overview.Line
	// LinePart is a part of it.
	// Its members are About, Asked, Asks, Holds, ID, Known, Names, Newest and Title:
	// what each is stands with overview.Part of the inner packages.
	LinePart = overview.Part
	// DueCare is care that is due.
	// Its members are By, How, Last, Part, State and What: what each is stands with
	// overview.Due of the inner packages.
	DueCare = overview.Due
	// PartsState is how every part of a boat stands.
	// Its members are Parts and Still: what each is stands with overview.PartsState of
	// the inner packages.
	PartsState = overview.PartsState
	// PartState is how one part stands.
	// Its members are Calculation, Part, Reads, Sentence, Sheet, Short, Title, Verdicts
	// and Word: what each is stands with survey.PartState of the inner packages.
	PartState = survey.PartState
	// PartView is one part with its readings, sheets, work and care.
	// Its members are Care, Findings, Found, Open, Part, Readings, Sheets, State and
	// Work: what each is stands with overview.PartView of the inner packages.
	PartView = overview.PartView
	// BoatAsk is something that a calculation must know of the boat.
	// Its members are For, Known, Pointer and Title: what each is stands with
	// overview.Ask of the inner packages.
	BoatAsk = overview.Ask
	// ReadingChart is one series of readings at a look.
	// Its members are Chart, Newest, Reading, Readings, Title and Value: what each is
	// stands with overview.Chart of the inner packages.
	ReadingChart = overview.Chart
	// SheetLine is a calculation and what it says of the boat.
	// Its members are Calculation, Lacks, Reads, Says, Title and Word: what each is
	// stands with overview.SheetLine of the inner packages.
	SheetLine = overview.SheetLine
	// Hit is something found by what a person typed.
	// Its members are Calculation, ID, Input, Kind, Text, Title and With: what each is
	// stands with overview.Hit of the inner packages.
	Hit = overview.Hit
)

// Line gives a boat at one look; today is year-month-day. The boat may be nil.
// The error is an [*Error].
func (e *Engine) Line(ctx context.Context, b *Boat, today string, o Options) (*Line, error) {
	o, err := e.on(b, today, o)
	if err != nil {
		return nil, err
	}
	l, err := overview.Of(ctx, b, o, today)
	return made(ctx, l, err)
}

// Parts says how every part of a boat stands, as its survey does. The error is
// as in [Engine.Run].
func (e *Engine) Parts(ctx context.Context, b *Boat, o Options) (*PartsState, error) {
	if b == nil {
		return nil, noBoat()
	}
	o, err := e.withBoat(o)
	if err != nil {
		return nil, err
	}
	p, err := overview.Parts(ctx, b, o)
	return made(ctx, p, err)
}

// Part tells of one part of a boat, which may be nil, by the id that the table
// line-parts gives it; today is year-month-day. The error is an [*Error].
func (e *Engine) Part(ctx context.Context, b *Boat, id, today string, o Options) (*PartView, error) {
	o, err := e.on(b, today, o)
	if err != nil {
		return nil, err
	}
	p, err := overview.PartOf(ctx, b, o, id, today)
	return made(ctx, p, err)
}

// Find looks for what a person typed, such as "clunk", "3/8-24" or "drips", in
// questions, calculations, rows of tables, parts and work: best first, eight at
// most, none where nothing comes near. Of a longer text its first 200 bytes count.
// The error is that of a context that ended.
func (e *Engine) Find(ctx context.Context, text string) ([]Hit, error) {
	if err := stopped(ctx, nil); err != nil {
		return nil, err
	}
	if len(text) > mostTyped {
		text = strings.ToValidUTF8(text[:mostTyped], "")
	}
	return overview.Find(e.rules(), text), nil
}

// mostTyped is how much of what is looked for counts, in bytes.
const mostTyped = 200

// on is the options for a boat on a day.
func (e *Engine) on(b *Boat, today string, o Options) (Options, error) {
	if _, err := day.Parse(today); err != nil {
		return o, problem.List{{Where: "/date", What: err.Error(), Allowed: "year-month-day"}}.Err()
	}
	o.Boat = b
	return e.withBoat(o)
}
