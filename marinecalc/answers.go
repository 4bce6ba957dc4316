// What answers each ask that has a method of the engine behind it.

package marinecalc

import (
	"context"

	"example.org/driveline/marinecalc/internal/boat"
	"example.org/driveline/marinecalc/internal/calc"
	"example.org/driveline/marinecalc/internal/catalogue"
	"example.org/driveline/marinecalc/internal/host"
	"example.org/driveline/marinecalc/internal/procedure"
	"example.org/driveline/marinecalc/problem"
)

func askLine(ctx context.Context, r *request) (reply, error) {
	l, err := r.engine.Line(ctx, r.options.Boat, r.options.Day, r.options)
	return reply{Line: l}, err
}

func askParts(ctx context.Context, r *request) (reply, error) {
	p, err := r.engine.Parts(ctx, r.options.Boat, r.options)
	return reply{Parts: p}, err
}

func askPart(ctx context.Context, r *request) (reply, error) {
	p, err := r.engine.Part(ctx, r.options.Boat, r.part, r.options.Day, r.options)
	return reply{Part: p}, err
}

func askFind(ctx context.Context, r *request) (reply, error) {
	if r.text == "" {
		return reply{}, problem.List{{Where: "/text", What: "there is no text", Allowed: "what a person typed", Kind: problem.Missing}}.Err()
	}
	over := Engine{book: r.options.Rules}
	hits, err := over.Find(ctx, r.text)
	return reply{Hits: hits}, err
}

func askProcedures(_ context.Context, r *request) (reply, error) {
	if r.calculation == "" {
		return reply{Procedures: procedure.List(r.options.Rules, r.options.Boat)}, nil
	}
	c, err := calc.Find(catalogue.Calculations, r.calculation)
	if err != nil {
		return reply{}, err
	}
	return reply{Procedures: procedure.For(r.options.Rules, r.options.Boat, c.ID)}, nil
}

func askProcedure(ctx context.Context, r *request) (reply, error) {
	p, err := r.engine.Procedure(ctx, r.options.Boat, ProcedureRequest{Remedies: r.happened.Remedies, Done: r.done}, r.options)
	return reply{Procedure: p}, err
}

// askTick answers with the boat and what happened at a step.
func askTick(_ context.Context, r *request) (reply, error) {
	b, err := r.changed(func(b *boat.Boat) (*boat.Boat, error) {
		r.happened.Day = r.options.Day
		return procedure.KeepTick(r.options.Rules, b, r.happened)
	})
	return reply{Boat: b}, err
}

// askCloseWork answers with the boat and a job ended.
func askCloseWork(_ context.Context, r *request) (reply, error) {
	b, err := r.changed(func(b *boat.Boat) (*boat.Boat, error) {
		return procedure.Close(r.options.Rules, b, r.happened.Remedies, r.options.Day)
	})
	return reply{Boat: b}, err
}

// changed is the boat of the request after a change.
func (r *request) changed(change func(*boat.Boat) (*boat.Boat, error)) (*boat.Boat, error) {
	if r.options.Boat == nil {
		return nil, noBoat()
	}
	return change(r.options.Boat)
}

func askConvert(_ context.Context, r *request) (reply, error) {
	c, err := host.Convert(r.quantity, r.text, r.unit, r.to)
	return reply{Converted: c}, err
}

func askForm(ctx context.Context, r *request) (reply, error) {
	c, err := calc.Find(catalogue.Calculations, r.calculation)
	if err != nil {
		return reply{}, err
	}
	text, err := form(ctx, c, r.options)
	return reply{Form: text}, err
}

// askFits answers with the picks that go with what is typed.
func askFits(ctx context.Context, r *request) (reply, error) {
	fits, err := r.engine.fits(ctx, r.calculation, r.typed(), r.options)
	return reply{Fits: fits}, err
}

// askSchemas answers with the names of the schemas, or with the one named.
func askSchemas(_ context.Context, r *request) (reply, error) {
	if r.document == "" {
		return reply{Documents: Schemas()}, nil
	}
	text, err := Schema(r.document)
	return reply{Document: text}, err
}

// askRules answers with the rules in force, the overlays among them. A text is
// checked besides: this ask was for that alone before check-overlay was there.
func askRules(ctx context.Context, r *request) (reply, error) {
	over := Engine{book: r.options.Rules}
	rules, err := over.InForce(r.calculation, r.table)
	out := reply{InForce: rules}
	if err == nil && r.text != "" {
		out.Rules = over.CheckRules(ctx, []byte(r.text), r.file)
	}
	return out, err
}

// askCheckOverlay answers with what a rule file would do, over the overlays.
func askCheckOverlay(ctx context.Context, r *request) (reply, error) {
	if r.text == "" {
		return reply{}, problem.List{{Where: "/text", What: "there is no text", Allowed: "the text of a rule file", Kind: problem.Missing}}.Err()
	}
	over := Engine{book: r.options.Rules}
	return reply{Rules: over.CheckRules(ctx, []byte(r.text), r.file)}, nil
}

// askWarm reads beforehand what the first requests would wait for.
func askWarm(ctx context.Context, r *request) (reply, error) {
	over := Engine{book: r.options.Rules}
	return reply{Version: Version}, over.Warm(ctx)
}

// askChecks answers with published values beside what is computed.
func askChecks(ctx context.Context, r *request) (reply, error) {
	if len(r.checks) == 0 {
		return reply{}, problem.List{{Where: "/checks", What: "there is no published value", Allowed: "rows as in testdata/published", Kind: problem.Missing}}.Err()
	}
	list, err := computed(ctx, r.checks)
	return reply{Checks: list}, err
}
