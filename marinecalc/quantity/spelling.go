// Spellings of units.

package quantity

import "strings"

// fold is the unit behind a spelling in lower case, and the first letter it
// really has: m is a thousandth and M a million, so those are never taken for
// each other.
type fold struct {
	unit  *unit
	first byte
}

// learnSpellings fills the maps that find uses. Each spelling is known as
// written, in its normal form, and with its factors run together ("Nm").
func (k *Kind) learnSpellings() {
	k.spellings = map[string]*unit{}
	k.folded = map[string]fold{}
	for i := range k.units {
		u := &k.units[i]
		k.learn(u, u.name)
		for s := range strings.SplitSeq(u.also, ",") {
			if s != "" {
				k.learn(u, s)
			}
		}
	}
}

func (k *Kind) learn(u *unit, spelling string) {
	k.spellings[spelling] = u
	if spelling == "" {
		return
	}
	normal, ok := normalForm(nil, spelling)
	if !ok {
		return
	}
	for _, key := range []string{string(normal), strings.ReplaceAll(string(normal), "·", "")} {
		k.spellings[key] = u
		low := string(lower([]byte(key)))
		switch old, taken := k.folded[low]; {
		case !taken:
			k.folded[low] = fold{u, key[0]}
		case old.unit != u:
			k.folded[low] = fold{} // two units differ by case only: no guessing
		}
	}
}

// find gives the unit of that spelling: as written, else in normal form, else
// whatever the case of its letters.
func (k *Kind) find(text string) (*unit, bool) {
	if u, ok := k.spellings[text]; ok {
		return u, true
	}
	if k.isMoney() {
		return &moneyUnit, isCurrency(text)
	}
	var buf [2 * maxText]byte
	key, ok := normalForm(buf[:0], text)
	if !ok {
		return nil, false
	}
	if u, ok := k.spellings[string(key)]; ok {
		return u, true
	}
	first := key[0]
	f := k.folded[string(lower(key))]
	if f.unit == nil || first != f.first && (first == 'm' || first == 'M') {
		return nil, false
	}
	return f.unit, true
}

// normalForm appends a unit's text with one sign for each thing: "·" between
// factors (for space, *, -, and an opening parenthesis), plain digits for
// powers, u for micro. False: the text has not the form of a unit.
func normalForm(dst []byte, text string) ([]byte, bool) {
	if text == "" || len(text) > maxText {
		return dst, false
	}
	gap, power, open := false, false, 0
	for _, r := range text {
		switch r {
		case ' ', '\t', '·', '*', '-', '(':
			if r == '(' {
				open++
			}
			if len(dst) == 0 || power {
				return dst, false
			}
			gap = true
			continue
		case ')':
			if open == 0 || gap || power {
				return dst, false
			}
			open--
			continue
		case '^':
			power = true
			continue
		case '²':
			r = '2'
		case '³':
			r = '3'
		case 'µ', 'μ':
			r = 'u'
		}
		if power && r != '2' && r != '3' {
			return dst, false
		}
		power = false
		if gap && r != '/' && dst[len(dst)-1] != '/' {
			dst = append(dst, "·"...)
		}
		gap = false
		dst = append(dst, string(r)...)
	}
	return dst, !gap && !power && open == 0
}

// lower puts ASCII letters in lower case, in place.
func lower(b []byte) []byte {
	for i, c := range b {
		if 'A' <= c && c <= 'Z' {
			b[i] = c + 'a' - 'A'
		}
	}
	return b
}
