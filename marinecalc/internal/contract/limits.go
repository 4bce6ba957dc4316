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

	// maxWeight caps what a text becomes once it is read: a WASM host of 256 MiB
	// holds no more. A value counts one, an object objectWeight, which is what a
	// map weighs against a number. The largest reading weighs about 160,
	// and writes some 55 names.
	maxWeight    = 200 * MaxReadings
	objectWeight = 5
	maxNames     = 80 * MaxReadings

	maxDepth  = 24
	maxDigits = 32
)
