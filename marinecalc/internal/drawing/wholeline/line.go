// Package wholeline draws the shaft line as a whole, and what is found along it.
package wholeline

import (
	"math"
	"strconv"
	"strings"

	"example.org/driveline/marinecalc/internal/picture"
	"example.org/driveline/marinecalc/sheet"
)

// LineParts are the parts of the line in the order in which they lie, by the
// ids of the table line-parts.
var LineParts = []string{"engine", "mounts", "gearbox", "coupling", "shaft", "gland", "bearing", "propeller"}

// LineSizes are what is known of the boat, in metres and degrees; NaN where it
// is not.
type LineSizes struct {
	EngineLength, EngineHeight    float64
	CouplingDiameter, CouplingLen float64
	ShaftDiameter, ShaftLength    float64
	FreeLength, Incline           float64 // from the coupling to the gland; degrees
	BearingLength                 float64
	PropellerDiameter, HubLength  float64
	Blades                        int // 0: not known
}

// The sheet of the line: leaders end above and below at the middle of four
// columns, where a page puts what it says of each part.
const (
	lineWidth, lineHeight = 360.0, 126.0
	lineLeft, lineRight   = 12.0, 348.0
	lineAxis              = 62.0 // height of the shaft's axis at the output flange
)

// LineColumns are the columns of the leaders.
const LineColumns = 4

// Line draws the line from the side, the bow on the left: to scale where the
// boat's sizes are known, else by usual proportions. Each part is a group
// "part-…" with a leader to its column, the odd ones above and the even ones
// below.
func Line(in LineSizes) sheet.Drawing {
	const title = "The line from engine to propeller"
	l := newLine(in)
	description := "From the side: engine on its mounts, gearbox, coupling, shaft, gland, stern bearing and propeller, " + l.scaleWords()
	p := picture.Begin(int(lineWidth), int(lineHeight), title, description)
	l.Picture = p
	l.hull()
	l.engine()
	l.mounts()
	l.gearbox()
	l.shaft()
	l.coupling()
	l.gland()
	l.bearing()
	l.propeller()
	return sheet.Drawing{Name: "line", Title: title, Description: description, SVG: p.End()}
}

// sketch is the drawing under way. Lengths along it are in units of the sheet.
type sketch struct {
	*picture.Picture
	in                                                 LineSizes
	degrees                                            float64 // that the axis falls towards the propeller
	engineLen, engineHigh                              float64
	gearX, flangeX, shaftX, glandX, bearingX, hubX     float64
	couplingR, couplingL, shaftR, bearingL, propR, hub float64
	broken                                             bool // the shaft is longer than it is drawn
	known                                              []string
}

// size is a length of the boat in mm, or what is usual.
func (l *sketch) size(metres, usual, least, most float64, what string) float64 {
	if math.IsNaN(metres) {
		return usual
	}
	l.known = append(l.known, what)
	return min(max(1000*metres, least), most)
}

func newLine(in LineSizes) *sketch {
	l := &sketch{in: in, degrees: 4}
	if !math.IsNaN(in.Incline) {
		l.degrees = min(max(in.Incline, 0), 9) * 0.6
	}
	engine := l.size(in.EngineLength, 780, 450, 1400, "engine")
	high := l.size(in.EngineHeight, 0.75*engine, 0.55*engine, 0.95*engine, "")
	gear := 0.34 * engine
	diameter := l.size(in.CouplingDiameter, 110, 80, 220, "coupling")
	length := l.size(in.CouplingLen, 80, 50, 140, "")
	shaft := l.size(in.ShaftLength, 1300, 500, 20000, "shaft length")
	most := 2.2 * (engine + gear)
	if l.broken = shaft > most; l.broken {
		shaft = most
	}
	thick := l.size(in.ShaftDiameter, 30, 20, 90, "shaft diameter")
	hub := l.size(in.HubLength, 85, 60, 160, "")
	total := engine + gear + 30 + length + shaft + hub + 70
	scale := (lineRight - lineLeft) / total
	l.engineLen, l.engineHigh = engine*scale, min(high*scale, 68)
	l.gearX = lineLeft + l.engineLen
	l.flangeX = l.gearX + gear*scale
	l.couplingR = min(max(diameter*scale/2, 11), 20)
	l.couplingL = max((30+length)*scale, 16)
	l.shaftX = l.flangeX + l.couplingL
	l.shaftR = max(thick*scale/2, 2.5)
	l.hub = max(hub*scale, 11)
	l.hubX = lineRight - l.hub - 9
	run := l.hubX - l.shaftX
	l.bearingL = min(max(l.size(in.BearingLength, 120, 50, 260, "stern bearing")*scale, 15), 0.24*run)
	l.bearingX = l.hubX - 6 - l.bearingL
	free := 0.26
	if !math.IsNaN(in.FreeLength) && shaft > 0 {
		free = min(max(1000*in.FreeLength/shaft, 0.18), 0.4)
	}
	l.glandX = l.shaftX + free*run
	l.propR = min(max(l.size(in.PropellerDiameter, 430, 250, 900, "propeller")*scale/2, 22), 44)
	return l
}

func (l *sketch) scaleWords() string {
	var known []string
	for _, k := range l.known {
		if k != "" {
			known = append(known, k)
		}
	}
	words := "with usual proportions."
	if len(known) > 0 {
		words = "to the boat's own size for " + strings.Join(known, ", ") + "; the rest with usual proportions."
	}
	if l.broken {
		words += " The shaft is drawn shortened."
	}
	if l.in.Blades > 0 {
		words += " " + strconv.Itoa(l.in.Blades) + " blades."
	}
	return words
}

// turned opens the group of a part, along the falling axis.
func (l *sketch) turned(part string) {
	id := ""
	if part != "" {
		id = "part-" + part
	}
	l.Group("part", id, l.degrees, l.flangeX, lineAxis)
}

// at is where a point beside the axis comes to lie on the sheet.
func (l *sketch) at(x, y float64) (float64, float64) {
	sin, cos := math.Sincos(l.degrees * math.Pi / 180)
	dx, dy := x-l.flangeX, y-lineAxis
	return l.flangeX + dx*cos - dy*sin, lineAxis + dx*sin + dy*cos
}

// leader draws the line from a part to its column.
func (l *sketch) leader(part string, x, y float64) {
	n := 0
	for i, id := range LineParts {
		if id == part {
			n = i
		}
	}
	to := lineWidth / LineColumns * (float64(n/2) + 0.5)
	end, knee := 0.0, 9.0
	if n%2 == 1 {
		end, knee = lineHeight, lineHeight-9
	}
	px, py := l.at(x, y)
	l.Group("leader", "leader-"+part, 0, 0, 0)
	l.Curve(picture.Faint, []float64{px, to, to}, []float64{py, knee, end})
	l.Circle(picture.Ink, px, py, 2)
	l.EndGroup()
}
