package book

import (
	"context"
	"strings"
	"testing"
)

func one(t *testing.T, row string) Check {
	t.Helper()
	rows, err := Read([]byte(`{"topic": "-", "rows": [` + row + `]}`))
	if err != nil || len(rows) != 1 {
		t.Fatalf("%d rows: %v", len(rows), err)
	}
	return Compute(context.Background(), rows[0])
}

// A figure just inside what is allowed is met and one just outside is not, by
// its own size and by a width: 1 kW at 100 rad/s is 10 N·m by definition.
func TestWhatIsOffIsTold(t *testing.T) {
	const torque = `{"id": "x", "calculation": "shaft-torque", "source": "definition of power",
		"input": {"enginePower": "1 kW", "engineSpeed": 100, "gearRatioAhead": 1, "gearboxEfficiency": 1}, `
	for _, c := range []struct {
		row        string
		holds      bool
		difference string
	}{
		{`"expect": {"shaftTorque": "10 N·m"}, "tolerance": 1e-9}`, true, "0"},
		{`"expect": {"shaftTorque": "10.1 N·m"}, "tolerance": 0.0100}`, true, "-0.99 %"},
		{`"expect": {"shaftTorque": "10.1 N·m"}, "tolerance": 0.0099}`, false, "-0.99 %"},
		{`"expect": {"shaftTorque": 9.8}, "tolerance": 0.01}`, false, "+2 %"},
		{`"expect": {"shaftTorque": "9.8 N·m"}, "absolute": "0.21 N·m"}`, true, "+0.2 N·m"},
		{`"expect": {"shaftTorque": "9.8 N·m"}, "absolute": 0.19}`, false, "+0.2 N·m"},
	} {
		check := one(t, torque+c.row)
		if check.Problem != "" || len(check.Values) != 1 {
			t.Errorf("%s: %+v", c.row, check)
			continue
		}
		if v := check.Values[0]; v.Holds != c.holds || v.Difference != c.difference || check.Holds() != c.holds || v.Computed[:2] != "10" {
			t.Errorf("%s: %+v", c.row, v)
		}
	}
}

// What cannot be computed is no check that is met.
func TestWhatCannotBeComputedIsNotMet(t *testing.T) {
	for row, want := range map[string]string{
		`{"id": "x", "calculation": "shaft-torque", "expect": {"shaftTorque": 1}, "tolerance": 0.1}`:                                                                                "no source",
		`{"id": "x", "calculation": "shaft-torque", "expect": {}, "tolerance": 0.1, "source": "-"}`:                                                                                 "expects nothing",
		`{"id": "x", "calculation": "shaft-torque", "expect": {"shaftTorque": 1}, "source": "-"}`:                                                                                   "how close",
		`{"id": "x", "calculation": "shaft-torque", "expect": {"shaftTorque": 1}, "tolerance": 2, "source": "-"}`:                                                                   "how close",
		`{"id": "x", "calculation": "shaft-torqe", "expect": {"shaftTorque": 1}, "tolerance": 0.1, "source": "-"}`:                                                                  "shaft-torqe",
		`{"id": "x", "calculation": "shaft-torque", "expect": {"shaftTorque": 1}, "tolerance": 0.1, "source": "-"}`:                                                                 "enginePower",
		`{"id": "x", "calculation": "gland-drip", "input": {"dripRateAtRest": "6 drips/min", "dripRate": "6 drips/min"}, "expect": {"noSuch": 1}, "tolerance": 0.1, "source": "-"}`: "no result noSuch",
		`{"id": "x", "check": "rule", "table": "threads", "pick": "M9x9", "expect": {"pitch": 1}, "tolerance": 0.1, "source": "-"}`:                                                 "no row",
		`{"id": "x", "check": "rule", "table": "threats", "pick": "M9x9", "expect": {"pitch": 1}, "tolerance": 0.1, "source": "-"}`:                                                 "no table",
		`{"id": "x", "check": "limit", "calculation": "gland-heat", "on": "x", "expect": {"max": 1}, "tolerance": 0.1, "source": "-"}`:                                              "no limit",
		`{"id": "x", "check": "guess", "expect": {"max": 1}, "tolerance": 0.1, "source": "-"}`:                                                                                      "no check",
		`{"id": "x", "check": "spread", "model": "sum", "input": {"trials": 200001, "factors": [{}]}, "expect": {"mean": 1}, "tolerance": 0.1, "source": "-"}`:                      "at most",
		`{"id": "x", "check": "count", "input": {"counted": 1e300, "most": 1}, "expect": {"below": 1}, "tolerance": 0.1, "source": "-"}`:                                            "no count",
	} {
		if check := one(t, row); check.Holds() || !strings.Contains(check.Problem, want) {
			t.Errorf("%s: %+v", row, check)
		}
	}
	if _, err := Read([]byte(`{"rows": [{"tolerence": 1}]}`)); err == nil {
		t.Error("a misspelt member is taken")
	}
}
