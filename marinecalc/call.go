package marinecalc

import (
	"bytes"
	"context"
	"encoding/json"
	"errors"
	"fmt"

	"example.org/driveline/marinecalc/problem"
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

// asWritten is a member of a request, which was decoded before.
func asWritten(text []byte, member string) json.RawMessage {
	var whole map[string]json.RawMessage
	_ = json.Unmarshal(text, &whole)
	return whole[member]
}

func (e *Engine) answer(ctx context.Context, text []byte) (reply, error) {
	r, problems := e.readRequest(text, asks)
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
	err = stopped(ctx, err)
	if !errors.Is(err, ErrCancelled) {
		e.keeper().Keep(r.kept)
	}
	return out, err
}
