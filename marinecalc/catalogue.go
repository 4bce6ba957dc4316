package marinecalc

import (
	"example.org/driveline/marinecalc/align"
	"example.org/driveline/marinecalc/fastener"
	"example.org/driveline/marinecalc/gland"
	"example.org/driveline/marinecalc/torque"
)

// catalogue is every calculation, in the order of the line from engine to
// propeller. Adding one is one line here, besides its function, its schema
// and its published checks.
var catalogue []calculation

func init() { // a plain variable would refer to itself through earlier results
	catalogue = []calculation{
		bind("shaft-torque", torque.AtShaft),
		bind("bolt-preload", fastener.Tighten),
		bindDrawn("coupling-alignment", align.Coupling, drawCouplingFace),
		bindDrawn("gland-heat", gland.Heat, drawDripCurve),
	}
}

// Entry is one line of the contents: what can be calculated.
type Entry struct {
	ID      string `json:"id"`
	Title   string `json:"title"`
	Answers string `json:"answers"`
}

// Calculations lists what can be calculated, from engine to propeller.
func Calculations() []Entry {
	list := make([]Entry, 0, len(catalogue))
	for _, c := range catalogue {
		if k, err := c.contract(); err == nil { // a test opens every contract
			list = append(list, Entry{ID: c.id, Title: k.Title, Answers: k.Answers})
		}
	}
	return list
}
