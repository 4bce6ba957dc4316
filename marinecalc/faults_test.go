package marinecalc

import (
	"context"
	"encoding/json"
	"fmt"
	"math"
	"math/rand/v2"
	"slices"
	"strings"
	"testing"

	"example.org/driveline/marinecalc/internal/boat"
	"example.org/driveline/marinecalc/internal/contract"
	"example.org/driveline/marinecalc/internal/diagnosis"
	"example.org/driveline/marinecalc/problem"
	"example.org/driveline/marinecalc/rules"
	"example.org/driveline/marinecalc/sheet"
)

// textbook is a cause's most likely answers to the questions that bear on it.
func textbook(book *rules.Book, cause string) []diagnosis.Symptom {
	var list []diagnosis.Symptom
	for _, s := range book.Signs().All() {
		if s.Cause == cause {
			list = append(list, diagnosis.Symptom{Evidence: s.Evidence, Answer: map[bool]string{true: "yes", false: "no"}[s.Yes > 0.5]})
		}
	}
	return list
}

// found runs the fault finding on answers alone.
func found(t *testing.T, o Options, answers ...diagnosis.Symptom) diagnosis.Findings {
	t.Helper()
	s, err := o.Session(context.Background(), nil)
	if err != nil {
		t.Fatal(err)
	}
	out, err := diagnosis.Find(s, diagnosis.Symptoms{Answers: answers, Lies: "afloat"})
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

// The most likely answers of a cause rank it first, fit together, and no pair
// of them is called out.
func TestTextbookPatternsRankTheirCauseFirst(t *testing.T) {
	for _, c := range rules.Standard().Causes().All() {
		out := found(t, Options{}, textbook(rules.Standard(), c.ID)...)
		if out.Cause != c.ID || out.Probability < 0.5 {
			t.Errorf("%s: ranked first is %s with %v", c.ID, out.Cause, out.Probability)
		}
		if out.Contradiction != "" {
			t.Errorf("%s: %s", c.ID, out.Contradiction)
		}
	}
}

// A yes to its confirming check, and nothing else, ranks a cause first.
func TestTheConfirmingCheckAloneRanksFirst(t *testing.T) {
	for _, c := range rules.Standard().Causes().All() {
		if out := found(t, Options{}, yes(c.Confirm)...); out.Cause != c.ID {
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
		"shakes in neutral too, mostly at idle":        {append(yes("shake-at-idle", "uneven-neutral"), no("gone-in-neutral")...), "engine-uneven"},
		"one band only, since another engine":          {yes("shake-one-band", "since-other-parts", "gone-in-neutral"), "shaft-whirl"},
		"revs without way once warm, fluid right":      {append(yes("revs-no-drive", "worse-warm", "fluid-burnt"), no("fluid-low", "lever-by-hand")...), "gearbox-clutch-slip"},
		"old oily mounts, engine low, jumps":           {yes("mounts-old", "mount-sag", "engine-jumps"), "mount-sagged"},
		"knock at each change, bolts tight, hub turns": {append(yes("knock-into-gear", "play-on-turning"), no("coupling-bolt-turns", "coupling-mark-shifted")...), "key-worn"},
	} {
		if out := found(t, Options{}, c.answers...); out.Cause != c.want {
			t.Errorf("%s: %s (%v), not %s", name, out.Cause, out.Probability, c.want)
		}
	}
}

// same compares findings by their text, since NaN is not equal to itself.
func same(a, b diagnosis.Findings) bool { return fmt.Sprintf("%+v", a) == fmt.Sprintf("%+v", b) }

func TestOrderOfAnswersChangesNothing(t *testing.T) {
	r := rand.New(rand.NewPCG(4, 4))
	answers := textbook(rules.Standard(), "coupling-misaligned")
	want := found(t, Options{}, answers...)
	for range 20 {
		r.Shuffle(len(answers), func(i, j int) { answers[i], answers[j] = answers[j], answers[i] })
		if got := found(t, Options{}, answers...); !same(got, want) {
			t.Fatalf("%+v in another order, %+v before", got, want)
		}
	}
}

func TestDoNotKnowChangesNothing(t *testing.T) {
	answers := yes("shake-grows", "gone-in-neutral")
	want := found(t, Options{}, answers...)
	var unsure []diagnosis.Symptom
	for _, e := range rules.Standard().Evidence().All() {
		if e.ID != "shake-grows" && e.ID != "gone-in-neutral" {
			unsure = append(unsure, diagnosis.Symptom{Evidence: e.ID, Answer: "unknown"})
		}
	}
	if got := found(t, Options{}, append(unsure, answers...)...); !same(got, want) {
		t.Errorf("%+v with don't know, %+v without", got, want)
	}
	if got := found(t, Options{}, append(answers, answers...)...); !same(got, want) {
		t.Error("saying it twice counts twice")
	}
}

func TestContradictoryAnswersAreShown(t *testing.T) {
	out := found(t, Options{}, append(yes("damper-seen", "growth-seen", "gland-ease"), no("clatter-at-idle")...)...)
	if !strings.Contains(out.Contradiction, "No listed cause alone") {
		t.Errorf("three confirmed causes at once: %q, surprise %v", out.Contradiction, out.Surprise)
	}
	// The pair is named by both questions.
	out = found(t, Options{}, yes("rope-seen", "damper-seen")...)
	for _, words := range []string{"rope, net or weed round", "springs of the damper"} {
		if !strings.Contains(out.Contradiction, words) {
			t.Errorf("the pair is not named: %q", out.Contradiction)
		}
	}
	_, err := Run(diagnosis.FaultFinding, []byte(`{"answers": [{"evidence": "fluid-low", "answer": "yes"}, {"evidence": "fluid-low", "answer": "no"}]}`), Options{})
	if list := problem.Of(err); len(list) == 0 || list[0].Where != "/answers/1" || !strings.Contains(list[0].What, "both") {
		t.Errorf("yes and no to one question: %v", err)
	}
}

func TestUnknownQuestionsAreRefusedAtTheirPlace(t *testing.T) {
	_, err := Run(diagnosis.FaultFinding, []byte(`{"answers": [{"evidence": "fluid-low", "answer": "yes"}, {"evidence": "no-such", "answer": "no"}]}`), Options{})
	if list := problem.Of(err); len(list) == 0 || list[0].Where != "/answers/1/evidence" {
		t.Errorf("%v", err)
	}
	boat := readBoatText(t, `{"name": "Teal", "symptoms": [{"evidence": "no-such", "answer": "no"}]}`)
	_, err = Run(diagnosis.FaultFinding, []byte(`{}`), Options{Boat: boat})
	if list := problem.Of(err); len(list) == 0 || list[0].Where != "/boat/symptoms/0/evidence" {
		t.Errorf("%v", err)
	}
}

func readBoatText(t *testing.T, text string) *Boat {
	t.Helper()
	b, err := ReadBoat([]byte(text))
	if err != nil {
		t.Fatal(err)
	}
	return b
}

// Two causes with the same answers so far are said to be not parted, with the
// question that parts them; ashore another one may.
func TestWhatCannotBePartedIsSaid(t *testing.T) {
	out := found(t, Options{}, yes("after-touching", "came-suddenly", "shake-grows", "gone-in-neutral")...)
	if !strings.Contains(out.CannotPart, "cannot be told apart") || !strings.Contains(out.CannotPart, "part them best") {
		t.Errorf("%q", out.CannotPart)
	}
	// A yard's cause that shows like another in everything is never parted.
	twin := `{"causes": [{"id": "twin", "part": "damper plate", "title": "Twin of the damper", "text": "The same.", "prior": 5, "confirm": "damper-seen", "remedies": ["replace-damper-plate"], "source": {"document": "Yard"}, "basis": "common-practice"}], "signs": [`
	first := true
	for _, s := range rules.Standard().Signs().All() {
		if s.Cause != "damper-worn" {
			continue
		}
		if !first {
			twin += ","
		}
		first = false
		twin += fmt.Sprintf(`{"id": "twin/%s", "cause": "twin", "evidence": "%s", "yes": %v, "source": {"document": "Yard"}, "basis": "common-practice"}`, s.Evidence, s.Evidence, s.Yes)
	}
	out = found(t, Options{Rules: laidOver(t, twin+`]}`)}, textbook(rules.Standard(), "damper-worn")...)
	if !strings.Contains(out.CannotPart, "No question left parts them") {
		t.Errorf("twins: %q", out.CannotPart)
	}
}

// laidOver lays one file over the standard rules.
func laidOver(t *testing.T, text string) *rules.Book {
	t.Helper()
	book, err := Overlay([]byte(text))
	if err != nil {
		t.Fatal(err)
	}
	return book
}

// A yard adds a cause, its question, its signs and its cure in one file.
func TestAYardAddsACause(t *testing.T) {
	const backing = `"source": {"document": "Yard log"}, "basis": "measured"`
	book := laidOver(t, `{"title": "Our yard",
		"evidence": [{"id": "yard-anode-knocks", "group": "sound", "kind": "symptom", "title": "Does the shaft anode knock on the strut?", "help": "Listen from under water.", "minutes": 2, "access": 1, "place": "either", "hazards": ["fault-diver"], "otherwise": 0.02, `+backing+`}],
		"causes": [{"id": "yard-anode-loose", "part": "shaft", "title": "Shaft anode loose", "text": "It slides along the shaft.", "prior": 3, "confirm": "yard-anode-knocks", "remedies": ["yard-refit-anode"], `+backing+`}],
		"signs": [{"id": "yard-1", "cause": "yard-anode-loose", "evidence": "yard-anode-knocks", "yes": 0.9, `+backing+`},
		          {"id": "yard-2", "cause": "yard-anode-loose", "evidence": "gone-in-neutral", "yes": 0.95, `+backing+`}],
		"remedies": [{"id": "yard-refit-anode", "title": "Refit the anode", "text": "Clean and clamp.", "kind": "repair", "cures": ["yard-anode-loose"], "steps": ["yard-clamp-anode"], `+backing+`}],
		"steps": [{"id": "yard-clamp-anode", "title": "Clamp the anode", "text": "Bare metal, both screws.", "hours": 0.5, "place": "ashore", "hazards": ["fault-boat-on-stands"], `+backing+`}]}`)
	out := found(t, Options{Rules: book}, yes("yard-anode-knocks", "gone-in-neutral")...)
	if out.Cause != "yard-anode-loose" || out.Remedies != "Refit the anode" {
		t.Errorf("first is %s, cured by %q", out.Cause, out.Remedies)
	}
	if !slices.ContainsFunc(diagnosis.Questions(book), func(q diagnosis.Question) bool { return q.ID == "yard-anode-knocks" }) {
		t.Error("the yard's question is not asked")
	}
}

func TestPlaceAndTimeChooseTheChecks(t *testing.T) {
	s, err := Options{}.Session(context.Background(), nil)
	if err != nil {
		t.Fatal(err)
	}
	for lies, not := range map[string]string{"afloat": "ashore", "ashore": "afloat"} {
		out, err := diagnosis.Find(s, diagnosis.Symptoms{Lies: lies, MinutesLeft: 2})
		if err != nil {
			t.Fatal(err)
		}
		if out.NextChecks[0].Question == "" {
			t.Errorf("nothing to look at %s", lies)
		}
		for _, c := range out.NextChecks {
			if c.Place == not || c.Minutes > 120 {
				t.Errorf("%s, two minutes left: %s, %v s, %s", lies, c.Question, c.Minutes, c.Place)
			}
		}
	}
}

// alignedBoat has coupling faces far out of line.
const alignedBoat = `{"name": "Teal", "coupling": {"diameter": "120 mm", "kind": "%s"}, "symptoms": [{"evidence": "shake-grows", "answer": "yes"}],
	"readings": [{"date": "2026-05-02", "couplingGaps": [{"clock": "0°", "gap": "0.60 mm"}, {"clock": "90°", "gap": "0.35 mm"}, {"clock": "180°", "gap": "0.10 mm"}, {"clock": "270°", "gap": "0.35 mm"}]}]}`

// A verdict of the boat answers its question by itself; what the person says
// wins, and the disagreement is told.
func TestVerdictsOfTheBoatAnswer(t *testing.T) {
	boat := readBoatText(t, fmt.Sprintf(alignedBoat, "rigid"))
	s, err := Run(diagnosis.FaultFinding, []byte(`{}`), Options{Boat: boat})
	if err != nil {
		t.Fatal(err)
	}
	if n := s.Result("byVerdict"); n == nil || *n.SI != 1 {
		t.Fatalf("answers by verdict: %+v", n)
	}
	if c := s.Result("cause"); c.Text != "coupling-misaligned" {
		t.Errorf("first is %s", c.Text)
	}
	if !slices.ContainsFunc(weightsOf(s), func(from string) bool { return strings.HasPrefix(from, "verdict: ") }) {
		t.Error("no weight is marked as a verdict's")
	}
	s, err = Run(diagnosis.FaultFinding, []byte(`{"answers": [{"evidence": "coupling-gaps", "answer": "no"}]}`), Options{Boat: boat})
	if err != nil {
		t.Fatal(err)
	}
	if c := s.Result("contradiction"); c == nil || !strings.Contains(c.Text, "the answer was counted") {
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

// The sheet's tables agree with the engine: probabilities fall and sum to at
// most 1, the second causes' weights add up to the odds of the first two.
func TestSheetOfTheFaultFinding(t *testing.T) {
	answers := yes("knock-into-gear", "red-dust", "gone-in-neutral")
	text, err := json.Marshal(map[string]any{"answers": symptomsJSON(answers)})
	if err != nil {
		t.Fatal(err)
	}
	s, err := Run(diagnosis.FaultFinding, text, Options{})
	if err != nil {
		t.Fatal(err)
	}
	total, last := 0.0, 1.0
	for i := 0; s.Cell("ranking", i, "probability") != nil; i++ {
		p := *s.Cell("ranking", i, "probability").SI
		if total += p; p > last {
			t.Errorf("row %d is more probable than the one before", i)
		}
		last = p
	}
	if total > 1.01 || total < 0.8 {
		t.Errorf("the first twelve sum to %v", total)
	}
	// The weights against the second cause and what is known of both beforehand
	// add up to the odds of the first two (Good, weight of evidence).
	prior := func(title string) float64 {
		for _, c := range rules.Standard().Causes().All() {
			if c.Title == title {
				return c.Prior
			}
		}
		return math.NaN()
	}
	first, second := s.Cell("ranking", 0, "name").Text, s.Cell("ranking", 1, "name").Text
	sum := 10 * math.Log10(prior(first)/prior(second))
	for i := 0; s.Cell("weights", i, "second") != nil; i++ {
		sum += *s.Cell("weights", i, "second").SI
	}
	p1, p2 := *s.Cell("ranking", 0, "probability").SI, *s.Cell("ranking", 1, "probability").SI
	// Each weight is rounded to a tenth, each probability to a thousandth.
	if want, off := 10*math.Log10(p1/p2), 0.05*3+10/math.Ln10*0.0005/p2; math.Abs(sum-want) > off {
		t.Errorf("weights add up to %v, the odds are %v decibans", sum, want)
	}
	if len(s.Drawings) != 1 || !strings.Contains(s.Drawings[0].Description, s.Result("leadingCause").Text) {
		t.Errorf("drawings: %+v", s.Drawings)
	} else if what := wellFormed(s.Drawings[0].SVG); what != "" {
		t.Error(what)
	}
}

func symptomsJSON(answers []diagnosis.Symptom) []map[string]string {
	list := []map[string]string{}
	for _, a := range answers {
		list = append(list, map[string]string{"evidence": a.Evidence, "answer": a.Answer})
	}
	return list
}

// Nothing but no points nowhere, and names no cause.
func TestOnlyNoPointsNowhere(t *testing.T) {
	var all []string
	for _, e := range rules.Standard().Evidence().All() {
		if e.Kind == "symptom" {
			all = append(all, e.ID)
		}
	}
	for _, answers := range [][]diagnosis.Symptom{no("rumble-aft", "shake-grows", "gland-drips-much", "gland-hot"), no(all...)} {
		out := found(t, Options{}, answers...)
		if out.Cause != "" || out.LeadingCause != diagnosis.NothingPoints || !math.IsNaN(float64(out.Probability)) || out.Remedies != "" || !strings.Contains(out.HowSure, "points anywhere") {
			t.Errorf("after %d times no: %q %v, %s", len(answers), out.LeadingCause, out.Probability, out.HowSure)
		}
	}
	if out := found(t, Options{}, append(no("rumble-aft", "shake-grows"), yes("gland-hot")...)...); out.Cause == "" {
		t.Error("with one yes no cause is named")
	}
}

func TestNothingAnsweredIsSaid(t *testing.T) {
	out := found(t, Options{})
	if !strings.Contains(out.HowSure, "Nothing is answered yet") || !math.IsNaN(out.Surprise) {
		t.Errorf("%q, %v", out.HowSure, out.Surprise)
	}
}

// The form of the fault finding lists every question once, with its hazards.
func TestBlankListsTheQuestions(t *testing.T) {
	var r struct {
		OK        bool
		Questions []diagnosis.Question
		Choices   map[string][]Choice
	}
	if err := json.Unmarshal(Call([]byte(`{"ask": "blank", "calculation": "fault-finding"}`)), &r); err != nil || !r.OK {
		t.Fatal(err)
	}
	if n := rules.Standard().Evidence().Len(); len(r.Questions) != n || len(r.Choices["evidence"]) != n {
		t.Errorf("%d questions and %d choices of %d", len(r.Questions), len(r.Choices["evidence"]), n)
	}
	for _, q := range r.Questions {
		if q.GroupTitle == "" {
			t.Errorf("%s has no group", q.ID)
		}
	}
}

func BenchmarkFaultFinding(b *testing.B) {
	input, problems := contract.Decode([]byte(`{"answers": [{"evidence": "knock-into-gear", "answer": "yes"}, {"evidence": "red-dust", "answer": "yes"}, {"evidence": "gone-in-neutral", "answer": "yes"}]}`))
	if len(problems) > 0 {
		b.Fatal(problems)
	}
	for b.Loop() {
		if _, err := standard.run(context.Background(), diagnosis.FaultFinding, input, Options{}); err != nil {
			b.Fatal(err)
		}
	}
}

// The newest look of the fluid answers its questions, what the person said
// wins, and every such row names a word of the boat file.
func TestLooksAnswerTheirQuestions(t *testing.T) {
	b, err := ReadBoat([]byte(`{"name": "Test", "readings": [{"date": "2026-05-01", "fluidLook": "clear"}, {"date": "2026-06-01", "fluidLook": "glitter"}]}`))
	if err != nil {
		t.Fatal(err)
	}
	from := func(input, question string) string {
		s := mustRun(t, "fault-finding", input, Options{Boat: b, NoRanges: true})
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
	if got := from(`{"answers": [{"evidence": "fluid-metal", "answer": "no"}]}`, glitter); got != "no, answer" {
		t.Errorf("by the person: %q", got)
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
