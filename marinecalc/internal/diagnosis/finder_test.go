package diagnosis_test

import (
	"context"
	"encoding/json"
	"fmt"
	"math/rand/v2"
	"os"
	"slices"
	"strings"
	"testing"

	"example.org/driveline/marinecalc"
	"example.org/driveline/marinecalc/internal/boat"
	"example.org/driveline/marinecalc/internal/diagnosis"
	"example.org/driveline/marinecalc/internal/testboat"
	"example.org/driveline/marinecalc/problem"
	"example.org/driveline/marinecalc/rules"
	"example.org/driveline/marinecalc/sheet"
)

// textbook is a cause's most likely answers to the questions that bear on it.
func textbook(book *rules.Book, cause string) []diagnosis.Symptom {
	var list []diagnosis.Symptom
	otherwise := map[string]float64{}
	for _, e := range book.Evidence().All() {
		otherwise[e.ID] = e.Otherwise
	}
	for _, s := range book.Signs().All() {
		if s.Cause == cause {
			list = append(list, diagnosis.Symptom{Evidence: s.Evidence, Answer: map[bool]string{true: "yes", false: "no"}[book.SignYes(s, otherwise[s.Evidence]) > 0.5]})
		}
	}
	return list
}

// found runs the fault finding on answers alone.
func found(t *testing.T, o marinecalc.Options, answers ...diagnosis.Symptom) diagnosis.Result {
	t.Helper()
	s, err := o.Session(context.Background(), nil)
	if err != nil {
		t.Fatal(err)
	}
	out, err := diagnosis.Find(s, diagnosis.Input{Answers: answers, Lies: "afloat"})
	if err != nil {
		t.Fatal(err)
	}
	return out
}

func yes(ids ...string) []diagnosis.Symptom { return said("yes", ids) }

func no(ids ...string) []diagnosis.Symptom { return said("no", ids) }

func said(answer string, ids []string) []diagnosis.Symptom {
	var list []diagnosis.Symptom
	for _, id := range ids {
		list = append(list, diagnosis.Symptom{Evidence: id, Answer: answer})
	}
	return list
}

// The most likely answers of a cause rank it first and fit together; but for
// what is not listed they settle it.
func TestTextbookPatternsRankTheirCauseFirst(t *testing.T) {
	for _, c := range rules.Standard().Causes().All() {
		out := found(t, marinecalc.Options{}, textbook(rules.Standard(), c.ID)...)
		if settled := c.ID != "not-listed"; out.Cause != c.ID || settled != (out.Known == "found") {
			t.Errorf("%s: ranked first is %s, %s", c.ID, out.Cause, out.Known)
		}
		if out.Contradiction != "" {
			t.Errorf("%s: %s", c.ID, out.Contradiction)
		}
	}
}

// A yes to its confirming check, and nothing else, ranks a cause first.
func TestTheConfirmingCheckAloneRanksFirst(t *testing.T) {
	for _, c := range rules.Standard().Causes().All() {
		if out := found(t, marinecalc.Options{}, yes(c.Confirm)...); out.Cause != c.ID {
			t.Errorf("%s: %s says %s (%v)", c.ID, c.Confirm, out.Cause, out.Probability)
		}
	}
}

// How patterns told by the trade read, without the confirming check: common
// practice, no source.
func TestPatternsOfTheTrade(t *testing.T) {
	for name, c := range map[string]struct {
		answers []diagnosis.Symptom
		want    string
	}{
		"clatters at idle, knocks into gear":           {append(yes("clatter-at-idle", "knock-into-gear"), no("coupling-bolt-turns", "mount-nut-turns")...), "damper-worn"},
		"hot and dry after drawing up":                 {yes("gland-hot", "gland-no-drip", "gland-drawn-up"), "gland-tight"},
		"slow after months at the mooring":             {yes("slower-than-before", "full-revs-missed", "lay-long"), "propeller-fouled"},
		"thump after a pot line":                       {yes("after-rope", "came-suddenly", "rumble-aft", "full-revs-missed"), "propeller-rope"},
		"vibrates in neutral too, mostly at idle":      {append(yes("shake-at-idle", "uneven-neutral"), no("gone-in-neutral")...), "engine-uneven"},
		"one band only, since another engine":          {yes("shake-one-band", "since-other-parts", "gone-in-neutral"), "shaft-whirl"},
		"revs without way once warm, fluid right":      {append(yes("revs-no-drive", "worse-warm", "fluid-burnt"), no("fluid-low", "lever-by-hand")...), "gearbox-clutch-slip"},
		"old oily mounts, engine low, jumps":           {yes("mounts-old", "mount-deflection", "engine-jumps"), "mounts-settled"},
		"knock at each change, bolts tight, hub turns": {append(yes("knock-into-gear", "play-on-turning"), no("coupling-bolt-turns", "coupling-mark-shifted")...), "key-worn"},
	} {
		if out := found(t, marinecalc.Options{}, c.answers...); out.Cause != c.want {
			t.Errorf("%s: %s (%v), not %s", name, out.Cause, out.Probability, c.want)
		}
	}
}

// same compares findings by their text, since NaN is not equal to itself.
func same(a, b diagnosis.Result) bool { return fmt.Sprintf("%+v", a) == fmt.Sprintf("%+v", b) }

func TestOrderOfAnswersChangesNothing(t *testing.T) {
	r := rand.New(rand.NewPCG(4, 4))
	answers := textbook(rules.Standard(), "coupling-misaligned")
	want := found(t, marinecalc.Options{}, answers...)
	for range 20 {
		r.Shuffle(len(answers), func(i, j int) { answers[i], answers[j] = answers[j], answers[i] })
		if got := found(t, marinecalc.Options{}, answers...); !same(got, want) {
			t.Fatalf("%+v in another order, %+v before", got, want)
		}
	}
}

func TestDoNotKnowChangesNothing(t *testing.T) {
	answers := yes("shake-grows", "gone-in-neutral")
	want := found(t, marinecalc.Options{}, answers...)
	var unsure []diagnosis.Symptom
	for _, e := range rules.Standard().Evidence().All() {
		if e.ID != "shake-grows" && e.ID != "gone-in-neutral" {
			unsure = append(unsure, diagnosis.Symptom{Evidence: e.ID, Answer: "unknown"})
		}
	}
	if got := found(t, marinecalc.Options{}, append(unsure, answers...)...); !same(got, want) {
		t.Errorf("%+v with don't know, %+v without", got, want)
	}
	if got := found(t, marinecalc.Options{}, append(answers, answers...)...); !same(got, want) {
		t.Error("saying it twice counts twice")
	}
}

func TestUnknownQuestionsAreRefusedAtTheirPlace(t *testing.T) {
	_, err := marinecalc.Run(diagnosis.FaultFinding, []byte(`{"answers": [{"evidence": "fluid-low", "answer": "yes"}, {"evidence": "no-such", "answer": "no"}]}`), marinecalc.Options{})
	if list := problem.Of(err); len(list) == 0 || list[0].Where != "/answers/1/evidence" {
		t.Errorf("%v", err)
	}
	boat := testboat.Read(t, `{"name": "Teal", "symptoms": [{"evidence": "no-such", "answer": "no"}]}`)
	_, err = marinecalc.Run(diagnosis.FaultFinding, []byte(`{}`), marinecalc.Options{Boat: boat})
	if list := problem.Of(err); len(list) == 0 || list[0].Where != "/boat/symptoms/0/evidence" {
		t.Errorf("%v", err)
	}
}

// alignedBoat has coupling faces far misaligned.
const alignedBoat = `{"name": "Teal", "coupling": {"diameter": "120 mm", "kind": "%s"}, "symptoms": [{"evidence": "shake-grows", "answer": "yes"}],
	"readings": [{"date": "2026-05-02", "couplingGaps": [{"clock": "0°", "gap": "0.60 mm"}, {"clock": "90°", "gap": "0.35 mm"}, {"clock": "180°", "gap": "0.10 mm"}, {"clock": "270°", "gap": "0.35 mm"}]}]}`

// A verdict of the boat answers its question by itself. A trouble that was
// measured stands against a no, and that is told.
func TestVerdictsOfTheBoatAnswer(t *testing.T) {
	boat := testboat.Read(t, fmt.Sprintf(alignedBoat, "rigid"))
	s := testboat.Run(t, diagnosis.FaultFinding, `{}`, marinecalc.Options{Boat: boat})
	if n := s.Result("byVerdict"); n == nil || *n.SI != 1 {
		t.Fatalf("answers by verdict: %+v", n)
	}
	if c := s.Result("cause"); c.Text != "coupling-misaligned" {
		t.Errorf("first is %s", c.Text)
	}
	if !slices.ContainsFunc(weightsOf(s), func(from string) bool { return strings.HasPrefix(from, "verdict: ") }) {
		t.Error("no weight is marked as a verdict's")
	}
	s = testboat.Run(t, diagnosis.FaultFinding, `{"answers": [{"evidence": "coupling-gaps", "answer": "no"}]}`, marinecalc.Options{Boat: boat})
	if c := s.Result("contradiction"); c == nil || !strings.Contains(c.Text, "what was measured was counted") || s.Result("cause").Text != "coupling-misaligned" {
		t.Errorf("a verdict against the answer: %+v", c)
	}
}

func weightsOf(s *sheet.Sheet) []string {
	var from []string
	for i := 0; s.Cell("weights", i, "from") != nil; i++ {
		from = append(from, s.Cell("weights", i, "from").Text)
	}
	return from
}

// A no does not tick away a thermometer: what keeps the shaft still stays.
func TestNoDoesNotCoolTheGland(t *testing.T) {
	b := testboat.Demo(t, "kittiwake") // her newest symptoms say no to a hot gland
	raw := map[string]any{}
	text, err := os.ReadFile(testboat.Root("testdata", "boats", "kittiwake.json"))
	if err != nil || json.Unmarshal(text, &raw) != nil {
		t.Fatal("the boat cannot be read", err)
	}
	for _, r := range raw["readings"].([]any) {
		if at := r.(map[string]any); at["date"] == "2026-06-20" {
			at["glandTemperature"] = "95 °C"
		}
	}
	hot := testboat.Read(t, testboat.Text(t, raw))
	for boat, want := range map[*marinecalc.Boat]bool{b: false, hot: true} {
		s := testboat.Run(t, diagnosis.FaultFinding, `{}`, marinecalc.Options{Boat: boat, NoRanges: true})
		if held := s.Result("heldBack"); (held != nil && held.Text != "") != want {
			t.Errorf("hot %v, kept still: %+v", want, held)
		}
	}
}

// The newest look of the fluid answers its questions, a no of a later day
// wins, and every such row names a word of the boat file.
func TestLooksAnswerTheirQuestions(t *testing.T) {
	b := testboat.Read(t, `{"name": "Test", "readings": [{"date": "2026-05-01", "fluidLook": "clear"}, {"date": "2026-06-01", "fluidLook": "glitter"}]}`)
	from := func(input, question string) string {
		s := testboat.Run(t, "fault-finding", input, marinecalc.Options{Boat: b, NoRanges: true})
		list := s.Table("weights")
		for _, r := range list.Rows {
			if at := list.Reader(r); strings.HasPrefix(at("question"), question) {
				return at("answer") + ", " + at("from")
			}
		}
		return ""
	}
	const glitter = "Is there glitter"
	if got := from(`{"answers": []}`, glitter); got != "yes, reading of 2026-06-01" {
		t.Errorf("by the look: %q", got)
	}
	if got := from(`{"answers": [{"evidence": "fluid-metal", "answer": "no"}]}`, glitter); got != "yes, reading of 2026-06-01" {
		t.Errorf("against a no without a day: %q", got)
	}
	b = testboat.Read(t, `{"name": "Test", "readings": [{"date": "2026-06-01", "fluidLook": "glitter"}, {"date": "2026-06-02", "symptoms": [{"evidence": "fluid-metal", "answer": "no"}]}]}`)
	if got := from(`{}`, glitter); got != "no, answer" {
		t.Errorf("against a no of a later day: %q", got)
	}
	// A clean dipstick says nothing about metal, nor does a sample of another
	// day; a jar of that day does.
	for _, c := range []struct{ by, want string }{
		{`"fluidLookBy": "dipstick"`, ""}, {`"note": "-"`, ""}, {`"fluidLookBy": "jar"`, "no, reading of 2026-06-01"}, {`"fluidLookBy": "magnet"`, "no, reading of 2026-06-01"},
	} {
		b = testboat.Read(t, `{"name": "Test", "readings": [{"date": "2026-05-01", "fluidLook": "clear", "fluidLookBy": "jar"}, {"date": "2026-06-01", "fluidLook": "clear", `+c.by+`}]}`)
		if got := from(`{"answers": []}`, glitter); got != c.want {
			t.Errorf("%s: %q, not %q", c.by, got, c.want)
		}
	}
	boat, err := boat.Contract()
	if err != nil {
		t.Fatal(err)
	}
	for _, e := range rules.Standard().Evidence().All() {
		for _, by := range e.Readings.All() {
			p := boat.Root.Child("readings").Items.Child(by.Reading)
			for _, word := range by.Words.All() {
				if p == nil || !slices.Contains(p.Enum, word) {
					t.Errorf("%s: the boat file has no %s %q", e.ID, by.Reading, word)
				}
			}
		}
	}
}

func TestPlaceAndTimeChooseTheChecks(t *testing.T) {
	s, err := marinecalc.Options{}.Session(context.Background(), nil)
	if err != nil {
		t.Fatal(err)
	}
	for lies, not := range map[string]string{"afloat": "ashore", "ashore": "afloat"} {
		out, err := diagnosis.Find(s, diagnosis.Input{Lies: lies, MinutesLeft: 2})
		if err != nil {
			t.Fatal(err)
		}
		if out.QuickQuestions[0].Question == "" {
			t.Errorf("nothing to ask %s", lies)
		}
		for _, c := range out.NextChecks {
			if c.Place == not || c.Minutes > 120 {
				t.Errorf("%s, two minutes left: %s, %v s, %s", lies, c.Question, c.Minutes, c.Place)
			}
		}
	}
}

func BenchmarkFaultFinding(b *testing.B) {
	input := []byte(`{"answers": [{"evidence": "knock-into-gear", "answer": "yes"}, {"evidence": "red-dust", "answer": "yes"}, {"evidence": "gone-in-neutral", "answer": "yes"}]}`)
	for b.Loop() {
		if _, err := marinecalc.Run(diagnosis.FaultFinding, input, marinecalc.Options{}); err != nil {
			b.Fatal(err)
		}
	}
}
