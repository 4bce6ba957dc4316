package catalogue

import (
	"slices"

	"example.org/driveline/marinecalc/internal/calc"
	"example.org/driveline/marinecalc/internal/drawing/mounts"
	"example.org/driveline/marinecalc/mount"
)

// swings are the results of mount-load that the natural modes give, and they alone.
var swings = []string{
	"modes", "lowestFrequency", "highestFrequency", "rollInertia", "pitchInertia", "yawInertia",
	"firingIdle", "firingFull", "passedIdle", "passedFull", "isolatedFull", "bouncePassedIdle", "bouncePassedFull",
}

// mountLoad has two parts, of which most trials at the ends of brackets look at one.
func mountLoad(*calc.Session) calc.PerRun[mount.LoadInput, mount.LoadResult] {
	type part = calc.Part[mount.LoadInput, mount.LoadResult]
	return calc.PerRun[mount.LoadInput, mount.LoadResult]{Compute: mount.Load, Draw: mounts.MountLoad, Parts: []part{
		{Gives: func(result string) bool { return !slices.Contains(swings, result) }, Compute: mount.Stand},
		{Gives: func(result string) bool { return slices.Contains(swings, result) }, Compute: mount.Swing},
	}}
}
