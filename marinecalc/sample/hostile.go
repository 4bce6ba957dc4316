package sample

import (
	"encoding/json"
	"fmt"
	"iter"
	"maps"
	"slices"
	"strconv"
	"strings"
)

// Requests are requests that can be answered, by name: one for each ask, about
// a boat file, and a run of each calculation that is named on its examples.
// A test of a host begins with them.
func Requests(boat []byte, calculations []string) map[string]map[string]any {
	b := json.RawMessage(boat)
	rules := `{"title": "Yard", "limits": [{"id": "yard-torque", "calculation": "shaft-torque", "on": "shaftTorque", "title": "Yard's limit", "max": "1 kN·m", "source": {"document": "Yard sheet"}, "basis": "maker", "how": "calculate it", "why": "the coupling slips"}]}`
	delta := `{"context":"vessels.self","updates":[{"timestamp":"2026-06-01T10:00:00Z","values":[{"path":"propulsion.main.revolutions","value":30}]}]}`
	work := []any{"repack-gland", "align-coupling"}
	of := map[string]map[string]any{
		"contents": {}, "warm": {}, "schemas": {"document": "boat"}, "rules": {"table": "threads"}, "rules all": {"overlays": []any{json.RawMessage(rules)}},
		"blank": {"calculation": "bolt-preload", "boat": b}, "form": {"calculation": "bolt-preload", "boat": b}, "boat": {"boat": b},
		"survey": {"boat": b, "noRanges": true}, "survey with ranges": {"boat": b, "trials": 4096}, "jobsheet": {"boat": b, "noRanges": true}, "torque-card": {"boat": b, "noRanges": true},
		"compare": {"boat": b, "before": "2025-10-04", "after": "2026-06-20", "noRanges": true}, "line": {"boat": b, "date": "2026-07-01"}, "parts": {"boat": b, "noRanges": true},
		"part": {"boat": b, "part": "coupling", "date": "2026-07-01", "noRanges": true}, "find": {"text": "clunk"}, "readings": {"boat": b},
		"add-readings": {"boat": b, "csv": "date,dripRate\n2027-06-01,7 drips/min\n"}, "add-signal-k": {"boat": b, "signalK": delta},
		"log":  {"boat": b, "reading": map[string]any{"reading": "dripRate", "value": "7 drips/min", "date": "2027-06-01", "note": "dry"}},
		"keep": {"boat": b, "calculation": "gland-heat", "date": "2027-06-01", "input": map[string]any{"dripRate": "7 drips/min"}}, "procedures": {"boat": b},
		"procedure": {"boat": b, "remedies": work, "done": []any{"make-safe"}, "noRanges": true},
		"tick":      {"boat": b, "remedies": work, "step": "make-safe", "ticked": true, "date": "2027-06-01", "note": "dry", "record": []any{map[string]any{"title": "Drip", "value": "x"}}},
		"calendar":  {"boat": b, "noRanges": true, "input": map[string]any{"today": "2026-03-02", "remedies": []any{map[string]any{"remedy": "repack-gland"}}}},
		"quantity":  {"quantity": "length", "text": "5", "unit": "mm"}, "convert": {"text": "45 lbf·ft ± 5 %", "to": "N·m"},
		"check-overlay": {"text": rules, "file": "yard.json"},
	}
	for name, members := range of {
		members["ask"], _, _ = strings.Cut(name, " ")
	}
	for _, id := range calculations {
		if input, err := Every(id); err == nil {
			of["run "+id] = map[string]any{"ask": "run", "calculation": id, "input": input, "trials": 256}
		}
	}
	return of
}

// Hostile makes out of requests what nobody means: at every place of one, the
// file of a boat or rules that it holds included, each of several things that
// are as long as size lets them be. Everything is JSON. The order is always
// the same. A text is made when it is asked for, and is nil where what it would
// be filled with makes no sense.
func Hostile(requests map[string]map[string]any, size int) iter.Seq2[string, func() []byte] {
	const mark = "\x00here\x00" // no text of a request
	quoted, _ := json.Marshal(mark)
	return func(yield func(string, func() []byte) bool) {
		for _, name := range slices.Sorted(maps.Keys(requests)) {
			text, _ := json.Marshal(requests[name])
			var whole map[string]any
			if json.Unmarshal(text, &whole) != nil {
				continue
			}
			for place, set := range places("", whole) {
				for i := range fillers {
					made := func() []byte {
						was := set(mark)
						before, after, _ := strings.Cut(string(encoded(whole)), string(quoted))
						set(was)
						filled := fillers[i].fill(was, max(size-len(before)-len(after), 16))
						if filled == "" {
							return nil
						}
						return []byte(before + filled + after)
					}
					if !yield(name+" "+place+" "+fillers[i].name, made) {
						return
					}
				}
			}
		}
	}
}

// Spread makes about n of Hostile's texts, spread evenly over all there are.
func Spread(requests map[string]map[string]any, size, n int) iter.Seq2[string, []byte] {
	return func(yield func(string, []byte) bool) {
		all, at := 0, 0
		for range Hostile(requests, size) {
			all++
		}
		for name, made := range Hostile(requests, size) {
			if at++; at%max(all/n, 1) != 0 {
				continue
			}
			if text := made(); text != nil && !yield(name, text) {
				return
			}
		}
	}
}

func encoded(v any) []byte {
	text, _ := json.Marshal(v)
	return text
}

// places goes through the members and items of a value, with what sets one and
// gives what was there. Of a list the first item stands for all.
func places(at string, v any) iter.Seq2[string, func(any) any] {
	return func(yield func(string, func(any) any) bool) {
		var walk func(at string, v any) bool
		walk = func(at string, v any) bool {
			switch v := v.(type) {
			case map[string]any:
				for _, name := range slices.Sorted(maps.Keys(v)) {
					if at+"/"+name == "/ask" {
						continue
					}
					set := func(to any) any {
						was := v[name]
						v[name] = to
						return was
					}
					if !yield(at+"/"+name, set) || !walk(at+"/"+name, v[name]) {
						return false
					}
				}
			case []any:
				if len(v) > 0 {
					return walk(at+"/0", v[0])
				}
			}
			return true
		}
		walk(at, v)
	}
}

// filler writes something of at most size bytes in the place of was, "" where
// it makes no sense there.
type filler struct {
	name string
	fill func(was any, size int) string
}

func repeated(item string, size int) string {
	n := max((size-2)/(len(item)+1), 1)
	return "[" + strings.TrimSuffix(strings.Repeat(item+",", n), ",") + "]"
}

func long(letter string) func(any, int) string {
	return func(_ any, size int) string { return `"` + strings.Repeat(letter, max((size-2)/len(letter), 1)) + `"` }
}

// first is the first item of a list with one member changed, or "".
func first(was any, change func(map[string]any)) string {
	list, is := was.([]any)
	if !is || len(list) == 0 {
		return ""
	}
	item, is := list[0].(map[string]any)
	if !is {
		return ""
	}
	item = maps.Clone(item)
	change(item)
	return string(encoded(item))
}

func ofFirst(change func(map[string]any)) func(any, int) string {
	return func(was any, size int) string {
		if item := first(was, change); item != "" {
			return repeated(item, size)
		}
		return ""
	}
}

var fillers = []filler{
	{"many objects", func(_ any, size int) string { return repeated("{}", size) }},
	{"many numbers", func(_ any, size int) string { return repeated("0", size) }},
	{"many texts", func(_ any, size int) string { return repeated(`"x"`, size) }},
	{"many lists", func(_ any, size int) string { return repeated("[]", size) }},
	{"many nulls", func(_ any, size int) string { return repeated("null", size) }},
	{"the same again", ofFirst(func(map[string]any) {})},
	{"an unknown name", ofFirst(func(m map[string]any) { m["song"] = 1 })},
	{"of another type", ofFirst(func(m map[string]any) {
		for name := range m {
			m[name] = []any{map[string]any{}}
		}
	})},
	{"too large", ofFirst(func(m map[string]any) {
		for name := range m {
			m[name] = "1e300 m"
		}
	})},
	{"the same words", func(was any, size int) string {
		if list, is := was.([]any); is && len(list) > 0 {
			if word, is := list[0].(string); is {
				return repeated(string(encoded(word)), size)
			}
		}
		return ""
	}},
	{"unknown names", func(_ any, size int) string {
		var b strings.Builder
		b.WriteString(`{"k":0`)
		for i := 0; b.Len() < size-20; i++ {
			fmt.Fprintf(&b, `,"k%d":0`, i)
		}
		return b.String() + "}"
	}},
	{"a long name", func(_ any, size int) string { return `{"` + strings.Repeat("x", max(size-6, 1)) + `":0}` }},
	{"letters", long("x")}, {"digits", long("9")}, {"angles", long("<")}, {"lines", long(`\n`)}, {"commas", long(",")}, {"slashes", long("~/")}, {"control characters", long(`\u0001`)}, {"beyond letters", long("\U0001F600")},
	{"words", long("drip gland ")}, {"lines of a table", func(_ any, size int) string {
		var b strings.Builder
		b.WriteString(`"date,dripRate`)
		for i := 0; b.Len() < size-40; i++ {
			fmt.Fprintf(&b, `\n20%02d-%02d-%02d,7 drips/min`, i%90+10, i/90%12+1, i/1080%28+1)
		}
		return b.String() + `"`
	}},
	{"deltas", func(_ any, size int) string {
		var b strings.Builder
		for i := 0; b.Len() < size-220; i++ {
			fmt.Fprintf(&b, `{\"context\":\"vessels.self\",\"updates\":[{\"timestamp\":\"20%02d-%02d-%02dT%02d:00:00Z\",\"values\":[{\"path\":\"propulsion.main.revolutions\",\"value\":30}]}]}\n`, i/8064%90+10, i/672%12+1, i/24%28+1, i%24)
		}
		return `"` + b.String() + `"`
	}},
	{"the largest number", func(any, int) string { return "1e308" }},
	{"the most trials", func(was any, _ int) string {
		if _, is := was.(float64); is {
			return strconv.Itoa(1 << 15) // as many as a boat takes
		}
		return ""
	}},
	{"a long number", func(_ any, size int) string { return strings.Repeat("7", size) }},
	{"deep lists", func(_ any, size int) string {
		return strings.Repeat("[", size/2) + strings.Repeat("]", size/2)
	}},
}
