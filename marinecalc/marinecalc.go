package marinecalc

import (
	"context"
)

// Run is [Engine.Run] by the standard rules, without a context.
func Run(id string, input []byte, o Options) (*Sheet, error) {
	return standard.Run(context.Background(), id, input, o)
}

// Check is [Engine.Check] by the standard rules, without a context.
func Check(b *Boat, o Options) (*Survey, error) {
	return standard.Check(context.Background(), b, o)
}

// CheckToPrint is [Engine.CheckToPrint] by the standard rules, without a context.
func CheckToPrint(b *Boat, o Options) (*Survey, error) {
	return standard.CheckToPrint(context.Background(), b, o)
}

// Compare is [Engine.Compare] by the standard rules, without a context.
func Compare(b *Boat, before, after string, o Options) (*Comparison, error) {
	return standard.Compare(context.Background(), b, before, after, o)
}

// Call is [Engine.Call] by the standard rules, without a context.
func Call(request []byte) []byte { return standard.Call(context.Background(), request) }

// CheckRules is [Engine.CheckRules] over the standard rules.
func CheckRules(text []byte, name string) *RulesReport {
	return standard.CheckRules(context.Background(), text, name)
}
