// Package static draws still pictures for paper, a message or a file: one drop, several
// drops over each other, and a season of them, as SVG, PNG or PDF. Every picture is
// drawn from a chart.Drop and knows no water, fish or rule of its own.
//
// The same figure gives the same bytes on processors of one kind. On arm64 the compiler
// joins a product and a sum into one rounding, here and in the libraries that draw, so that
// a PNG or PDF made there may differ from one of amd64 in last digits. Nothing depends on colour alone: every zone is
// hatched or outlined and named, every curve has its letter and its dash. Text that came
// from the angler is made printable and cut to its place; it is never markup.
//
// It does not shape right-to-left or joined scripts in PNG and PDF, letters that the
// Liberation fonts lack show as empty boxes there, and text in a PDF is drawn, so that
// it cannot be searched.
package static

import "fmt"

// Format is the kind of file.
type Format string

// The formats.
const (
	SVG Format = "svg"
	PNG Format = "png"
	PDF Format = "pdf"
)

// Size is how large a picture is. Lengths are in points, 72 to the inch.
type Size struct {
	WidthPt, HeightPt float64 // 200 to 4000
	TextPt            float64 // size of the plain text, 5 to 40
	DPI               int     // dots to the inch of a PNG, 30 to 600
}

// The presets. A PNG of Desk is 1280 by 800 pixels; one of Phone has two dots for each pixel
// of a screen 390 wide, with the scene on the first 844 and the readings below, and no text on
// it is smaller than 14 such pixels; HalfSheet is
// half of a letter sheet, upright.
var (
	Desk      = Size{WidthPt: 960, HeightPt: 600, TextPt: 10.5, DPI: 96}
	Phone     = Size{WidthPt: 292.5, HeightPt: 825, TextPt: 11.5, DPI: 192}
	HalfSheet = Size{WidthPt: 396, HeightPt: 612, TextPt: 8.5, DPI: 200}
)

// The presets of a scene alone, for the head of a page: half of a desk's screen, and a phone's.
var (
	DeskScene  = Size{WidthPt: 480, HeightPt: 310, TextPt: 12, DPI: 96}
	PhoneScene = Size{WidthPt: 292.5, HeightPt: 165, TextPt: 11, DPI: 192}
)

const mostPixels = 40e6

// check refuses a size that no readable picture has.
func (s Size) check() error { return s.checkFor(200, 35) }

// checkFor does so of a picture at least so high, with room for so many lines. It is written so
// that NaN fails.
func (s Size) checkFor(least, lines float64) error {
	if !(s.WidthPt >= 200 && s.WidthPt <= 4000 && s.HeightPt >= least && s.HeightPt <= 4000) {
		return fmt.Errorf("a picture of %g by %g points: each side must be 200 to 4000", s.WidthPt, s.HeightPt)
	}
	if !(s.TextPt >= 5 && s.TextPt <= 40 && s.TextPt*25 <= s.WidthPt && s.TextPt*lines <= s.HeightPt) {
		return fmt.Errorf("text of %g points does not suit a picture of %g by %g points", s.TextPt, s.WidthPt, s.HeightPt)
	}
	if d := float64(s.DPI) / 72; s.DPI < 30 || s.DPI > 600 || s.WidthPt*d*s.HeightPt*d > mostPixels {
		return fmt.Errorf("%d dots to the inch on %g by %g points: use 30 to 600, and at most %.0f million dots", s.DPI, s.WidthPt, s.HeightPt, mostPixels/1e6)
	}
	return nil
}
