package contract

import (
	"encoding/json"
	"fmt"
	"maps"
	"math"
	"slices"
	"strconv"
	"strings"
	"time"
	"unicode/utf8"
)

// finding is one thing wrong with a value: the keyword that it does not keep to,
// and where.
type finding struct {
	where   []string // the path to it
	keyword string
	what    string // is wrong, where the keyword alone does not say it
}

// findings gathers what is wrong, or nothing where only whether is asked.
type findings struct {
	list []finding
	most int // 0: stop at the first, and gather nothing
	path []string
}

// holds tells whether a value keeps to the schema.
func (s *schema) holds(value any) bool { return s.find(&findings{}, value) }

// faults lists what is wrong with a value, in no more than so many findings.
func (s *schema) faults(value any, most int) []finding {
	f := &findings{most: most}
	s.find(f, value)
	return f.list
}

// wrong notes a finding. Its own answer is that of find: false.
func (f *findings) wrong(keyword, what string) bool {
	if len(f.list) < f.most {
		f.list = append(f.list, finding{slices.Clone(f.path), keyword, what})
	}
	return false
}

// enough tells whether to look no further.
func (f *findings) enough() bool { return len(f.list) >= f.most }

// inside holds a part of a value against its schema.
func (f *findings) inside(name string, s *schema, value any) bool {
	if s == nil {
		return true
	}
	if f.most == 0 {
		return s.find(f, value)
	}
	f.path = append(f.path, name)
	ok := s.find(f, value)
	f.path = f.path[:len(f.path)-1]
	return ok
}

// find holds a value against the schema and notes what is wrong. A value of
// another type is told of nothing else.
func (s *schema) find(f *findings, value any) bool {
	if s.types != 0 && s.types&typeOfJSON(value) == 0 {
		return f.wrong("type", "")
	}
	ok := true
	if len(s.constant) > 0 && !same(value, s.constant[0]) {
		ok = f.wrong("const", "")
	}
	if ok && len(s.enum) > 0 && !slices.ContainsFunc(s.enum, func(one any) bool { return same(value, one) }) {
		ok = f.wrong("enum", "")
	}
	if !ok && f.enough() {
		return false
	}
	switch v := value.(type) {
	case string:
		ok = (s.text == nil || s.text.find(f, v)) && ok
	case json.Number:
		ok = (s.number == nil || s.number.find(f, v)) && ok
	case []any:
		ok = (s.list == nil || s.list.find(f, v)) && ok
	case map[string]any:
		ok = (s.object == nil || s.object.find(f, v)) && ok
	}
	if !ok && f.enough() {
		return false
	}
	ok = (s.ref == nil || s.ref.find(f, value)) && ok
	return (len(s.oneOf) == 0 || s.findOne(f, value)) && ok
}

// findOne asks for one of several, and no more. Where none holds, each says
// what it lacks.
func (s *schema) findOne(f *findings, value any) bool {
	hold := 0
	for _, one := range s.oneOf {
		if one.holds(value) {
			hold++
		}
	}
	switch {
	case hold == 1:
		return true
	case hold > 1:
		return f.wrong("oneOf", "keeps to more than one of several forms")
	}
	for _, one := range s.oneOf {
		one.find(f, value)
	}
	return false
}

func (t *textRules) find(f *findings, text string) bool {
	ok := true
	if t.least > 0 || t.most >= 0 {
		switch n := utf8.RuneCountInString(text); {
		case n < t.least:
			ok = f.wrong("minLength", fmt.Sprintf("%d letters are too few: at least %d", n, t.least))
		case t.most >= 0 && n > t.most:
			ok = f.wrong("maxLength", fmt.Sprintf("%d letters are too many: at most %d", n, t.most))
		}
	}
	if t.pattern != nil && !t.pattern.MatchString(text) {
		ok = f.wrong("pattern", "does not keep to the form "+t.pattern.String())
	}
	if t.isDate && !isDate(text) {
		ok = f.wrong("format", Shorten(strconv.Quote(text))+" is not a day")
	}
	if t.quantity != nil && !t.quantity.allows(text) {
		ok = f.wrong("quantity", "")
	}
	return ok
}

func isDate(text string) bool {
	_, err := time.Parse(time.DateOnly, text)
	return err == nil
}

// allows tells whether a text is such a quantity.
func (q *quantityRule) allows(text string) bool {
	r, err := q.kind.Parse(text)
	return err == nil && !outside(r.SI, q.min, q.max)
}

func (n *numberRules) find(f *findings, number json.Number) bool {
	v, err := number.Float64()
	switch {
	case err != nil && !math.IsInf(v, 0):
		return f.wrong("type", "")
	case v < n.min:
		return f.wrong("minimum", "")
	case v > n.max:
		return f.wrong("maximum", "")
	case v <= n.above:
		return f.wrong("exclusiveMinimum", "")
	case v >= n.below:
		return f.wrong("exclusiveMaximum", "")
	}
	return true
}

func (l *listRules) find(f *findings, list []any) bool {
	ok := true
	if len(list) < l.least {
		ok = f.wrong("minItems", "")
	}
	if l.most >= 0 && len(list) > l.most {
		ok = f.wrong("maxItems", "")
	}
	if l.unique {
		if first, second, twice := twice(list); twice {
			ok = f.wrong("uniqueItems", fmt.Sprintf("entries %d and %d are alike", first+1, second+1))
		}
	}
	if l.items == nil {
		return ok
	}
	for i, entry := range list {
		if !ok && f.enough() {
			return false
		}
		if f.most == 0 {
			ok = l.items.find(f, entry) && ok
		} else {
			ok = f.inside(strconv.Itoa(i), l.items, entry) && ok
		}
	}
	return ok
}

// twice finds the first entry that another before it is the same as.
func twice(list []any) (first, second int, found bool) {
	seen := make(map[any]int, len(list))
	for i, entry := range list {
		key := entry
		switch entry.(type) {
		case []any, map[string]any:
			key = fmt.Sprint(entry) // of maps in the order of their names
		}
		if at, has := seen[key]; has {
			return at, i, true
		}
		seen[key] = i
	}
	return 0, 0, false
}

func (o *objectRules) find(f *findings, object map[string]any) bool {
	ok := true
	if len(object) < o.least {
		ok = f.wrong("minProperties", fmt.Sprintf("has too few members: at least %d", o.least))
	}
	for _, name := range o.required {
		if _, has := object[name]; !has {
			ok = f.wrong("required", "") // once for all that lack
			break
		}
	}
	for name, others := range o.together {
		if _, has := object[name]; !has {
			continue
		}
		for _, other := range others {
			if _, has := object[other]; !has {
				ok = f.wrong("dependentRequired", fmt.Sprintf("%s needs %s beside it", name, other))
			}
		}
	}
	if f.most == 0 {
		return ok && o.holdsMembers(f, object)
	}
	unknown := false
	for _, name := range slices.Sorted(maps.Keys(object)) {
		if o.names != nil {
			ok = f.inside(name, o.names, name) && ok
		}
		member, known := o.members[name]
		switch {
		case known:
		case o.closed:
			unknown = true
			continue
		default:
			member = o.others
		}
		ok = f.inside(name, member, object[name]) && ok
		if f.enough() {
			break
		}
	}
	if unknown {
		ok = f.wrong("additionalProperties", "") // once for all that are not known
	}
	return ok
}

// holdsMembers is find where only whether is asked, which needs no order.
func (o *objectRules) holdsMembers(f *findings, object map[string]any) bool {
	for name, value := range object {
		member, known := o.members[name]
		if !known {
			if o.closed {
				return false
			}
			member = o.others
		}
		if member != nil && !member.find(f, value) || o.names != nil && !o.names.find(f, name) {
			return false
		}
	}
	return true
}

// typeOfJSON is the types that a value is of: a whole number is two.
func typeOfJSON(value any) jsonType {
	switch v := value.(type) {
	case nil:
		return isNull
	case bool:
		return isBool
	case string:
		return isText
	case []any:
		return isList
	case map[string]any:
		return isObject
	case json.Number:
		if n, err := v.Float64(); err == nil && n == math.Trunc(n) {
			return isNumber | isInteger
		}
		return isNumber
	}
	return 0
}

// same tells whether two JSON values are the same; numbers by their value.
func same(a, b any) bool {
	switch a := a.(type) {
	case json.Number:
		b, is := b.(json.Number)
		if !is {
			return false
		}
		x, _ := a.Float64()
		y, _ := b.Float64()
		return x == y
	case []any, map[string]any:
		return strings.Compare(fmt.Sprint(a), fmt.Sprint(b)) == 0
	}
	return a == b
}
