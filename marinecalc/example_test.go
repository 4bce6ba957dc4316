package marinecalc_test

import (
	"context"
	"errors"
	"fmt"
	"log"
	"os"
	"time"

	"example.org/driveline/marinecalc"
)

// A wrench setting, the clamp it gives with its range, and how that stands to
// its limits.
func ExampleRun() {
	s, err := marinecalc.Run("bolt-preload", []byte(`{"thread": "M10x1.5", "grade": "iso-8.8", "finish": "oiled"}`), marinecalc.Options{})
	if err != nil {
		log.Fatal(err)
	}
	fmt.Printf("%s: %s\n", s.Result("wrenchSetting").Title, s.Result("wrenchSetting").Text)
	r := s.Result("achievedPreload")
	fmt.Printf("%s: %s (%s)\n", r.Title, r.Text, r.Interval)
	for _, v := range s.Verdicts[:2] {
		fmt.Printf("%s: %s\n", v.Title, v.Reads)
	}
	// Output:
	// Wrench setting: 37.8 N·m
	// Achieved clamp load: 25.2 kN (18.9 to 31.5 kN)
	// Share of the proof load: OK
	// Share of the yield strength: OK
}

// What is missing is told by kind and by name, so that a program can ask for
// it.
func ExampleProblemsOf() {
	_, err := marinecalc.Run("key-strength", []byte(`{"shaftDiameter": "30 mm"}`), marinecalc.Options{})
	fmt.Println("something is missing:", errors.Is(err, marinecalc.ErrMissing))
	for _, p := range marinecalc.ProblemsOf(err) {
		fmt.Println(p.Where, p.Kind, p.What)
	}
	// Output:
	// something is missing: true
	// /keyLength missing Key length that bears: not known
	// /keyWidth missing Key width: not known
	// /shaftTorque missing Steady torque: not known
}

// A yard's server: its own rules laid down once, a deadline for each request.
func ExampleNew() {
	yard := []byte(`{"title": "Invented yard", "limits": [{"id": "gland-rise-measured", "calculation": "gland-heat", "title": "Measured rise, our glands",
		"on": "measuredRise", "max": "12 K", "how": "Read gland and sea with one thermometer.", "why": "Our packing glazes above it.",
		"source": {"document": "Invented yard manual", "clause": "p. 3"}, "basis": "maker"}]}`)
	engine, err := marinecalc.New(marinecalc.WithOverlays(yard), marinecalc.WithUnits("metric"), marinecalc.WithMaxTrials(10000))
	if err != nil {
		log.Fatal(err)
	}
	ctx, cancel := context.WithTimeout(context.Background(), time.Minute)
	defer cancel()
	s, err := engine.Run(ctx, "gland-heat", []byte(`{"shaftDiameter": "30 mm", "boxBore": "42 mm", "packedLength": "36 mm", "packing": "flax", "water": "sea", "shaftAlloy": "c46400-h02",
		"shaftSpeed": "1000 rpm", "dripRate": "5 drips/min", "waterTemperature": "16 °C", "measuredGlandTemperature": "31 °C"}`), marinecalc.Options{})
	if err != nil {
		log.Fatal(err)
	}
	v := s.Verdict("gland-rise-measured")
	fmt.Println(v.Sentence)
	fmt.Printf("%s: %g %s, %s %g %s\n", v.Word, *v.SI, v.Unit, v.Side, *v.BoundSI, v.Unit)
	// Output:
	// Measured rise, our glands: 15 °C (13.4 to 16.5 °C), allowed at most 12 °C: over the limit. Our packing glazes above it. It takes the place of at most 20 °C (common practice, no source).
	// beyond: 15 K, at most 12 K
}

// A whole boat: what is urgent first, and what is not known yet.
func ExampleCheck() {
	text, err := os.ReadFile("../testdata/boats/kittiwake.json")
	if err != nil {
		log.Fatal(err)
	}
	boat, err := marinecalc.ReadBoat(text)
	if err != nil {
		log.Fatal(err)
	}
	survey, err := marinecalc.Check(boat, marinecalc.Options{})
	if err != nil {
		log.Fatal(err)
	}
	fmt.Println(len(survey.Sheets), "sheets; most urgent:")
	fmt.Println(survey.Findings[0].Sheet, "-", survey.Findings[0].Verdict.Title, "-", survey.Findings[0].Verdict.Reads)
	// Output:
	// 38 sheets; most urgent:
	// Shaft strength - Diameter by the yacht rule, over this shaft's - over the limit
}
