package procedure_test

import (
	"encoding/json"
	"strings"
	"testing"

	"example.org/driveline/marinecalc"
	"example.org/driveline/marinecalc/internal/testboat"
	"example.org/driveline/marinecalc/problem"
)

type job struct {
	*testing.T
	engine *marinecalc.Engine
	o      marinecalc.Options
	boat   *marinecalc.Boat
	work   []string
}

func newJob(t *testing.T, boat string, work ...string) *job {
	o := byYard(t)
	o.NoRanges = true
	e, err := marinecalc.New(marinecalc.WithRules(o.Rules))
	if err != nil {
		t.Fatal(err)
	}
	return &job{t, e, o, testboat.Read(t, boat), work}
}

func (j *job) tick(r marinecalc.TickRequest) {
	j.Helper()
	r.Remedies = j.work
	b, err := j.engine.Tick(j.boat, r)
	if err != nil {
		j.Fatal(err)
	}
	j.boat = b
}

func (j *job) now(work ...string) *marinecalc.Procedure {
	j.Helper()
	if work == nil {
		work = j.work
	}
	return made(j.T, j.boat, j.o, work...)
}

func (j *job) readings() string {
	j.Helper()
	var file struct{ Readings json.RawMessage }
	text, err := json.Marshal(j.boat)
	if err == nil {
		err = json.Unmarshal(text, &file)
	}
	if err != nil {
		j.Fatal(err)
	}
	return string(file.Readings)
}

var yes, no = true, false

func TestTickAndTakeBack(t *testing.T) {
	j := newJob(t, `{"name": "Tern", "song": [1]}`, "tighten-coupling-bolts")
	note := "rust under two nuts"
	j.tick(marinecalc.TickRequest{Step: "make-safe", Done: &yes, Day: "2026-05-02", Time: "14:05"})
	j.tick(marinecalc.TickRequest{Step: "look-coupling-bolts", Done: &yes, Day: "2026-05-03", Note: &note})
	p := j.now()
	if s := stepNamed(t, p, "make-safe"); p.Ticked != 2 || s.Tick == nil || s.Tick.Date != "2026-05-02" || s.Tick.Time != "14:05" || p.LastTick.Date != "2026-05-03" {
		t.Errorf("%d ticked, last %+v, %+v", p.Ticked, p.LastTick, s.Tick)
	}
	if s := stepNamed(t, p, "look-coupling-bolts"); s.TickNote != note {
		t.Errorf("note %q", s.TickNote)
	}
	j.tick(marinecalc.TickRequest{Step: "look-coupling-bolts", Done: &no, Day: "2026-05-03"})
	if s := stepNamed(t, j.now(), "look-coupling-bolts"); s.Tick != nil || s.TickNote != note {
		t.Errorf("taken back: %+v, %q", s.Tick, s.TickNote)
	}
	j.tick(marinecalc.TickRequest{Step: "make-safe", Done: &no, Day: "2026-05-03"})
	j.tick(marinecalc.TickRequest{Step: "look-coupling-bolts", Note: new(string), Day: "2026-05-03"})
	if text, _ := json.Marshal(j.boat); !strings.Contains(string(text), `"steps":[]`) || !strings.Contains(string(text), `"song": [1]`) && !strings.Contains(string(text), `"song":[1]`) {
		t.Errorf("the boat is now %s", text)
	}
}

// What was made safe for one job is not safe for another; what is done for two
// at once counts for both.
func TestTicksBelongToTheirWork(t *testing.T) {
	j := newJob(t, `{"name": "Tern"}`, "tighten-coupling-bolts")
	j.tick(marinecalc.TickRequest{Step: "make-safe", Done: &yes, Day: "2026-05-02"})
	if p := j.now("repack-gland"); p.Ticked != 0 {
		t.Errorf("made safe for other work: %d ticked", p.Ticked)
	}
	if p := j.now("repack-gland", "tighten-coupling-bolts"); p.Ticked != 1 {
		t.Errorf("both together: %d ticked", p.Ticked)
	}
	j.work = []string{"repack-gland", "tighten-coupling-bolts"}
	j.tick(marinecalc.TickRequest{Step: "make-safe", Done: &yes, Day: "2026-05-04"})
	if p := j.now("repack-gland"); p.Ticked != 1 || p.LastTick.Date != "2026-05-04" {
		t.Errorf("ticked for both: %d, %+v", p.Ticked, p.LastTick)
	}
	for _, part := range j.engine.Procedures(j.boat) {
		for _, w := range part.Work {
			if want := map[string]int{"repack-gland": 1, "tighten-coupling-bolts": 1}[w.ID]; w.Ticked != want {
				t.Errorf("%s: %d ticked in the list", w.ID, w.Ticked)
			}
		}
	}
}

// Readings typed at a step are readings of the boat; one of the same day that
// was read before, at another step, stays.
func TestReadingsOfASteps(t *testing.T) {
	j := newJob(t, `{"name": "Tern", "readings": [{"date": "2026-05-02", "engineHours": "1200 h"}]}`, "tighten-coupling-bolts")
	drips := func(step, title, value string) {
		t.Helper()
		var v any = value
		if value == "" {
			v = nil
		}
		j.tick(marinecalc.TickRequest{Step: step, Day: "2026-05-02", Record: []marinecalc.Noted{{Title: title, Value: v}}})
	}
	drips("tighten-coupling-bolts", "Drips after it", "9 drips/min")
	drips("tighten-coupling-bolts", "State of each nut", "paint cracked")
	want := `[{"date":"2026-05-02","engineHours":"1200 h","dripRate":"9 drips/min"}]`
	if got := j.readings(); got != want {
		t.Errorf("read once: %s", got)
	}
	drips("trial-run", "Drips", "5 drips/min")
	two := `[{"date":"2026-05-02","engineHours":"1200 h","dripRate":"9 drips/min"},{"date":"2026-05-02","dripRate":"5 drips/min"}]`
	if got := j.readings(); got != two {
		t.Errorf("read again: %s", got)
	}
	drips("tighten-coupling-bolts", "Drips after it", "8 drips/min")
	drips("trial-run", "Drips", "4 drips/min")
	if got, want := j.readings(), strings.NewReplacer("9 d", "8 d", "5 d", "4 d").Replace(two); got != want {
		t.Errorf("both put right: %s", got)
	}
	p := j.now()
	if r := stepNamed(t, p, "tighten-coupling-bolts").Records; r[0].Noted != "8 drips/min" || r[0].Last != "4 drips/min" || r[1].Noted != "paint cracked" || r[1].NotedOn != "2026-05-02" {
		t.Errorf("noted %+v", r)
	}
	drips("trial-run", "Drips", "")
	if got := j.readings(); got != strings.Replace(want, "9 d", "8 d", 1) {
		t.Errorf("taken away: %s", got)
	}
	// With times of the day the later one is the newest, whatever came first.
	at := func(time, value string) {
		t.Helper()
		j.tick(marinecalc.TickRequest{Step: "trial-run", Day: "2026-05-03", Time: time, Record: []marinecalc.Noted{{Title: "Drips", Value: value}}})
	}
	j.boat = testboat.Read(t, `{"name": "Tern", "readings": [{"date": "2026-05-03", "time": "10:00", "dripRate": "7 drips/min"}, {"date": "2026-05-03", "engineHours": "1200 h"}]}`)
	at("9:30", "3 drips/min")
	if got := j.readings(); got != `[{"date":"2026-05-03","time":"10:00","dripRate":"7 drips/min"},{"date":"2026-05-03","engineHours":"1200 h"},{"date":"2026-05-03","time":"10:00","dripRate":"3 drips/min"}]` {
		t.Errorf("beside a time: %s", got)
	}
	if r := stepNamed(t, j.now(), "trial-run").Records[0]; r.Last != "3 drips/min" {
		t.Errorf("the newest is %+v", r)
	}
	gaps := []any{}
	for _, at := range []string{"12 o'clock", "3 o'clock", "6 o'clock", "9 o'clock"} {
		gaps = append(gaps, map[string]any{"clock": at, "gap": "0.3 mm"})
	}
	j.tick(marinecalc.TickRequest{Step: "trial-run", Day: "2026-05-09", Record: []marinecalc.Noted{{Title: "Gaps", Value: gaps}}})
	if r := stepNamed(t, j.now(), "trial-run").Records[1]; !strings.Contains(r.Last, "0.3 mm") || r.Noted != r.Last || r.NotedOn != "2026-05-09" {
		t.Errorf("gaps %+v", r)
	}
}

func TestTickRefusesInWords(t *testing.T) {
	j := newJob(t, `{"name": "Tern"}`, "tighten-coupling-bolts")
	good := marinecalc.TickRequest{Remedies: j.work, Step: "trial-run", Day: "2026-05-02"}
	for where, change := range map[string]func(*marinecalc.TickRequest){
		"/step":       func(r *marinecalc.TickRequest) { r.Step = "trial-rum" },
		"/remedies/0": func(r *marinecalc.TickRequest) { r.Remedies = []string{"tighten-coupling-bolt"} },
		"/remedies":   func(r *marinecalc.TickRequest) { r.Remedies = nil },
		"/date":       func(r *marinecalc.TickRequest) { r.Day = "May" },
		"/time":       func(r *marinecalc.TickRequest) { r.Time = "25:05" },
		"/time ":      func(r *marinecalc.TickRequest) { r.Time = "+9:05" },
		"/time  ":     func(r *marinecalc.TickRequest) { r.Time = "9:5" },
		"/time   ":    func(r *marinecalc.TickRequest) { r.Time = "noon" },
		"/record/0/title": func(r *marinecalc.TickRequest) {
			r.Record = []marinecalc.Noted{{Title: "Drip", Value: "5 drips/min"}}
		},
		"/record/0/value": func(r *marinecalc.TickRequest) {
			r.Record = []marinecalc.Noted{{Title: "Drips", Value: "5 kg"}}
		},
	} {
		r := good
		change(&r)
		_, err := j.engine.Tick(j.boat, r)
		list := problem.Of(err)
		if where = strings.TrimSpace(where); len(list) != 1 || list[0].Where != where {
			t.Errorf("%s: %v", where, err)
			continue
		}
		if meant := map[string]string{"/step": "trial-run", "/remedies/0": "tighten-coupling-bolts", "/record/0/title": "Drips"}[where]; !strings.Contains(list[0].Hint, meant) {
			t.Errorf("%s: the hint is %q", where, list[0].Hint)
		}
	}
	if _, err := j.engine.Tick(nil, good); err == nil {
		t.Error("ticked off on no boat")
	}
}

// What is due after the trial has its day and hours once the trial is done.
func TestDueAfterTheTrial(t *testing.T) {
	j := newJob(t, `{"name": "Tern", "readings": [{"date": "2026-05-01", "engineHours": "1200 h"}, {"date": "2026-05-30", "engineHours": "1260 h"}]}`, "tighten-coupling-bolts")
	d := stepNamed(t, j.now(), "read-again").Due
	if d == nil || d.By != "" || d.Meter != "" || d.Text != "25 h of engine running or 14 days after the trial, whichever comes first" {
		t.Errorf("before the trial: %+v", d)
	}
	j.tick(marinecalc.TickRequest{Step: "trial-run", Done: &yes, Day: "2026-05-03"})
	if d = stepNamed(t, j.now(), "read-again").Due; d.By != "2026-05-17" || d.Meter != "1225 h" || !strings.HasSuffix(d.Text, ": by 2026-05-17, or at 1225 h on the meter") {
		t.Errorf("after it: %+v", d)
	}
}
