package rules

import (
	"encoding/json"
	"fmt"
	"strings"
)

// Source says where a row comes from.
type Source struct {
	Document string `json:"document"`
	Edition  string `json:"edition"`
	Clause   string `json:"clause"`
	line     string // the whole, written once
}

// NewSource makes a source of its parts; all but the document may be empty.
func NewSource(document, edition, clause string) Source {
	parts := []string{document}
	for _, p := range []string{edition, clause} {
		if p != "" {
			parts = append(parts, p)
		}
	}
	return Source{document, edition, clause, strings.Join(parts, ", ")}
}

// UnmarshalJSON reads a source of rule data; one that is a document and no more may be
// written as that, as the page's build does.
func (s *Source) UnmarshalJSON(text []byte) error {
	type plain Source
	var p plain
	to := any(&p)
	if text[0] == '"' {
		to = &p.Document
	}
	if err := json.Unmarshal(text, to); err != nil {
		return err
	}
	*s = NewSource(p.Document, p.Edition, p.Clause)
	return nil
}

// String writes the source as one line.
func (s Source) String() string { return s.line }

// Basis says what kind of authority stands behind a row.
type Basis string

// The bases, surest first. What a lower one says never overrules a higher.
const (
	ByMaker        Basis = "maker"                // the maker of this very part
	ByLaw          Basis = "law"                  // law and class, where they bind this craft
	ByCraft        Basis = "small-craft-standard" // ABYC P-6; ISO 4566, 484-2, 8665, 10133
	ByStandard     Basis = "standard"             // of components: SAE, ISO, ASME, DIN
	ByManual       Basis = "manual"               // public manuals of a government
	ByHandbook     Basis = "handbook"             // a named book with its chapter or page
	ByMakers       Basis = "makers"               // two makers or more with the same figure, each document named
	Baseline       Basis = "baseline"             // this boat's own
	ByMeasurement  Basis = "measured"             // by whoever the source names
	Calculated     Basis = "calculated"           // it follows from arithmetic, geometry or statics
	AsEntered      Basis = "as-entered"           // the owner's own figure, or one he read off the maker's papers
	CommonPractice Basis = "common-practice"
	FromMemory     Basis = "from-memory"
)

// authorities are the bases in the words of a verdict.
var authorities = map[Basis]string{
	ByMaker: "maker's figure", ByLaw: "law or class", ByCraft: "small-craft standard", ByStandard: "standard", ByManual: "manual",
	ByHandbook: "handbook", ByMakers: "several makers", Baseline: "this boat's baseline", ByMeasurement: "measured",
	Calculated: "calculated", AsEntered: "as entered", CommonPractice: "common practice", FromMemory: "from memory",
}

// Authority says the basis in the words of a verdict.
func (b Basis) Authority() string { return authorities[b] }

// Guides tells whether a limit of this basis is a guide: it compares, and
// nothing is over it.
func (b Basis) Guides() bool { return b == CommonPractice || b == FromMemory }

func (b Basis) known() bool { return authorities[b] != "" }

// Provenance is what every row carries to be believed.
type Provenance struct {
	Source Source `json:"source"`
	Basis  Basis  `json:"basis"`
}

// fault says what a row lacks to be believed.
func (b Provenance) fault() fault {
	switch {
	case b.Source.Document == "":
		return fault{"it has no source", `"source": {"document": "…"}`, "write where the figure comes from, or that it is common practice"}
	case !b.Basis.known():
		return fault{fmt.Sprintf("its basis %q is not known", b.Basis), "maker, law, small-craft-standard, standard, manual, handbook, makers, baseline, measured, calculated, as-entered, common-practice, from-memory", "write maker for a maker's figure"}
	}
	return fault{}
}

// fault is what is wrong with a row, what would be right, and how to mend it.
// The empty fault is none.
type fault struct{ what, allowed, hint string }
