//go:build race

package marinecalc_test

const underRace = true
