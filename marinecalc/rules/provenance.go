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

// UnmarshalJSON reads a source of rule data.
func (s *Source) UnmarshalJSON(text []byte) error {
	type plain Source
	var p plain
	if err := json.Unmarshal(text, &p); err != nil {
		return err
	}
	*s = NewSource(p.Document, p.Edition, p.Clause)
	return nil
}

// String writes the source as one line.
func (s Source) String() string { return s.line }

// Basis says what kind of authority stands behind a row.
type Basis string

// The bases, strongest first.
const (
	ByMaker        Basis = "maker"
	ByStandard     Basis = "standard"
	ByHandbook     Basis = "handbook"
	ByMeasurement  Basis = "measured"
	CommonPractice Basis = "common-practice"
	FromMemory     Basis = "from-memory"
)

// Authority says the basis in the words of a verdict.
func (b Basis) Authority() string {
	switch b {
	case ByMaker:
		return "maker's figure"
	case CommonPractice:
		return "common practice"
	case FromMemory:
		return "published, quoted from memory"
	default:
		return "published"
	}
}

func (b Basis) known() bool {
	switch b {
	case ByMaker, ByStandard, ByHandbook, ByMeasurement, CommonPractice, FromMemory:
		return true
	}
	return false
}

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
		return fault{fmt.Sprintf("its basis %q is not known", b.Basis), "maker, standard, handbook, measured, common-practice, from-memory", "write maker for a maker's figure"}
	}
	return fault{}
}
