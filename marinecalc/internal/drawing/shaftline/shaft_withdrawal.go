package shaftline

import (
	"math"

	"example.org/driveline/marinecalc/internal/picture"
	"example.org/driveline/marinecalc/quantity"
	"example.org/driveline/marinecalc/shaft"
	"example.org/driveline/marinecalc/sheet"
)

// ShaftWithdrawal draws the room that is needed over the room there is, both
// aft of the shaft's end, to one scale.
func ShaftWithdrawal(in shaft.WithdrawalInput, out shaft.WithdrawalResult, b picture.Brush) []sheet.Drawing {
	const left, width = 16.0, 328.0
	const title = "Room aft of the shaft"
	description := "Needed " + b.Length(out.RoomNeeded) + ", there is " + b.Length(out.RoomHere) + ": " + b.Words("way", out.Way) + "."
	p := picture.Begin(360, 150, title, description)
	scale := width / math.Max(1e-9, 1.05*math.Max(float64(out.RoomNeeded), float64(out.RoomHere)))
	bar := func(y float64, class, name string, v quantity.Length) {
		p.Text(picture.Ink, "start", left, y-6, name+" "+b.Length(v))
		p.Rect(class, left, y, math.Max(0, float64(v)*scale), 16)
	}
	bar(30, picture.Accent, "needed", out.RoomNeeded)
	bar(76, picture.Body, "rudder amidships", in.RoomAft)
	if in.RoomRudderOver > 0 {
		bar(122, picture.Body, "rudder hard over", in.RoomRudderOver)
	}
	x := left + float64(out.RoomNeeded)*scale
	p.Line(picture.Warn, x, 24, x, 142)
	return []sheet.Drawing{{Name: "withdrawal-room", Title: title, Description: description, SVG: p.End()}}
}
