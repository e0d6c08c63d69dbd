package static

import (
	"strings"
	"sync"
	"unicode"

	"codeberg.org/go-fonts/liberation/liberationsansbold"
	"codeberg.org/go-fonts/liberation/liberationsansregular"
	stdfont "golang.org/x/image/font"
	"golang.org/x/image/font/opentype"
	"gonum.org/v1/plot/font"

	"coldseam/profile/plain"
)

// fonts are the two faces used. The fonts are part of the program, so that a failure to
// read them is a fault of the build.
var fonts = sync.OnceValue(func() *font.Cache {
	parse := func(ttf []byte) *opentype.Font {
		f, err := opentype.Parse(ttf)
		if err != nil {
			panic("static: a built-in font cannot be read: " + err.Error())
		}
		return f
	}
	return font.NewCache(font.Collection{
		{Font: font.Font{Typeface: "Liberation", Variant: "Sans"}, Face: parse(liberationsansregular.TTF)},
		{Font: font.Font{Typeface: "Liberation", Variant: "Sans", Weight: stdfont.WeightBold}, Face: parse(liberationsansbold.TTF)},
	})
})

// style is how a text is set: its size in points and its weight.
type style struct {
	size float64
	bold bool
}

func (s style) face() font.Face {
	f := font.Font{Typeface: "Liberation", Variant: "Sans"}
	if s.bold {
		f.Weight = stdfont.WeightBold
	}
	return fonts().Lookup(f, font.Length(s.size))
}

// width is how wide a text is, in points.
func (s style) width(text string) float64 {
	f := s.face()
	return f.Width(text).Points()
}

const (
	mostRunes = 600 // of any text, before it is cut to its place
	mostMarks = 2   // combining marks on one letter: more would climb into other lines
)

// drawable makes a text plain and fit to draw: heaps of combining marks are thinned, all
// blanks are one, and the length is bounded.
func drawable(text string) string {
	var b strings.Builder
	runes, marks := 0, 0
	for _, r := range plain.Line(text) {
		if runes++; runes > mostRunes {
			b.WriteRune('…')
			break
		}
		switch {
		case unicode.Is(unicode.M, r):
			if marks++; marks > mostMarks {
				continue
			}
		case unicode.Is(unicode.Zs, r):
			r, marks = ' ', 0
		default:
			marks = 0
		}
		b.WriteRune(r)
	}
	return strings.TrimSpace(b.String())
}

// cut shortens a text to a width, with an ellipsis for what is gone.
func (s style) cut(text string, width float64) string {
	if s.width(text) <= width {
		return text
	}
	runes := []rune(text)
	lo, hi := 0, len(runes) // as many runes as fit
	for lo < hi {
		mid := (lo + hi + 1) / 2
		if s.width(strings.TrimRight(string(runes[:mid]), " ")+"…") <= width {
			lo = mid
		} else {
			hi = mid - 1
		}
	}
	return strings.TrimRight(string(runes[:lo]), " ") + "…"
}

// wrap breaks a text at blanks into at most so many lines of a width; what is left over
// is cut.
func (s style) wrap(text string, width float64, most int) []string {
	var lines []string
	words := strings.Fields(text)
	for len(words) > 0 {
		if len(lines) == most-1 {
			return append(lines, s.cut(strings.Join(words, " "), width))
		}
		n := 1
		for n < len(words) && s.width(strings.Join(words[:n+1], " ")) <= width {
			n++
		}
		lines = append(lines, s.cut(strings.Join(words[:n], " "), width))
		words = words[n:]
	}
	return lines
}
