package offline

import (
	"bytes"
	"fmt"
	"image"
	"image/color"
	"image/png"
	"math"
)

// The icon is a propeller of three blades seen from astern, on the colour of
// the page's links. Lengths are of a square of 512; all lies within the circle
// that a host may cut out (0.8 of the width).
const (
	ground = "#0b4d66"
	blades = "#fdfcf9"

	square     = 512
	bladeAt    = 98 // from the middle to the middle of a blade
	bladeWide  = 50 // half
	bladeLong  = 92 // half
	hubRadius  = 44
	boreRadius = 17
)

func icon() []byte {
	var b bytes.Buffer
	fmt.Fprintf(&b, `<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 %d %d"><rect width="%[1]d" height="%[2]d" fill="%s"/><g fill="%s" transform="translate(%d %[5]d)">`, square, square, ground, blades, square/2)
	for turn := 0; turn < 360; turn += 120 {
		fmt.Fprintf(&b, `<ellipse cy="%d" rx="%d" ry="%d" transform="rotate(%d)"/>`, -bladeAt, bladeWide, bladeLong, turn)
	}
	fmt.Fprintf(&b, `<circle r="%d"/><circle r="%d" fill="%s"/></g></svg>`, hubRadius, boreRadius, ground)
	return b.Bytes()
}

// raster is the icon as PNG, each point the mean of 16.
func raster(size int) []byte {
	on, off := color.RGBA{0xfd, 0xfc, 0xf9, 0xff}, color.RGBA{0x0b, 0x4d, 0x66, 0xff}
	mix := func(a, b uint8, share float64) uint8 {
		return uint8(math.Round(float64(a)*share + float64(b)*(1-share)))
	}
	const fine = 4
	picture := image.NewRGBA(image.Rect(0, 0, size, size))
	for y := range size {
		for x := range size {
			hit := 0
			for i := range fine * fine {
				at := func(p, part int) float64 {
					return (float64(p)+(float64(part)+0.5)/fine)*square/float64(size) - square/2
				}
				if isBlade(at(x, i%fine), at(y, i/fine)) {
					hit++
				}
			}
			share := float64(hit) / (fine * fine)
			picture.SetRGBA(x, y, color.RGBA{mix(on.R, off.R, share), mix(on.G, off.G, share), mix(on.B, off.B, share), 0xff})
		}
	}
	var b bytes.Buffer
	_ = png.Encode(&b, picture) // into memory
	return b.Bytes()
}

// isBlade tells whether a point, seen from the middle, lies on a blade or on
// the hub around its bore.
func isBlade(x, y float64) bool {
	if r := math.Hypot(x, y); r < boreRadius {
		return false
	} else if r < hubRadius {
		return true
	}
	for turn := range 3 {
		sin, cos := math.Sincos(-2 * math.Pi / 3 * float64(turn))
		across, along := (x*cos-y*sin)/bladeWide, (x*sin+y*cos+bladeAt)/bladeLong
		if across*across+along*along < 1 {
			return true
		}
	}
	return false
}
