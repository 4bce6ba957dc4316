package procedure_test

import (
	"context"
	"errors"
	"slices"
	"strings"
	"testing"

	"example.org/driveline/marinecalc"
	"example.org/driveline/marinecalc/internal/procedure"
	"example.org/driveline/marinecalc/internal/survey"
	"example.org/driveline/marinecalc/internal/testboat"
	"example.org/driveline/marinecalc/problem"
	"example.org/driveline/marinecalc/rules"
)

// made is the procedure of some work on a boat, which may be nil.
func made(t *testing.T, b *marinecalc.Boat, o marinecalc.Options, remedies ...string) *marinecalc.Procedure {
	t.Helper()
	p, err := new(marinecalc.Engine).Procedure(context.Background(), b, marinecalc.ProcedureRequest{Remedies: remedies}, o)
	if err != nil {
		t.Fatal(err)
	}
	return p
}

func stepsOf(p *marinecalc.Procedure) (list []marinecalc.Step) {
	for _, phase := range p.Phases {
		list = append(list, phase.Steps...)
	}
	return list
}

func stepNamed(t *testing.T, p *marinecalc.Procedure, id string) marinecalc.Step {
	t.Helper()
	for _, s := range stepsOf(p) {
		if s.ID == id {
			return s
		}
	}
	t.Fatalf("%s has no step %s", p.Title, id)
	return marinecalc.Step{}
}

// phaseOrder is the order of a job, as its schema lists it.
var phaseOrder = []string{"as-found", "open", "work", "close", "first-start", "trial", "afterwards"}

// Every piece of work can be gone through on any boat: each step once, after
// what comes before it, phases never backward, no caution lost, and every
// figure there or told as missing.
func TestEveryWorkCanBeGoneThrough(t *testing.T) {
	book := rules.Standard()
	hazards, besides, remedies := map[string]int{}, map[string]int{}, [][]string{} // besides: by the boat's choices
	for _, s := range book.Steps().All() {
		hazards[s.ID] = s.Hazards.Len()
		for _, c := range s.Cases.All() {
			besides[s.ID] += c.Hazards.Len()
		}
	}
	var all []string
	for _, r := range book.Remedies().All() {
		remedies = append(remedies, []string{r.ID})
		all = append(all, r.ID)
	}
	for i := range all { // and any two, three or twenty done together
		remedies = append(remedies, []string{all[i], all[(i+7)%len(all)]}, []string{all[i], all[(i+3)%len(all)], all[(i+11)%len(all)]})
	}
	remedies = append(remedies, all[:20], all[len(all)-20:])
	boats := map[string]*marinecalc.Boat{"kittiwake": testboat.Demo(t, "kittiwake"), "juniper": testboat.Demo(t, "juniper"), "bare": testboat.Read(t, `{"name": "Bare"}`), "none": nil}
	figures := 0
	for name, b := range boats {
		for i, ids := range remedies {
			if len(ids) > 1 && name != "none" && i%5 > 0 {
				continue // the order does not depend on the boat
			}
			p := made(t, b, marinecalc.Options{NoRanges: true}, ids...)
			var want []string
			for _, r := range book.Remedies().All() {
				if slices.Contains(ids, r.ID) && !strings.Contains(strings.Join(p.LeftOut, " "), "“"+r.Title+"” is no work of this boat") {
					for _, id := range r.Steps.All() {
						if !slices.Contains(want, id) {
							want = append(want, id)
						}
					}
				}
			}
			steps := stepsOf(p)
			if len(steps) != len(want) || p.Steps != len(want) {
				t.Errorf("%s %v: %d steps, want %d", name, ids, len(steps), len(want))
			}
			last := -1
			for _, phase := range p.Phases {
				rank := slices.Index(phaseOrder, phase.Phase)
				if rank <= last || phase.Title == "" || len(phase.Steps) == 0 {
					t.Errorf("%s %v: phase %s comes after %v", name, ids, phase.Phase, last)
				}
				last = rank
			}
			for n, s := range steps {
				if s.Number != n+1 || !slices.Contains(want, s.ID) {
					t.Errorf("%s %v: step %d is %d, %s", name, ids, n+1, s.Number, s.ID)
				}
				for _, before := range s.After {
					if before >= s.Number {
						t.Errorf("%s %v: step %d %s comes before step %d", name, ids, s.Number, s.ID, before)
					}
				}
				if n := len(s.Cautions) - hazards[s.ID]; n < 0 || n > besides[s.ID] || len(s.Cautions) == 0 && s.Safe == "" {
					t.Errorf("%s: %d cautions of %d", s.ID, len(s.Cautions), hazards[s.ID])
				}
				for _, f := range s.Figures {
					figures++
					known := f.Text != "" || f.Table != nil
					if known == (f.Why != "") || !known && f.Word != "" || f.Title == "" || f.Sheet == "" {
						t.Errorf("%s, %s: %+v", name, s.ID, f)
					}
				}
				for _, part := range s.Parts {
					if part.Amount == "" || part.Title == "" {
						t.Errorf("%s, %s: %+v", name, s.ID, part)
					}
				}
				if s.Drawing != "" && !slices.ContainsFunc(p.Drawings, func(d marinecalc.StepDrawing) bool { return d.Calculation == s.Drawing }) {
					t.Errorf("%s, %s: no drawing of %s", name, s.ID, s.Drawing)
				}
			}
		}
	}
	t.Logf("%d figures", figures)
}

// What each step needs of the boat's sheets, for the tests: rows of steps in
// place of the standard ones.
const yard = `{"title": "Yard", "steps": [
	{"id": "tighten-coupling-bolts", "title": "Tighten the coupling bolts", "text": "Crosswise.", "phase": "close", "after": ["look-coupling-bolts"], "hours": 0.75, "place": "either",
	 "tools": [], "hazards": ["bolt-past-proof"], "drawing": "bolt-fit", "bares": ["align-coupling", "tighten-coupling-bolts"],
	 "use": ["bolt-preload/wrenchSetting", "coupling-grip/boltCount", "mount-moves/moves", "bolt-preload/breakingTorque", "gland-heat/temperatureRise"],
	 "record": [{"title": "Drips after it", "reading": "dripRate"}, {"title": "State of each nut"}],
	 "source": {"document": "yard"}, "basis": "common-practice"},
	{"id": "trial-run", "title": "Trial", "text": "Run.", "phase": "trial", "after": ["tighten-coupling-bolts"], "hours": 1, "place": "afloat", "tools": [], "hazards": ["turning-shaft"],
	 "record": [{"title": "Drips", "reading": "dripRate"}, {"title": "Gaps", "reading": "couplingGaps"}, {"title": "Hour meter", "reading": "engineHours"}],
	 "source": {"document": "yard"}, "basis": "common-practice"},
	{"id": "read-again", "title": "Read again", "text": "Look.", "phase": "afterwards", "after": ["trial-run"], "hours": 1, "place": "afloat", "tools": [], "hazards": ["stop-the-engine"],
	 "dueHours": 25, "dueDays": 14, "source": {"document": "yard"}, "basis": "common-practice"}],
	"remedies": [{"id": "tighten-coupling-bolts", "title": "Tighten the coupling bolts", "text": "Look first.", "kind": "adjust", "cures": ["coupling-bolts-loose"],
	 "steps": ["make-safe", "look-coupling-bolts", "tighten-coupling-bolts", "trial-run", "read-again"], "source": {"document": "yard"}, "basis": "common-practice"}]}`

func byYard(t *testing.T) marinecalc.Options {
	text := yard
	for _, c := range rules.Standard().AllCautions().All() { // any caution of the bolts will do
		if rules.Contains(c.Calculations, "bolt-preload") {
			text = strings.ReplaceAll(text, "bolt-past-proof", c.ID)
			break
		}
	}
	return marinecalc.Options{Rules: testboat.Overlay(t, text), Trials: 512}
}

func TestFiguresOfTheBoat(t *testing.T) {
	b := testboat.Demo(t, "kittiwake")
	s := stepNamed(t, made(t, b, byYard(t), "tighten-coupling-bolts"), "tighten-coupling-bolts")
	sheet := testboat.Run(t, "bolt-preload", "{}", marinecalc.Options{Boat: b, Trials: 512})
	setting := s.Figures[0]
	if want := sheet.Result("wrenchSetting"); setting.Text != want.Text || setting.Title != "Coupling bolts: wrench setting" || setting.Sheet != sheet.Title {
		t.Errorf("wrench setting %+v, the sheet has %+v", setting, want)
	}
	if s.Figures[1].Text != "4" {
		t.Errorf("bolts: %+v", s.Figures[1])
	}
	if moves := s.Figures[2].Table; moves == nil || len(moves.Rows) != 4 || s.Figures[2].Text != "" {
		t.Errorf("moves of the mounts: %+v", s.Figures[2])
	}
	if broken := s.Figures[3]; broken.Interval == "" || len(broken.Needs) > 0 {
		t.Errorf("with its range: %+v", broken)
	}
	fit := testboat.Run(t, "bolt-fit", "{}", marinecalc.Options{Boat: b, Trials: 512})
	want := []string{fit.Result("firstTorque").Text, fit.Result("secondTorque").Text, setting.Text}
	if s.Tightening == nil || !slices.Equal(s.Tightening.Order, []int{1, 3, 2, 4}) || !slices.Equal(s.Tightening.Passes, want) {
		t.Errorf("tightening %+v, want passes %v", s.Tightening, want)
	}
	if len(s.Bares) != 1 || s.Bares[0].ID != "align-coupling" {
		t.Errorf("cheap meanwhile: %+v", s.Bares)
	}
	us := byYard(t)
	us.Units = "us"
	if s := stepNamed(t, made(t, b, us, "tighten-coupling-bolts"), "tighten-coupling-bolts"); !strings.HasSuffix(s.Figures[0].Text, "lbf·ft") || !strings.HasSuffix(s.Tightening.Passes[0], "lbf·ft") {
		t.Errorf("US units: %+v, %+v", s.Figures[0], s.Tightening)
	}
}

// A boat that knows its bolts and no more still has its passes and its order;
// what is not known is told with how to get it, and no word stands beside it.
func TestWhatIsNotKnownIsTold(t *testing.T) {
	some := testboat.Read(t, `{"name": "Some", "coupling": {"boltCount": 6, "bolts": {"thread": "M10x1.5", "grade": "iso-8.8", "finish": "oiled", "nut": "plain-nut"}}}`)
	s := stepNamed(t, made(t, some, byYard(t), "tighten-coupling-bolts"), "tighten-coupling-bolts")
	if s.Figures[0].Text == "" || s.Figures[1].Text != "6" {
		t.Errorf("what the boat knows: %+v", s.Figures[:2])
	}
	if tg := s.Tightening; len(tg.Order) < 3 || tg.Order[1] != 4 || len(tg.Passes) != 3 || tg.Passes[2] != s.Figures[0].Text {
		t.Errorf("tightening %+v", tg)
	}
	for _, b := range []*marinecalc.Boat{nil, testboat.Read(t, `{"name": "Bare"}`)} {
		p := made(t, b, byYard(t), "tighten-coupling-bolts")
		s := stepNamed(t, p, "tighten-coupling-bolts")
		f := s.Figures[0]
		if f.Text != "" || f.Word != "" || f.Why == "" || len(f.Needs) == 0 || f.Needs[0].How == "" {
			t.Errorf("wrench setting of no bolt: %+v", f)
		}
		if s.Tightening.Order == nil || len(s.Tightening.Order) > 0 || len(s.Tightening.Passes) > 0 || !strings.Contains(s.Tightening.Text, "not known") {
			t.Errorf("tightening of no bolt: %+v", s.Tightening)
		}
		if !slices.ContainsFunc(p.Missing, func(m marinecalc.StepMissing) bool {
			return m.Calculation == "bolt-preload" && m.Input == "thread" && slices.Contains(m.Steps, s.Number)
		}) {
			t.Errorf("what is missing: %+v", p.Missing)
		}
		if len(p.Drawings) != 1 || len(p.Drawings[0].Pictures) > 0 || len(p.Drawings[0].Needs) == 0 {
			t.Errorf("drawings: %+v", p.Drawings)
		}
	}
}

func TestWhatIsWrittenDown(t *testing.T) {
	b := testboat.Read(t, `{"name": "Tern", "follow": {"reading": "dripRate", "limit": "20 drips/min"},
		"gland": {"boxBore": "46 mm", "packing": "flax", "water": "sea"}, "shaft": {"diameter": "30 mm"},
		"readings": [{"date": "2026-05-02", "dripRate": "6 drips/min", "engineHours": "1200 h"}, {"date": "2026-04-02", "dripRate": "4 drips/min"}]}`)
	p := made(t, b, byYard(t), "tighten-coupling-bolts")
	r := stepNamed(t, p, "tighten-coupling-bolts").Records
	if r[0].Last != "6 drips/min" || r[0].Date != "2026-05-02" || r[0].Unit != "drips/min" || r[0].How == "" {
		t.Errorf("drips: %+v", r[0])
	}
	if !slices.ContainsFunc(r[0].Limits, func(h marinecalc.StepLimit) bool { return h.Bound == "20 drips/min" && h.Calculation == "" }) {
		t.Errorf("the boat's own limit is not among %+v", r[0].Limits)
	}
	if r[1].Reading != "" || r[1].Last != "" || len(r[1].Limits) > 0 {
		t.Errorf("what is no reading: %+v", r[1])
	}
	trial := stepNamed(t, p, "trial-run").Records
	if trial[1].Last != "" || trial[1].Name == "" {
		t.Errorf("gaps never read: %+v", trial[1])
	}
	k := made(t, testboat.Demo(t, "kittiwake"), byYard(t), "tighten-coupling-bolts")
	drips := stepNamed(t, k, "trial-run").Records[0]
	if len(drips.Limits) == 0 || drips.Limits[0].Bound == "" {
		t.Errorf("drips are held against %+v", drips.Limits)
	}
	if gaps := stepNamed(t, k, "trial-run").Records[1]; !strings.Contains(gaps.Last, "mm") || gaps.Date == "" || !slices.ContainsFunc(gaps.Limits, func(h marinecalc.StepLimit) bool { return h.Calculation == "coupling-alignment" }) {
		t.Errorf("gaps: %+v", gaps)
	}
}

func TestProcedureRefusesInWords(t *testing.T) {
	e := new(marinecalc.Engine)
	for _, c := range []struct {
		r           marinecalc.ProcedureRequest
		where, hint string
		kind        error
	}{
		{marinecalc.ProcedureRequest{}, "/remedies", "", problem.ErrMissing},
		{marinecalc.ProcedureRequest{Remedies: []string{"repack-gland", "align-couplin"}}, "/remedies/1", `"align-coupling"`, problem.ErrUnknown},
		{marinecalc.ProcedureRequest{Remedies: []string{"repack-gland"}, Done: []string{"make-saf"}}, "/done/0", `"make-safe"`, problem.ErrUnknown},
		{marinecalc.ProcedureRequest{Remedies: slices.Repeat([]string{"repack-gland"}, 21)}, "/remedies", "", problem.ErrTooLarge},
	} {
		_, err := e.Procedure(context.Background(), nil, c.r, marinecalc.Options{})
		list := problem.Of(err)
		if len(list) != 1 || list[0].Where != c.where || !strings.Contains(list[0].Hint, c.hint) || !errors.Is(err, c.kind) {
			t.Errorf("%+v: %v", c.r, err)
		}
	}
	ended, cancel := context.WithCancel(context.Background())
	cancel()
	if _, err := e.Procedure(ended, testboat.Demo(t, "kittiwake"), marinecalc.ProcedureRequest{Remedies: []string{"align-coupling"}}, marinecalc.Options{}); !errors.Is(err, context.Canceled) {
		t.Errorf("ended: %v", err)
	}
	p, err := e.Procedure(context.Background(), nil, marinecalc.ProcedureRequest{Remedies: []string{"repack-gland", "repack-gland"}, Done: []string{"make-safe"}}, marinecalc.Options{Day: "2026-05-02"})
	if err != nil || len(p.Remedies) != 1 || p.Ticked != 1 || p.LastTick.Date != "2026-05-02" {
		t.Errorf("%v, %+v", err, p)
	}
}

// A sheet leads to the work on its part that goes by its figures, and where no
// step uses one, to all work on the part.
func TestWorkForASheet(t *testing.T) {
	book := rules.Standard()
	ids := func(calculation string) (list []string) {
		for _, p := range procedure.For(book, nil, calculation) {
			for _, w := range p.Work {
				list = append(list, w.ID)
			}
		}
		return list
	}
	if got := ids("output-flange"); !slices.Equal(got, []string{"tighten-output-nut", "replace-output-flange", "replace-output-seal"}) {
		t.Errorf("an output flange past its limit leads to %v", got)
	}
	for _, row := range book.Table(survey.PartsTable).Rows.All() {
		for _, id := range strings.Fields(row.Values.Of("calculations").Text) {
			if len(ids(id)) == 0 {
				t.Errorf("%s leads to no work", id)
			}
		}
	}
	if got := ids("fault-finding"); len(got) > 0 {
		t.Errorf("the whole boat leads to %v", got)
	}
}

// All work is listed once, under a part.
func TestListOfWork(t *testing.T) {
	seen := map[string]bool{}
	for _, part := range new(marinecalc.Engine).Procedures(nil) {
		for _, w := range part.Work {
			if seen[w.ID] || part.Part == "" || w.Steps == 0 || w.Hours <= 0 || len(w.Cures) == 0 {
				t.Errorf("%s: %+v", part.Part, w)
			}
			seen[w.ID] = true
		}
	}
	if n := rules.Standard().Remedies().Len(); len(seen) != n {
		t.Errorf("%d of %d are listed", len(seen), n)
	}
}

// Thread locker is taken where the boat file says that the maker asks for it,
// and only there, as on the shopping list.
func TestPartsTheMakerAsksFor(t *testing.T) {
	takes := func(boat string) (n int) {
		for _, s := range stepsOf(made(t, testboat.Read(t, boat), marinecalc.Options{NoRanges: true}, "replace-coupling-bolts", "align-coupling")) {
			for _, p := range s.Parts {
				if p.ID == "thread-lock" {
					n++
				}
			}
		}
		return n
	}
	without, with := takes(`{"name": "Tern"}`), takes(`{"name": "Tern", "work": {"parts": [{"part": "thread-lock", "makerAsks": true}]}}`)
	if without != 0 || with == 0 {
		t.Errorf("taken %d times unasked, %d times asked", without, with)
	}
}

func hasStep(p *marinecalc.Procedure, id string) bool {
	for _, phase := range p.Phases {
		if slices.ContainsFunc(phase.Steps, func(s marinecalc.Step) bool { return s.ID == id }) {
			return true
		}
	}
	return false
}
