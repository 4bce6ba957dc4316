package marinecalc_test

import (
	"encoding/json"
	"fmt"
	"testing"

	"example.org/driveline/marinecalc"
)

// The work on a calculation's part is listed, and none of it is an empty list: a
// host goes through it either way.
func TestWorkOfEverySheetIsAList(t *testing.T) {
	some, none := 0, 0
	for _, c := range marinecalc.Calculations() {
		var reply struct {
			OK         bool                   `json:"ok"`
			Procedures *[]marinecalc.PartWork `json:"procedures"`
		}
		text := marinecalc.Call([]byte(fmt.Sprintf(`{"ask": "procedures", "calculation": %q}`, c.ID)))
		if err := json.Unmarshal(text, &reply); err != nil || !reply.OK || reply.Procedures == nil {
			t.Errorf("%s: %s (%v)", c.ID, text, err)
			continue
		}
		if len(*reply.Procedures) > 0 {
			some++
		} else {
			none++
		}
	}
	if some == 0 || none == 0 {
		t.Errorf("%d with work, %d without: both are to be tried", some, none)
	}
}
