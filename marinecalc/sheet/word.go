package sheet

import "slices"

// Word is how a result or a reading stands to a limit, for programs. People
// read [Word.Reads].
type Word string

// The words of verdicts.
const (
	Beyond      Word = "beyond"            // meets the limit with a probability of 2.5 % or less
	Outside     Word = "outside the guide" // as Beyond, of a guide, which is no limit
	CannotTell  Word = "cannot tell"       // the range is too wide to say either, or it is not the same over the bracket of an unverified figure
	NearLimit   Word = "near the limit"    // as Within, but little is left to the limit
	About       Word = "about the guide"   // as CannotTell, of a guide
	Within      Word = "within"            // meets the limit with a probability of 97.5 % or more
	Inside      Word = "inside the guide"  // as Within, of a guide
	NotMeasured Word = "not measured"      // there is no reading to judge, or no limit to judge it by
)

// words are the words of verdicts, most urgent first.
var words = [...]Word{Beyond, Outside, CannotTell, NearLimit, About, Within, Inside, NotMeasured}

// ByGuide is the word where what was held against is a guide.
func (w Word) ByGuide() Word {
	switch w {
	case Beyond:
		return Outside
	case CannotTell:
		return About
	case Within, NearLimit:
		return Inside
	}
	return w
}

// Plain is the word that a limit would have had where a guide has its own: what
// rule rows ask by.
func (w Word) Plain() Word {
	switch w {
	case Outside:
		return Beyond
	case About:
		return CannotTell
	case Inside:
		return Within
	}
	return w
}

// Words lists the words of verdicts, most urgent first.
func Words() []Word { return slices.Clone(words[:]) }

// Rank is the place of a word among Words: 0 is the most urgent.
func (w Word) Rank() int { return slices.Index(words[:], w) }

// Side is the side on which a limit lies.
type Side string

// The sides of a limit.
const (
	AtMost  Side = "at most"
	AtLeast Side = "at least"
)

// Reads is what people read for a word.
func (w Word) Reads(side Side) string {
	switch w {
	case Within:
		return "OK"
	case NearLimit:
		return "OK but close"
	case Beyond:
		if side == AtLeast {
			return "under the minimum"
		}
		return "over the limit"
	case CannotTell:
		return "not enough to tell"
	}
	return string(w)
}

// Signal is a signal word of ANSI Z535.6.
type Signal string

// The signal words, gravest first.
const (
	Danger  Signal = "DANGER"
	Warning Signal = "WARNING"
	Care    Signal = "CAUTION"
	Notice  Signal = "NOTICE"
)

// Gravity is the place of a signal word, 0 the gravest; -1 for any other.
func (s Signal) Gravity() int { return slices.Index([]Signal{Danger, Warning, Care, Notice}, s) }

// Kind is a kind of quantity, by its name: the constants quantity.KindLength
// and so on compare with it. It is empty for words.
type Kind string

// Level says whether an input or a result stands in the open or is folded
// away.
type Level string

// The levels.
const (
	Main   Level = "main"
	Detail Level = "detail"
)
