package rules

import (
	"encoding/json"
	"fmt"
	"os"
	"path/filepath"
	"regexp"
	"slices"
	"strings"
	"testing"
)

// What the sheets count on is dry, or greased as the torque was given for it: a film
// of oil in a bore that holds by friction halves what it holds, and the dry torque on
// a greased thread over-stretches the bolt. So no sentence that people read names a
// lubricant, a locking compound or a sealant without forbidding it, or saying that
// the torque goes with it, or leaving it to the maker; here or in the sentence after.
// Sentences that are of no joint stand in elsewhere, each with its reason.
func TestNoLubricantWithoutItsTorque(t *testing.T) {
	names := regexp.MustCompile(`(?i)(\bfilm of (oil|grease)|bath of oil|with oil|\boiled|oily|[^-]lubricat(e|ed)?\b|^lubricat(e|ed)?\b|greas|anti-seize|thread ?lock|locking compound|retaining compound|sealant|\bwax)`)
	ties := regexp.MustCompile(`(?i)\b(no|none|never|not|nor|without|only|wiped?|free of|unless)\b|maker|torque (for|of) (it|that|this)\b|torque is then another|their torque is given|torque (is|as) given|as it is given|torque was given|finish\b|which hold less|halves|holds about half|changes the (wrench setting|clamp)|makes the hub slip|thread dry or oiled`)
	elsewhere := map[string]string{
		"swap-output-seal":          "a seal's lip, which clamps nothing",
		"contact-thermometer":       "a thermometer's tip",
		"stud-free":                 "a stud's own thread, which no torque is worked out for; it cures before the nut",
		"thread-drilling":           "a rag that plugs a hole",
		"life-creep":                "a ring's seat, and said to be first aid",
		"packing-hard":              "packing as it was made",
		"grip-more-ahead":           "a fault to find",
		"flange-loosening-torque":   "what a loosening torque says",
		"lab-silicon":               "what a laboratory finds",
		"oiled":                     "the source of a finish's figure",
		"boat-readings.schema.json": "what a reading tells",
	}
	met, excepted := 0, map[string]bool{}
	hold := func(file, id, key, text string) {
		sentences := strings.SplitAfter(text, ". ")
		for i, s := range sentences {
			if !names.MatchString(s) {
				continue
			}
			met++
			if _, is := elsewhere[id]; is {
				excepted[id] = true
				continue
			}
			if !ties.MatchString(strings.Join(sentences[i:min(i+2, len(sentences))], "")) {
				t.Errorf("%s, %s, %s: %q names what makes slippery or locks, and not what torque goes with it", file, id, key, s)
			}
		}
	}
	read := []string{"text", "why", "how", "note", "keep", "renew", "when", "help", "because", "description", "advice", "keepStill"}
	var walk func(file, id, key string, v any)
	walk = func(file, id, key string, v any) {
		switch v := v.(type) {
		case map[string]any:
			if own, is := v["id"].(string); is {
				id = own
			}
			for k, one := range v {
				walk(file, id, k, one)
			}
		case []any:
			for _, one := range v {
				walk(file, id, key, one)
			}
		case string:
			if slices.Contains(read, key) {
				hold(file, id, key, v)
			}
		}
	}
	var files []string
	for _, at := range []string{"data/*.json", "data/*/*.json", "../../schemas/*.json"} {
		some, err := filepath.Glob(at)
		if err != nil || len(some) == 0 {
			t.Fatal(at, err)
		}
		files = append(files, some...)
	}
	for _, file := range files {
		text, err := os.ReadFile(file)
		if err != nil {
			t.Fatal(err)
		}
		var v any
		if err := json.Unmarshal(text, &v); err != nil {
			t.Fatal(file, err)
		}
		walk(filepath.Base(file), filepath.Base(file), "", v)
	}
	for id := range elsewhere {
		if !excepted[id] {
			t.Errorf("%s names no lubricant any more", id)
		}
	}
	if met < 30 {
		t.Errorf("only %s sentences name a lubricant", fmt.Sprint(met))
	}
}
