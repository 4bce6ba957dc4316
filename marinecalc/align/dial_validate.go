// What dials cannot have shown.

package align

import (
	"fmt"
	"math"

	"example.org/driveline/marinecalc/problem"
	"example.org/driveline/marinecalc/quantity"
)

// mostDialRadius is the most that the face dial's circle has of the flange's
// diameter: half of it, and what a rule misreads.
const mostDialRadius = 0.55

// usable collects everything that makes the readings unfit to work with.
func (in *DialInput) usable(as *CouplingInput, gap, rim points) problem.List {
	var bad problem.List
	word := func(where, got, what string, allowed ...string) {
		for _, w := range allowed {
			if got == w {
				return
			}
		}
		bad.Add(where, fmt.Sprintf("%q %s", got, what), allowed[0]+", "+allowed[1], "")
	}
	if d := float64(in.CouplingDiameter); !problem.Within(d, 0.03, 0.8) {
		bad.Add("/couplingDiameter", fmt.Sprintf("a coupling diameter of %.4g m is out of range", d), "30 mm to 800 mm", "")
	}
	word("/couplingKind", string(in.CouplingKind), "is not a kind of coupling", string(Rigid), string(Flexible))
	word("/dialOn", string(in.DialOn), "is no place for the dial", string(OnShaft), string(OnEngine), "")
	word("/faceTouched", string(in.FaceTouched), "is no side of a flange", string(Front), string(Back), "")
	word("/countedFrom", string(in.CountedFrom), "is no way to count", string(LookingForward), string(LookingAft), "")
	if in.Swept == OtherTurned {
		bad.Add("/swept", "with only the flange turned that the dial touches it shows that flange's run-out and nothing of the alignment", "both flanges together, or the one with the dial", "turn both by the same angle, bolt hole by bolt hole")
	} else {
		word("/swept", string(in.Swept), "cannot be what was turned", string(SweptTogether), string(CarrierTurned))
	}
	as.checkDroop(&bad)
	s := setup{pilot: in.Pilot, depth: in.PilotDepth, centred: in.ShaftCentred, free: in.FreeLength, hidden: in.HiddenOffset}
	s.check(&bad)
	checkRunOut(&bad, "knownFaceRunOut", in.KnownFaceRunOut)
	checkRunOut(&bad, "knownRimRunOut", in.KnownRimRunOut)
	lengths := [...]struct {
		name    string
		v       quantity.Length
		low, up float64
		allowed string
	}{
		{"dialRadius", in.DialRadius, 0.01, 0.6, "10 mm to 600 mm"}, {"facesApart", in.FacesApart, -gapBelowNone, 0.3, "0 mm to 300 mm"},
		{"barSagRim", in.BarSagRim, -0.01, 0.01, "-10 mm to 10 mm"}, {"barSagFace", in.BarSagFace, -0.01, 0.01, "-10 mm to 10 mm"},
		{"rimReadAft", in.RimReadAft, -0.3, 0.3, "-300 mm to 300 mm"},
		{"standingFaceUp", in.StandingFaceUp, -0.01, 0.01, "-10 mm to 10 mm"}, {"standingFaceStarboard", in.StandingFaceStarboard, -0.01, 0.01, "-10 mm to 10 mm"},
		{"standingRimUp", in.StandingRimUp, -0.01, 0.01, "-10 mm to 10 mm"}, {"standingRimStarboard", in.StandingRimStarboard, -0.01, 0.01, "-10 mm to 10 mm"},
	}
	for i := range lengths {
		l := &lengths[i]
		if v := float64(l.v); !problem.Within(v, l.low, l.up) && !(math.IsNaN(v) && (l.name == "barSagRim" || l.name == "barSagFace")) {
			bad.Add("/"+l.name, fmt.Sprintf("%.4g mm is out of range", 1000*v), l.allowed, "")
		}
	}
	if in.CouplingDiameter > 0 && in.DialRadius > mostDialRadius*in.CouplingDiameter {
		bad.Add("/dialRadius", fmt.Sprintf("a circle of %.4g mm radius lies outside a flange of %.4g mm", 1000*float64(in.DialRadius), 1000*float64(in.CouplingDiameter)),
			"no more than half the coupling's diameter", "measure from the shaft's middle to where the face dial touches, and the flange across")
	}
	if len(in.DialReadings) > most {
		bad.Add(faceSeries.list, "there are too many readings", fmt.Sprintf("%d to %d", fewest, most), "")
		return bad
	}
	gap.check(&bad, &faceSeries, -mostDial)
	if len(rim) > 0 && len(rim) < len(gap) {
		for i := range in.DialReadings {
			if math.IsNaN(float64(in.DialReadings[i].Rim)) {
				bad.Add(fmt.Sprintf("%s/%d/rim", rimSeries.list, i), "the rim was read at other places and not here", rimSeries.allowed, "read face and rim at each place, or leave the rim out everywhere")
			}
		}
	} else if len(rim) > 0 {
		rim.check(&bad, &rimSeries, -mostDial)
	}
	return bad
}
