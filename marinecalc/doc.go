// Package marinecalc is the door to the calculations of a boat's line from
// engine to propeller. It reads the boat and the typed input, holds them
// against their schemas, runs a calculation with its ranges, judges the
// results by rule data, and returns one sheet.
//
// The arithmetic itself is in the packages below this one, each a plain typed
// function that can be called without any of this.
package marinecalc

// Version is marinecalc's own version, not that of its rule data.
const Version = "0.1.0"

// DefaultTrials is how many Monte Carlo trials a calculation runs when
// nothing else is asked for.
const DefaultTrials = 4096
