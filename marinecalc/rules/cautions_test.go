package rules

import (
	"encoding/json"
	"path"
	"regexp"
	"slices"
	"strings"
	"testing"

	"example.org/driveline/marinecalc/sheet"
)

// Whoever is told to turn gland nuts is told before it to stop the shaft, in
// every text of the rules.
func TestTheShaftIsStoppedBeforeTheGlandNuts(t *testing.T) {
	turn := regexp.MustCompile(`(?i)(both|the|gland) (gland )?nuts\b`)
	flats := regexp.MustCompile(`(?i)flat|finger-tight|tighten|slacken|back(ed)? `)
	// Texts that have such words and tell nobody to turn a nut.
	told := map[string]string{
		"hotter-than-computed":  "what may be wrong, in the order of looking",
		"flooding-at-the-gland": "says that the shaft is stopped, in other words",
	}
	glands := regexp.MustCompile(`(?i)gland|follower|packing|drip|flat, evenly`)
	said, spared := 0, map[string]bool{}
	for _, f := range slices.Concat(filesIn("data"), filesIn("data/job")) {
		text, err := files.ReadFile(f)
		if err != nil {
			t.Fatal(err)
		}
		var all map[string]any
		if err := json.Unmarshal(text, &all); err != nil {
			t.Fatal(err)
		}
		for _, list := range all {
			rows, _ := list.([]any)
			for _, r := range rows {
				row, _ := r.(map[string]any)
				id, _ := row["id"].(string)
				for _, member := range []string{"text", "how", "why", "help", "confirm", "note"} {
					words, _ := row[member].(string)
					at := turn.FindStringIndex(words)
					if at == nil || !flats.MatchString(words) || !glands.MatchString(id+" "+words) {
						continue
					}
					if told[id] != "" {
						spared[id] = true
						continue
					}
					said++
					first := words[:at[0]]
					if !strings.Contains(strings.ToLower(first), "engine stopped, key out") {
						t.Errorf("%s, %s: %s: gland nuts are turned before the shaft is stopped: %s", path.Base(f), id, member, words)
					}
				}
			}
		}
	}
	for id := range told {
		if !spared[id] {
			t.Errorf("%s needs no exception", id)
		}
	}
	if said < 10 {
		t.Errorf("only %d texts turn gland nuts", said)
	}
}

// What is done for a calculation decides of what its sheet warns: no reading
// beside a running engine without carbon monoxide by name, and no bolt
// arithmetic with it. What the fault finding, a sea
// trial and the care warn of goes by what they propose.
func TestSheetsWarnOfTheirWork(t *testing.T) {
	b := Standard()
	has := func(calculation, words string) bool {
		re := regexp.MustCompile(words)
		return slices.ContainsFunc(b.Cautions(calculation).items, func(c Caution) bool { return re.MatchString(c.Text) })
	}
	for _, h := range []struct {
		words string // of the caution
		of    []string
	}{
		{`carbon monoxide|Carbon monoxide`, []string{"gland-heat", "gland-drip", "mount-load", "vibration-source", "fluid-settling", "fluid-flush"}},
		{`(?i)turning shaft|while the shaft can turn`, []string{"gland-heat", "gland-drip", "mount-load", "vibration-source", "shaft-torque", "bearing-life", "shaft-whirl"}},
		{`start the engine while hands`, []string{"thread-engagement", "coupling-bore", "propeller-taper", "bolt-preload", "bolt-fit", "coupling-alignment", "dial-alignment", "alignment-change", "coupling-grip", "mount-moves", "shaft-droop", "shaft-withdrawal", "key-strength", "coupling-key", "bearing-clearance", "gland-heat", "gland-drip", "gland-packing", "output-flange", "flange-run-out", "backlash"}},
		{`never crank or start`, []string{"coupling-alignment", "dial-alignment", "alignment-change", "mount-moves", "shaft-droop", "output-flange", "flange-run-out"}},
		{`slide aft`, []string{"coupling-bore", "bolt-preload", "bolt-fit", "coupling-alignment", "dial-alignment", "alignment-change", "coupling-grip", "mount-moves", "shaft-droop", "shaft-withdrawal", "output-flange", "flange-run-out"}},
		{`cannot get away`, []string{"coupling-alignment", "dial-alignment", "alignment-change", "output-flange"}}, // and work-plan where it opens her
		{`rated eyes`, []string{"mount-load", "shaft-withdrawal"}},
		{`Solvent vapour`, []string{"coupling-grip", "fluid-settling"}},
		{`asbestos`, []string{"gland-packing"}},
		{`lock wire`, []string{"coupling-grip"}},
		{`pull no dipstick`, []string{"fluid-settling", "fluid-flush", "fluid-cleanliness"}},
		{`live terminal`, []string{"thread-engagement", "coupling-bore", "propeller-taper", "bolt-preload", "bolt-fit", "coupling-alignment", "dial-alignment", "alignment-change", "coupling-grip", "mount-moves", "shaft-droop", "shaft-withdrawal", "output-flange", "flange-run-out", "backlash"}},
	} {
		if len(h.of) == 0 {
			t.Fatal(h.words)
		}
		for _, f := range filesIn("data") {
			id := nameOf(f)
			if id == common {
				continue
			}
			if want := slices.Contains(h.of, id); has(id, h.words) != want {
				t.Errorf("%s: a caution with %q: %v, want %v", id, h.words, !want, want)
			}
		}
	}
}

// Signal words go by what can happen (ANSI Z535.4: DANGER and WARNING death or
// grave injury, CAUTION lesser injury, NOTICE none).
func TestSignalWordsGoByTheInjury(t *testing.T) {
	grave := regexp.MustCompile(`(?i)\bkill|\bdeath|crush|poison|\bfloods?\b|\bfire\b|\bfalls?\b|fingers|asbestos|monoxide|winds in`)
	hurts := regexp.MustCompile(`(?i)\bskin\b|\beyes?\b|\bhands? |\bburns?\b|\bcuts? `)
	count := map[sheet.Signal]int{}
	for _, c := range Standard().AllCautions().All() {
		count[c.Signal]++
		// Where the grave word is no injury of the work.
		lesser := map[string]string{"sharp-debris": "scratches by wear debris", "mounts-whole-thread": "a foot comes loose; that the engine falls has a caution of its own"}[c.ID]
		if w := grave.FindString(c.Text); w != "" && lesser == "" && c.Signal != "DANGER" && c.Signal != "WARNING" {
			t.Errorf("%s: %s, and %q", c.ID, c.Signal, w)
		}
		if w := hurts.FindString(c.Text); w != "" && c.Signal == "NOTICE" {
			t.Errorf("%s: NOTICE, and %q", c.ID, w)
		}
	}
	for _, s := range []sheet.Signal{"DANGER", "WARNING", "CAUTION", "NOTICE"} {
		if count[s] == 0 {
			t.Errorf("no %s", s)
		}
	}
}
