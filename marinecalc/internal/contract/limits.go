package contract

// What a JSON text may be at the most, at every entry point alike: a boat file, a
// request that holds one, a table of readings in a request. The validator's
// cost grows with the square of a number's digits, and deep nesting would
// exhaust the stack of a WASM host, so both are refused before it sees them.
const (
	MaxReadings  = 5000    // dated readings of a boat file; boat.schema.json says the same
	readingBytes = 2 << 10 // a reading with every member written out takes 1.8 kB
	restBytes    = 2 << 20 // for all else in a request: the rest of the boat, an input, rule data

	// MaxBytes caps any one text: the largest boat file with what goes with it.
	// A table of readings may be as long as the request that holds it.
	MaxBytes = MaxReadings*readingBytes + restBytes

	maxDepth  = 24
	maxDigits = 32
)
