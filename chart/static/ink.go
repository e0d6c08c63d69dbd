package static

import (
	"image/color"
	"math"
)

// The inks. What stands on what, and with which contrast, is checked in ink_test.go.
var (
	paper     = color.RGBA{0xff, 0xff, 0xff, 0xff}
	ink       = color.RGBA{0x14, 0x1e, 0x28, 0xff} // text, axes, marks, readings
	quiet     = color.RGBA{0x45, 0x50, 0x5c, 0xff} // second lines of labels, leaders, hatching
	faint     = color.RGBA{0xdd, 0xe2, 0xe7, 0xff} // grid: may vanish without loss
	curveInk  = color.RGBA{0x07, 0x31, 0x62, 0xff}
	ribbon    = color.RGBA{0xc6, 0xd8, 0xec, 0xff}
	ribbonInk = color.RGBA{0x4d, 0x72, 0x9b, 0xff}
	bandTint  = color.RGBA{0xff, 0xee, 0xb0, 0xff}
	bandInk   = color.RGBA{0x7d, 0x5f, 0x00, 0xff}
	mixedTint = color.RGBA{0xdf, 0xee, 0xee, 0xff}
	mud       = color.RGBA{0xcb, 0xc3, 0xb5, 0xff} // bottom of a scene
	oxygenInk = color.RGBA{0xae, 0x4a, 0x00, 0xff}
)

// compareInks are the curves of a comparison: all dark enough for paper, told apart by
// dash, sign and letter too.
var compareInks = []color.RGBA{
	{0x0a, 0x3a, 0x6e, 0xff}, // navy
	{0xb0, 0x4a, 0x00, 0xff}, // rust
	{0x14, 0x1e, 0x28, 0xff}, // ink
	{0x2f, 0x80, 0x9e, 0xff}, // lake
}

// The darkest and the lightest colour of a scale of temperatures, as relative luminance:
// dark enough to part many steps, light enough for ink to be read on all of them.
const (
	coldLight = 0.15
	warmLight = 0.74
)

// heat is colour i of n from cold to warm. The hue goes from indigo over grey to amber, and the
// luminance rises in equal ratios, so that the order survives grey printing and every
// kind of colour blindness.
func heat(i, n int) color.RGBA {
	f := 0.5
	if n > 1 {
		f = float64(i) / float64(n-1)
	}
	want := (coldLight+0.05)*math.Pow((warmLight+0.05)/(coldLight+0.05), f) - 0.05
	hues := [3][3]float64{{0.10, 0.08, 0.55}, {0.36, 0.36, 0.36}, {1, 0.55, 0.03}} // linear: indigo, grey, amber
	a, b, g := hues[0], hues[1], 2*f
	if f > 0.5 {
		a, b, g = hues[1], hues[2], 2*f-1
	}
	var c [3]float64
	for k := range c {
		c[k] = a[k]*(1-g) + b[k]*g
	}
	if have := light(c); have < want { // towards white
		m := (want - have) / (1 - have)
		for k := range c {
			c[k] += (1 - c[k]) * m
		}
	} else { // towards black
		for k := range c {
			c[k] *= want / have
		}
	}
	return color.RGBA{encode(c[0]), encode(c[1]), encode(c[2]), 0xff}
}

// light is the relative luminance of linear red, green and blue (WCAG 2.1, IEC 61966-2-1).
func light(c [3]float64) float64 { return 0.2126*c[0] + 0.7152*c[1] + 0.0722*c[2] }

// encode is the sRGB byte of a linear value of 0 to 1 (IEC 61966-2-1).
func encode(v float64) uint8 {
	if v <= 0.0031308 {
		v *= 12.92
	} else {
		v = 1.055*math.Pow(v, 1/2.4) - 0.055
	}
	return uint8(math.Round(255 * math.Min(math.Max(v, 0), 1)))
}
