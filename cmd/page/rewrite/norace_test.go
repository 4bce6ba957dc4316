//go:build !race

package rewrite

const underRace = false
