package marinecalc_test

import (
	"bytes"
	"context"
	"encoding/json"
	"errors"
	"strings"
	"sync"
	"testing"
	"time"

	"example.org/driveline/marinecalc"
	"example.org/driveline/marinecalc/internal/testboat"
	"example.org/driveline/marinecalc/sheet"
)

const boltInput = `{"thread": "M10x1.5", "grade": "iso-8.8", "finish": "oiled"}`

// Every way to fail is a value that errors.Is tells from the others, carries
// every problem, and can be compared.
func TestErrorsAreTold(t *testing.T) {
	engine, err := marinecalc.New(marinecalc.WithMaxTrials(1000))
	if err != nil {
		t.Fatal(err)
	}
	run := func(id, input string, o marinecalc.Options) error {
		s, err := engine.Run(context.Background(), id, []byte(input), o)
		if err != nil && s != nil {
			t.Errorf("%s: a sheet beside the error %v", id, err)
		}
		return err
	}
	ended, cancel := context.WithCancel(context.Background())
	cancel()
	_, cancelled := engine.Run(ended, "bolt-preload", []byte(boltInput), marinecalc.Options{})
	_, cancelledSurvey := engine.Check(ended, testboat.Demo(t, "kittiwake"), marinecalc.Options{})
	_, noBoat := engine.Check(context.Background(), nil, marinecalc.Options{})
	_, endlessTrials := marinecalc.Run("bolt-preload", []byte(boltInput), marinecalc.Options{Trials: 1 << 30})
	long := bytes.Repeat([]byte(" "), marinecalc.MaxBytes+1)
	_, longInput := marinecalc.Run("bolt-preload", long, marinecalc.Options{})
	_, longBoat := marinecalc.ReadBoat(long)
	_, longTable := marinecalc.AddReadingsCSV(testboat.Read(t, testboat.Logged), long)
	_, longRules := marinecalc.Overlay([]byte(`{}`), long)
	_, longOption := marinecalc.New(marinecalc.WithOverlays(long))
	bolt, err := marinecalc.Run("bolt-preload", []byte(boltInput), marinecalc.Options{NoRanges: true})
	if err != nil {
		t.Fatal(err)
	}
	plan, err := marinecalc.Run("work-plan", nil, marinecalc.Options{Boat: testboat.Demo(t, "kittiwake"), NoRanges: true})
	if err != nil {
		t.Fatal(err)
	}
	_, noList := marinecalc.CSVOf(bolt, "steps")
	_, noSuchList := marinecalc.CSVOf(plan, "stesp")
	for name, c := range map[string]struct{ got, want error }{
		"trials without end":   {endlessTrials, marinecalc.ErrTooLarge},
		"a long input":         {longInput, marinecalc.ErrTooLarge},
		"a long boat file":     {longBoat, marinecalc.ErrTooLarge},
		"a long table":         {longTable, marinecalc.ErrTooLarge},
		"a long rule file":     {longRules, marinecalc.ErrTooLarge},
		"a long option":        {longOption, marinecalc.ErrTooLarge},
		"a sheet of no lists":  {noList, marinecalc.ErrUnknown},
		"no such list":         {noSuchList, marinecalc.ErrUnknown},
		"no such calculation":  {run("bolt-prelaod", boltInput, marinecalc.Options{}), marinecalc.ErrUnknown},
		"no calculation named": {run("", boltInput, marinecalc.Options{}), marinecalc.ErrMissing},
		"an input missing":     {run("bolt-preload", `{}`, marinecalc.Options{}), marinecalc.ErrMissing},
		"too many trials":      {run("bolt-preload", boltInput, marinecalc.Options{Trials: 1001}), marinecalc.ErrTooLarge},
		"cancelled":            {cancelled, marinecalc.ErrCancelled},
		"cancelled survey":     {cancelledSurvey, marinecalc.ErrCancelled},
		"by the context":       {cancelled, context.Canceled},
		"no boat":              {noBoat, marinecalc.ErrMissing},
	} {
		if !errors.Is(c.got, c.want) {
			t.Errorf("%s: %v", name, c.got)
		}
		var e *marinecalc.Error
		if !errors.As(c.got, &e) || len(e.Problems) == 0 || len(marinecalc.ProblemsOf(c.got)) == 0 {
			t.Errorf("%s: no problems in %#v", name, c.got)
		}
		if again := c.got; !(again == c.got) { // a list would panic here
			t.Errorf("%s: not equal to itself", name)
		}
	}
	if list := marinecalc.ProblemsOf(longRules); len(list) != 1 || list[0].Where != "/1" {
		t.Errorf("the second of two rule files is too long: %v", list)
	}
	if text := cancelled.Error(); strings.Count(text, context.Canceled.Error()) != 1 {
		t.Errorf("the cause is told other than once: %q", text)
	}
	if _, err := marinecalc.Run("bolt-preload", []byte(boltInput), marinecalc.Options{Trials: -1}); err == nil || errors.Is(err, marinecalc.ErrTooLarge) {
		t.Errorf("trials under 0: %v", err)
	}
	if reply := string(marinecalc.Call([]byte(`{"ask": "run", "calculation": "bolt-preload", "trials": 1e9}`))); !strings.Contains(reply, `"kind":"too-large"`) {
		t.Errorf("trials without end in a request: %s", reply)
	}
	if err := run("bolt-preload", `{"thread": "M10x1.5", "grade": "iso-8.8", "finish": "oiled", "bolt": 5}`, marinecalc.Options{}); err == nil || errors.Is(err, marinecalc.ErrMissing) || errors.Is(err, marinecalc.ErrUnknown) {
		t.Errorf("an input that there is not: %v", err)
	}
	for _, bad := range []marinecalc.Option{marinecalc.WithMaxTrials(5), marinecalc.WithUnits("cubits"), marinecalc.WithOverlays([]byte(`{`))} {
		if e, err := marinecalc.New(bad); err == nil || e != nil {
			t.Errorf("an option that cannot be is taken: %v", err)
		}
	}
}

// A request is refused for a member that its ask does not use.
func TestCallRefusesWhatItDoesNotUse(t *testing.T) {
	reply := string(marinecalc.Call([]byte(`{"ask": "contents", "csv": "x", "before": "y", "input": {"a": 1}}`)))
	for _, name := range []string{"/csv", "/before", "/input"} {
		if !strings.Contains(reply, `"where":"`+name+`"`) {
			t.Errorf("%s is taken: %s", name, reply)
		}
	}
	if reply := string(marinecalc.Call([]byte(`{"ask": "survay", "boat": {}}`))); !strings.Contains(reply, `did you mean \"survey\"`) {
		t.Errorf("a slip in the ask: %s", reply)
	}
}

// Changing one sheet never changes the next.
func TestSheetsOwnTheirMemory(t *testing.T) {
	o := marinecalc.Options{Boat: testboat.Demo(t, "kittiwake")}
	first, err := marinecalc.Run("bolt-preload", nil, o)
	if err != nil {
		t.Fatal(err)
	}
	want, _ := json.Marshal(first)
	spoil(first)
	second, err := marinecalc.Run("bolt-preload", nil, o)
	if err != nil {
		t.Fatal(err)
	}
	if got, _ := json.Marshal(second); !bytes.Equal(got, want) {
		t.Error("the second sheet shows what was done to the first")
	}
}

// spoil writes over everything in a sheet.
func spoil(s *sheet.Sheet) {
	for i := range s.Inputs {
		s.Inputs[i].Title, s.Inputs[i].Name = "spoilt", "spoilt"
		if s.Inputs[i].SI != nil {
			*s.Inputs[i].SI = -1
		}
	}
	for i := range s.Results {
		r := &s.Results[i]
		r.Title = "spoilt"
		for _, p := range []*float64{r.SI, r.Low, r.High} {
			if p != nil {
				*p = -1
			}
		}
		for j := range r.Shares {
			r.Shares[j].Title = "spoilt"
		}
	}
	for i := range s.Work {
		s.Work[i].Formula, s.Work[i].Source = "spoilt", "spoilt"
	}
	for i := range s.Verdicts {
		s.Verdicts[i].Title = "spoilt"
	}
	for i := range s.Sources {
		s.Sources[i] = "spoilt"
	}
}

// A result without a range is read like any other.
func TestResultsWithoutRangeAreRead(t *testing.T) {
	s, err := marinecalc.Run("bolt-preload", []byte(boltInput), marinecalc.Options{NoRanges: true})
	if err != nil {
		t.Fatal(err)
	}
	for _, r := range s.Results {
		if _, _, ok := r.Range(); ok || r.Interval != "" || r.Half() != 0 {
			t.Errorf("%s has a range without trials", r.Name)
		}
	}
}

// No trials asked for means the default everywhere, and no ranges has a name.
func TestTrialsMeanTheSameEverywhere(t *testing.T) {
	for name, c := range map[string]struct {
		o      marinecalc.Options
		member string
		trials int
	}{
		"default":   {marinecalc.Options{}, ``, marinecalc.DefaultTrials},
		"zero":      {marinecalc.Options{Trials: 0}, `, "trials": 0`, marinecalc.DefaultTrials},
		"some":      {marinecalc.Options{Trials: 500}, `, "trials": 500`, 500},
		"no ranges": {marinecalc.Options{NoRanges: true}, `, "noRanges": true`, 0},
	} {
		s, err := marinecalc.Run("bolt-preload", []byte(boltInput), c.o)
		if err != nil {
			t.Fatal(err)
		}
		var reply struct{ Sheet *marinecalc.Sheet }
		if err := json.Unmarshal(marinecalc.Call([]byte(`{"ask": "run", "calculation": "bolt-preload", "input": `+boltInput+c.member+`}`)), &reply); err != nil || reply.Sheet == nil {
			t.Fatalf("%s: %v", name, err)
		}
		if s.Made.Trials != c.trials || s.Trials != c.trials || reply.Sheet.Made.Trials != c.trials {
			t.Errorf("%s: %d and %d trials, by request %d, want %d", name, s.Made.Trials, s.Trials, reply.Sheet.Made.Trials, c.trials)
		}
	}
	engine, err := marinecalc.New(marinecalc.WithMaxTrials(200))
	if err != nil {
		t.Fatal(err)
	}
	if s, err := engine.Run(context.Background(), "bolt-preload", []byte(boltInput), marinecalc.Options{}); err != nil || s.Trials != 200 {
		t.Errorf("under a cap of 200: %v", err)
	}
}

// The boat survives JSON in another document, member for member in the
// owner's order, and so it does with readings added.
func TestBoatSurvivesJSON(t *testing.T) {
	text := testboat.File(t, "testdata", "boats", "kittiwake.json")
	b := testboat.Read(t, string(text))
	type record struct {
		ID   int
		Boat *marinecalc.Boat
	}
	stored, err := json.Marshal(record{7, b})
	if err != nil {
		t.Fatal(err)
	}
	var back record
	if err := json.Unmarshal(stored, &back); err != nil {
		t.Fatal(err)
	}
	var want bytes.Buffer
	if err := json.Compact(&want, text); err != nil {
		t.Fatal(err)
	}
	if got, _ := json.Marshal(back.Boat); !bytes.Equal(got, want.Bytes()) {
		t.Error("the boat came back otherwise than its owner wrote it")
	}
	if got, err := marinecalc.Check(back.Boat, marinecalc.Options{NoRanges: true, Brief: true}); err != nil || len(got.Sheets) == 0 {
		t.Errorf("the boat that came back: %v", err)
	}
	more, err := marinecalc.AddReadingsCSV(b, []byte("date,dripRate\n2027-01-01,7 drips/min\n"))
	if err != nil {
		t.Fatal(err)
	}
	got, _ := json.Marshal(more)
	if !bytes.HasPrefix(got, want.Bytes()[:200]) || !bytes.Contains(got, []byte(`"dripRate":"7 drips/min"`)) {
		t.Errorf("with a reading added it begins %.200s", got)
	}
}

// An engine with a yard's rules and its own units serves many at once.
func TestEngineServesMany(t *testing.T) {
	yard := []byte(`{"title": "Invented yard", "limits": [{"id": "bolt-proof-load", "calculation": "bolt-preload", "title": "Yard", "on": "proofUse", "max": "50 %",
		"how": "weigh it", "source": {"document": "Invented manual", "clause": "p. 3"}, "basis": "maker"}]}`)
	engine, err := marinecalc.New(marinecalc.WithOverlays(yard), marinecalc.WithUnits("us"))
	if err != nil {
		t.Fatal(err)
	}
	one := func() []byte {
		s, err := engine.Run(context.Background(), "bolt-preload", []byte(boltInput), marinecalc.Options{})
		if err != nil {
			t.Error(err)
			return nil
		}
		if s.Made.Units != "us" || len(s.Made.Overlays) != 1 || s.Made.Overlays[0].Title != "Invented yard" {
			t.Errorf("made by %+v", s.Made)
		}
		text, _ := json.Marshal(s)
		return text
	}
	want := one()
	var wait sync.WaitGroup
	for range 8 {
		wait.Go(func() {
			for range 4 {
				if !bytes.Equal(one(), want) {
					t.Error("the same request gives another sheet")
				}
			}
		})
	}
	wait.Wait()
}

// A calculation stops soon after its context ends.
func TestLongTrialsStop(t *testing.T) {
	ctx, cancel := context.WithTimeout(context.Background(), 50*time.Millisecond)
	defer cancel()
	start := time.Now()
	b := testboat.Demo(t, "kittiwake")
	_, err := new(marinecalc.Engine).Run(ctx, "shaft-whirl", nil, marinecalc.Options{Boat: b, Trials: 1 << 16})
	if !errors.Is(err, marinecalc.ErrCancelled) || !errors.Is(err, context.DeadlineExceeded) {
		t.Errorf("after the deadline: %v", err)
	}
	t.Logf("stopped after %v", time.Since(start)) // to its end it takes seconds
}
