package export_test

import (
	"context"
	"encoding/json"
	"fmt"
	"os"
	"strings"
	"testing"

	"example.org/driveline/marinecalc"
	"example.org/driveline/marinecalc/internal/testboat"
)

func cardOf(t *testing.T, b *marinecalc.Boat) (map[string]marinecalc.TorqueJoint, string) {
	t.Helper()
	e, err := marinecalc.New()
	if err != nil {
		t.Fatal(err)
	}
	card, err := e.TorqueCard(context.Background(), b, marinecalc.Options{NoRanges: true})
	if err != nil {
		t.Fatal(err)
	}
	joints := map[string]marinecalc.TorqueJoint{}
	for _, j := range card.Joints {
		joints[j.Joint] = j
		if j.Title == "" || j.Order == "" || j.Again == "" || j.Look == "" || (j.Stands() == "") != (j.Wanted != "") || (j.Stands() != "") != (j.Source != "") {
			t.Errorf("%+v", j)
		}
	}
	return joints, marinecalc.TorquePage(card)
}

// The maker's torque goes first, one that is not known says what is wanted, and
// a joint that the coupling has not is not listed.
func TestTorqueCard(t *testing.T) {
	joints, page := cardOf(t, testboat.Demo(t, "juniper"))
	if j := joints["coupling-bolts"]; j.Torque != "30 lbf·ft" || !j.Maker || !strings.Contains(j.Source, "p. 2") || !strings.Contains(j.Range, "calculated") {
		t.Errorf("coupling bolts: %+v", j)
	}
	if j := joints["set-screws"]; j.Torque == "" {
		t.Errorf("set screws: %+v", j)
	}
	if _, there := joints["pinch-bolts"]; there {
		t.Error("pinch bolts on a coupling with set screws")
	}
	if j := joints["mount-bolts"]; j.Torque != "" || !strings.Contains(page, "lag screws by feel") {
		t.Errorf("mount bolts: %+v", j)
	}
	joints, _ = cardOf(t, testboat.Demo(t, "kittiwake"))
	if j := joints["mount-nuts"]; j.Torque != "60 N·m" || !j.Maker || j.Thread != "M12x1.5" {
		t.Errorf("mount nuts: %+v", j)
	}
	if _, there := joints["set-screws"]; there {
		t.Error("set screws on a split coupling")
	}
	if joints["packing-nuts"].Torque == "" || strings.Contains(joints["packing-nuts"].Torque, "N·m") {
		t.Errorf("packing nuts: %+v", joints["packing-nuts"])
	}
}

// What a boat file says is escaped, and one of which nothing is known lists every
// joint with what is wanted.
func TestTorqueCardOfABareBoat(t *testing.T) {
	joints, page := cardOf(t, testboat.Read(t, `{"name": "<b>Tern</b>", "torques": [{"joint": "hose-clamps", "torque": "5 N·m", "source": "<i>leaflet</i>"}]}`))
	if len(joints) != 10 || strings.Contains(page, "<b>Tern") || strings.Contains(page, "<i>leaflet") || strings.Count(page, "not known") != 8 {
		t.Errorf("%d joints, %d not known:\n%s", len(joints), strings.Count(page, "not known"), page)
	}
	if marinecalc.TorquePage(nil) != "" {
		t.Error("something comes of nothing")
	}
}

// A shock of 500 N·m asks more of a cone of 25 mm than its M16 bears: the card says
// that the thread yields first, and gives no span from the greater to the less.
func TestTorqueCardOfANutWithoutRoom(t *testing.T) {
	const boat = `{"name": "Dunlin", "units": "metric", "engine": {"power": "%s", "speed": "3000 rpm"}, "gearbox": {"ratioAhead": "2.5", "ratioAstern": "2.5"},
		"shaft": {"diameter": "25 mm", "alloy": "s31600-annealed"}, "propeller": {"taper": "iso-4566", "taperLength": "60 mm", "hubDiameter": "50 mm", "hubMetal": "manganese-bronze", "taperSurfaces": "bronze-dry", "contactShare": "80 %%", "nutThread": "M16x1.5", "nutTorque": "60 N·m"}}`
	for power, says := range map[string]string{"45 kW": "before the cone alone holds", "2 kW": "the cone alone holds from"} {
		joints, _ := cardOf(t, testboat.Read(t, fmt.Sprintf(boat, power)))
		if j := joints["propeller-nut"]; !strings.Contains(j.Range, says) {
			t.Errorf("%s: %+v", power, j)
		}
	}
}

// A torque on the card that the joint's own sheet does not bear is told, and one
// that it bears is not.
func TestCardTellsOfATorqueThatBreaks(t *testing.T) {
	for torque, told := range map[string]bool{"40 N·m": false, "80 N·m": true, "59 lbf·ft": true} {
		b := testboat.Read(t, `{"name":"Tern","coupling":{"bolts":{"thread":"M10x1.5","grade":"iso-8.8","finish":"oiled"}},"torques":[{"joint":"coupling-bolts","torque":"`+torque+`","source":"own"}]}`)
		joints, page := cardOf(t, b)
		if j := joints["coupling-bolts"]; strings.Contains(j.Range, "TOO MUCH") != told || strings.Contains(page, "TOO MUCH") != told {
			t.Errorf("%s: %+v", torque, j)
		}
	}
}

// A joint of which the boat file has two torques is not printed as if it had one.
func TestCardTellsOfTwoTorques(t *testing.T) {
	for own, told := range map[string]bool{"240 N·m": false, "180 N·m": true} {
		joints, _ := cardOf(t, testboat.Read(t, `{"name":"Tern","outputFlange":{"nutTorque":"`+own+`"},"torques":[{"joint":"output-nut","torque":"177 lbf·ft","source":"Gearbox book, p. 9"}]}`))
		if j := joints["output-nut"]; (j.Unsettled == "NOT SETTLED: 180 N·m (as entered) or 177 lbf·ft (Gearbox book, p. 9)") != told || (j.Torque == "177 lbf·ft") == told {
			t.Errorf("%s: %+v", own, j)
		}
	}
}

// What a sheet says against a joint as it is set stands on the card beside its torque.
func TestCardHeedsWhatSheetsSayOfATorque(t *testing.T) {
	with := func(pinch string) string {
		var file map[string]any
		text, err := os.ReadFile(testboat.Root("testdata", "boats", "kittiwake.json"))
		if err == nil {
			err = json.Unmarshal(text, &file)
		}
		if err != nil {
			t.Fatal(err)
		}
		file["coupling"].(map[string]any)["bore"].(map[string]any)["pinchTorque"] = pinch
		joints, _ := cardOf(t, testboat.Read(t, testboat.Text(t, file)))
		return joints["pinch-bolts"].Range
	}
	if r := with("150 N·m"); !strings.HasPrefix(r, "NOT AS IT STANDS: ") || !strings.Contains(r, "over the limit") {
		t.Errorf("past yield: %s", r)
	}
	if r := with("20 N·m"); strings.Contains(r, "NOT AS") {
		t.Errorf("within it: %s", r)
	}
}

// The card tells from which torque on a joint can yield by the lower edge of its range,
// of the output flange's nut too, and names no key that there is not.
func TestCardPrintsTheLowerEdge(t *testing.T) {
	card := func(at func(map[string]any)) map[string]marinecalc.TorqueJoint {
		var file map[string]any
		text, err := os.ReadFile(testboat.Root("testdata", "boats", "juniper.json"))
		if err == nil {
			err = json.Unmarshal(text, &file)
		}
		if err != nil {
			t.Fatal(err)
		}
		at(file)
		e, err := marinecalc.New()
		if err != nil {
			t.Fatal(err)
		}
		made, err := e.TorqueCard(context.Background(), testboat.Read(t, testboat.Text(t, file)), marinecalc.Options{})
		if err != nil {
			t.Fatal(err)
		}
		joints := map[string]marinecalc.TorqueJoint{}
		for _, j := range made.Joints {
			joints[j.Joint] = j
		}
		return joints
	}
	plain := card(func(map[string]any) {})
	if r := plain["propeller-nut"].Range; !strings.Contains(r, "can yield from 80 lbf·ft") || strings.Contains(r, "240") {
		t.Errorf("propeller nut: %s", r)
	}
	if r := plain["output-nut"].Range; strings.Contains(r, "NOT ") {
		t.Errorf("output nut: %s", r)
	}
	typed := func(torque string) string {
		return card(func(file map[string]any) {
			delete(file["outputFlange"].(map[string]any), "nutTorque") // the maker's alone is the joint's
			file["torques"] = []any{map[string]any{"joint": "output-nut", "torque": torque, "source": "own"}}
		})["output-nut"].Range
	}
	for torque, says := range map[string]string{"900 N·m": "NOT SURE by its own sheet", "1500 N·m": "TOO MUCH by its own sheet", "200 N·m": ""} {
		if r := typed(torque); !strings.Contains(r, says) || torque == "200 N·m" && strings.Contains(r, "by its own sheet") {
			t.Errorf("%s: %s", torque, r)
		}
	}
	sheets := card(func(file map[string]any) { file["outputFlange"].(map[string]any)["nutTorque"] = "900 N·m" })
	if r := sheets["output-nut"].Range; !strings.HasPrefix(r, "NOT SURE: ") || strings.Count(r, "wrench goes on") != 1 {
		t.Errorf("by the sheet: %s", r)
	}
}

// A face whose wear has taken the clamp, and a nut that nothing locks, are told
// beside the torque, whosever that is: no torque mends them.
func TestCardHeedsTheJointAsItStands(t *testing.T) {
	const boat = `{"name": "Twite", "units": "metric", "engine": {"power": "30 kW", "speed": "3000 rpm"}, "gearbox": {"ratioAhead": "2.5", "ratioAstern": "2.2"}, "shaft": {"diameter": "30 mm", "alloy": "s31600-annealed", "key": {"fitted": "no"}},
		"propeller": {"hubDiameter": "62 mm", "hubMetal": "manganese-bronze", "taper": "iso-4566", "taperLength": "70 mm", "taperSurfaces": "bronze-dry", "nutThread": "M20x1.5", "nutTorque": "110 N·m", "nutOrder": "one-nut", "nutLock": "%s"},
		"outputFlange": {"thread": "M24x2", "finish": "oiled", "nutTorque": "180 N·m", "seatDiameter": "32 mm", "hubLength": "42 mm", "hubDiameter": "50 mm", "ringLength": "20 mm", "ringDiameter": "48 mm"},
		"torques": [{"joint": "output-nut", "torque": "%s", "source": "Gearbox book (invented), p. 9"}], "readings": [{"date": "2026-10-10", "outputFaceWear": "%s"}]}`
	for _, torque := range []string{"180 N·m", "185 N·m"} {
		for wear, told := range map[string]bool{"0 mm": false, "0.2 mm": true} {
			joints, page := cardOf(t, testboat.Read(t, fmt.Sprintf(boat, "cotter", torque, wear)))
			if j := joints["output-nut"]; j.Torque != torque || strings.Contains(j.Range, "NOT AS IT STANDS") != told || strings.Contains(page, "NOT AS IT STANDS") != told {
				t.Errorf("%s, worn by %s: %+v", torque, wear, j)
			}
		}
	}
	for lock, told := range map[string]bool{"cotter": false, "none": true} {
		joints, _ := cardOf(t, testboat.Read(t, fmt.Sprintf(boat, lock, "180 N·m", "0 mm")))
		if j := joints["propeller-nut"]; strings.Contains(j.Range, "locks of the propeller's nut, 0") != told {
			t.Errorf("locked by %s: %+v", lock, j)
		}
	}
}

// jointsWith are the joints of a boat of testdata with figures put in its place, by dotted names.
func jointsWith(t *testing.T, boat string, figures map[string]any) map[string]marinecalc.TorqueJoint {
	t.Helper()
	var file map[string]any
	text, err := os.ReadFile(testboat.Root("testdata", boat+".json"))
	if err == nil {
		err = json.Unmarshal(text, &file)
	}
	if err != nil {
		t.Fatal(err)
	}
	for name, value := range figures {
		at, names := file, strings.Split(name, ".")
		for _, n := range names[:len(names)-1] {
			if at[n] == nil {
				at[n] = map[string]any{}
			}
			at = at[n].(map[string]any)
		}
		at[names[len(names)-1]] = value
	}
	joints, _ := cardOf(t, testboat.Read(t, testboat.Text(t, file)))
	return joints
}

// A torque that is itself borne and clamps too little for what the joint carries is
// told as that, and a bolt that has yielded is not tightened again as it stands.
func TestCardTellsWhatAJointDoesNotHold(t *testing.T) {
	for _, c := range []struct {
		boat        string
		figures     map[string]any
		joint, says string
	}{
		{"cases/weak-split-clamp", nil, "pinch-bolts", "HOLDS TOO LITTLE: torque margin of shaft and flange ahead"},
		{"boats/kittiwake", map[string]any{"coupling.bolts.thread": "M6x1", "coupling.holeDiameter": "6.6 mm", "engine.power": "150 kW"}, "coupling-bolts", "HOLDS TOO LITTLE: slip torque margin"},
		{"boats/kittiwake", map[string]any{"coupling.bolts.freeLength": "45.12 ± 0.005 mm", "coupling.bolts.freeLengthNew": "45 ± 0.005 mm"}, "coupling-bolts", "NOT AS IT STANDS: bolt longer than new"},
		{"cases/stretched-bolt", nil, "coupling-bolts", "NOT AS IT STANDS: torque to check as a share of what breaks the bolt"},
	} {
		joints := jointsWith(t, c.boat, c.figures)
		if r := joints[c.joint].Range; !strings.Contains(r, c.says) {
			t.Errorf("%s of %v: %s", c.joint, c.figures, r)
		}
		for id, j := range joints {
			if strings.Count(j.Range, "NOT AS IT STANDS") > 1 || strings.Count(j.Range, "HOLDS TOO LITTLE") > 1 {
				t.Errorf("%s is marked twice: %s", id, j.Range)
			}
		}
	}
	for id, j := range jointsWith(t, "boats/kittiwake", nil) {
		if strings.Contains(j.Range, "HOLDS") || strings.Contains(j.Range, "NOT AS") {
			t.Errorf("%s of a sound boat: %s", id, j.Range)
		}
	}
}

// A nut that came loose at little over a face without wear is mended by the wrench, once
// the face was looked at; over a worn one it is not.
func TestCardTightensALooseNut(t *testing.T) {
	const boat = `{"name": "Twite", "units": "metric", "outputFlange": {"thread": "M24x2", "finish": "oiled", "nutTorque": "180 N·m", "seatDiameter": "32 mm", "hubLength": "42 mm", "hubDiameter": "50 mm", "ringLength": "20 mm", "ringDiameter": "48 mm"},
		"readings": [{"date": "2026-10-10", "outputFaceWear": "%s", "outputNutLoosened": "20 N·m"}]}`
	for wear, loose := range map[string]bool{"0 mm": true, "0.2 mm": false} {
		joints, _ := cardOf(t, testboat.Read(t, fmt.Sprintf(boat, wear)))
		r := joints["output-nut"].Range
		if strings.Contains(r, "LOOSE: ") != loose || strings.Contains(r, "Read the face first") != loose || strings.Contains(r, "before a wrench goes on") == loose {
			t.Errorf("worn by %s: %s", wear, r)
		}
	}
}

// A key is said to carry what the cone leaves it where the margins and its own sheet
// say so, and nowhere else.
func TestCardSaysThatAKeyCarriesWhereItDoes(t *testing.T) {
	const boat = `{"name": "Dunlin", "units": "metric", "engine": {"power": "%s", "speed": "3000 rpm"}, "gearbox": {"ratioAhead": "2.5", "ratioAstern": "2.5"},
		"shaft": {"diameter": "25 mm", "alloy": "s31600-annealed", "key": {"fitted": "yes", "width": "8 mm", "height": "7 mm", "length": "50 mm", "yieldStrength": "350 MPa"}}, "propeller": {"taper": "iso-4566", "taperLength": "60 mm", "hubDiameter": "50 mm", "hubMetal": "manganese-bronze", "hubYieldStrength": "170 MPa", "taperSurfaces": "bronze-dry", "contactShare": "80 %%", "nutThread": "M16x1.5", "nutTorque": "60 N·m"}}`
	for power, says := range map[string]string{"18 kW": "whether the key carries the rest is not sure (", "60 kW": "the key does not carry the rest ("} {
		joints, _ := cardOf(t, testboat.Read(t, fmt.Sprintf(boat, power)))
		if r := joints["propeller-nut"].Range; strings.Contains(r, ", the key carries") || !strings.Contains(r, says) {
			t.Errorf("%s: %s", power, r)
		}
	}
	if r := jointsWith(t, "boats/kittiwake", map[string]any{"shaft.key.fitted": "yes"})["propeller-nut"].Range; !strings.HasSuffix(r, "stay under it, the key carries") {
		t.Errorf("a key that carries: %s", r)
	}
}

// The card says what the sheets say of a joint's metals: stainless bolts tightened by a
// finish that was measured on carbon steel, and that gall; a sound boat says nothing.
func TestCardMindsTheMetals(t *testing.T) {
	if r := jointsWith(t, "boats/kittiwake", map[string]any{"coupling.bolts.grade": "iso-a4-70", "coupling.bolts.finish": "zinc-shigley"})["coupling-bolts"].Range; !strings.Contains(r, "MIND: The finish chosen was measured on carbon steel") || !strings.Contains(r, "MIND: Stainless on stainless galls") {
		t.Error(r)
	}
	for metal, told := range map[string]bool{"aluminium-cast": true, "aluminium-6061-t6": true, "grey-iron": false} {
		for grade, stainless := range map[string]bool{"iso-a2-70": true, "f593c": true, "iso-8.8": false} {
			r := jointsWith(t, "cases/short-thread", map[string]any{"coupling.tapped.metal": metal, "coupling.bolts.grade": grade})["coupling-bolts"].Range
			if strings.Contains(r, "MIND: Stainless in wet aluminium seizes") != (told && stainless) {
				t.Errorf("%s in %s: %s", grade, metal, r)
			}
		}
	}
	for id, j := range jointsWith(t, "boats/kittiwake", nil) {
		if strings.Contains(j.Range, "MIND") {
			t.Errorf("%s: %s", id, j.Range)
		}
	}
}

// The nut of a coupling's taper is no pinch bolt; it stands on the card where there is
// one, or where its maker's torque is known.
func TestTorqueCardHasTheNutOfATaper(t *testing.T) {
	taper := map[string]any{"coupling.bore.holdMethod": "taper", "coupling.bore.taperRatio": "0.1", "coupling.bore.pinchThread": "M16x1.5", "coupling.bore.pinchTorque": "100 N·m"}
	card := jointsWith(t, "boats/kittiwake", taper)
	j, is := card["coupling-nut"]
	if _, pinch := card["pinch-bolts"]; !is || pinch || !strings.Contains(j.Torque+j.Unsettled, "100 N·m") || strings.Contains(j.Order+j.Look, "slot") {
		t.Errorf("%+v", j)
	}
	if _, is := jointsWith(t, "boats/kittiwake", nil)["coupling-nut"]; is {
		t.Error("a split clamp has a nut of a taper")
	}
	if j := jointsWith(t, "boats/kittiwake", map[string]any{"torques": []any{map[string]any{"joint": "coupling-nut", "torque": "120 N·m", "source": "own"}}})["coupling-nut"]; j.Torque != "120 N·m" {
		t.Errorf("the maker's torque vanished: %+v", j)
	}
}

// What a boat says that she has not is not on her card, but for a maker's torque of it;
// where she says nothing, it is.
func TestTorqueCardLeavesOutWhatSheHasNot(t *testing.T) {
	for joint, c := range map[string]struct{ with, without string }{
		"output-nut":   {`"outputFlange": {"heldBy": "end-bolts"}`, `"outputFlange": {"heldBy": "clip"}`},
		"packing-nuts": {`"symptoms": [{"evidence": "seal-kind", "answer": "no"}]`, `"symptoms": [{"evidence": "seal-kind", "answer": "yes"}]`},
		"pinch-bolts":  {`"coupling": {"bore": {"holdMethod": "clamp"}}`, `"coupling": {"bore": {"holdMethod": "interference"}}`},
		"set-screws":   {`"coupling": {"bore": {"holdMethod": "set-screws"}}`, `"coupling": {"bore": {"holdMethod": "clamp"}}`},
	} {
		has := func(said string) bool {
			card, _ := cardOf(t, testboat.Read(t, `{"name": "Tern", `+said+`}`))
			_, is := card[joint]
			return is
		}
		if maker := `"torques": [{"joint": "` + joint + `", "torque": "5 N·m", "source": "leaflet"}]`; !has(c.with) || has(c.without) || !has(`"units": "metric"`) || !has(c.without+", "+maker) {
			t.Errorf("%s: with %v, without %v, unsaid %v, with a maker's torque %v", joint, has(c.with), has(c.without), has(`"units": "metric"`), has(c.without+", "+maker))
		}
	}
}

// A joint that a look found loose says so beside its torque, with what comes first;
// a cone that its nut hardly presses is no torque to print bare.
func TestTorqueCardTellsOfALooseJoint(t *testing.T) {
	for question, joint := range map[string]string{"coupling-bolt-turns": "coupling-bolts", "output-nut-turns": "output-nut", "coupling-mark-shifted": "pinch-bolts", "propeller-rocks": "propeller-nut"} {
		for _, answer := range []string{"yes", "no"} {
			j := jointsWith(t, "boats/kittiwake", map[string]any{"readings": []any{map[string]any{"date": "2026-06-21", "symptoms": []any{map[string]any{"evidence": question, "answer": answer}}}}})[joint]
			if told := strings.Contains(j.Range, "was found") && strings.Contains(j.Range, " first"); told != (answer == "yes") && joint != "coupling-bolts" || strings.Contains(j.Range, "was found") != (answer == "yes") {
				t.Errorf("%s %s: %+v", question, answer, j)
			}
		}
	}
	hardly := jointsWith(t, "boats/kittiwake", map[string]any{"propeller.nutTorque": "7 N·m"})["propeller-nut"]
	if !strings.Contains(hardly.Range, "TOO LITTLE") || !strings.Contains(hardly.Range, "cone alone") {
		t.Errorf("%+v", hardly)
	}
}
