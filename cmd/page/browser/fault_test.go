package browser

import (
	"fmt"
	"strings"
	"testing"
)

// At the dock one question fills the screen with its three answers at the
// thumb; an answer is kept, can be changed and taken back, and below even odds
// nothing is called the cause.
func TestOneQuestionAScreen(t *testing.T) {
	b := newTab(t, 360)
	b.size(360, 740)
	b.open("#/sheet/fault-finding")
	b.unfold(".complaints")
	b.press("Does it knock or clunk when going into gear")
	b.until(`document.querySelector(".thumb")`)
	if got := b.text(".result.first .value"); !strings.HasPrefix(got, "not clear yet") {
		t.Errorf("after one answer it says %q", got)
	}
	for i := range 6 {
		low := eval[[]float64](b, `[...document.querySelectorAll(".thumb button")].flatMap((e) => { const r = e.getBoundingClientRect(); return [r.top, r.bottom, r.height]; })`)
		if len(low) != 9 || low[0] < 740/2 || low[1] > 740 || low[2] < 64 {
			t.Errorf("answer %d: the three buttons stand at %v, want them in the lower half of 740 px and 64 px high", i, low)
		}
		if top := eval[float64](b, `document.querySelector(".asking h2").getBoundingClientRect().top`); top < 0 {
			t.Errorf("answer %d: the question begins at %.0f px, out of sight", i, top)
		}
		asked := b.text(".asking h2")
		b.press([]string{"Yes", "No", "Don’t know"}[i%3])
		b.until(fmt.Sprintf(`document.querySelector(".asking h2").textContent !== %q`, asked))
	}
	b.untilKept(`boats[0].typed["fault-finding"].answers.length === 7`)
	b.press("Back")
	b.untilKept(`boats[0].typed["fault-finding"].answers.length === 6`)

	b.open("#/sheet/fault-finding")
	b.until(`document.querySelectorAll(".stands > details > .given > li").length === 6`)
	first := `.stands > details > .given select`
	if got := eval[string](b, fmt.Sprintf("document.querySelector(%q).value", first)); got != "yes" {
		t.Errorf("the first answer stands as %q, want yes", got)
	}
	b.choose(first, "no")
	b.untilKept(`boats[0].typed["fault-finding"].answers.find((a) => a.evidence === "knock-into-gear").answer === "no"`)
}

// How it was looked at goes with an answer, and what would settle it can be
// answered on its own card.
func TestTheSettlingLookIsAnsweredOnItsCard(t *testing.T) {
	b := newTab(t, 360)
	b.open("#/sheet/fault-finding")
	b.unfold(".complaints")
	b.press("Does it rumble or thump aft")
	b.until(`document.querySelector(".settling")`)
	if said := b.text(".settling .time"); !strings.Contains(said, "min · ") {
		t.Errorf("the settling look has no time or place: %q", said)
	}
	eval[any](b, `document.querySelector(".settling button").click()`) // yes
	b.until(`document.querySelector(".found li")`)
	found := b.text(".found li")
	if suspected := eval[string](b, `document.querySelector(".odds")?.textContent ?? ""`); strings.Contains(suspected, found) {
		t.Errorf("%q is found and suspected at once", found)
	}
	b.choose(".asking select", "hearsay")
	b.press("Yes")
	b.untilKept(`boats[0].typed["fault-finding"].answers.some((a) => a.by === "hearsay")`)
}
