package inputs

import (
	"fmt"
	"math"
	"strings"

	"example.org/driveline/marinecalc/internal/contract"
	"example.org/driveline/marinecalc/internal/spread"
	"example.org/driveline/marinecalc/quantity"
	"example.org/driveline/marinecalc/rules"
)

// Gauges is the table whose rows are instruments.
const Gauges = "gauges"

// ReadsKind tells whether a gauge reads that kind of quantity.
func ReadsKind(gauge rules.Row, kind *quantity.Kind) bool {
	return strings.Contains(gauge.Values.Of("reads").Text, strings.ReplaceAll(kind.Name, "-", " "))
}

// ReadsAlike tells whether two gauges read the same: a log and a vibration
// meter both read a velocity, but not the same one.
func ReadsAlike(a, b *rules.Row) bool { return a.Values.Of("reads").Text == b.Values.Of("reads").Text }

// counted is the spread of the mean behind a count of random events, which may
// be reported for more or less than that in which they were counted.
func (in *Inputs) counted(p *contract.Property, n float64) spread.Factor {
	one := 1.0
	if in, of := in.At(p.CountedIn), in.At(p.CountedFor); in != nil && of != nil && in.Si > 0 {
		one = of.Si / in.Si
	}
	return spread.Count(n, one)
}

// readGauge gives a bare reading the accuracy of the gauge it was read with,
// and any other bare figure of nature what such figures are usually off by.
func (in *Inputs) readGauge(p *contract.Property, k *Known) {
	if p.ReadBy == "" && p.Bare == "" || k.Factor.Shape != spread.Exact || k.Raw == nil {
		return
	}
	if p.ReadBy == "" {
		k.Factor = in.bare(p, k)
	} else if gauge := in.At(p.ReadBy); gauge != nil {
		k.Factor = in.readWith(p, k.Si, gauge)
	} else if text, typed := k.Raw.(string); typed { // with a gauge that nobody names a reading is as sure as its last digit
		k.Factor = plusMinus(k.Si, p.Kind.HalfDigit(text))
	}
}

// BareFigures is the table that says how far off a figure may be that nobody
// gave an accuracy.
const BareFigures = "bare-figures"

// bare is a figure that came without an accuracy, even over what such figures
// are usually off by as far as the figure can be at all. Nothing is what is not
// there, and has none; nor has what was typed as "± 0".
func (in *Inputs) bare(p *contract.Property, k *Known) spread.Factor {
	text, _ := k.Raw.(string)
	if k.Si == 0 || math.IsNaN(k.Si) || quantity.HasAccuracy(text) {
		return k.Factor
	}
	if p.Bare == "digits" {
		return plusMinus(k.Si, p.Kind.HalfDigit(text))
	}
	row := in.Request.Book.Table(BareFigures).Find(p.Bare, in.Lookup)
	if row == nil {
		return k.Factor
	}
	a, err := p.Kind.ParseAccuracy(row.Values.Of("accuracy").Text, k.Si)
	if err != nil {
		return k.Factor
	}
	if k.Source == "" {
		k.Source = "range of " + row.Name + " (" + row.Source.String() + ")"
	}
	f := plusMinus(k.Si, a)
	if p.Minimum != nil {
		f.Low = min(max(f.Low, *p.Minimum), f.Estimate)
	}
	if p.Maximum != nil {
		f.High = max(min(f.High, *p.Maximum), f.Estimate)
	}
	return f
}

// readWith is what a gauge leaves unknown of a reading.
func (in *Inputs) readWith(p *contract.Property, si float64, gauge *Known) spread.Factor {
	row := in.Request.Book.Table(Gauges).Find(gauge.Word, in.Lookup)
	if row == nil {
		return plusMinus(si, 0)
	}
	f, err := WithGauge(p.Kind, row, si, p.Between)
	if err != nil {
		in.Problems.Add(gauge.blameAt, fmt.Sprintf("%s cannot be read with a %s", p.Title, row.Name), "a gauge for a "+strings.ReplaceAll(p.Kind.Name, "-", " "), "choose the gauge that was used")
	}
	return f
}

// WithGauge is a reading and its spread by a row of the gauges: even over its
// accuracy, or where events were counted that of the rate behind them. The
// difference of two readings, each even over its accuracy, is spread
// triangularly over twice that (JCGM 101:2008, 6.4.5).
func WithGauge(kind *quantity.Kind, row *rules.Row, si float64, between float64) (spread.Factor, error) {
	a, err := kind.ParseAccuracy(row.Values.Of("accuracy").Text, si)
	if err == nil && a > 0 && si >= 0 && row.Values.Of("shape").Text == spread.Counted.String() {
		return spread.Count(si, a), nil
	}
	if between > 0 && a > 0 {
		return spread.Factor{Estimate: si, Low: si - 2*between*a, High: si + 2*between*a, Shape: spread.Triangular}, err
	}
	return plusMinus(si, a), err
}
