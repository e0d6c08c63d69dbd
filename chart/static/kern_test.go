package static

import (
	"bytes"
	"image/color"
	"math"
	"testing"
)

// Letters stand as far apart on the coarse dots of a screen as on the fine ones of paper, so that no
// comma or full stop is pushed into the letter before it.
func TestKerning(t *testing.T) {
	for _, word := range []string{"6F,", "P.", "T,", "r.", "AV,", "limit.", "ft,"} {
		ends := func(dpi int) float64 { // x of the last dark dot, points
			size := Size{WidthPt: 200, HeightPt: 200, TextPt: 5.5, DPI: dpi}
			var b bytes.Buffer
			err := render(&b, PNG, size, "", func(p *page) { p.text(pt{100, 100}, left, style{size: 10.5}, ink, word) })
			if err == nil && dpi > 0 {
				img := pixels(t, b.Bytes())
				for x := img.Bounds().Max.X - 1; x >= 0; x-- {
					for y := range img.Bounds().Max.Y {
						if color.GrayModel.Convert(img.At(x, y)).(color.Gray).Y < 0xb0 {
							return float64(x+1) * 72 / float64(dpi)
						}
					}
				}
			}
			t.Fatal(err)
			return 0
		}
		if fine, coarse := ends(600), ends(96); math.Abs(fine-coarse) > 0.76 { // a dot of 96 to the inch
			t.Errorf("%q ends at %.2f points, at %.2f on coarse dots", word, fine, coarse)
		}
	}
}
