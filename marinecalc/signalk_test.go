package marinecalc_test

import (
	"strings"
	"testing"

	"example.org/driveline/marinecalc"
)

const recorded = `{"updates": [{"timestamp": "2026-06-01T10:20:30Z", "values": [{"path": "propulsion.main.revolutions", "value": 31.6667}, {"path": "propulsion.main.transmission.oilTemperature", "value": 344.3}, {"path": "propulsion.main.oilPressure", "value": 310000}, {"path": "environment.water.temperature", "value": 400}]}]}`

func TestSamplesBecomeReadings(t *testing.T) {
	b, err := marinecalc.ReadBoat([]byte(`{"name": "Tern", "ownReadings": [{"name": "oilPressure", "title": "Oil pressure", "kind": "pressure", "unit": "bar", "path": "propulsion.*.oilPressure"}], "readings": [{"date": "2026-05-02", "dripRate": "6 drips/min"}]}`))
	if err != nil {
		t.Fatal(err)
	}
	after, report, err := marinecalc.AddSignalK(b, []byte(recorded), marinecalc.SignalKChoice{})
	if err != nil {
		t.Fatal(err)
	}
	text, err := after.MarshalJSON()
	if err != nil {
		t.Fatal(err)
	}
	for _, want := range []string{`"engineSpeed":"1900 rpm"`, `"gearboxTemperature":"71.15 °C"`, `"date":"2026-06-01"`, `"time":"10:20"`, `"source":"Signal K"`, `{"reading":"oilPressure","value":"3.1 bar"}`, `"dripRate":"6 drips/min"`} {
		if !strings.Contains(string(text), want) {
			t.Errorf("%s is not in %s", want, text)
		}
	}
	if report.Added != 1 || report.Left["waterTemperature"] != 1 || strings.Contains(string(text), "waterTemperature") {
		t.Errorf("water of 127 °C: %+v", report)
	}
	again, report, err := marinecalc.AddSignalK(after, []byte(recorded), marinecalc.SignalKChoice{})
	if err != nil || report.Added != 0 {
		t.Errorf("a second time: %+v, %v", report, err)
	}
	if twice, _ := again.MarshalJSON(); string(twice) != string(text) {
		t.Errorf("a second time: %s", twice)
	}
	if _, _, err := marinecalc.AddSignalK(nil, []byte(recorded), marinecalc.SignalKChoice{}); err == nil {
		t.Error("no boat, and no error")
	}
}
