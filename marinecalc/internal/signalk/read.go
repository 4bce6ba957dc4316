// Package signalk takes samples out of Signal K documents (signalk.org, an open
// standard): whole ones, deltas, lists of deltas, and logs with a delta a line.
// paths.json says which paths are which readings of a boat file.
package signalk

import (
	"bytes"
	"encoding/json"
	"fmt"
	"maps"
	"slices"
	"strings"
	"time"

	"example.org/driveline/marinecalc/internal/contract"
	"example.org/driveline/marinecalc/problem"
)

// Sample is one number at one moment.
type Sample struct {
	Path  string // below the vessel
	Time  time.Time
	Value float64
}

// samples are what a text holds, and how much of it is of no use.
type samples struct {
	list     []Sample
	others   int // of other vessels
	timeless int // without a time
	self     string
}

// read takes the samples of one's own vessel out of a text.
func read(text []byte) (*samples, error) {
	s := &samples{}
	text = bytes.TrimPrefix(bytes.TrimSpace(text), []byte("\xef\xbb\xbf"))
	value, problems := contract.DecodeForeign(text)
	if len(problems) == 0 {
		return s, s.take(value, "").Err()
	}
	if !bytes.Contains(text, []byte("\n")) || problems[0].Kind == problem.TooLarge {
		return nil, placed(problems, "").Err()
	}
	if n := bytes.Count(text, []byte("\n")); n > contract.MaxReadings*40 {
		return nil, problem.List{{Where: "/signalK", What: fmt.Sprintf("it has %d lines", n), Allowed: fmt.Sprintf("up to %d", contract.MaxReadings*40), Hint: "take it in parts", Kind: problem.TooLarge}}.Err()
	}
	number := 0
	for line := range bytes.Lines(text) {
		number++
		if line = bytes.TrimSpace(line); len(line) == 0 {
			continue
		}
		at := fmt.Sprintf("/%d", number)
		value, problems := contract.DecodeForeign(line)
		if len(problems) == 0 {
			problems = s.take(value, at)
		} else {
			problems = placed(problems, at)
		}
		if len(problems) > 0 {
			return nil, problems.Err()
		}
	}
	return s, nil
}

func placed(problems problem.List, at string) problem.List {
	for i := range problems {
		problems[i].Where = "/signalK" + at + problems[i].Where
	}
	return problems
}

const allowed = `a document with "vessels", deltas with "updates", a list of these, or one a line`

// take takes a whole document, a delta, or a list of these.
func (s *samples) take(value any, at string) problem.List {
	switch v := value.(type) {
	case []any:
		for i, one := range v {
			if problems := s.take(one, fmt.Sprintf("%s/%d", at, i)); len(problems) > 0 {
				return problems
			}
		}
		return nil
	case map[string]any:
		if self, ok := v["self"].(string); ok {
			s.self = strings.TrimPrefix(self, "vessels.")
		}
		vessels, whole := v["vessels"].(map[string]any)
		updates, delta := v["updates"].([]any)
		switch {
		case whole:
			return s.vessels(vessels, at)
		case delta:
			s.delta(v, updates)
			return nil
		case v["self"] != nil: // greets, and says whose the deltas are
			return nil
		}
	}
	return problem.List{{Where: "/signalK" + at, What: "this is no Signal K", Allowed: allowed}}
}

// vessels takes a whole document: the vessel that it names as its own, or the
// only one.
func (s *samples) vessels(vessels map[string]any, at string) problem.List {
	own := s.self
	if _, there := vessels[own]; !there {
		switch {
		case vessels["self"] != nil:
			own = "self"
		case len(vessels) == 1:
			for own = range vessels {
			}
		default:
			return problem.List{{Where: "/signalK" + at + "/self", What: "it does not say which vessel is one's own", Allowed: strings.Join(slices.Sorted(maps.Keys(vessels)), ", ")}}
		}
	}
	s.others += len(vessels) - 1
	s.walk(vessels[own], nil, "")
	return nil
}

// walk takes the leaves of a tree: objects with a value and a time.
func (s *samples) walk(node any, path []string, moment string) {
	m, ok := node.(map[string]any)
	if !ok {
		return
	}
	if t, ok := m["timestamp"].(string); ok {
		moment = t
	}
	if value, leaf := m["value"]; leaf {
		s.add(strings.Join(path, "."), moment, value)
		return
	}
	for _, name := range slices.Sorted(maps.Keys(m)) {
		s.walk(m[name], append(slices.Clip(path), name), moment)
	}
}

func (s *samples) delta(delta map[string]any, updates []any) {
	if context, has := delta["context"].(string); has {
		whose := strings.TrimPrefix(context, "vessels.")
		if s.self == "" && whose != "self" {
			s.self = whose // nothing says whose the deltas are: the first one's
		}
		if whose != "self" && whose != s.self {
			s.others++
			return
		}
	}
	for _, u := range updates {
		update, _ := u.(map[string]any)
		moment, _ := update["timestamp"].(string)
		values, _ := update["values"].([]any)
		for _, v := range values {
			one, _ := v.(map[string]any)
			path, _ := one["path"].(string)
			if path != "" {
				s.add(path, moment, one["value"])
			}
		}
	}
}

// add keeps a number; words and places are no readings.
func (s *samples) add(path, moment string, value any) {
	number, ok := value.(json.Number)
	if !ok {
		return
	}
	f, err := number.Float64()
	if err != nil {
		return
	}
	t, err := time.Parse(time.RFC3339, moment)
	if err != nil {
		s.timeless++
		return
	}
	s.list = append(s.list, Sample{Path: path, Time: t.UTC(), Value: f})
}
