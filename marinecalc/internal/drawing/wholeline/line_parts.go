package wholeline

import (
	"math"

	"example.org/driveline/marinecalc/internal/picture"
)

// hull draws what the line lies in: the bed under the mounts, and the bottom,
// through which the stern tube goes and from which the strut hangs.
func (l *sketch) hull() {
	tubeX, tubeY := l.at((l.glandX+25+l.bearingX)/2, lineAxis)
	strutX, strutY := l.at(l.bearingX+0.5*l.bearingL, lineAxis-l.shaftR-22)
	rise := (tubeY - strutY) / (strutX - tubeX)
	for _, thick := range []float64{0, 3} {
		l.Curve(picture.Faint, []float64{3, 0.6 * tubeX, tubeX, strutX, lineWidth - 3},
			[]float64{lineAxis + 46 - thick, min(lineAxis+46, tubeY+0.4*tubeX*rise*0.8) - thick, tubeY - thick, strutY - thick, strutY - rise*(lineWidth-3-strutX) - thick})
	}
	bedX, bedY := l.at(lineLeft+0.02*l.engineLen, lineAxis+26)
	endX, endY := l.at(l.gearX+0.25*(l.flangeX-l.gearX), lineAxis+26)
	l.Curve(picture.Faint, []float64{bedX, endX, endX, bedX, bedX}, []float64{bedY, endY, endY + 6, bedY + 6, bedY})
}

// engine draws block, head, sump, flywheel housing and the fins of its side.
func (l *sketch) engine() {
	x, w := lineLeft, l.engineLen
	top := lineAxis - 0.62*l.engineHigh
	l.turned("engine")
	l.RoundRect(picture.Body, x+0.1*w, top, 0.72*w, 0.2*l.engineHigh, 2)
	l.RoundRect(picture.Body, x+0.05*w, top+0.2*l.engineHigh, 0.85*w, 0.42*l.engineHigh, 3)
	l.Area(picture.Body, []float64{x + 0.12*w, x + 0.82*w, x + 0.76*w, x + 0.2*w}, []float64{lineAxis, lineAxis, lineAxis + 0.28*l.engineHigh, lineAxis + 0.28*l.engineHigh})
	l.RoundRect(picture.Body, x, lineAxis-11, 0.05*w, 22, 1)
	l.RoundRect(picture.Body, x+0.9*w, lineAxis-0.32*l.engineHigh, 0.1*w, 0.55*l.engineHigh, 2)
	for i := range 3 {
		at := x + (0.2+0.24*float64(i))*w
		l.RoundRect(picture.Ink, at, top+0.27*l.engineHigh, 0.14*w, 0.22*l.engineHigh, 2)
	}
	l.EndGroup()
	l.leader("engine", x+0.45*w, top+0.1*l.engineHigh)
}

// mounts draws two feet on rubber, a stud through each.
func (l *sketch) mounts() {
	l.turned("mounts")
	first, last := lineLeft+0.2*l.engineLen, l.gearX-0.04*l.engineLen
	for _, x := range []float64{first, last} {
		l.Line(picture.Ink, x, lineAxis+3, x, lineAxis+14)
		l.RoundRect(picture.Body, x-3.5, lineAxis+5.5, 7, 4, 1)
		l.RoundRect(picture.Body, x-10, lineAxis+9.5, 20, 3, 1)
		l.Area(picture.Body, []float64{x - 6, x + 6, x + 9, x - 9}, []float64{lineAxis + 14, lineAxis + 14, lineAxis + 23, lineAxis + 23})
		l.RoundRect(picture.Body, x-12, lineAxis+23, 24, 3, 1)
	}
	l.EndGroup()
	l.leader("mounts", first, lineAxis+24.5)
}

// gearbox draws bell housing, case and tail.
func (l *sketch) gearbox() {
	x, w := l.gearX, l.flangeX-l.gearX-5
	l.turned("gearbox")
	l.Area(picture.Body, []float64{x, x + 0.3*w, x + 0.3*w, x}, []float64{lineAxis - 24, lineAxis - 17, lineAxis + 14, lineAxis + 18})
	l.RoundRect(picture.Body, x+0.3*w, lineAxis-22, 0.55*w, 37, 4)
	l.Area(picture.Body, []float64{x + 0.85*w, x + w, x + w, x + 0.85*w}, []float64{lineAxis - 10, lineAxis - 6, lineAxis + 6, lineAxis + 10})
	l.Line(picture.Ink, x+0.42*w, lineAxis-22, x+0.42*w, lineAxis+15)
	l.Line(picture.Ink, x+0.57*w, lineAxis-26, x+0.57*w, lineAxis-22)
	l.Line(picture.Ink, x+0.5*w, lineAxis-26, x+0.66*w, lineAxis-26)
	l.EndGroup()
	l.leader("gearbox", x+0.6*w, lineAxis-13)
}

// coupling draws output flange and shaft coupling flange with two bolts.
func (l *sketch) coupling() {
	x, r := l.flangeX, l.couplingR
	plate := 0.24 * l.couplingL
	l.turned("coupling")
	l.RoundRect(picture.Body, x-5, lineAxis-0.5*r, 5, r, 1)
	l.RoundRect(picture.Body, x, lineAxis-r, plate, 2*r, 1)
	l.RoundRect(picture.Body, x+plate, lineAxis-r, plate, 2*r, 1)
	l.RoundRect(picture.Body, x+2*plate, lineAxis-0.56*r, l.couplingL-2*plate, 1.12*r, 1)
	for _, y := range []float64{lineAxis - 0.72*r, lineAxis + 0.72*r} {
		l.Line(picture.Ink, x-3.5, y, x+2*plate+3.5, y)
		l.Line(picture.Ink, x-3, y-2, x-3, y+2)
		l.Line(picture.Ink, x+2*plate+3, y-2, x+2*plate+3, y+2)
	}
	l.EndGroup()
	l.leader("coupling", x+plate, lineAxis+r)
}

// shaft draws it as far as it shows, with the break of a shortened one.
func (l *sketch) shaft() {
	l.turned("shaft")
	x0, x1, r := l.shaftX-2, l.hubX, l.shaftR
	l.Rect(picture.Body, x0, lineAxis-r, x1-x0, 2*r)
	middle := (l.glandX + l.bearingX) / 2
	if l.broken {
		for _, d := range []float64{-3, 3} {
			x := middle + d
			l.Curve(picture.Ink, []float64{x - 2, x + 2, x - 2, x + 2}, []float64{lineAxis - r - 5, lineAxis - r/2, lineAxis + r/2, lineAxis + r + 5})
		}
	}
	l.EndGroup()
	at := l.shaftX + 0.5*(l.glandX-l.shaftX)
	l.leader("shaft", max(at, l.shaftX+5), lineAxis-l.shaftR)
}

// gland draws the box with its nuts, the hose with two clamps, and the stern
// tube behind it.
func (l *sketch) gland() {
	x, r := l.glandX, l.shaftR
	l.turned("gland")
	l.RoundRect(picture.Body, x-6, lineAxis-r-6, 4, 2*r+12, 1)
	l.RoundRect(picture.Body, x, lineAxis-r-6, 11, 2*r+12, 1)
	for _, y := range []float64{lineAxis - r - 4, lineAxis + r + 4} {
		l.Line(picture.Ink, x-9, y, x, y)
		l.Line(picture.Ink, x-8, y-1.5, x-8, y+1.5)
	}
	hose := x + 11
	l.RoundRect(picture.Body, hose, lineAxis-r-4, 14, 2*r+8, 1)
	for _, at := range []float64{hose + 3, hose + 11} {
		l.Line(picture.Ink, at, lineAxis-r-5.5, at, lineAxis+r+5.5)
	}
	if tube := l.bearingX - (hose + 14) - 2; tube > 4 {
		l.Rect(picture.Ink, hose+14, lineAxis-r-2.5, tube, 2*r+5)
	}
	l.EndGroup()
	l.leader("gland", x+5, lineAxis+r+6)
}

// bearing draws the shell in its housing, hatched as rubber is.
func (l *sketch) bearing() {
	x, w, r := l.bearingX, l.bearingL, l.shaftR
	l.turned("bearing")
	l.Area(picture.Body, []float64{x + 0.25*w, x + 0.75*w, x + 0.68*w, x + 0.36*w}, []float64{lineAxis - r - 5, lineAxis - r - 5, lineAxis - r - 22, lineAxis - r - 22})
	l.RoundRect(picture.Body, x, lineAxis-r-5, w, 2*r+10, 2)
	for at := x + 3; at < x+w-2; at += 4 {
		l.Line(picture.Ink, at, lineAxis-r-1, at+3, lineAxis-r-4)
		l.Line(picture.Ink, at, lineAxis+r+4, at+3, lineAxis+r+1)
	}
	l.EndGroup()
	l.leader("bearing", x+0.5*w, lineAxis-r-14)
}

// propeller draws hub, nut and as many blades as there are, as they look from
// the side.
func (l *sketch) propeller() {
	x, w, r := l.hubX, l.hub, l.propR
	n := l.in.Blades
	if n < 2 || n > 7 {
		n = 3
	}
	l.turned("propeller")
	middle := x + 0.45*w
	for i := range n {
		l.blade(middle, r, 2*math.Pi*float64(i)/float64(n))
	}
	l.Area(picture.Body, []float64{x, x + w, x + w, x}, []float64{lineAxis - l.shaftR - 4, lineAxis - l.shaftR - 1.5, lineAxis + l.shaftR + 1.5, lineAxis + l.shaftR + 4})
	l.RoundRect(picture.Body, x+w, lineAxis-l.shaftR-0.5, 4, 2*l.shaftR+1, 1)
	l.Area(picture.Body, []float64{x + w + 4, x + w + 9, x + w + 4}, []float64{lineAxis - l.shaftR, lineAxis, lineAxis + l.shaftR})
	l.EndGroup()
	l.leader("propeller", middle, lineAxis+0.5*r)
}

// blade draws one as a leaf from the hub, as it stands at an angle from
// upright: shorter and broader the more it points at who looks.
func (l *sketch) blade(x, r, angle float64) {
	up, across := math.Cos(angle), math.Abs(math.Sin(angle))
	half := 4.5 + 5.5*across
	const points = 7
	var xs, ys []float64
	for side := range 2 {
		for i := range points {
			t := float64(i) / (points - 1)
			sign := -1.0
			if side == 1 {
				t, sign = 1-t, 1
			}
			wide := half * (0.35 + 0.65*math.Sin(math.Pi*math.Pow(t, 0.8))) * math.Sqrt(max(0, 1-math.Pow(t, 6)))
			xs = append(xs, x+sign*wide+2.5*t*up)
			ys = append(ys, lineAxis-r*up*t)
		}
	}
	l.Area(picture.Body, xs, ys)
}
