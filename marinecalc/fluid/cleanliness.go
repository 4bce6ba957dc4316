// The ISO 4406 code of a particle count: Cleanliness.

package fluid

import (
	"math"
	"strconv"

	"example.org/driveline/marinecalc/problem"
	"example.org/driveline/marinecalc/quantity"
)

// Step is one step of a scale of cleanliness: a code, and the most particles
// in a millilitre to which it goes. A count on the limit has this code.
type Step struct {
	Code int
	Most float64 // per mL
}

// CleanlinessInput are the particles counted in a sample. A count or code that is NaN
// is not given: a microscope gives no count of the smallest.
type CleanlinessInput struct {
	Count4        float64         `unset:"NaN"` // of 4 µm(c) and larger; a mean behind a count need not be whole
	Count6        float64         `unset:"NaN"` // of 6 µm(c) and larger (5 µm by microscope), at most Count4
	Count14       float64         `unset:"NaN"` // of 14 µm(c) and larger (15 µm by microscope), at most Count6
	SampleVolume  quantity.Volume // to which the counts are reported, 0.1 mL to 10 L
	CountedVolume quantity.Volume // in which they were really counted, up to 10 L; 0: not known, and taken as SampleVolume
	WantedCode4   float64         `unset:"NaN"` // the maker's, to hold the results against; not used here
	WantedCode6   float64         `unset:"NaN"`
	WantedCode14  float64         `unset:"NaN"`
}

// CleanlinessResult is the code of a sample. A number is NaN where nothing was
// counted.
type CleanlinessResult struct {
	Code          string // such as "19/16/10"
	PerMillilitre string // larger than 4, 6 and 14 µm
	Code4         quantity.Ratio
	Code6         quantity.Ratio
	Code14        quantity.Ratio
	Doubt         string // where too few particles were counted, or it is not known how many
}

// The codes of Doubt, for which the schema of fluid-cleanliness has the words.
const (
	tooFew     = "too-few"   // a code rests on too few particles
	notCounted = "not-known" // a count may have been multiplied up from few
)

// few is how many particles must be counted for a code without a mark; of
// up to a hundred times as many it matters in how much fluid they were counted.
const few = 20

// Cleanliness gives the code of a sample by a scale, which is that of ISO 4406
// table 1: the code of each size is that of the first step whose limit the
// concentration does not pass. Where fewer than 20 particles were counted the
// standard marks the code with ≥ (ISO 4406:2021, 4.1).
//
// The scale is ordered from the lowest code. The error is a *problem.Error.
func Cleanliness(in CleanlinessInput, scale []Step) (CleanlinessResult, error) {
	if err := in.validate(); err != nil {
		return CleanlinessResult{}, err
	}
	out := CleanlinessResult{}
	counted := float64(in.SampleVolume)
	if in.CountedVolume > 0 {
		counted = float64(in.CountedVolume)
	}
	var text, per []byte
	for i, c := range [...]struct {
		where string
		n     float64
		to    *quantity.Ratio
	}{{"/count4", in.Count4, &out.Code4}, {"/count6", in.Count6, &out.Code6}, {"/count14", in.Count14, &out.Code14}} {
		if i > 0 {
			text, per = append(text, '/'), append(per, " / "...)
		}
		*c.to = quantity.Ratio(math.NaN())
		if math.IsNaN(c.n) {
			text, per = append(text, '-'), append(per, '-')
			continue
		}
		concentration := c.n / (float64(in.SampleVolume) * 1e6)
		code := codeOf(concentration, scale)
		if code < 0 {
			return CleanlinessResult{}, problem.List{{Where: c.where, What: "there are more particles in a millilitre than the scale goes to", Allowed: "what a fluid can carry", Hint: "is the volume of the sample right?"}}.Err()
		}
		really := c.n * counted / float64(in.SampleVolume)
		switch {
		case really < few*(1-1e-9):
			text, out.Doubt = append(text, "≥"...), tooFew
		case in.CountedVolume == 0 && really < 100*few && out.Doubt == "":
			out.Doubt = notCounted
		}
		*c.to = quantity.Ratio(code)
		text, per = strconv.AppendInt(text, int64(code), 10), appendNumber(per, concentration)
	}
	out.Code, out.PerMillilitre = string(text), string(per)
	return out, nil
}

func (in *CleanlinessInput) validate() error {
	var bad problem.List
	volume := bound{"/sampleVolume", "volume of the sample", float64(in.SampleVolume), 1e-7, 0.01, "0.1 mL to 10 L", false}
	volume.add(&bad)
	volume = bound{"/countedVolume", "volume that was counted", float64(in.CountedVolume), 1e-8, 0.01, "0.01 mL to 10 L", true}
	volume.add(&bad)
	counted, larger := 0, math.NaN()
	for _, c := range [...]struct {
		where string
		n     float64
	}{{"/count14", in.Count14}, {"/count6", in.Count6}, {"/count4", in.Count4}} {
		if math.IsNaN(c.n) {
			continue
		}
		counted++
		if c.n < 0 {
			bad.Add(c.where, "a count is below nothing", "0 or more", "")
		}
		if c.n < larger {
			bad.Add(c.where, "there are fewer of these than of the larger ones", "each count holds all larger particles too", "add up the classes if the report lists them one by one")
		}
		larger = c.n
	}
	if counted == 0 {
		bad.Add("/count6", "no particles were counted", "a count of at least one size", "")
	}
	return bad.Err()
}

// codeOf finds the step of a concentration; a hair over the limit, from the
// division, is on it.
func codeOf(perMillilitre float64, scale []Step) int {
	for _, s := range scale {
		if perMillilitre <= s.Most*(1+1e-12) && !math.IsNaN(perMillilitre) {
			return s.Code
		}
	}
	return -1
}
