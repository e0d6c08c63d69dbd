package static

import (
	"sync"
	"time"

	"codeberg.org/go-pdf/fpdf"
	stdfont "golang.org/x/image/font"
	"golang.org/x/image/font/sfnt"
	"golang.org/x/image/math/fixed"
	"gonum.org/v1/plot/font"
	"gonum.org/v1/plot/vg"
	"gonum.org/v1/plot/vg/vgpdf"
)

// steady fixes what would make two PDFs of one picture differ: the date of making and the
// order of fonts. The library keeps both for the whole program.
var steady = sync.OnceFunc(func() {
	day := time.Date(2000, 1, 1, 0, 0, 0, 0, time.UTC)
	fpdf.SetDefaultCreationDate(day)
	fpdf.SetDefaultModificationDate(day)
	fpdf.SetDefaultCatalogSort(true)
})

// pdf is the library's canvas with text as the outlines of its letters. The library's own
// text knows Western letters alone, mixes up two fonts of one file, and needs a folder for
// working files; outlines need none of it and make a file a third as large. What they
// lose is that the text cannot be searched: the SVG can.
type pdf struct{ *vgpdf.Canvas }

func newPDF(w, h vg.Length) pdf {
	steady()
	return pdf{vgpdf.New(w, h)}
}

// FillString writes a text.
func (c pdf) FillString(f font.Face, at vg.Point, text string) { c.Fill(outlines(f, at, text)) }

// outlines is a text as one path. A letter that cannot be read from the font is left out.
func outlines(f font.Face, at vg.Point, text string) vg.Path {
	var (
		path  vg.Path
		buf   sfnt.Buffer
		ppem  = fixed.I(int(f.Face.UnitsPerEm()))
		scale = f.Font.Size / vg.Length(ppem)
		last  sfnt.GlyphIndex
	)
	place := func(p fixed.Point26_6) vg.Point {
		return vg.Point{X: at.X + vg.Length(p.X)*scale, Y: at.Y - vg.Length(p.Y)*scale}
	}
	for i, r := range text {
		g, err := f.Face.GlyphIndex(&buf, r)
		if err != nil {
			continue
		}
		if kern, err := f.Face.Kern(&buf, last, g, ppem, stdfont.HintingNone); err == nil && i > 0 {
			at.X += vg.Length(kern) * scale
		}
		segments, err := f.Face.LoadGlyph(&buf, g, ppem, nil)
		if err != nil {
			continue
		}
		for k, s := range segments {
			switch a := s.Args; s.Op {
			case sfnt.SegmentOpMoveTo:
				if k > 0 {
					path.Close()
				}
				path.Move(place(a[0]))
			case sfnt.SegmentOpLineTo:
				path.Line(place(a[0]))
			case sfnt.SegmentOpQuadTo:
				path.QuadTo(place(a[0]), place(a[1]))
			case sfnt.SegmentOpCubeTo:
				path.CubeTo(place(a[0]), place(a[1]), place(a[2]))
			}
		}
		if len(segments) > 0 {
			path.Close()
		}
		if wide, err := f.Face.GlyphAdvance(&buf, g, ppem, stdfont.HintingNone); err == nil {
			at.X += vg.Length(wide) * scale
		}
		last = g
	}
	return path
}
