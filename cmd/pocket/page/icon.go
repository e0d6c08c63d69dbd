package page

import (
	"bytes"
	"image"
	"image/color"
	"image/png"
	"math"
)

// icon is the mark of the page: a lake cut through, warm above, cold below, the thermocline
// between them, and a line that goes down through it to a fly.
type icon struct {
	name  string
	size  int     // pixels
	share float64 // of the width that the mark takes: a mask of the phone's may cut what is outside
	round float64 // radius of the corners, of the width
}

var icons = []icon{
	{"icon-192.png", 192, 1, 0.2},
	{"icon-512.png", 512, 1, 0.2},
	{"icon-maskable.png", 512, 0.72, 0}, // a mask leaves at least a circle of 0.8 (W3C, Web Application Manifest)
	{"icon-apple.png", 180, 0.86, 0},
}

var (
	sky     = color.NRGBA{0xe9, 0xee, 0xf3, 0xff}
	warm    = color.NRGBA{0x7f, 0xa9, 0xd6, 0xff}
	cold    = color.NRGBA{0x0a, 0x3a, 0x6e, 0xff}
	seam    = color.NRGBA{0xf0, 0xb4, 0x29, 0xff}
	fly     = color.NRGBA{0xff, 0xff, 0xff, 0xff}
	outside = color.NRGBA{}
)

// at is the colour at a place, in widths of the mark from its middle, down and right positive.
func (i icon) at(x, y float64) color.NRGBA {
	const (
		surface, layer = -0.27, 0.06 // heights
		wave           = 0.022
		rod, bait      = 0, 0.255 // where the line is, and its end
	)
	ripple := wave * math.Sin(x*2*math.Pi*2.5)
	switch {
	case math.Hypot(x-rod, y-bait) < 0.062:
		return fly
	case math.Abs(x-rod) < 0.0125 && y < bait:
		if y < surface+ripple {
			return cold
		}
		return fly
	case y < surface+ripple:
		return sky
	case math.Abs(y-layer) < 0.03:
		return seam
	case y < layer:
		return warm
	}
	return cold
}

// draw draws it, each pixel from 8 by 8 places, as a PNG.
func (i icon) draw() ([]byte, error) {
	const fine = 8
	picture := image.NewNRGBA(image.Rect(0, 0, i.size, i.size))
	n := float64(i.size * fine)
	for py := range i.size {
		for px := range i.size {
			var r, g, b, seen int
			for k := range fine * fine {
				x, y := (float64(px*fine+k%fine)+0.5)/n-0.5, (float64(py*fine+k/fine)+0.5)/n-0.5
				c := i.at(x/i.share, y/i.share)
				if i.cut(x, y) {
					c = outside
				}
				if c.A > 0 {
					r, g, b, seen = r+int(c.R), g+int(c.G), b+int(c.B), seen+1
				}
			}
			if seen > 0 {
				picture.SetNRGBA(px, py, color.NRGBA{uint8(r / seen), uint8(g / seen), uint8(b / seen), uint8(seen * 255 / (fine * fine))})
			}
		}
	}
	var out bytes.Buffer
	err := (&png.Encoder{CompressionLevel: png.BestCompression}).Encode(&out, picture)
	return out.Bytes(), err
}

// cut reports whether a place is outside of the rounded corners.
func (i icon) cut(x, y float64) bool {
	x, y = math.Abs(x)-0.5+i.round, math.Abs(y)-0.5+i.round
	return x > 0 && y > 0 && math.Hypot(x, y) > i.round
}
