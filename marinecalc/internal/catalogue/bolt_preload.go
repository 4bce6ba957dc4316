package catalogue

import (
	"example.org/driveline/marinecalc/fastener"
	"example.org/driveline/marinecalc/internal/calc"
	"example.org/driveline/marinecalc/internal/drawing/joints"
)

// boltPreload works the setting out by the figures as they are; in the trials
// nut, friction and bolt are as they may truly be, and the setting stays. Were
// it worked out anew in each trial, every nut would get the wrench that suits it.
func boltPreload(*calc.Session) calc.PerRun[fastener.PreloadInput, fastener.PreloadResult] {
	var set *fastener.Setting
	return calc.PerRun[fastener.PreloadInput, fastener.PreloadResult]{Compute: func(in fastener.PreloadInput) (fastener.PreloadResult, error) {
		if set != nil {
			return fastener.PreloadAt(in, *set)
		}
		out, err := fastener.Preload(in)
		if err == nil {
			first := out.Setting()
			set = &first
		}
		return out, err
	}, Draw: joints.BoltPreload}
}
