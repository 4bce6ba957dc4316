package texts

import (
	"regexp"
	"strings"
)

// Calls that take no words for people in any place.
var codeCalls = set(`querySelector querySelectorAll closest matches addEventListener removeEventListener getAttribute toggle add remove keep recall forget keysFrom
	byId getElementById startsWith endsWith includes split join replace replaceAll createElement createElementNS unpack at below get set has matchMedia register postMessage
	createObjectStore transaction objectStore Event CustomEvent dispatchEvent indexOf RegExp localeCompare removeAttribute hasAttribute getPropertyValue setProperty removeProperty
	open getContext BroadcastChannel import normalize warn error charAt`)

// Members of objects that hold none.
var codeKeys = set(`class type id for role href rel autocomplete autocapitalize spellcheck enterkeyhint inputmode d viewBox points transform ask calculation kind word
	method tag mode mime src target lang dir ask fill stroke style block behavior headers durability width height`)

// Members and places whose words people read, however short these are.
var saidKeys = set(`title placeholder label alt aria-label aria-roledescription aria-valuetext textContent`)
var saidCalls = set(`h s button speak fold lateFold append replaceChildren prepend before after`)

func set(words string) map[string]bool {
	made := map[string]bool{}
	for _, w := range strings.Fields(words) {
		made[w] = true
	}
	return made
}

var (
	letters  = regexp.MustCompile(`\pL`)
	sentence = regexp.MustCompile(`\pL\pL[,.:;’']? +[(“]?(\pL|\{)|\} ?\pL\pL+[ .,]|[.:,] \{|\pL+: ?$|^\pL+ \{`)
	capital  = regexp.MustCompile(`^\p{Lu}\p{Ll}*( |$|[.,:;…?’])`)
	noWords  = regexp.MustCompile(`^[#.\[@:>*]\S|^M?[\d .,LCZAHV-]+$|^\w+/[\w+.-]+(; ?\w+=\S+)?$|^(\{\d+\}|[ ,;:.–/()+×=-])*$|[:.][a-z-]+\(.*\)\]?$|^M\{|^https?:|=>|;base64`)
	hole     = regexp.MustCompile(`\{\d+\}`)
)

// read tells whether a literal holds words for people, by where it stands and
// how it looks.
func (s *scanner) read(words, next string) bool {
	bare := hole.ReplaceAllString(words, "")
	if !letters.MatchString(bare) || strings.Contains(" from import case === !== == in ", " "+s.prev+" ") || strings.HasPrefix(next, "===") || strings.HasPrefix(next, "!==") || strings.HasPrefix(next, "in ") {
		return false
	}
	looks := !noWords.MatchString(words) && (sentence.MatchString(words) || capital.MatchString(bare))
	spoken := capital.MatchString(bare) && (sentence.MatchString(words) || !strings.Contains(bare, "-"))
	for i := len(s.stack) - 1; i > 0; i-- {
		f := s.stack[i]
		if f.sign == '$' && strings.Contains(strings.TrimRight(words, " "), " ") && !noWords.MatchString(words) {
			looks = true // an end that a sentence may have
		}
		switch {
		case f.sign == '[' && name.MatchString(f.call) && f.call != "return" && f.call != "of" || f.sign == '[' && (f.call == ")" || f.call == "]"):
			return false // a member by its name
		case f.sign == '[', f.sign == '$', f.sign == '(' && !name.MatchString(f.call):
			continue // as what is around it
		case f.sign == '{' && f.object && f.key != "":
			if codeKeys[f.key] || strings.HasPrefix(f.key, "data-") || strings.HasPrefix(f.key, "aria-") && !saidKeys[f.key] {
				return spoken && f.key != "class"
			}
			return looks || saidKeys[f.key]
		case f.sign == '(' && (f.call == "h" || f.call == "s"):
			return f.arg >= 2 && (looks || !noWords.MatchString(words))
		case f.sign == '(' && f.call == "setAttribute":
			return f.arg > 0 && looks
		case f.sign == '(' && codeCalls[f.call]:
			return f.arg > 0 && spoken && sentence.MatchString(words)
		case f.sign == '(' && saidCalls[f.call]:
			return f.arg == 0 && !noWords.MatchString(words) || looks
		}
		return looks
	}
	return looks
}
