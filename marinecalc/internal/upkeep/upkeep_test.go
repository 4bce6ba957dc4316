package upkeep_test

import (
	"fmt"
	"math"
	"os"
	"slices"
	"strings"
	"testing"

	"example.org/driveline/marinecalc"
	"example.org/driveline/marinecalc/internal/testboat"
	"example.org/driveline/marinecalc/problem"
	"example.org/driveline/marinecalc/rules"
)

// tern has run 100 hours from 1 January to 10 April 2026, an hour a day.
func tern(service string) string {
	return `{"name":"Tern","coupling":{"kind":"rigid"},` + service + `"readings":[{"date":"2026-01-01","engineHours":"1000 h"},{"date":"2026-04-11","engineHours":"1100 h"}]}`
}

func lineOf(t *testing.T, s *marinecalc.Sheet, what string) map[string]string {
	t.Helper()
	list := s.Table("schedule")
	for _, r := range list.Rows {
		at := list.Reader(r)
		if at("what") == what {
			return map[string]string{"state": at("state"), "due": at("due"), "by": at("by"), "lastDone": at("lastDone"), "every": at("every"), "authority": at("authority"), "hoursLeft": at("hoursLeft"), "hazard": at("hazard")}
		}
	}
	t.Fatalf("there is no %q", what)
	return nil
}

// Days by hand, at an hour a day from 2026-04-11 and 1100 h.
func TestDueDaysByHand(t *testing.T) {
	maker := `"intervals":[{"item":"fluid-change","hours":"250 h","document":"Gearbox manual (invented), p. 3"}]`
	for _, c := range []struct {
		name, service, what string
		want                map[string]string
	}{
		{"by hours, before the year is round", `"service":{"done":[{"item":"fluid-change","date":"2026-02-20","engineHours":"1050 h"}],` + maker + `},`, "Gearbox fluid",
			map[string]string{"state": "later", "due": "2026-10-28", "by": "hours", "lastDone": "2026-02-20, 1050 h", "every": "250 h", "hoursLeft": "200 h", "authority": "maker's figure: Gearbox manual (invented), p. 3"}},
		{"by the calendar", `"service":{"done":[{"item":"fluid-change","date":"2025-06-01","engineHours":"990 h"}]},`, "Gearbox fluid",
			map[string]string{"state": "soon", "due": "2026-06-01", "by": "date", "every": "300 h or 12 months", "authority": "common practice"}},
		{"the hours are run", `"service":{"done":[{"item":"fluid-change","date":"2025-06-01","engineHours":"780 h"}]},`, "Gearbox fluid",
			map[string]string{"state": "overdue", "by": "hours", "hoursLeft": "-20 h"}},
		{"hours between two marks", `"service":{"done":[{"item":"fluid-change","date":"2026-02-20"}]},`, "Gearbox fluid", map[string]string{"lastDone": "2026-02-20, 1050 h"}},
		{"by age", `"service":{"done":[{"item":"mounts-renew","date":"2016-04-11"}]},`, "Engine mounts, renewed", map[string]string{"state": "overdue", "due": "2026-04-09", "by": "date"}},
		{"a day short of its age", `"service":{"done":[{"item":"mounts-renew","date":"2016-04-14"}]},`, "Engine mounts, renewed", map[string]string{"state": "soon", "due": "2026-04-12"}},
		{"never", ``, "Engine mounts, renewed", map[string]string{"state": "never looked at", "due": "", "lastDone": "nobody, as far as the boat file tells"}},
	} {
		s := testboat.RunOn(t, tern(c.service), "service-schedule", `{}`)
		got := lineOf(t, s, c.what)
		for k, want := range c.want {
			if got[k] != want {
				t.Errorf("%s: %s is %q, want %q", c.name, k, got[k], want)
			}
		}
	}
}

// What was worked on is looked at again within a fortnight, three weeks for the
// gaps (the note of that row), and after the second look in its usual time.
func TestFirstLookAfterWorkComesSooner(t *testing.T) {
	gaps := `"couplingGaps":[{"clock":"0°","gap":"0.3 mm"},{"clock":"90°","gap":"0.3 mm"},{"clock":"180°","gap":"0.3 mm"},{"clock":"270°","gap":"0.3 mm"}],`
	first := `{"date":"2026-03-01","changed":true,"dripRate":"6 drips/min",` + gaps + `"symptoms":[{"evidence":"coupling-bolt-turns","answer":"no"}]}`
	again := `{"date":"2026-03-10","dripRate":"6 drips/min",` + gaps + `"symptoms":[{"evidence":"coupling-bolt-turns","answer":"no"}]}`
	old := `{"date":"2026-02-01","dripRate":"30 drips/min"},`
	event := `"events":[{"date":"2026-02-20","what":"gland packed afresh","renews":"dripRate"}],`
	for _, c := range []struct{ name, boat, what, due string }{
		{"gland, first", `"readings":[` + first + `]`, "Gland: drips and temperature", "2026-03-15"},
		{"gland, again", `"readings":[` + first + `,` + again + `]`, "Gland: drips and temperature", "2026-04-09"},
		{"gland, first after an event", event + `"readings":[` + old + strings.Replace(first, `"changed":true,`, "", 1) + `]`, "Gland: drips and temperature", "2026-03-15"},
		{"gland, no work", `"readings":[` + old + strings.Replace(first, `"changed":true,`, "", 1) + `]`, "Gland: drips and temperature", "2026-03-31"},
		{"gaps, first", `"readings":[` + first + `]`, "Coupling alignment", "2026-03-22"},
		{"gaps, again", `"readings":[` + first + `,` + again + `]`, "Coupling alignment", "2027-03-10"},
		{"bolts, first", `"readings":[` + first + `]`, "Coupling bolts", "2026-03-15"},
		{"bolts, again", `"readings":[` + first + `,` + again + `]`, "Coupling bolts", "2027-03-10"},
	} {
		if got := lineOf(t, testboat.RunOn(t, `{"name":"Tern",`+c.boat+`}`, "service-schedule", `{}`), c.what); got["due"] != c.due {
			t.Errorf("%s: %v, want %s", c.name, got, c.due)
		}
	}
}

// A no by who looked is a look; a yes is a fault, and hearsay is none.
func TestAnswersCountAsLooking(t *testing.T) {
	for answer, want := range map[string]string{`"answer":"no"`: "later", `"answer":"yes"`: "found at fault", `"answer":"yes","by":"hearsay"`: "never looked at", `"answer":"unknown"`: "never looked at", `"answer":"no","by":"hearsay"`: "never looked at"} {
		boat := `{"name":"Tern","readings":[{"date":"2026-03-01","symptoms":[{"evidence":"coupling-bolt-turns",` + answer + `}]}]}`
		if got := lineOf(t, testboat.RunOn(t, boat, "service-schedule", `{}`), "Coupling bolts"); got["state"] != want {
			t.Errorf("%s: %v", answer, got)
		}
	}
	// What was found at fault stays so until it is cured or seen to be well.
	yes := `{"date":"2026-03-01","symptoms":[{"evidence":"coupling-bolt-turns","answer":"yes"}]}`
	for readings, want := range map[string]string{
		yes + `],"service":{"done":[{"item":"coupling-bolts","date":"2026-03-01"}]}`:                       "later",
		yes + `],"service":{"done":[{"item":"coupling-bolts","date":"2026-02-02"}]}`:                       "found at fault",
		yes + `,{"date":"2026-03-05","symptoms":[{"evidence":"coupling-bolt-turns","answer":"no"}]}]`:      "later",
		yes + `,{"date":"2026-03-05","symptoms":[{"evidence":"coupling-bolt-turns","answer":"unknown"}]}]`: "found at fault",
		`{"date":"2026-02-05","symptoms":[{"evidence":"coupling-bolt-turns","answer":"no"}]},` + yes + `]`: "found at fault",
	} {
		s := testboat.RunOn(t, `{"name":"Tern","readings":[`+readings+`}`, "service-schedule", `{}`)
		if leads := strings.HasPrefix(s.Next[0].Text, "Cure first what was found at fault"); leads != (want == "found at fault") {
			t.Errorf("%s: next %s", readings, s.Next[0].Text)
		}
		got := lineOf(t, s, "Coupling bolts")
		if got["state"] != want {
			t.Errorf("%s: %v", readings, got)
		}
		if says := s.Result("says").Text; strings.Contains(says, "Found at fault: coupling bolts.") != (want == "found at fault") {
			t.Errorf("%s: %s", readings, says)
		}
	}
	boat := `{"name":"Tern","gland":{"packing":"flax"},"events":[{"date":"2026-02-20","what":"gland packed afresh","renews":"dripRate"}],"readings":[{"date":"2026-03-01","dripRate":"6 drips/min"}]}`
	if got := lineOf(t, testboat.RunOn(t, boat, "service-schedule", `{}`), "Gland packing"); got["state"] != "never looked at" || !strings.Contains(got["lastDone"], "was it “gland packed afresh” on 2026-02-20?") {
		t.Errorf("an event that may have been it: %v", got)
	}
}

// What must be read under way waits while the shaft must not run.
func TestScheduleWaitsForTheShaft(t *testing.T) {
	for answer, waits := range map[string]bool{"yes": true, "no": false} {
		boat := `{"name":"Tern","readings":[{"date":"2026-03-01","dripRate":"0 drips/min","symptoms":[{"evidence":"gland-hot","answer":"` + answer + `"}]}]}`
		if says := testboat.RunOn(t, boat, "service-schedule", `{}`).Result("says").Text; strings.HasPrefix(says, "The shaft stands until it is cured") != waits {
			t.Errorf("%s: %q", answer, says)
		}
	}
}

func TestReadingsCountAsLooking(t *testing.T) {
	boat := `{"name":"Tern","readings":[{"date":"2026-03-01","engineHours":"1000 h","dripRate":"6 drips/min","fluidChanged":true},{"date":"2026-03-20","engineHours":"1010 h","fluidChanged":false}]}`
	s := testboat.RunOn(t, boat, "service-schedule", `{}`)
	if got := lineOf(t, s, "Gland: drips and temperature"); got["lastDone"] != "2026-03-01, 1000 h" || got["state"] != "soon" {
		t.Errorf("%v", got)
	}
	if got := lineOf(t, s, "Gearbox fluid"); got["lastDone"] != "2026-03-01, 1000 h" {
		t.Errorf("a change that was none counts: %v", got)
	}
	for by, want := range map[string]string{"jar": "2026-03-20", "magnet": "2026-03-20", "dipstick": "nobody, as far as the boat file tells"} {
		look := `{"name":"Tern","readings":[{"date":"2026-03-20","fluidLook":"clear","fluidLookBy":"` + by + `"}]}`
		if got := lineOf(t, testboat.RunOn(t, look, "service-schedule", `{}`), "Gearbox fluid: metal"); got["lastDone"] != want {
			t.Errorf("looked at by %s: %v", by, got)
		}
	}
	trial := `{"name":"Tern","seaTrial":{"date":"2026-04-02","runs":[{"stage":"full","gearboxTemperature":"60 °C"}]},"readings":[{"date":"2026-04-11"}]}`
	if got := lineOf(t, testboat.RunOn(t, trial, "service-schedule", `{}`), "Gearbox temperature"); got["lastDone"] != "2026-04-02" {
		t.Errorf("a sea trial does not count: %v", got)
	}
	if got := lineOf(t, testboat.RunOn(t, trial, "service-schedule", `{"today":"2026-04-01"}`), "Gearbox temperature"); got["state"] != "never looked at" {
		t.Errorf("a sea trial to come counts: %v", got)
	}
}

// The words on both sides, and the limit that decides only where a maker or a
// manual stands behind the interval.
func TestOverdueOnBothSides(t *testing.T) {
	maker := `"intervals":[{"item":"fluid-change","hours":"50 h","document":"Gearbox manual (invented)"}]`
	var others []string
	for _, r := range rules.Standard().Table("service-intervals").Rows.All() {
		if r.Pick != "fluid-change" {
			others = append(others, `{"item":"`+r.Pick+`"}`)
		}
	}
	alone := `"without":[` + strings.Join(others, ",") + `],` // the fluid is all there is to care for
	for _, c := range []struct{ name, service, overdue, guide string }{
		{"nothing known", ``, "not measured", "not measured"},
		{"one thing known and in time, of many", `"service":{"done":[{"item":"fluid-change","date":"2026-02-20"}]},`, "not measured", "not measured"},
		{"one thing known and overdue, of many", `"service":{"done":[{"item":"fluid-change","date":"2024-02-20"}]},`, "not measured", "outside the guide"},
		{"all in time", `"service":{` + alone + `"done":[{"item":"fluid-change","date":"2026-02-20"}]},`, "within", "inside the guide"},
		{"by common practice", `"service":{` + alone + `"done":[{"item":"fluid-change","date":"2024-02-20","engineHours":"600 h"}]},`, "within", "outside the guide"},
		{"by the maker", `"service":{` + alone + `"done":[{"item":"fluid-change","date":"2026-02-19","engineHours":"1049 h"}],` + maker + `},`, "beyond", "inside the guide"},
		{"an hour before the maker's", `"service":{` + alone + `"done":[{"item":"fluid-change","date":"2026-02-22","engineHours":"1051 h"}],` + maker + `},`, "within", "inside the guide"},
	} {
		s := testboat.RunOn(t, tern(c.service), "service-schedule", `{}`)
		for limit, want := range map[string]string{"service-overdue": c.overdue, "service-overdue-guide": c.guide} {
			if v := s.Verdict(limit); v == nil || string(v.Word) != want {
				t.Errorf("%s: %s is %+v", c.name, limit, v)
			}
		}
	}
}

// A reading that nears its limit brings the day forward.
func TestWearBringsTheDayForward(t *testing.T) {
	rows := ""
	for i, v := range []string{"6", "7", "8", "9", "10", "11"} {
		rows += fmt.Sprintf(`{"date":"2026-03-%02d","engineHours":"%d h","dripRate":"%s drips/min"},`, 1+4*i, 1000+i, v)
	}
	boat := `{"name":"Tern","follow":{"reading":"dripRate","limit":"LIMIT"},"readings":[` + strings.TrimSuffix(rows, ",") + `]}`
	near := lineOf(t, testboat.RunOn(t, strings.Replace(boat, "LIMIT", "16 drips/min", 1), "service-schedule", `{}`), "Gland: drips and temperature")
	trend := testboat.RunOn(t, strings.Replace(boat, "LIMIT", "16 drips/min", 1), "reading-trend", `{}`).Result("sureDate").Text
	if near["by"] != "her readings" || near["due"] != trend {
		t.Errorf("%v, the trend says %s", near, trend)
	}
	if far := lineOf(t, testboat.RunOn(t, strings.Replace(boat, `,"limit":"LIMIT"`, "", 1), "service-schedule", `{}`), "Gland: drips and temperature"); far["by"] != "date" {
		t.Errorf("%v", far)
	}
	over := testboat.RunOn(t, strings.Replace(boat, "LIMIT", "9 drips/min", 1), "service-schedule", `{}`)
	if line := lineOf(t, over, "Gland: drips and temperature"); line["state"] != "overdue" || over.Verdict("service-overdue").Word != "beyond" {
		t.Errorf("%v %+v", line, over.Verdict("service-overdue"))
	}
}

func TestRowsOfWhatIsAboard(t *testing.T) {
	names := func(s *marinecalc.Sheet) (list []string) {
		for _, r := range s.Table("schedule").Rows {
			list = append(list, s.Table("schedule").Reader(r)("what"))
		}
		return list
	}
	const element, zinc = "Element of the flexible coupling", "Zincs of engine and gearbox cooler"
	rigid := names(testboat.RunOn(t, tern(`"service":{"without":[{"item":"heat-exchanger-zinc"}]},`), "service-schedule", `{}`))
	flexible := names(testboat.RunOn(t, strings.Replace(tern(""), "rigid", "flexible", 1), "service-schedule", `{}`))
	if slices.Contains(rigid, element) || slices.Contains(rigid, zinc) || !slices.Contains(flexible, element) || !slices.Contains(flexible, zinc) {
		t.Errorf("%v\n%v", rigid, flexible)
	}
	for use, want := range map[string]string{`"inspected-passenger"`: "2.5 years", `"average-yacht"`: "5 years"} {
		s := testboat.RunOn(t, tern(`"use":`+use+`,`), "service-schedule", `{}`)
		if got := lineOf(t, s, "Shaft withdrawn and looked at")["every"]; got != want {
			t.Errorf("%s: %s", use, got)
		}
	}
	if got := lineOf(t, testboat.RunOn(t, tern(""), "service-schedule", `{}`), "Shaft withdrawn and looked at")["every"]; got != "5 years" {
		t.Error(got)
	}
}

// The debris of the boat by hand: 10 mm × 10 mm × 0.1 mm of steel is 78.5 mg,
// in 1 kg of fluid 78.5 ppm in 100 hours. A method that takes 5 ppm and sees
// 60 % shows it after 5/0.6/0.785 = 10.6 h, one of 60 ppm and 3 % after 2548 h.
func TestWhenEachLookWouldHaveShownIt(t *testing.T) {
	boat := strings.Replace(tern(`"fluid":{"volume":"1 L","density":"1000 kg/m³"},"wornPart":{"metal":"METAL","depth":"0.1 mm","length":"10 mm","width":"10 mm","shape":"even","serviceTime":"100 h"},SERVICE`), "SERVICE", "", 1)
	steel := testboat.RunOn(t, strings.Replace(boat, "METAL", "carbon-steel", 1), "service-schedule", `{}`)
	if rate := steel.Result("wearRate"); rate == nil || math.Abs(*rate.SI-78.5e-6) > 0.6e-6 {
		t.Fatalf("%+v", rate)
	}
	first := testboat.Column(t, steel, "shownBy", "method", "first")
	after := testboat.Column(t, steel, "shownBy", "method", "after")
	if !strings.HasPrefix(after["Magnet through the sump"], "11 h (") || !strings.HasPrefix(first["Magnet through the sump"], "2026-01-11 (") {
		t.Errorf("%v\n%v", first, after)
	}
	if !strings.HasPrefix(after["Dipstick"], "25") {
		t.Errorf("%v", after["Dipstick"])
	}
	bronze := testboat.RunOn(t, strings.Replace(boat, "METAL", "tin-bronze", 1), "service-schedule", `{}`)
	if got := testboat.Column(t, bronze, "shownBy", "method", "first")["Magnet through the sump"]; !strings.HasPrefix(got, "never") {
		t.Error(got)
	}
	// Fluid changed each 10 hours: the magnet, which takes 10.6, shows it only
	// after the last change.
	done := ""
	for h := 1010; h < 1100; h += 10 {
		done += fmt.Sprintf(`{"item":"fluid-change","date":"2026-04-10","engineHours":"%d h"},`, h)
	}
	changed := strings.Replace(strings.Replace(boat, "METAL", "carbon-steel", 1), `"readings"`, `"service":{"done":[`+strings.TrimSuffix(done, ",")+`]},"readings"`, 1)
	s := testboat.RunOn(t, changed, "service-schedule", `{}`)
	if got := testboat.Column(t, s, "shownBy", "method", "first")["Magnet through the sump"]; !strings.HasPrefix(got, "2026-04-11") {
		t.Error(got)
	}
	if s := testboat.RunOn(t, tern(""), "service-schedule", `{}`); s.Table("shownBy") != nil && len(s.Table("shownBy").Rows) > 0 {
		t.Error("a wear that nobody measured is dated")
	}
}

// One cause with one part of twenty days, that strands her in half of all cases:
// one trouble a year costs ten days, times its share of all troubles.
func TestSparesByDaysWithoutDrive(t *testing.T) {
	const made = `"source":{"document":"invented for a test"},"basis":"common-practice"`
	book := testboat.Overlay(t, `{"causes":[{"id":"horn","part":"engine","title":"Horn silent","text":"It is.","prior":1000,"confirm":"mount-rubber","remedies":["horn-new"],`+made+`}],
	 "remedies":[{"id":"horn-new","title":"New horn","kind":"replace","text":"Fit it.","cures":["horn"],"steps":["horn-fit"],`+made+`}],
	 "steps":[{"id":"horn-fit","title":"Fit the horn","text":"Do.","after":[],"hours":1,"place":"either","phase":"work","safe":"nothing to fear","parts":[{"part":"horn-part","quantity":1}],`+made+`}],
	 "parts":[{"id":"horn-part","title":"Horn","unit":"piece","leadDays":20,`+made+`}],
	 "table":"stranding","rows":[{"id":"horn","name":"Horn","values":{"strands":{"low":"40 %","typical":"50 %","high":"60 %","shape":"triangular"}},"decides":false,"bracket":"a test",`+made+`}]}`)
	run := func(faults string, rows *rules.Book) *marinecalc.Sheet {
		return testboat.Run(t, "service-schedule", `{"today":"2026-04-11","faultsPerYear":`+faults+`,"spares":[{"part":"horn-part","aboard":true,"price":"50 EUR","mass":"4 kg"}]}`, marinecalc.Options{Rules: rows})
	}
	all := 1000.0
	for _, c := range rules.Standard().Causes().All() {
		all += c.Prior
	}
	days := func(d float64) string { return fmt.Sprintf("%.2g days a year", d*1000/all) }
	s := run("1", book)
	for column, want := range map[string]string{"aboard": "yes", "saves": days(10), "perPrice": days(20), "perMass": days(2.5), "leadTime": "20 days", "for": "Horn silent"} {
		if got := testboat.Column(t, s, "sparesBy", "part", column)["Horn"]; got != want {
			t.Errorf("%s: %q, want %q", column, got, want)
		}
	}
	if got := testboat.Column(t, run("0.5", book), "sparesBy", "part", "saves")["Horn"]; got != days(5) {
		t.Error(got)
	}
}

func TestSchedulesThatCannotBeAreRefused(t *testing.T) {
	for _, c := range []struct{ name, input, where string }{
		{"no such care", `{"today":"2026-04-11","done":[{"item":"fluid-chagne","date":"2026-01-01"}]}`, "/done/0/item"},
		{"no such day", `{"today":"2026-04-11","done":[{"item":"fluid-change","date":"2026-02-30"}]}`, "/done/0/date"},
		{"an interval of nothing", `{"today":"2026-04-11","intervals":[{"item":"fluid-change","document":"Manual"}]}`, "/intervals/0"},
		{"no such part", `{"today":"2026-04-11","spares":[{"part":"dampner"}]}`, "/spares/0/part"},
		{"not aboard, and not there", `{"today":"2026-04-11","without":[{"item":"sails"}]}`, "/without/0/item"},
		{"no today", `{}`, "/today"},
	} {
		_, err := marinecalc.Run("service-schedule", []byte(c.input), marinecalc.Options{})
		if !slices.ContainsFunc(problem.Of(err), func(p problem.Problem) bool { return strings.HasPrefix(p.Where, c.where) }) {
			t.Errorf("%s: %v", c.name, err)
		}
	}
}

// A reading that is at its limit is not overdue to be read: its cause is to be found.
func TestAReadingAtItsLimitAsksForTheCause(t *testing.T) {
	text, err := os.ReadFile(testboat.Root("testdata", "cases", "hot-gearbox.json"))
	if err != nil {
		t.Fatal(err)
	}
	s := testboat.Run(t, "service-schedule", `{}`, marinecalc.Options{Boat: testboat.Read(t, string(text))})
	v := s.Verdict("service-overdue")
	if v == nil || !strings.Contains(v.Sentence, "gearbox temperature, at its limit") {
		t.Errorf("%+v", v)
	}
	list := s.Table("schedule")
	at := list.Reader(list.Rows[0])
	if at("what") != "Gearbox temperature" || !strings.HasPrefix(at("how"), "Its readings are at their limit: find the cause") || at("hoursLeft") != "" {
		t.Errorf("%s, %s left: %s", at("what"), at("hoursLeft"), at("how"))
	}
}

// Readings that may have come to their limit are not said to be at it: they are read again.
func TestReadingsNearTheirLimitAreNotAtIt(t *testing.T) {
	b := testboat.Read(t, `{"name": "Sorrel", "lies": "ashore", "shaft": {"diameter": "30 mm"},
		"sternBearing": {"kind": "rubber", "newClearance": "0.15 mm"}, "follow": {"reading": "bearingClearance", "limit": "0.762 mm"}, "readings": [
		{"date": "2026-03-14", "engineHours": "900 h", "bearingClearance": "0.69 mm"}, {"date": "2025-03-15", "engineHours": "750 h", "bearingClearance": "0.58 mm"},
		{"date": "2024-03-16", "engineHours": "600 h", "bearingClearance": "0.46 mm"}, {"date": "2023-03-11", "engineHours": "450 h", "bearingClearance": "0.34 mm"},
		{"date": "2022-03-12", "engineHours": "300 h", "bearingClearance": "0.22 mm"}]}`)
	v := testboat.Run(t, "service-schedule", `{"today": "2026-06-01"}`, marinecalc.Options{Boat: b}).Verdict("service-overdue")
	if v == nil || !strings.Contains(v.Sentence, "stern bearing, which may be at its limit by now") {
		t.Errorf("%+v", v)
	}
}

// A spare says what share of troubles its own is. Years between two of them, of a part
// that care renews each few years, nobody would believe.
func TestASpareSaysWhatShareOfTroubles(t *testing.T) {
	s := testboat.RunOn(t, tern(""), "service-schedule", `{}`)
	sum := 0
	for part, because := range testboat.Column(t, s, "sparesBy", "part", "because") {
		sum++
		if strings.Contains(because, "year") || !strings.Contains(because, "of 100 troubles of drivetrains") {
			t.Errorf("%s: %s", part, because)
		}
	}
	if sum == 0 {
		t.Error("no spares")
	}
}
