package signalk

import (
	_ "embed"
	"encoding/json"
	"fmt"
	"maps"
	"math"
	"slices"
	"sort"
	"strings"
	"sync"
	"time"

	"example.org/driveline/marinecalc/problem"
)

//go:embed paths.json
var pathsJSON []byte

// path is a path that is a reading of the boat file, "*" standing for an
// engine.
type path struct {
	Path    string  `json:"path"`
	Role    string  `json:"role"` // "speed" is that of the engine
	Reading string  `json:"reading"`
	When    string  `json:"when"` // the engine is running or standing; "" for always
	Factor  float64 `json:"factor"`
}

type book struct {
	Version string `json:"version"`
	Source  string `json:"source"`
	Paths   []path `json:"paths"`
}

var standard = sync.OnceValues(func() (b book, err error) {
	err = json.Unmarshal(pathsJSON, &b)
	for i := range b.Paths {
		if b.Paths[i].Factor == 0 {
			b.Paths[i].Factor = 1
		}
	}
	return b, err
})

// Choice is what the owner says of a text.
type Choice struct {
	Engine string            // of several, by its name in the paths; "" for the only one
	Every  time.Duration     // of how long a time one entry is made; 0 for an hour
	Own    map[string]string // readings of the boat's own list, by their path
}

// Entry is what was read at one moment, in SI, by the readings' names.
type Entry struct {
	Time   time.Time
	Values map[string]float64
}

// Count is how many samples a path had.
type Count struct {
	Path    string `json:"path"`
	Samples int    `json:"samples"`
	Reading string `json:"reading,omitempty"` // what they are in the boat file
}

// Report is what became of a text.
type Report struct {
	Paths    string         `json:"paths"`   // version of the table of paths
	Entries  int            `json:"entries"` // that were made
	Added    int            `json:"added"`   // to the boat; the others it had already
	Taken    []Count        `json:"taken"`
	Unknown  []Count        `json:"unknown"`        // with no reading that goes with them, the most frequent first
	More     int            `json:"more,omitempty"` // unknown paths besides
	Others   int            `json:"others"`         // vessels or deltas of others
	Timeless int            `json:"timeless"`       // numbers without a time
	Left     map[string]int `json:"left,omitempty"` // values beyond what the boat file takes, by reading
}

const (
	near        = time.Minute // how far beside the moment of an entry a value may have been read
	mostUnknown = 50
)

// Take makes entries of a text. Of each stretch of time (an hour, unless the
// choice has another) in which the engine ran there is one, at the moment of
// its highest speed, so that one day can be held against another; where it did
// not run, at the last moment. It has what was read within a minute of that
// moment, the nearest of each. What only a running or a standing engine shows
// is left where nothing tells which it was.
func Take(text []byte, c Choice) ([]Entry, *Report, error) {
	b, err := standard()
	if err != nil {
		return nil, nil, err // a test reads the paths
	}
	s, err := read(text)
	if err != nil {
		return nil, nil, err
	}
	if c.Every == 0 {
		c.Every = time.Hour
	}
	if c.Every < near || c.Every > 24*time.Hour {
		return nil, nil, problem.List{{Where: "/every", What: fmt.Sprintf("%v is too short or too long a time for one entry", c.Every), Allowed: "1 min to 24 h"}}.Err()
	}
	if c.Engine, err = s.engine(c.Engine); err != nil {
		return nil, nil, err
	}
	known := make([]path, 0, len(b.Paths)+len(c.Own))
	for _, p := range b.Paths {
		p.Path = strings.Replace(p.Path, "*", c.Engine, 1)
		known = append(known, p)
	}
	for _, at := range slices.Sorted(maps.Keys(c.Own)) {
		known = append(known, path{Path: strings.Replace(at, "*", c.Engine, 1), Reading: "own/" + c.Own[at], Factor: 1})
	}
	report := s.report(known)
	report.Paths = b.Version
	sort.SliceStable(s.list, func(a, b int) bool { return s.list[a].Time.Before(s.list[b].Time) })
	var entries []Entry
	for from := 0; from < len(s.list); {
		stretch := s.list[from].Time.Truncate(c.Every)
		to := from
		for to < len(s.list) && s.list[to].Time.Truncate(c.Every).Equal(stretch) {
			to++
		}
		if e := entry(s.list[from:to], known); len(e.Values) > 0 {
			entries = append(entries, e)
		}
		from = to
	}
	report.Entries = len(entries)
	return entries, report, nil
}

// engine is the one that is meant: the only one, or the one that is named.
func (s *samples) engine(named string) (string, error) {
	there := map[string]bool{}
	for _, one := range s.list {
		if rest, is := strings.CutPrefix(one.Path, "propulsion."); is {
			id, _, _ := strings.Cut(rest, ".")
			there[id] = true
		}
	}
	ids := slices.Sorted(maps.Keys(there))
	switch {
	case named == "" && len(ids) == 0:
		return "", nil
	case named == "" && len(ids) == 1:
		return ids[0], nil
	case named == "":
		return "", problem.List{{Where: "/engine", What: fmt.Sprintf("there are %d engines; a boat file is the line of one", len(ids)), Allowed: strings.Join(ids, ", "), Kind: problem.Missing}}.Err()
	case !there[named]:
		return "", problem.List{{Where: "/engine", What: fmt.Sprintf("there is no engine %q", named), Allowed: strings.Join(ids, ", "), Hint: problem.DidYouMean(named, ids), Kind: problem.Unknown}}.Err()
	}
	return named, nil
}

func (s *samples) report(known []path) *Report {
	readings, counts := map[string]string{}, map[string]int{}
	for _, p := range known {
		readings[p.Path] = strings.TrimPrefix(readings[p.Path]+", "+p.Reading, ", ")
	}
	for _, one := range s.list {
		counts[one.Path]++
	}
	r := &Report{Others: s.others, Timeless: s.timeless, Taken: []Count{}, Unknown: []Count{}}
	for _, at := range slices.Sorted(maps.Keys(counts)) {
		if reading, is := readings[at]; is {
			r.Taken = append(r.Taken, Count{Path: at, Samples: counts[at], Reading: reading})
		} else {
			r.Unknown = append(r.Unknown, Count{Path: at, Samples: counts[at]})
		}
	}
	sort.SliceStable(r.Unknown, func(a, b int) bool { return r.Unknown[b].Samples < r.Unknown[a].Samples })
	if more := len(r.Unknown) - mostUnknown; more > 0 {
		r.More, r.Unknown = more, r.Unknown[:mostUnknown]
	}
	return r
}

// entry is what was read round the one moment of a stretch that counts.
func entry(list []Sample, known []path) Entry {
	speed := ""
	for _, p := range known {
		if p.Role == "speed" {
			speed = p.Path
		}
	}
	moment, turns := time.Time{}, math.NaN()
	for _, one := range list {
		if one.Path == speed && !(one.Value <= turns) {
			moment, turns = one.Time, one.Value
		}
	}
	state := map[bool]string{true: "running", false: "standing"}[turns > 0]
	if math.IsNaN(turns) {
		state = ""
	}
	if !(turns > 0) {
		moment = time.Time{}
		for _, one := range list {
			if slices.ContainsFunc(known, func(p path) bool { return p.Path == one.Path }) {
				moment = one.Time
			}
		}
	}
	e := Entry{Time: moment, Values: map[string]float64{}}
	for _, p := range known {
		if p.When != "" && p.When != state {
			continue
		}
		least := near + 1
		for _, one := range list {
			if away := one.Time.Sub(moment).Abs(); one.Path == p.Path && away < least {
				least, e.Values[p.Reading] = away, one.Value*p.Factor
			}
		}
	}
	return e
}
