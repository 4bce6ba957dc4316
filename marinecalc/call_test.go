package marinecalc_test

import (
	"encoding/json"
	"fmt"
	"strings"
	"testing"

	"example.org/driveline/marinecalc"
	"example.org/driveline/marinecalc/internal/testboat"
)

// Every answer that a request can get is JSON with ok, and a refusal says
// where and what.
func TestCallAnswersEverything(t *testing.T) {
	cases := []struct {
		request string
		ok      bool
		has     string
	}{
		{`{"ask": "contents"}`, true, `"gland-heat"`},
		{`{"ask": "blank", "calculation": "bolt-preload"}`, true, `"M10x1.5"`},
		{`{"ask": "run", "calculation": "shaft-torque", "input": {"enginePower": "20 kW", "engineSpeed": "2400 rpm", "gearRatioAhead": 2}}`, true, `"shaftTorque"`},
		{`{"ask": "boat"}`, true, `"makersFigures"`},
		{`{"ask": "survey", "boat": {"name": "X"}}`, true, `"missing"`},
		{`{"ask": "survey"}`, false, `"/boat"`},
		{`{"ask": "run", "calculation": "shaft-tork"}`, false, `shaft-torque\"?`},
		{`{"ask": "run", "calculation": "shaft-torque", "input": 5}`, false, "not an object"},
		{`{"ask": "run", "calculation": "shaft-torque", "trials": 5, "input": {}}`, false, `"/trials"`},
		{`{"ask": "run", "calculation": "shaft-torque", "units": "imperial", "input": {}}`, false, `"/units"`},
		{`{"ask": "run", "calculation": "shaft-torque", "boat": {"name": 5}, "input": {}}`, false, `"/boat/name"`},
		{`{"ask": "run", "calculation": "shaft-torque", "overlays": [{"rows": 5}], "input": {}}`, false, `"/overlays/0`},
		{`{"ask": "run", "calculator": "shaft-torque"}`, false, `"/calculator"`},
		{`{"ask": "sing"}`, false, `"/ask"`},
		{`[]`, false, "not an object"},
		{``, false, "the text is empty"},
	}
	for _, c := range cases {
		out := marinecalc.Call([]byte(c.request))
		var r struct {
			OK       bool
			Problems marinecalc.Problems
		}
		if err := json.Unmarshal(out, &r); err != nil {
			t.Errorf("%s: %v", c.request, err)
		}
		if r.OK != c.ok || !strings.Contains(string(out), c.has) || !c.ok && len(r.Problems) == 0 {
			t.Errorf("%s gives %.400s", c.request, out)
		}
	}
}

func TestCallTakesReadings(t *testing.T) {
	for request, has := range map[string]string{
		`{"ask":"readings","boat":` + testboat.Logged + `}`: `"csv":"date,engineHours,changed,note,couplingGaps,dripRate\r\n`,
		`{"ask":"readings","boat":{"name":"Tern","readings":[{"date":"2026-05-01","engineHours":"1500 h"},{"date":"2026-04-01","engineHours":"1562 h"}]}}`: `"where":"/boat/readings/0/engineHours","what":"Hour meter: It stood at 1500 h on 2026-05-01 and at 1562 h on 2026-04-01 before.`,
		`{"ask":"readings"}`: `this needs a boat`,
		`{"ask":"add-readings","boat":` + testboat.Logged + `,"csv":"date,dripRate\n2026-06-01,7 drips/min\n"}`:      `"dripRate":"7 drips/min"`,
		`{"ask":"add-readings","boat":` + testboat.Logged + `,"csv":"date,dripRate\n2026-06-01,7\n"}`:                `"where":"/csv/2/dripRate"`,
		`{"ask":"add-readings","boat":` + testboat.Logged + `,"csv":"date,count6\n2026-06-01,many\n"}`:               `"where":"/csv/2/count6"`,
		`{"ask":"add-readings","boat":` + testboat.Logged + `}`:                                                      `"where":"/csv"`,
		`{"ask":"add-readings","csv":"date,dripRate\n2026-06-01,7 drips/min\n"}`:                                     `this needs a boat`,
		`{"ask":"add-readings","boat":` + testboat.Logged + `,"csv":7}`:                                              `csv is not a text`,
		`{"ask":"add-readings","boat":{"name":"Tern","reading":[]},"csv":"date,dripRate\n2026-06-01,7 drips/min\n"}`: `"warnings":[{"where":"/boat/reading"`,
	} {
		if out := string(marinecalc.Call([]byte(request))); !strings.Contains(out, has) {
			t.Errorf("%s gives %.400s", request, out)
		}
	}
}

func TestCallExports(t *testing.T) {
	for request, has := range map[string]string{
		`{"ask": "calendar", "input": ` + testboat.SpringWork + `}`:                                                                             `"calendar":"BEGIN:VCALENDAR\r\n`,
		`{"ask": "csv", "calculation": "work-plan", "table": "shopping", "input": ` + testboat.SpringWork + `}`:                                 `"csv":"Part,Amount`,
		`{"ask": "csv", "calculation": "work-plan", "table": "songs", "input": ` + testboat.SpringWork + `}`:                                    `no list`,
		`{"ask": "calendar", "calculation": "work-plan", "input": {"today": "2026-03-02", "remedies": [{"remedy": "repack-gland"}]}}`:           `has a date`,
		`{"ask": "calendar", "calculation": "shaft-torque", "input": {"enginePower": "20 kW", "engineSpeed": "2400 rpm", "gearRatioAhead": 2}}`: `holds no dates`,
	} {
		if out := string(marinecalc.Call([]byte(request))); !strings.Contains(out, has) {
			t.Errorf("%s gives %.300s", request, out)
		}
	}
}

// What was typed is written into the boat file, and what has no place there
// is named.
func TestCallKeeps(t *testing.T) {
	for request, has := range map[string]string{
		`{"ask":"keep","boat":{"name":"Tern"},"calculation":"gland-heat","date":"2026-06-01","input":{"wantedRise":"10 K","dripRate":"6 drips/min","boxBore":"46 mm"}}`: `"boat":{"name":"Tern","gland":{"boxBore":"46 mm"},"readings":[{"date":"2026-06-01","dripRate":"6 drips/min"}]},"kept":[{"input":"boxBore",`,
		`{"ask":"keep","boat":{"name":"Tern"},"calculation":"gland-heat","date":"2026-06-01","input":{"wantedRise":"10 K"}}`:                                            `"boat":{"name":"Tern"},"left":["wantedRise"]`,
		`{"ask":"keep","boat":{"name":"Tern"},"calculation":"gland-heat","date":"2026-06-01","input":{"boxBore":"46 kg"}}`:                                              `"where":"/boxBore"`,
		`{"ask":"keep","boat":{"name":"Tern"},"calculation":"gland-heat","date":"2026-06-01","input":5}`:                                                                `"ok":false`,
		`{"ask":"keep","boat":{"name":"Tern"},"calculation":"gland-heat","date":"2026-06-31","input":{}}`:                                                               `"where":"/date"`,
		`{"ask":"keep","boat":{"name":"Tern"},"calculation":"gland-heat","input":{}}`:                                                                                   `"where":"/date"`,
		`{"ask":"keep","calculation":"gland-heat","date":"2026-06-01","input":{}}`:                                                                                      `this needs a boat`,
		`{"ask":"keep","boat":{"name":"Tern"},"date":"2026-06-01","input":{}}`:                                                                                          `"where":"/calculation"`,
	} {
		if out := string(marinecalc.Call([]byte(request))); !strings.Contains(out, has) {
			t.Errorf("%s gives %.600s", request, out)
		}
	}
}

// A host need not read the boat file: the reply tells its days, what it gives
// for an input, and a list as it stands there.
func TestCallTellsWhatTheBoatHolds(t *testing.T) {
	const dated = `{"name":"Tern","shaft":{"diameter":"30 mm"},"symptoms":[{"evidence":"gland-hot","answer":"no"}],
		"readings":[{"date":"2026-05-01","shaft":{"diameter":"32 mm"}},{"date":"2026-04-01","symptoms":[{"evidence":"gland-hot","answer":"yes"}]},{"date":"2026-05-01"}]}`
	for request, has := range map[string]string{
		`{"ask":"boat","boat":` + dated + `}`:                                   `"days":["2026-04-01","2026-05-01"]`,
		`{"ask":"blank","calculation":"key-strength","boat":` + dated + `}`:     `"shaftDiameter":{"text":"32 mm","origin":"boat","date":"2026-05-01",`,
		`{"ask":"blank","calculation":"fault-finding","boat":` + dated + `}`:    `"source":"reading of 2026-04-01","value":[{"answer":"yes","evidence":"gland-hot"}]`,
		`{"ask":"run","calculation":"key-strength","input":{}}`:                 `"kind":"missing"`,
		`{"ask":"run","calculation":"shaft-torque","input":{"enginePower":[]}}`: `"allowed":"a power with its unit","hint":`,
		`{"ask":"run","calculation":"shaft-torque","input":{"enginePower":{}}}`: `"bare":"W"`,
	} {
		if out := string(marinecalc.Call([]byte(request))); !strings.Contains(out, has) {
			i := strings.Index(out, `"given"`)
			t.Errorf("%s gives %.300s … %.900s", request, out, out[max(i, 0):])
		}
	}
}

// A fraction without a unit is one of an inch, whatever unit the field has; a
// plain number is in the field's own.
func TestAFractionIsOfAnInch(t *testing.T) {
	for text, want := range map[string]string{"1-1/4": "1-1/4 in", "7/16": "7/16 in", "1 1/2": "1 1/2 in", "12": "12 mm", "5''": "5''"} {
		var reply struct{ Text string }
		request := fmt.Sprintf(`{"ask": "quantity", "quantity": "length", "text": %q, "unit": "mm"}`, text)
		if err := json.Unmarshal(marinecalc.Call([]byte(request)), &reply); err != nil || reply.Text != want {
			t.Errorf("%s reads as %q, %v, want %q", text, reply.Text, err, want)
		}
	}
}

// A bare number gets its field's unit before a ± in per cent.
func TestABareNumberInPerCent(t *testing.T) {
	for text, want := range map[string]string{"60 ± 10 %": "60 N·m ± 10 %", "60 +/- 10%": "60 N·m ± 10%", "60 ± 5": "60 ± 5 N·m", "60 lbf·ft ± 10 %": "60 lbf·ft ± 10 %"} {
		var reply struct{ Text string }
		request := fmt.Sprintf(`{"ask": "quantity", "quantity": "torque", "text": %q, "unit": "N·m"}`, text)
		if err := json.Unmarshal(marinecalc.Call([]byte(request)), &reply); err != nil || reply.Text != want {
			t.Errorf("%s reads as %q, %v, want %q", text, reply.Text, err, want)
		}
	}
}
