package quantity

import (
	"math"
	"strings"
	"testing"

	"example.org/driveline/marinecalc/problem"
)

// refused checks that err is a whole Problem whose text holds all the words.
func refused(t *testing.T, text string, err error, words ...string) {
	t.Helper()
	p, ok := err.(problem.Problem)
	if !ok {
		t.Errorf("%q: error is %T (%v), want a problem.Problem", text, err, err)
		return
	}
	if p.What == "" || p.Allowed == "" || p.Hint == "" || p.Where != "" {
		t.Errorf("%q: Problem not whole: %+v", text, p)
	}
	for _, w := range words {
		if !strings.Contains(p.String(), w) {
			t.Errorf("%q: %q lacks %q", text, p.String(), w)
		}
	}
}

func TestParseRefuses(t *testing.T) {
	for _, c := range []struct {
		kind, text string
		words      []string
	}{
		{"length", "32", []string{"a length needs its unit", `write "32 mm" or "32 in"`, "thou"}},
		{"length", "1-11/16", []string{"needs its unit", `"1-11/16 in"`}},
		{"temperature", "0", []string{"needs its unit"}},
		{"drip-rate", "10", []string{"a drip rate needs its unit", `write "10 drips/min"`}},
		{"energy", "10", []string{"an energy needs its unit"}},
		{"money", "120", []string{"an amount of money needs its currency", `"120 EUR"`}},
		{"length", "", []string{"a length is expected, nothing is written"}},
		{"length", "  \u00a0 ", []string{"nothing is written"}},
		{"length", strings.Repeat("3", 65), []string{"65 bytes", "at most 64"}},
		{"length", "32 kg", []string{"“kg” is a mass, a length is expected", `a length is written such as "25 mm" or "25 in"`}},
		{"power", "40 N·m", []string{"a power is expected", `a power is written such as "32 kW" or "32 hp"`}}, // no number of another kind
		{"rotation-speed", "31.67", []string{"needs its unit", `write "31.67 rpm" or "31.67 rev/s"`}},
		{"temperature-difference", "20", []string{"needs its unit", `write "20 K" or "20 °F"`}},
		{"length", "5 %", []string{"“%” is a ratio, a length is expected"}},
		{"length", "5 ft lbf", []string{"is a torque or an energy, a length is expected"}},
		{"mass", "5 MPa", []string{"is a pressure or a stress, a mass is expected"}},
		{"force", "45 lb", []string{"“lb” is a mass, a force is expected", `did you mean "45 lbf"?`}},
		{"temperature", "5 mm", []string{"“mm” is a length, a temperature is expected"}},
		{"ratio", "5 mm", []string{"“mm” is a length, a ratio is expected", "plain number"}},
		{"money", "5 mm", []string{"“mm” is a length, an amount of money is expected"}},
		{"time", "2027-04-01", []string{"“2027-04-01” is a date", `write "32 h"`}},
		{"time", "1.4.2027", []string{"“1.4.2027” is a date"}},
		{"time", "4 fortnights", []string{"not a known unit of time", `a time is written such as "32 h"`}}, // not "4 h"
		{"length", "32 mn", []string{"not a known unit of length", `did you mean "32 mm"?`, "µm"}},
		{"length", "32 thuo", []string{`did you mean "32 thou"?`}},
		{"length", "32 Mm", []string{"not a known unit", `did you mean "32 mm"?`}},
		{"stress", "0.5 mPa", []string{"not a known unit", `did you mean "0.5 MPa"?`}},
		{"volume", "3 gal", []string{`did you mean "3 US gal"?`}},
		{"direction", "12", []string{"needs its unit", `write "12 o'clock" or "12 °"`}},
		{"ratio", "1:2.5", []string{"the other way round", `write "2.5" or "2.5:1"`}},
		{"power", "60 to 50 hp", []string{"a range is written", "±"}},
		{"torque", "45 blorps", []string{"not a known unit of torque", "units N·m", `a torque is written such as "32 N·m" or "32 lbf·ft"`}},
		{"money", "120 eur", []string{"not a currency code", `did you mean "120 EUR"?`}},
		{"money", "120 euros", []string{"not a currency code", "three capital letters"}},
		{"length", "1/0 in", []string{"“1/0 in” is not a fraction", "cannot be 0"}},
		{"length", "1-1/0 in", []string{"cannot be 0"}},
		{"length", "7/16/2 in", []string{"not a fraction", "7/16", "1-11/16"}},
		{"length", "1-/16 in", []string{"not a fraction"}},
		{"length", "1 /16/2 in", []string{"not a fraction"}},
		{"length", "7/", []string{"not a fraction"}},
		{"length", "7/-16 in", []string{"not a fraction"}},
		{"length", "1.5/2 in", []string{"not a fraction", "whole numbers"}},
		{"length", "1.5-1/2 in", []string{"not a fraction"}},
		{"length", "1-17/16 in", []string{"not a fraction", "less than one"}},
		{"length", "1-11 in", []string{"not a fraction"}},
		{"length", "1234567/2 in", []string{"not a fraction"}},
		{"length", "1/2 1/4 in", []string{"two numbers"}},
		{"length", "/16 in", []string{"does not begin with a number"}},
		{"rotation-speed", "2 400 rpm", []string{"two numbers", `"2400"`}},
		{"length", "1e400 m", []string{"“1e400” is too large", "exponent"}},
		{"length", "1e101 m", []string{"too large"}},
		{"length", "1e-400 m", []string{"too small"}},
		{"length", "1e-101 m", []string{"too small"}},
		{"length", "NaN mm", []string{"does not begin with a number", "a number, then its unit"}},
		{"length", "Inf mm", []string{"does not begin with a number"}},
		{"length", "-inf", []string{"does not begin with a number"}},
		{"length", "mm", []string{"does not begin with a number"}},
		{"length", "--5 mm", []string{"does not begin with a number"}},
		{"length", ". mm", []string{"does not begin with a number"}},
		{"length", "1.2.3 mm", []string{"“1.2.3” is not a number"}},
		{"length", "1.234,5 mm", []string{"not a number", "thousands"}},
		{"length", "1,234,567 mm", []string{"not a number", "thousands"}},
		{"length", "1,234 mm", []string{"two ways", `"1.234" or "1234"`}},
		{"length", "0x10 mm", []string{"not a known unit"}},
		{"length", "32 mm in", []string{"two units", "“mm” and “in”"}},
		{"length", `5' 3"`, []string{"two quantities"}},
		{"length", "32 mm, 5 mm", []string{"two quantities"}},
		{"length", "32 mm)", []string{"not a known unit"}},
		{"length", "32 mm-", []string{"not a known unit"}},
		{"length", "32 m m", []string{"two units"}},
		{"length", "32 \xff\xfe", []string{"not a known unit", "??"}},
		{"length", "32 \x00mm", []string{"not a known unit", "?mm"}},
		{"length", "± 5 mm", []string{"no number stands before the ±"}},
		{"length", "5 mm ±", []string{"nothing stands after the ±", "± 5 %"}},
		{"length", "5 ± 2", []string{"a length needs its unit"}},
		{"length", "5 ± 2 %", []string{"a length needs its unit", `"5 mm ± 2 %"`, `"5 in ± 2 %"`}},
		{"torque", "60+/-10%", []string{"a torque needs its unit", `"60 N·m ± 10%" or "60 lbf·ft ± 10%"`}},
		{"temperature", "60 ± 10 %", []string{"a temperature needs its unit", `"60 °C ± 2 K"`}},
		{"torque", "60 N·m 10%", []string{"without ±", `"60 N·m ± 10 %"`}},
		{"torque", "60 Nm +10 %", []string{"without ±", `"60 Nm ± 10 %"`}},
		{"torque", "45 lbf·ft -5/+10 %", []string{"without ±", `"45 lbf·ft ± 10 %"`}},
		{"power", "30 kW, 5%", []string{"without ±", `"30 kW ± 5 %"`}},
		{"length", "5 mm ± -2 mm", []string{"sign of its own"}},
		{"length", "5 mm ± 2 kg", []string{"“kg” is a mass"}},
		{"length", "5 mm ± 2 mm ± 1 mm", []string{"second ±"}},
		{"temperature", "30 °C ± 5 %", []string{"percentage of a temperature", "± 2 °C"}},
		{"temperature", "-300 °C", []string{"below absolute zero"}},
		{"temperature", "-1 K", []string{"below absolute zero"}},
		{"money", "120 EUR ± 5 USD", []string{"EUR", "USD", "one currency"}},
		{"angle", "15 o'clock", []string{"no clock face"}},
		{"angle", "-3 o'clock", []string{"no clock face"}},
	} {
		r, err := kind(t, c.kind).Parse(c.text)
		if err == nil {
			t.Errorf("%s %q is taken as %+v", c.kind, c.text, r)
			continue
		}
		refused(t, c.text, err, c.words...)
	}
}

func TestParseAccuracyRefuses(t *testing.T) {
	for _, c := range []struct {
		kind, text string
		of         float64
		words      []string
	}{
		{"length", "", 1, []string{"nothing is written"}},
		{"length", "±", 1, []string{"nothing stands after"}},
		{"length", "± 0.02", 1, []string{"needs its unit"}},
		{"length", "5 mm ± 0.02 mm", 1, []string{"a value and an accuracy"}},
		{"length", "± 2 kg", 1, []string{"“kg” is a mass"}},
		{"length", "-2 mm", 1, []string{"sign of its own"}},
		{"length", "± 5 %", math.NaN(), []string{"needs the reading"}},
		{"temperature", "± 5 %", 300, []string{"percentage of a temperature"}},
		{"length", strings.Repeat("±", 40), 1, []string{"80 bytes"}},
	} {
		got, err := kind(t, c.kind).ParseAccuracy(c.text, c.of)
		if err == nil {
			t.Errorf("%s %q is taken as %v", c.kind, c.text, got)
			continue
		}
		refused(t, c.text, err, c.words...)
	}
}
