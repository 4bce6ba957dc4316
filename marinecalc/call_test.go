package marinecalc_test

import (
	"encoding/json"
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
		{``, false, "ends too early"},
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
		`{"ask":"readings","boat":` + testboat.Logged + `}`: `"csv":"date,engineHours,changed,note,dripRate\r\n`,
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
