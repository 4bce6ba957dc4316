// Which source a measured frequency comes from: Source.

package vibration

import (
	"math"

	"example.org/driveline/marinecalc/quantity"
)

// NotListed is the name of the source that is none of those listed.
const NotListed = "not-listed"

// The codes of Parting: the run that parts the two likeliest sources, the least
// work first, or what there is in its place.
const (
	ByNeutral  = "neutral"   // the same engine speed in neutral
	BySpeed    = "speed"     // another engine speed
	ByAstern   = "astern"    // the same engine speed astern
	ByNoRun    = "no-run"    // no run parts them: look at both
	BySureLook = "look"      // one leads: look, to make sure
	NoneFits   = "none-fits" // none of those listed makes this frequency
)

// Source works out the frequencies of every source and, where a frequency was
// measured, how likely each source is to be it.
//
// The likelihood of a source is the normal density of the difference between
// the measured frequency and its own. The variance is the sum of that of the
// measured frequency and of the engine's speed, each half-width a read as
// a/√3 (JCGM 100:2008, 4.3.7, values from memory), and for a bearing of its
// slip, read as anywhere from half to one and a half times what is given. A
// frequency of none of the sources is taken as equally likely anywhere in a
// band of a thousand hertz, whatever the sources are. All sources count the
// same beforehand. The shares are the likelihoods over their sum (Bayes).
//
// keep is the order of the rows: the zero Ranking makes a new one, the likeliest
// first, or by frequency where nothing was measured; a Ranking that comes in
// is kept to. A source that the running does not have is left out.
//
// The error is a *problem.Error of everything that cannot be.
func Source(in SourceInput, sources []Suspect, keep *Ranking) (SourceResult, error) {
	if err := validate(&in, sources); err != nil {
		return SourceResult{}, err
	}
	var m SourceResult
	m.bases(&in)
	m.Zone = zone(&in)
	m.Growth = quantity.Ratio(float64(in.VibrationVelocity) / quantity.OrNaN(float64(in.VibrationBaseline)))
	if in.VibrationVelocity == 0 {
		m.Growth = quantity.Ratio(math.NaN())
	}
	var all [Most]Candidate
	m.weigh(&in, sources, &all)
	if keep.n == 0 {
		keep.rank(&all, len(sources), in.Frequency > 0)
	}
	for i := range keep.n {
		m.Sources[i] = all[keep.order[i]]
	}
	m.say(sources, keep)
	return m, nil
}

// weigh fills in each source's frequency and share; the unknown one is last.
func (m *SourceResult) weigh(in *SourceInput, sources []Suspect, all *[Most]Candidate) {
	nan := math.NaN()
	engine := float64(m.EngineFrequency)
	measured := quantity.OrNaN(float64(in.Frequency))
	total := 0.0
	for i := range sources {
		f, slips := m.of(&sources[i], in)
		c := &all[i]
		*c = Candidate{Name: sources[i].Name, Frequency: quantity.Frequency(f), Order: quantity.Ratio(f / engine), OffBy: quantity.Frequency(measured - f), Share: quantity.Ratio(nan)}
		if math.IsNaN(f) {
			c.Name = ""
			continue
		}
		if in.Frequency == 0 {
			continue
		}
		of := float64(in.SpeedAccuracy) * f
		if sources[i].Base == "mounts" {
			of = float64(in.MountAccuracy) * f
		}
		variance := (float64(in.FrequencyAccuracy)*float64(in.FrequencyAccuracy) + of*of) / 3
		if slips {
			slip := 0.5 * float64(in.BearingSlip) * f
			variance += slip * slip / 3
		}
		z := (measured - f) * (measured - f) / variance
		density := math.Exp(-z/2) / math.Sqrt(2*math.Pi*variance)
		c.Share = quantity.Ratio(density)
		total += density
	}
	last := &all[len(sources)]
	*last = Candidate{Name: NotListed, Frequency: quantity.Frequency(nan), Order: quantity.Ratio(nan), OffBy: quantity.Frequency(nan), Share: 1.0 / band}
	total += float64(last.Share)
	if in.Frequency == 0 {
		last.Name = ""
		return
	}
	for i := range len(sources) + 1 {
		if all[i].Share /= quantity.Ratio(total); all[i].Share < least {
			all[i].Share = 0
		}
	}
}

// band, in hertz, is how wide frequencies of parts not listed lie.
const band = 1000

// least is the smallest share that is told from none.
const least = 1e-6

// rank orders the sources that are there.
func (r *Ranking) rank(all *[Most]Candidate, sources int, byShare bool) {
	before := func(a, b *Candidate) bool {
		if byShare {
			return a.Share > b.Share
		}
		return a.Frequency < b.Frequency
	}
	for i := range sources + 1 {
		if all[i].Name == "" {
			continue
		}
		at := r.n
		for at > 0 && before(&all[i], &all[r.order[at-1]]) {
			r.order[at] = r.order[at-1]
			at--
		}
		r.order[at] = i
		r.n++
	}
}

// tied is how many times less likely the second source may be to count as not
// told apart from the first.
const tied = 5

// say names the likeliest sources and what parts them.
func (m *SourceResult) say(sources []Suspect, r *Ranking) {
	nan := quantity.Ratio(math.NaN())
	m.BestShare, m.RunnerUpShare = nan, nan
	if r.n == 0 || math.IsNaN(float64(m.Sources[0].Share)) {
		return
	}
	m.BestMatch, m.BestShare = m.Sources[0].Name, m.Sources[0].Share
	if alike := m.Alike(); r.n > alike {
		m.RunnerUp, m.RunnerUpShare = m.Sources[alike].Name, m.Sources[alike].Share
	}
	first, second := r.order[0], r.order[1]
	switch {
	case first == len(sources):
		m.Parting = NoneFits
	case r.n > 1 && second != len(sources) && m.Sources[1].Share*tied > m.Sources[0].Share:
		m.Parting = part(&sources[first], &sources[second])
	default:
		m.Parting = BySureLook
	}
}

// Alike counts the sources that are as likely as the first, or but for a tenth,
// which no reading tells.
func (m *SourceResult) Alike() int {
	n := 1
	for n < len(m.Sources) && m.Sources[n].Name != "" && m.Sources[n].Share >= 0.9*m.Sources[0].Share {
		n++
	}
	return n
}

// part gives the run in which two sources do not do the same.
func part(a, b *Suspect) string {
	switch {
	case a.InNeutral != b.InNeutral:
		return ByNeutral
	case a.AtSpeed != b.AtSpeed:
		return BySpeed
	case a.InAstern != b.InAstern:
		return ByAstern
	}
	return ByNoRun
}

// The codes of Zone, the zones of ISO 10816-1, for which the schema of
// vibration-source has the words.
const (
	zoneA = "a"
	zoneB = "b"
	zoneC = "c"
	zoneD = "d"
)

// zone gives the zone of severity, "" where nothing was measured.
func zone(in *SourceInput) string {
	switch v := in.VibrationVelocity; {
	case v == 0 || in.ZoneCd == 0:
		return ""
	case v <= in.ZoneAb:
		return zoneA
	case v <= in.ZoneBc:
		return zoneB
	case v <= in.ZoneCd:
		return zoneC
	}
	return zoneD
}
