package verdict

import (
	"context"
	"errors"
	"math"
	"slices"
	"testing"

	"example.org/driveline/marinecalc/internal/binding"
	"example.org/driveline/marinecalc/internal/calc/conflict"
	"example.org/driveline/marinecalc/internal/calc/inputs"
	"example.org/driveline/marinecalc/internal/calc/results"
	"example.org/driveline/marinecalc/internal/spread"
	"example.org/driveline/marinecalc/rules"
)

// What trials leave of a limit is the same to the last digit whether they are run
// for it alone or for another beside it, which is refused in some of them or not
// told in some; and the places stand as before.
func TestTrialsAtACornerTellOfEachLimitAsAlone(t *testing.T) {
	x, y, value, other := 1.0, 2.0, 0.0, 0.0
	refuse := math.Inf(1)
	in := &inputs.Inputs{Form: &binding.Form{}, Request: &inputs.Request{Trials: 1024, Seed: 1, Ctx: context.Background()}, Call: &binding.Call{Run: func() error {
		if value, other = x*y, math.Sqrt(y-1.9); x > refuse {
			return errors.New("too much")
		}
		return nil
	}}}
	r := Judgement{Finder: conflict.Finder{Run: &results.Run{In: in}}}
	factors := []spread.Factor{{Estimate: 1, Low: 0.9, High: 1.1, Shape: spread.Rectangular}, {Estimate: 2, Low: 1.8, High: 2.2, Shape: spread.Normal}}
	places := []*float64{&x, &y}
	one, beside := &held{Limit: &rules.Limit{}, value: &value}, &held{Limit: &rules.Limit{}, value: &other}
	for _, refuse = range []float64{math.Inf(1), 1.05} {
		tried := func(limits []*held, bounds ...spread.Limit) spread.Range {
			out, err := r.tryHere(new(spread.Workspace), factors, places, 256, limits, bounds)
			if err != nil || x != 1 || y != 2 || (out.Failed > 0) != (refuse < 2) {
				t.Fatal(err, x, y, out.Failed)
			}
			return out.Results[0]
		}
		alone, together := tried([]*held{one}, spread.AtMost(2.1)), tried([]*held{one, beside}, spread.AtMost(2.1), spread.AtLeast(0.2))
		a, b := []float64{alone.Mean, alone.StdDev, alone.Low, alone.High, alone.ProbabilityAbove(0)}, []float64{together.Mean, together.StdDev, together.Low, together.High, together.ProbabilityAbove(0)}
		if !slices.Equal(a, b) || !(a[4] > 0 && a[4] < 1) {
			t.Errorf("alone %v, beside another %v", a, b)
		}
	}
}

// Where one trial in forty lies past a limit, which is what words ask at the most,
// fewer than one run of 128 in 10 000 has more than one in ten there (binomial).
func TestLikelyOpenIsSeldomWrong(t *testing.T) {
	past, each := 0.0, math.Pow(1-spread.Lost, clearTrials)
	for k := range clearTrials + 1 {
		if likelyOpen(1 - float64(k)/clearTrials) {
			past += each
		}
		each *= float64(clearTrials-k) / float64(k+1) * spread.Lost / (1 - spread.Lost)
	}
	if !(past > 0 && past < 1e-4) || likelyOpen(spread.Sure) || likelyOpen(spread.Lost) || !likelyOpen(0.5) {
		t.Errorf("off by chance %.1g of the times", past)
	}
}
