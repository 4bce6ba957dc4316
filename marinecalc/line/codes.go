package line

// BoreByScrews is the word for a flange that its key alone turns.
const BoreByScrews = "set-screws"

// DriveNone is the word for an output flange that friction alone drives.
const DriveNone = "none"

// The codes of the joints, from forward aft, for which the schema of
// line-joints has the words.
const (
	Hub       = "output-flange"
	Faces     = "coupling-faces"
	Bore      = "coupling-bore"
	Taper     = "propeller-taper"
	NoneKnown = "none-known"
)

// The codes of how a joint stands among the others.
const (
	Weakest     = "weakest"   // of those known
	Alike       = "alike"     // cannot be told from the weakest
	Stronger    = "stronger"  // than the weakest, surely
	CouldBe     = "could-be"  // weaker than the weakest known: too little is known of it
	NotRanked   = "not-known" // like every other
	StandsLoose = "loose"     // it was found loose, or one of the coupling's two: none of its margins counts
)
