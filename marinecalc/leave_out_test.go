package marinecalc_test

import (
	"strings"
	"testing"

	"example.org/driveline/marinecalc"
)

// A request that says so is answered without what of the boat cannot be used,
// and tells it; one that does not is refused for it.
func TestLeaveOut(t *testing.T) {
	const boat = `"boat":{"name":"Plover","engine":{"power":"lots","speed":"2800 rpm"}}`
	const run = `{"ask":"run","calculation":"bolt-preload","input":{"thread":"M10x1.5","grade":"iso-8.8","finish":"zinc-shigley"},"noRanges":true,`
	if got := string(marinecalc.Call([]byte(run + boat + "}"))); !strings.HasPrefix(got, `{"ok":false`) || !strings.Contains(got, `"/boat/engine/power"`) {
		t.Errorf("it is not refused: %.200s", got)
	}
	got := string(marinecalc.Call([]byte(run + boat + `,"leaveOut":true}`)))
	if !strings.HasPrefix(got, `{"ok":true,"warnings":[{"where":"/boat/engine/power","what":"left out until it is mended: `) {
		t.Errorf("it is not answered with a warning: %.200s", got)
	}
	// No place to type means no place to lose: an ask that gives the boat back has no such member.
	if got := string(marinecalc.Call([]byte(`{"ask":"boat",` + boat + `,"leaveOut":true}`))); !strings.Contains(got, `"/leaveOut"`) {
		t.Errorf("a boat that comes back is taken without its member: %.200s", got)
	}
}
