package marinecalc

import (
	"math"

	"example.org/driveline/marinecalc/quantity"
	"example.org/driveline/marinecalc/shaft"
	"example.org/driveline/marinecalc/sheet"
)

// drawWithdrawal draws the room that is needed over the room there is, both
// aft of the shaft's end, to one scale.
func drawWithdrawal(in shaft.Drawing, out shaft.Room, b brush) []sheet.Drawing {
	const left, width = 16.0, 328.0
	length, _ := quantity.Lookup("length")
	show := func(v quantity.Length) string { return length.Print(float64(v), b.units, "mm", "in") }
	const title = "Room aft of the shaft"
	description := "Needed " + show(out.RoomNeeded) + ", there is " + show(out.RoomHere) + ": " + b.words("way", out.Way) + "."
	p := begin(360, 150, title, description)
	scale := width / math.Max(1e-9, 1.05*math.Max(float64(out.RoomNeeded), float64(out.RoomHere)))
	bar := func(y float64, class, name string, v quantity.Length) {
		p.text(ink, "start", left, y-6, name+" "+show(v))
		p.rect(class, left, y, math.Max(0, float64(v)*scale), 16)
	}
	bar(30, accent, "needed", out.RoomNeeded)
	bar(76, body, "rudder amidships", in.RoomAft)
	if in.RoomRudderOver > 0 {
		bar(122, body, "rudder hard over", in.RoomRudderOver)
	}
	x := left + float64(out.RoomNeeded)*scale
	p.line(warn, x, 24, x, 142)
	return []sheet.Drawing{{Name: "withdrawal-room", Title: title, Description: description, SVG: p.end()}}
}
