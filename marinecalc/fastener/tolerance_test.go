package fastener

import (
	"math"
	"testing"

	"example.org/driveline/marinecalc/internal/parttest"
)

// Limits of 6g in 6H as ISO 965-2 prints them and of 2A in 2B as ASME B1.1
// does (both from memory). The tables round to preferred numbers and to four
// digits of an inch: no single row is off by more than that, and over all rows
// what the rounding takes and gives cancels.
func TestTolerancesOverTheTables(t *testing.T) {
	for form, table := range map[ThreadForm]struct {
		unit, each, mean float64
		rows             [][6]float64 // diameter, pitch, major, pitch, minor of the hole, its pitch
	}{
		Metric: {1e-3, 0.025, 0.002, [][6]float64{
			{3, 0.5, 2.874, 2.580, 2.599, 2.775}, {4, 0.7, 3.838, 3.433, 3.422, 3.663}, {5, 0.8, 4.826, 4.361, 4.334, 4.605},
			{6, 1, 5.794, 5.212, 5.153, 5.500}, {8, 1.25, 7.760, 7.042, 6.912, 7.348}, {10, 1.5, 9.732, 8.862, 8.676, 9.206},
			{12, 1.75, 11.701, 10.679, 10.441, 11.063}, {16, 2, 15.682, 14.503, 14.210, 14.913}, {20, 2.5, 19.623, 18.164, 17.744, 18.600},
			{24, 3, 23.577, 21.803, 21.252, 22.316}, {30, 3.5, 29.522, 27.462, 26.771, 28.007}, {36, 4, 35.465, 33.118, 32.270, 33.702},
		}},
		Inch: {0.0254, 0.0008, 0.00005, [][6]float64{
			{0.25, 20, 0.2408, 0.2127, 0.207, 0.2224}, {0.3125, 18, 0.3026, 0.2712, 0.265, 0.2817}, {0.375, 16, 0.3643, 0.3287, 0.321, 0.3401},
			{0.4375, 14, 0.4258, 0.3850, 0.376, 0.3972}, {0.5, 13, 0.4876, 0.4435, 0.434, 0.4565}, {0.625, 11, 0.6113, 0.5589, 0.546, 0.5732},
			{0.75, 10, 0.7353, 0.6773, 0.663, 0.6927}, {1, 8, 0.9830, 0.9100, 0.890, 0.9276}, {0.19, 24, 0.1818, 0.1586, 0.1555, 0.1672},
			{0.19, 32, 0.1831, 0.1658, 0.1641, 0.1736}, {0.164, 32, 0.1571, 0.1399, 0.1389, 0.1475}, {0.138, 32, 0.1312, 0.1141, 0.1140, 0.1214},
			{0.112, 40, 0.1061, 0.0925, 0.0939, 0.0991},
		}},
	} {
		var mean [4]float64
		for _, row := range table.rows {
			pitch := row[1]
			if form == Inch {
				pitch = 1 / row[1]
			}
			got := tolerances(row[0]*table.unit, pitch*table.unit, form)
			for i, v := range []float64{got.major, got.pitch, got.minor, got.tappedPitch} {
				parttest.Near(t, string(form), v/table.unit, row[2+i], table.each)
				mean[i] += (v/table.unit - row[2+i]) / float64(len(table.rows))
			}
		}
		for i, v := range mean {
			if i != 2 || form == Metric { // the inch table has three digits of the hole's minor diameter
				parttest.Near(t, string(form)+" over all rows", v, 0, 3*table.mean)
			}
		}
	}
}

// The formulas of ISO 965-1 (from memory) worked out by hand where their powers
// are whole numbers, and by logarithms where they are not; in µm.
func TestMetricTolerancesByHand(t *testing.T) {
	middle := math.Sqrt(45 * 90) // of the range over 45 up to 90 mm
	near := func(name string, d, got, want float64) {
		t.Helper()
		parttest.Near(t, name, got*1e6, want, 1e-3)
	}
	// Pitch 8: 8^(2/3) is 4, √8 is 2.828427, es −103.
	l := tolerances(0.080, 0.008, Metric)
	near("major at a pitch of 8", 80, 0.080-l.major, 103+720-3.15/2.8284271247)
	six := 90 * math.Exp(0.4*math.Log(8)+0.1*math.Log(middle))
	near("pitch at a pitch of 8", 80, 0.080-0.649519*0.008-l.pitch, 103+six)
	near("tapped pitch at a pitch of 8", 80, l.tappedPitch-0.080+0.649519*0.008, 1.32*six)
	near("minor at a pitch of 8", 80, l.minor-0.080+1.082532*0.008, 230*math.Exp(0.7*math.Log(8)))
	// Pitch 1: every power is 1. The fine pitches begin below it.
	l = tolerances(0.006, 0.001, Metric)
	near("major at a pitch of 1", 6, 0.006-l.major, 26+180-3.15)
	near("minor at a pitch of 1", 6, l.minor-0.006+1.082532*0.001, 230)
	l = tolerances(0.003, 0.0005, Metric)
	near("minor at a pitch of 0.5", 3, l.minor-0.003+1.082532*0.0005, 216.5-190*math.Exp(-1.22*math.Ln2))
	near("major at a pitch of 0.5", 3, 0.003-l.major, 20.5+180*math.Exp(-2./3*math.Ln2)-3.15*math.Sqrt2)
}

// ISO 965-1 lays the diameters in ranges and takes the geometric mean of each;
// the upper end belongs to the range.
func TestRangesOfDiameters(t *testing.T) {
	ends := []float64{0.99, 1.4, 2.8, 5.6, 11.2, 22.4, 45, 90, 180, 355}
	for i := 1; i < len(ends); i++ {
		want := math.Exp((math.Log(ends[i-1]) + math.Log(ends[i])) / 2)
		for _, d := range []float64{ends[i-1] * 1.0001, ends[i] * 0.9999, ends[i]} {
			parttest.Within(t, "mean", rangeMean(d), want, 1e-9)
		}
	}
	if rangeMean(400) != 400 {
		t.Errorf("past the last range: %g", rangeMean(400))
	}
}

// The formulas of ASME B1.1 (from memory) by hand, in inches.
func TestInchTolerancesByHand(t *testing.T) {
	near := func(name string, got, want float64) {
		t.Helper()
		parttest.Near(t, name, got/0.0254, want, 2e-7)
	}
	// 1-8: ∛1 and √1 are 1, (1/8)^(2/3) is a quarter.
	l := tolerances(0.0254, 0.0254/8, Inch)
	pitch := 0.0015 + 0.0015 + 0.00375
	near("major of 1-8", l.major, 1-0.3*pitch-0.015)
	near("pitch of 1-8", l.pitch, 1-0.649519/8-1.3*pitch)
	near("tapped pitch of 1-8", l.tappedPitch, 1-0.649519/8+1.3*pitch)
	near("minor of 1-8", l.minor, 1-1.082532/8+0.03125-0.00625)
	// 4-2.5: coarser than four to the inch.
	near("minor of 4-2.5", tolerances(4*0.0254, 0.4*0.0254, Inch).minor, 4-1.082532*0.4+0.06)
	near("minor of 3-3.8", tolerances(3*0.0254, 0.0254/3.8, Inch).minor, 3-1.082532/3.8+0.15/3.8)
	// 64-fold: (1/64)^(2/3) is a sixteenth.
	near("minor of 0.1-64", tolerances(0.1*0.0254, 0.0254/64, Inch).minor, 0.1-1.082532/64+0.003125+0.0046875-0.002)
	// 12-28: the first of the two is the greater by a hair; a quarter inch takes it alone.
	near("minor of 12-28", tolerances(0.216*0.0254, 0.0254/28, Inch).minor, 0.216-1.082532/28+0.25/28-0.4/784)
	near("minor of 1/4-64", tolerances(0.25*0.0254, 0.0254/64, Inch).minor, 0.25-1.082532/64+0.25/64-0.4/4096)
	near("minor of 0.26-64", tolerances(0.26*0.0254, 0.0254/64, Inch).minor, 0.26-1.082532/64+0.25/64-0.4/4096)
}
