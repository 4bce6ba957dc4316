package rewrite

import "testing"

// A store takes what is added to the stack pointer into itself only where the
// address is its own: not where the value stored is what was worked out there,
// where something else takes the address, or where a jump stands between.
func TestStoreOnStack(t *testing.T) {
	address := []instruction{on(localGet, sp), constant(i32Const, 40), bare(i32Add)}
	store := access(i64Store, 8)
	for name, c := range map[string]struct {
		between []instruction
		folded  bool
	}{
		"a constant":           {[]instruction{constant(i64Const, 7), store}, true},
		"a sum":                {[]instruction{on(localGet, 7), constant(i64Const, 7), bare(i64Add), store}, true},
		"a load":               {[]instruction{on(localGet, sp), access(i64Load, 16), store}, true},
		"another store before": {[]instruction{on(localGet, 7), constant(i64Const, 1), store, constant(i64Const, 7), store}, true},
		"kept in a local":      {[]instruction{on(localSet, 3), on(localGet, 3), constant(i64Const, 7), store}, false},
		"added to":             {[]instruction{constant(i32Const, 8), bare(i32Add), constant(i64Const, 7), store}, false},
		"the value itself":     {[]instruction{bare(i64ExtendI32U), access(i64Store, 0)}, false},
		"a jump between":       {[]instruction{constant(i64Const, 7), on(br, 0), store}, false},
		"too far":              {[]instruction{constant(i64Const, 7), access(i64Store, 0x7fffffff)}, false},
	} {
		var b basicBlock
		for _, in := range append(append([]instruction{}, address...), c.between...) {
			b.add(in)
		}
		n := len(b)
		b.storeOnStack()
		if folded := len(b) == n-2; folded != c.folded || !folded && len(b) != n {
			t.Errorf("%s: %d of %d instructions are left", name, len(b), n)
		}
		if last := b[len(b)-1]; c.folded && string(last.code) != string(access(i64Store, 48).code) {
			t.Errorf("%s: the store is % x", name, last.code)
		}
	}
}
