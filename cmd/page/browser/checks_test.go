package browser

import (
	"strings"
	"testing"
)

// The book of checks calculates what it shows: the few rows of the page, and
// those of a file; one that is not met says so.
func TestChecksAreCalculatedInThePage(t *testing.T) {
	b := newTab(t, 360)
	b.open("#/checks")
	b.until(`document.querySelector("#view [role=status]").textContent.includes("not met")`)
	if said := b.text("#view [role=status]"); !strings.Contains(said, "checks calculated, 0 not met") {
		t.Errorf("it says %q", said)
	}
	if n := eval[int](b, `document.querySelectorAll("#view details").length`); n < 61 {
		t.Errorf("%d calculations and tables", n)
	}
	if said := eval[string](b, `document.querySelector("#view pre").textContent`); !strings.Contains(said, "the marinecalc authors") || !strings.Contains(said, "The Go Authors") || !strings.Contains(said, "Apache License") {
		t.Errorf("the terms are %.300s", said)
	}
	eval[any](b, `document.querySelector("#view summary").click()`)
	b.until(`document.querySelector("#view details[open] li")?.textContent.includes("published")`)
	b.give("json", "checks.json", `{"rows":[
		{"id":"a","calculation":"shaft-torque","source":"definition of power","tolerance":0.001,"expect":{"shaftTorque":"10 N·m"},"input":{"enginePower":"1 kW","engineSpeed":100,"gearRatioAhead":1,"gearboxEfficiency":1}},
		{"id":"b","calculation":"shaft-torque","source":"a slip","tolerance":0.001,"expect":{"shaftTorque":"11 N·m"},"input":{"enginePower":"1 kW","engineSpeed":100,"gearRatioAhead":1,"gearboxEfficiency":1}}]}`)
	b.until(`document.querySelector("#view [role=status]").textContent.startsWith("2 of 2 checks calculated, 1 not met")`)
	if said := b.text("#view li.wrong"); !strings.Contains(said, "NOT MET") || !strings.Contains(said, "published 11 N·m, calculated 10 N·m, off by -9.1 %") {
		t.Errorf("it says %q", said)
	}
	b.give("json", "boat.json", `{"name":"Tern"}`)
	b.until(`document.querySelector("#view [role=status]").textContent.startsWith("boat.json is no file of checks")`)
}
