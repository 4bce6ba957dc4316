package marinecalc_test

import (
	"encoding/json"
	"os"
	"path/filepath"
	"slices"
	"strings"
	"testing"

	"example.org/driveline/marinecalc"
	"example.org/driveline/marinecalc/internal/diagnosis"
	"example.org/driveline/marinecalc/internal/testboat"
	"example.org/driveline/marinecalc/quantity"
	"example.org/driveline/marinecalc/rules"
	"example.org/driveline/marinecalc/sheet"
)

// job is a whole piece of work on an invented boat, from the first sign to the
// readings a year later, and what a mechanic would want to be told on the days
// on which something is decided: written from the trade (common practice, no
// source), not from what the program says.
type job struct {
	Title string
	Boat  json.RawMessage
	Days  []jobDay
}

// jobDay is what must be said on one day of a job.
type jobDay struct {
	On, Stage, Tells string
	First            []string             // causes, one of which leads
	Among            []string             // causes, all among the first four
	Found            []string             // causes, all found
	NotFound         []string             // causes, none found
	CureBefore       [][2]string          // of two causes, which is to be cured first
	Looks            []string             // questions, one of which is among the first three proposed
	HeldBack         bool                 // nothing that runs the shaft is proposed
	Nothing          bool                 // nothing points anywhere, and nothing is planned
	Verdicts         map[string]string    // "calculation/limit" and how it reads
	Between          map[string][2]string // "calculation/result" and between which two figures it lies
	Draws            map[string]string    // calculations with a drawing, and words of what it shows
	PlansOneOf       [][]string           // remedies: of each list one is planned
	Says             []string             // words on the sheets
	Trend            string               // words of the outlook of the reading that is followed
	Trial            string               // words of how the sea trial came out, or why it must wait
	Due              map[string]string    // of the service schedule: what is to be done, its state and the begin of its day
}

// eachJob reads every job there is, with the boat of its last day.
func eachJob(t *testing.T, with func(name string, j *job, b *marinecalc.Boat)) {
	t.Helper()
	files, err := filepath.Glob(testboat.Root("testdata", "jobs", "*.json"))
	if err != nil || len(files) < 6 {
		t.Fatalf("%d jobs: %v", len(files), err)
	}
	for _, file := range files {
		text, err := os.ReadFile(file)
		if err != nil {
			t.Fatal(err)
		}
		var j job
		d := json.NewDecoder(strings.NewReader(string(text)))
		d.DisallowUnknownFields()
		if err := d.Decode(&j); err != nil {
			t.Fatalf("%s: %v", file, err)
		}
		with(strings.TrimSuffix(filepath.Base(file), ".json"), &j, testboat.Read(t, string(j.Boat)))
	}
}

// TestWholeJobs follows each job through its days.
func TestWholeJobs(t *testing.T) {
	alone(t)
	eachJob(t, func(name string, j *job, b *marinecalc.Boat) {
		t.Run(name, func(t *testing.T) {
			for _, day := range j.Days {
				t.Run(day.On, func(t *testing.T) { day.check(t, testboat.CheckOn(t, b, day.On)) })
			}
		})
	})
}

func (d *jobDay) check(t *testing.T, s *marinecalc.Survey) {
	for _, f := range s.Faults {
		t.Errorf("%s cannot be worked out: %+v", f.Calculation, f.Problems)
	}
	for _, w := range s.Warnings {
		t.Errorf("warned of: %s", w.What)
	}
	faults := testboat.Page(t, s, diagnosis.FaultFinding)
	d.causes(t, faults)
	d.looks(t, faults)
	d.work(t, testboat.Page(t, s, "work-plan"))
	for id, want := range d.Verdicts {
		calculation, limit, _ := strings.Cut(id, "/")
		if v := testboat.Page(t, s, calculation).Verdict(limit); v == nil || v.Reads != want {
			t.Errorf("%s: %+v, want %q", id, v, want)
		}
	}
	for id, ends := range d.Between {
		calculation, result, _ := strings.Cut(id, "/")
		r := testboat.Page(t, s, calculation).Result(result)
		low, _, errLow := quantity.Infer(ends[0])
		high, _, errHigh := quantity.Infer(ends[1])
		if errLow != nil || errHigh != nil || r == nil || r.SI == nil || *r.SI < low.SI || *r.SI > high.SI {
			t.Errorf("%s: %+v, want %s to %s", id, r, ends[0], ends[1])
		}
	}
	for calculation, words := range d.Draws {
		drawn := testboat.Page(t, s, calculation).Drawings
		if !slices.ContainsFunc(drawn, func(p sheet.Drawing) bool {
			return strings.Contains(p.SVG, "<svg") && strings.Contains(p.Description, words)
		}) {
			t.Errorf("%s draws nothing of %q: %v", calculation, words, drawn)
		}
	}
	said, err := json.Marshal(s)
	if err != nil {
		t.Fatal(err)
	}
	for _, words := range d.Says {
		if !strings.Contains(string(said), words) {
			t.Errorf("nothing says %q", words)
		}
	}
	if d.Trial != "" {
		if is := testboat.Page(t, s, "sea-trial").Result("says").Text; !strings.Contains(is, d.Trial) {
			t.Errorf("the sea trial says %q, want %q", is, d.Trial)
		}
	}
	for what, want := range d.Due {
		page := testboat.Page(t, s, "service-schedule")
		is := testboat.Column(t, page, "schedule", "what", "state")[what] + " " + testboat.Column(t, page, "schedule", "what", "due")[what]
		if !strings.HasPrefix(is, want) {
			t.Errorf("%s: %q, want %q", what, is, want)
		}
	}
	if d.Trend != "" {
		if is := testboat.Page(t, s, "reading-trend").Result("outlook").Text; !strings.Contains(is, d.Trend) {
			t.Errorf("the outlook is %q, want %q", is, d.Trend)
		}
	}
}

// cells are the texts of one column of a table.
func cells(s *sheet.Sheet, table, column string) (out []string) {
	for row := 0; ; row++ {
		c := s.Cell(table, row, column)
		if c == nil {
			return out
		}
		out = append(out, c.Text)
	}
}

func (d *jobDay) causes(t *testing.T, s *sheet.Sheet) {
	book := rules.Standard()
	title := map[string]string{}
	for _, c := range book.Causes().All() {
		title[c.ID] = c.Title
	}
	for _, id := range slices.Concat(d.First, d.Among, d.Found, d.NotFound) {
		if title[id] == "" {
			t.Errorf("there is no cause %s", id)
		}
	}
	lead := ""
	if r := s.Result("cause"); r != nil {
		lead = r.Text
	}
	if len(d.First) > 0 && !slices.Contains(d.First, lead) {
		t.Errorf("%q leads, want one of %v", lead, d.First)
	}
	if d.Nothing && lead != "" {
		t.Errorf("%q leads though all is cured", lead)
	}
	ranked := cells(s, "ranking", "cause")
	known := cells(s, "ranking", "known")
	for _, id := range d.Among {
		if at := slices.Index(ranked, id); at < 0 || at > 3 {
			t.Errorf("%s is at %d of %v", id, at, ranked)
		}
	}
	for _, id := range d.Found {
		if at := slices.Index(ranked, id); at < 0 || known[at] == "" {
			t.Errorf("%s was not found: %v %v", id, ranked, known)
		}
	}
	for _, id := range d.NotFound {
		if at := slices.Index(ranked, id); at >= 0 && known[at] != "" {
			t.Errorf("%s is called found by %q", id, known[at])
		}
	}
	order := cells(s, "cureOrder", "cause")
	for _, pair := range d.CureBefore {
		a, b := slices.Index(order, pair[0]), slices.Index(order, pair[1])
		if a < 0 || b < 0 || a > b {
			t.Errorf("%s is not to be cured before %s: %v", pair[0], pair[1], order)
		}
	}
}

func (d *jobDay) looks(t *testing.T, s *sheet.Sheet) {
	title := map[string]string{}
	runs := map[string]bool{}
	for _, e := range rules.Standard().Evidence().All() {
		title[e.ID], runs[e.Title] = e.Title, e.RunsShaft
	}
	proposed := cells(s, "nextChecks", "question")
	quick := cells(s, "quickQuestions", "question")
	if len(d.Looks) > 0 && !slices.ContainsFunc(d.Looks, func(id string) bool {
		return slices.Contains(proposed[:min(3, len(proposed))], title[id])
	}) {
		t.Errorf("none of %v is among the first three: %q", d.Looks, proposed)
	}
	for _, id := range d.Looks {
		if title[id] == "" {
			t.Errorf("there is no question %s", id)
		}
	}
	if d.HeldBack {
		if s.Result("heldBack") == nil {
			t.Error("nothing keeps the shaft still")
		}
		for _, q := range slices.Concat(proposed, quick) {
			if runs[q] {
				t.Errorf("proposed though the shaft must stand: %s", q)
			}
		}
	}
}

func (d *jobDay) work(t *testing.T, s *sheet.Sheet) {
	planned := s.Result("planned").Text
	if d.Nothing && planned != "no work is chosen" {
		t.Errorf("planned though all is cured: %s", planned)
	}
	title := map[string]string{}
	for _, r := range rules.Standard().Remedies().All() {
		title[r.ID] = r.Title
	}
	for _, list := range d.PlansOneOf {
		if !slices.ContainsFunc(list, func(id string) bool {
			if title[id] == "" {
				t.Errorf("there is no remedy %s", id)
			}
			return strings.Contains(planned, title[id])
		}) {
			t.Errorf("none of %v is planned: %s", list, planned)
		}
	}
}
