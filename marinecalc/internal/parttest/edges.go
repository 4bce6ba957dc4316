package parttest

import (
	"fmt"
	"maps"
	"math"
	"reflect"
	"slices"
	"strconv"
	"strings"
	"testing"
	"unicode"
	"unicode/utf8"

	"example.org/driveline/marinecalc/problem"
)

// Edges tries a calculation on an input that it takes, with one number at a
// time at each edge of what may stand there and just past it: at an edge that
// belongs to it there is no problem at the number's place, past it there is one
// that says what is allowed. What is not a number or infinite is refused too.
//
// edges gives, by the number's place ("/mounts/0/up"), the interval in SI as
// ISO 80000-2 writes it with parentheses: [2, 48] has both ends, (0, inf) none.
// Before it "0 or" and "NaN or" let these pass as not given, and "about"
// says that at an open end rounding decides. "any" is a number that is not
// looked at. Every number of the input must have its interval; of
// a list, those of the first entry. A bound that hangs on the rest of the input
// is the one for the input given.
func Edges[In, Out any](t *testing.T, good In, f func(In) (Out, error), edges map[string]string) {
	t.Helper()
	if _, err := f(good); err != nil {
		t.Fatalf("the input is refused as it is: %v", err)
	}
	places := numbers(reflect.ValueOf(good), "")
	for _, where := range slices.Sorted(maps.Keys(edges)) {
		if !slices.Contains(places, where) {
			t.Errorf("there is no number at %s", where)
		}
	}
	for _, where := range places {
		text, has := edges[where]
		if !has {
			t.Errorf("%s has no interval", where)
		}
		if !has || text == "any" {
			continue
		}
		i, err := readInterval(text)
		if err != nil {
			t.Errorf("%s: %v", where, err)
			continue
		}
		check := func(v float64, refused bool) {
			t.Helper()
			in := with(good, where, v)
			_, err := f(in)
			blamed := slices.ContainsFunc(problem.Of(err), func(p problem.Problem) bool {
				if p.Where == where && (p.What == "" || p.Allowed == "") {
					t.Errorf("%s = %g: %v does not say what is wrong and what is allowed", where, v, p)
				}
				return p.Where == where
			})
			if blamed != refused {
				t.Errorf("%s = %.12g, of %s: refused there %v: %v", where, v, text, blamed, err)
			}
		}
		whole := find(reflect.ValueOf(&good).Elem(), where).CanInt()
		i.try(whole, check)
	}
}

// try checks what lies at an interval's ends and just past them, and what is
// no number. Where rounding decides at an open end both sides of it stand for
// it.
func (i *interval) try(whole bool, check func(v float64, refused bool)) {
	if !math.IsInf(i.low, 0) {
		if !i.lowOpen || !i.rounded {
			check(i.low, i.lowOpen)
		}
		below := step(i.low, -1, whole)
		check(below, !(i.orZero && below == 0))
		check(step(i.low, 1, whole), false)
	}
	if !math.IsInf(i.high, 0) {
		if !i.highOpen || !i.rounded {
			check(i.high, i.highOpen)
		}
		check(step(i.high, 1, whole), true)
		check(step(i.high, -1, whole), false)
	}
	if i.orZero {
		check(0, false)
	} else if 0 < i.low || 0 > i.high {
		check(0, true) // "not given" is no way round a bound
	}
	if !whole {
		check(math.NaN(), !i.orNaN)
		check(math.Inf(1), true)
		check(math.Inf(-1), true)
	}
}

// step is a little beyond a number, by more than what rounding may take; for a
// whole one it is the next.
func step(v, side float64, whole bool) float64 {
	switch {
	case whole:
		return v + side
	case v == 0:
		return side * 1e-9
	}
	return v + side*1e-6*math.Abs(v)
}

type interval struct {
	low, high         float64
	lowOpen, highOpen bool
	orZero, orNaN     bool
	rounded           bool
}

func readInterval(text string) (i interval, err error) {
	rest, about := strings.CutPrefix(text, "about ")
	rest, zero := strings.CutPrefix(rest, "0 or ")
	rest, nan := strings.CutPrefix(rest, "NaN or ")
	i = interval{orZero: zero, orNaN: nan, rounded: about}
	if len(rest) < 5 || !strings.ContainsRune("[(", rune(rest[0])) || !strings.ContainsRune("])", rune(rest[len(rest)-1])) {
		return i, fmt.Errorf("%q is no interval", text)
	}
	i.lowOpen, i.highOpen = rest[0] == '(', rest[len(rest)-1] == ')'
	low, high, _ := strings.Cut(rest[1:len(rest)-1], ", ")
	if i.low, err = strconv.ParseFloat(low, 64); err == nil {
		i.high, err = strconv.ParseFloat(high, 64)
	}
	if err == nil && !(i.low < i.high) {
		err = fmt.Errorf("%q has nothing in it", text)
	}
	return i, err
}

// numbers lists the places of all numbers in a struct.
func numbers(v reflect.Value, at string) []string {
	switch {
	case v.CanFloat(), v.CanInt():
		return []string{at}
	case v.Kind() == reflect.Slice && v.Len() > 0:
		return numbers(v.Index(0), at+"/0")
	case v.Kind() == reflect.Struct:
		var all []string
		for i := range v.NumField() {
			first, size := utf8.DecodeRuneInString(v.Type().Field(i).Name)
			all = append(all, numbers(v.Field(i), at+"/"+string(unicode.ToLower(first))+v.Type().Field(i).Name[size:])...)
		}
		return all
	}
	return nil
}

// with is an input with a number changed. The lists on the way are copied.
func with[In any](in In, where string, v float64) In {
	to := find(reflect.ValueOf(&in).Elem(), where)
	if to.CanInt() {
		to.SetInt(int64(v))
	} else {
		to.SetFloat(v)
	}
	return in
}

// find is the place in a struct that can be set, with lists of its own.
func find(v reflect.Value, where string) reflect.Value {
	for _, token := range strings.Split(where, "/")[1:] {
		if v.Kind() == reflect.Slice {
			own := reflect.MakeSlice(v.Type(), v.Len(), v.Len())
			reflect.Copy(own, v)
			v.Set(own)
			n, _ := strconv.Atoi(token)
			v = v.Index(n)
			continue
		}
		first, size := utf8.DecodeRuneInString(token)
		v = v.FieldByName(string(unicode.ToUpper(first)) + token[size:])
	}
	return v
}
