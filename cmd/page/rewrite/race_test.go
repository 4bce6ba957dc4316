//go:build race

package rewrite

const underRace = true
