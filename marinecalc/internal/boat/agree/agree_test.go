package agree_test

import (
	"slices"
	"testing"

	"example.org/driveline/marinecalc/internal/boat/agree"
	"example.org/driveline/marinecalc/internal/testboat"
	"example.org/driveline/marinecalc/rules"
)

// Figures that contradict each other are told, each on both sides of where they
// begin to.
func TestFiguresThatContradictEachOther(t *testing.T) {
	line := func(overhang, total, rest string) string {
		return `"shaft": {"diameter": "30 mm", "sections": [{"length": "` + total + `", "diameter": "30 mm"}], "bearings": [{"at": "0 mm"}, {"at": "2000 mm", "length": "120 mm"}]` + rest + `}, "propeller": {"overhang": "` + overhang + `", "hubLength": "90 mm"}`
	}
	for _, c := range []struct{ name, agree, contradict, code string }{
		{"propeller past the shaft's end", line("150 mm", "2200 mm", ""), line("250 mm", "2200 mm", ""), "propeller-past-shaft"},
		{"shaft past the propeller", line("150 mm", "2330 mm", ""), line("150 mm", "2500 mm", ""), "shaft-past-propeller"},
		{"bearing past the shaft's end", line("0 mm", "2100 mm", ""), line("0 mm", "1900 mm", ""), "bearing-past-shaft"},
		{"length inside", line("150 mm", "2200 mm", `, "inboard": "2100 mm"`), line("150 mm", "2200 mm", `, "inboard": "2300 mm"`), "inboard"},
		{"diameter", line("150 mm", "2200 mm", ""), `"shaft": {"diameter": "32 mm", "sections": [{"length": "2200 mm", "diameter": "30 mm"}]}`, "shaft-diameter"},
		{"spans", line("150 mm", "2200 mm", `, "freeLength": "400 mm", "spanBehind": "1650 mm"`), line("150 mm", "2200 mm", `, "freeLength": "400 mm", "spanBehind": "1300 mm"`), "spans"},
		{"stern bearing", line("150 mm", "2200 mm", "") + `, "sternBearing": {"length": "122 mm"}`, line("150 mm", "2200 mm", "") + `, "sternBearing": {"length": "160 mm"}`, "bearing-length"},
		{"grip", `"coupling": {"headFlangeThickness": "12 mm", "nutFlangeThickness": "12 mm", "bolts": {"grip": "27 mm"}}`, `"coupling": {"headFlangeThickness": "12 mm", "nutFlangeThickness": "12 mm", "bolts": {"grip": "20 mm"}}`, "grip-flanges"},
		{"grip longer than the bolt", `"coupling": {"bolts": {"grip": "32 mm", "length": "40 mm"}}`, `"coupling": {"bolts": {"grip": "60 mm", "length": "40 mm"}}`, "more-than"},
		{"grip thicker than its flanges", `"coupling": {"kind": "rigid", "headFlangeThickness": "12 mm", "nutFlangeThickness": "12 mm", "bolts": {"grip": "30 mm"}}`, `"coupling": {"kind": "rigid", "headFlangeThickness": "12 mm", "nutFlangeThickness": "12 mm", "bolts": {"grip": "48 mm"}}`, "grip-flanges"},
		{"grip thinner than its flanges", `"coupling": {"kind": "flexible", "headFlangeThickness": "12 mm", "nutFlangeThickness": "12 mm", "bolts": {"grip": "48 mm"}}`, `"coupling": {"kind": "flexible", "headFlangeThickness": "12 mm", "nutFlangeThickness": "12 mm", "bolts": {"grip": "20 mm"}}`, "grip-flanges"},
		{"grip of the one flange that stands before a tapped hole", `"coupling": {"kind": "rigid", "headFlangeThickness": "12 mm", "nutFlangeThickness": "12 mm", "tapped": {"metal": "ductile-iron"}, "bolts": {"grip": "12 mm", "length": "40 mm"}}`, `"coupling": {"tapped": {"metal": "ductile-iron"}, "bolts": {"grip": "60 mm", "length": "40 mm"}}`, "more-than"},
		{"tapped and through", `"coupling": {"tapped": {"metal": "ductile-iron", "engagementLength": "16 mm"}, "bolts": {"nut": "plain-nut"}}`, `"coupling": {"tapped": {"metal": "ductile-iron", "engagementLength": "16 mm"}, "bolts": {"nut": "ne-3/8-16"}}`, "nut-and-tapped"},
		{"tapped and through, plain", `"coupling": {"bolts": {"nut": "plain-nut", "plainNut": "hex-nut"}}`, `"coupling": {"tapped": {"metal": "ductile-iron"}, "bolts": {"nut": "plain-nut", "plainNut": "hex-nut"}}`, "nut-and-tapped"},
		{"two torques of the output nut", `"outputFlange": {"nutTorque": "240 N·m"}, "torques": [{"joint": "output-nut", "torque": "177 lbf·ft", "source": "Gearbox book, p. 9"}]`, `"outputFlange": {"nutTorque": "180 N·m"}, "torques": [{"joint": "output-nut", "torque": "240 N·m", "source": "Gearbox book, p. 9"}]`, "two-torques-output-nut"},
		{"maker's figure and torque", `"torques": [{"joint": "output-nut", "torque": "240 N·m", "source": "Gearbox book"}], "makersFigures": [{"of": "output-flange/nutTorque", "value": "245 N·m", "source": {"document": "Gearbox book"}}]`, `"torques": [{"joint": "output-nut", "torque": "240 N·m", "source": "Gearbox book"}], "makersFigures": [{"of": "output-flange/nutTorque", "value": "180 N·m", "source": {"document": "Gearbox book"}}]`, "two-torques-output-nut"},
		{"propeller nut dry and oiled", `"propeller": {"nutTorque": "90 N·m"}, "torques": [{"joint": "propeller-nut", "lubrication": "dry", "torque": "120 N·m", "source": "Book"}, {"joint": "propeller-nut", "lubrication": "oiled", "torque": "92 N·m", "source": "Book"}]`, `"propeller": {"nutTorque": "60 N·m"}, "torques": [{"joint": "propeller-nut", "lubrication": "dry", "torque": "120 N·m", "source": "Book"}, {"joint": "propeller-nut", "lubrication": "oiled", "torque": "92 N·m", "source": "Book"}]`, "two-torques-propeller-nut"},
		{"one joint twice", `"torques": [{"joint": "mount-nuts", "thread": "M12", "torque": "60 N·m", "source": "Book"}, {"joint": "mount-nuts", "thread": "M16", "torque": "110 N·m", "source": "Book"}]`, `"torques": [{"joint": "mount-nuts", "torque": "60 N·m", "source": "Book"}, {"joint": "mount-nuts", "torque": "110 N·m", "source": "Leaflet"}]`, "two-torques-mount-nuts"},
		{"set screws found loose", `"coupling": {"bore": {"seatingTorque": "0 N·m"}}, "torques": [{"joint": "set-screws", "torque": "33 N·m", "source": "Book"}]`, `"coupling": {"bore": {"seatingTorque": "20 N·m"}}, "torques": [{"joint": "set-screws", "torque": "33 N·m", "source": "Book"}]`, "two-torques-set-screws"},
		{"packing", `"gland": {"packedLength": "32 mm", "followerDepth": "10 mm", "boxDepth": "44 mm"}`, `"gland": {"packedLength": "40 mm", "followerDepth": "10 mm", "boxDepth": "44 mm"}`, "packed-length"},
		{"balls", `"rollingBearing": {"balls": 9, "ballDiameter": "11.11 mm", "pitchDiameter": "53.5 mm"}`, `"rollingBearing": {"balls": 19, "ballDiameter": "11.11 mm", "pitchDiameter": "53.5 mm"}`, "balls"},
		{"fluid", `"fluid": {"volume": "2 L", "leftVolume": "0.5 L"}`, `"fluid": {"volume": "2 L", "leftVolume": "2.5 L"}`, "more-than"},
		{"key", `"shaft": {"key": {"length": "50 mm"}}, "propeller": {"hubLength": "90 mm"}`, `"shaft": {"key": {"length": "95 mm"}}, "propeller": {"hubLength": "90 mm"}`, "more-than"},
		{"mounts", `"mounts": [{"name": "a", "forward": "0 mm", "starboard": "0 mm", "deflectionNow": "4 mm"}, {"name": "b", "forward": "0 mm", "starboard": "0 mm", "deflectionNow": "5 mm"}], "readings": [{"date": "2026-05-01", "mountDeflection": "5.5 mm"}]`,
			`"mounts": [{"name": "a", "forward": "0 mm", "starboard": "0 mm", "deflectionNow": "4 mm"}, {"name": "b", "forward": "0 mm", "starboard": "0 mm", "deflectionNow": "5 mm"}], "readings": [{"date": "2026-05-01", "mountDeflection": "8 mm"}]`, "mount-deflection"},
		{"counts", `"readings": [{"date": "2026-05-01", "code4": 20, "code6": 18}]`, `"readings": [{"date": "2026-05-01", "code4": 18, "code6": 20}]`, "cumulative"},
		{"counts of two days", `"readings": [{"date": "2026-05-01", "code4": 18}, {"date": "2026-06-01", "code6": 20}]`, `"readings": [{"date": "2026-05-01", "count4": 100, "count6": 200}]`, "cumulative"},
		{"hour meter", `"readings": [{"date": "2026-05-01", "engineHours": "100 h"}, {"date": "2026-06-01", "engineHours": "100 h"}]`, `"readings": [{"date": "2026-05-01", "engineHours": "110 h"}, {"date": "2026-06-01", "engineHours": "100 h"}]`, "hour-meter"},
		{"hours of a part", `"wornPart": {"serviceTime": "90 h"}, "readings": [{"date": "2026-05-01", "engineHours": "100 h"}]`, `"wornPart": {"serviceTime": "190 h"}, "readings": [{"date": "2026-05-01", "engineHours": "100 h"}]`, "service-time"},
		{"speed", `"engine": {"speed": "3000 rpm"}, "readings": [{"date": "2026-05-01", "engineSpeed": "3200 rpm"}]`, `"engine": {"speed": "3000 rpm"}, "readings": [{"date": "2026-05-01", "engineSpeed": "3600 rpm"}]`, "engine-speed"},
	} {
		codes := func(text string) (list []string) {
			for _, d := range agree.Of(testboat.Read(t, `{"name": "Tern", `+text+`}`), rules.Standard()) {
				list = append(list, d.Code)
				if d.Title == "" || len(d.Figures) < 2 {
					t.Errorf("%s: %+v", c.name, d)
				}
			}
			return list
		}
		if got := codes(c.agree); len(got) > 0 {
			t.Errorf("%s: what agrees is told of: %v", c.name, got)
		}
		if got := codes(c.contradict); !slices.Contains(got, c.code) {
			t.Errorf("%s: told %v, want %s", c.name, got, c.code)
		}
	}
	for _, name := range []string{"kittiwake", "juniper"} {
		if got := agree.Of(testboat.Demo(t, name), rules.Standard()); len(got) > 0 {
			t.Errorf("%s: %+v", name, got)
		}
	}
}

// Each row that is asked for is there, and a yard that measures its shafts to the
// millimetre may say so.
func TestHowFarApartIsRuleData(t *testing.T) {
	for table, ids := range map[string][]string{"gauges": {"torque-wrench"}, "boat-agreement": {"along-shaft", "past-propeller", "shaft-diameter", "packed-length", "grip-flanges", "two-washers", "mount-deflection", "rated-speed"}} {
		for _, id := range ids {
			if rules.Standard().Table(table).Find(id, func(string) (float64, string, bool) { return 0, "", false }) == nil {
				t.Errorf("%s has no row %s", table, id)
			}
		}
	}
	strict, err := rules.Standard().Overlay([]byte(`{"table": "boat-agreement", "rows": [{"id": "shaft-diameter", "values": {"share": "0.1 %"}, "source": {"document": "Yard"}, "basis": "maker"}]}`))
	if err != nil {
		t.Fatal(err)
	}
	b := testboat.Read(t, `{"name": "Tern", "shaft": {"diameter": "30.2 mm", "sections": [{"length": "2200 mm", "diameter": "30 mm"}]}}`)
	if got := agree.Of(b, rules.Standard()); len(got) > 0 {
		t.Errorf("%+v", got)
	}
	if got := agree.Of(b, strict); len(got) != 1 || got[0].Code != "shaft-diameter" {
		t.Errorf("by the yard's row: %+v", got)
	}
}
