package mount

import (
	"strings"
	"testing"

	"example.org/driveline/marinecalc/internal/parttest"
	"example.org/driveline/marinecalc/quantity"
)

// Travel that nobody looked at is never called enough where a mount is moved by
// it; where it is given, or nothing is moved that way, it is.
func TestTravelNotGiven(t *testing.T) {
	given := func(m *Mount) { m.TravelUp, m.TravelDown, m.SidewaysSlack = 5e-3, 5e-3, 5e-3 }
	for _, c := range []struct {
		name string
		set  func(*MovesInput)
		want string
	}{
		{"none is given", func(*MovesInput) {}, NotGiven},
		{"all are given", func(in *MovesInput) {
			for i := range in.Mounts {
				given(&in.Mounts[i])
			}
		}, Reached},
		{"one stud is not", func(in *MovesInput) {
			for i := range in.Mounts {
				given(&in.Mounts[i])
			}
			in.Mounts[1].TravelUp = quantity.Length(nan)
		}, NotGiven},
		{"only the way down is not, and all go up", func(in *MovesInput) {
			for i := range in.Mounts {
				given(&in.Mounts[i])
				in.Mounts[i].TravelDown = quantity.Length(nan)
			}
		}, Reached},
		{"nothing is to be moved", func(in *MovesInput) { in.GapVertical, in.GapHorizontal = 0, 0 }, Reached},
	} {
		in := MovesInput{Mounts: fourMounts(), CouplingDiameter: 0.1, GapVertical: 1e-4, OffsetVertical: quantity.Length(nan), OffsetHorizontal: quantity.Length(nan)}
		c.set(&in)
		if out := corrected(t, in); out.Reach != c.want {
			t.Errorf("%s: %q, want %q", c.name, out.Reach, c.want)
		}
	}
}

func TestSeizedMountsStay(t *testing.T) {
	in := MovesInput{Mounts: fourMounts(), CouplingDiameter: 0.1, GapVertical: 1e-4, GapHorizontal: -2e-4, OffsetVertical: 1e-3, OffsetHorizontal: -1e-3}
	for i := range in.Mounts {
		in.Mounts[i].TravelUp, in.Mounts[i].TravelDown, in.Mounts[i].SidewaysSlack = 0, 0, 0
	}
	out := corrected(t, in)
	if out.LargestMove != 0 || out.Reach != ShortAllWays || out.GapVerticalAfter != in.GapVertical || out.OffsetHorizontalAfter != in.OffsetHorizontal {
		t.Errorf("%+v", out)
	}
}

func TestWantedGapAndFeet(t *testing.T) {
	in := MovesInput{Mounts: fourMounts(), CouplingDiameter: 0.1, MeanGap: 1e-3, GapVertical: 1e-4, WantedGapVertical: -1e-4}
	in.Mounts[1].FootGap, in.Mounts[3].FootGap = 2e-5, 8e-5
	out := corrected(t, in)
	parttest.Near(t, "gap at 6", out.GapBottomAfter, 1.05e-3, 1e-12)
	parttest.Near(t, "gap at 12", out.GapTopAfter, 0.95e-3, 1e-12)
	parttest.Near(t, "soft foot", out.SoftFoot, 8e-5, 0)
	in.DroopGapTaken = 4e-5 // the shaft end still hangs when it is read again
	out = corrected(t, in)
	parttest.Near(t, "gap at 6, drooping", out.GapBottomAfter, 1.07e-3, 1e-12)
	parttest.Near(t, "gap left, the droop apart", out.GapVerticalAfter, -1e-4, 1e-12)
	if out.SoftFootAt != "aft starboard" {
		t.Errorf("%q", out.SoftFootAt)
	}
}

func TestTurningInWords(t *testing.T) {
	for flats, want := range map[float64]string{
		0: "leave", 0.1: "leave", 0.13: "¼ flat up", -0.5: "½ flat down", 1: "1 flat up", 1.2: "1¼ flats up", -6: "1 turn down",
		7.5: "1 turn 1½ flats up", -12.75: "2 turns ¾ flat down", 5.9: "1 turn up", nan: "",
	} {
		if got := (Turning{flats}).String(); got != want {
			t.Errorf("%g flats: %q, want %q", flats, got, want)
		}
	}
}

func TestMovesRefuses(t *testing.T) {
	good := func() MovesInput { return MovesInput{Mounts: fourMounts(), CouplingDiameter: 0.1, GapVertical: 1e-4} }
	for _, k := range []struct {
		name   string
		spoil  func(*MovesInput)
		places []string
		says   string
	}{
		{"nothing", func(in *MovesInput) { *in = MovesInput{} }, []string{"/couplingDiameter", "/mounts"}, "0 mounts"},
		{"one mount", func(in *MovesInput) { in.Mounts = in.Mounts[:1] }, []string{"/mounts"}, "1 mounts"},
		{"nine mounts", func(in *MovesInput) { in.Mounts = make([]Mount, 9) }, []string{"/mounts"}, "9 mounts"},
		{"all abreast", func(in *MovesInput) { in.Mounts = []Mount{at("port", 0.5, -0.3), at("starboard", 0.52, 0.3)} }, []string{"/mounts"}, "within 20 mm"},
		{"a face that steep", func(in *MovesInput) { in.GapVertical = 0.006 }, []string{"/gapVertical"}, "6 mm is over 5 %"},
		{"millimetres as metres", func(in *MovesInput) { in.OffsetHorizontal = 0.4 }, []string{"/offsetHorizontal"}, "400 mm"},
		{"NaN", func(in *MovesInput) {
			in.GapHorizontal, in.Mounts[1].Forward = quantity.Length(nan), quantity.Length(nan)
		}, []string{"/gapHorizontal", "/mounts/1/forward"}, "NaN"},
		{"no name, wild thread", func(in *MovesInput) { in.Mounts[0].Name, in.Mounts[2].ThreadPitch = "", 1.5 }, []string{"/mounts/0/name", "/mounts/2/threadPitch"}, "1.5"},
		{"a stud that leans, nobody knows how stiff", func(in *MovesInput) { in.Mounts[1].Inclination = 0.3 }, []string{"/sidewaysRatio"}, "0.01 to 10"},
		{"a place to turn about", func(in *MovesInput) { in.TurnAbout = "bow" }, []string{"/turnAbout"}, "bow"},
		{"travel less than none", func(in *MovesInput) { in.Mounts[3].TravelUp = -0.01 }, []string{"/mounts/3/travelUp"}, "-0.01"},
	} {
		in := good()
		k.spoil(&in)
		_, err := Moves(in)
		parttest.RefusedAt(t, err, k.places...)
		if err == nil || !strings.Contains(err.Error(), k.says) {
			t.Errorf("%s: %v, want %q", k.name, err, k.says)
		}
	}
}
