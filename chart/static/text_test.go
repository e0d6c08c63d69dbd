package static

import (
	"math"
	"slices"
	"strings"
	"testing"
	"unicode"
	"unicode/utf8"

	"pgregory.net/rapid"
)

func TestDrawable(t *testing.T) {
	for in, want := range map[string]string{
		"":                                  "",
		"  Alder Kettle ":                   "Alder Kettle",
		"a\tb\nc":                           "a b\ufffdc",
		"\x1b[31mred":                       "\ufffd[31mred",
		"x\u202ey\u2066":                    "x\ufffdy\ufffd",
		"bad \xff":                          "bad \ufffd",
		"\u2028\ufffe\U000f0000":            "\ufffd\ufffd\ufffd",
		"a\u00a0b":                          "a b",
		"e\u0301\u0301\u0301\u0301 o\u0308": "e\u0301\u0301 o\u0308",
		"<&>\"'":                            "<&>\"'",
	} {
		if got := drawable(in); got != want {
			t.Errorf("%q: %q, want %q", in, got, want)
		}
	}
}

func TestDrawableAlways(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		got := drawable(string(rapid.SliceOf(rapid.Byte()).Draw(t, "bytes")) + rapid.String().Draw(t, "text"))
		if !utf8.ValidString(got) || utf8.RuneCountInString(got) > mostRunes+1 {
			t.Fatalf("%q", got)
		}
		for _, r := range got {
			if !unicode.IsGraphic(r) {
				t.Fatalf("%U in %q", r, got)
			}
		}
	})
}

func TestCutAndWrap(t *testing.T) {
	s := style{size: 10}
	rapid.Check(t, func(t *rapid.T) {
		text := drawable(rapid.StringMatching(`[a-zW ]{0,80}`).Draw(t, "text"))
		width := rapid.Float64Range(15, 400).Draw(t, "width")
		if got := s.cut(text, width); s.width(got) > width || got != text && !strings.HasSuffix(got, "…") {
			t.Fatalf("%q cut to %q, %v wide", text, got, s.width(got))
		}
		lines := s.wrap(text, width, 3)
		if len(lines) > 3 {
			t.Fatalf("%d lines", len(lines))
		}
		for _, l := range lines {
			if s.width(l) > width {
				t.Fatalf("%q is %v wide", l, s.width(l))
			}
		}
		if whole := strings.Join(lines, " "); !strings.Contains(whole, "…") && whole != strings.Join(strings.Fields(text), " ") {
			t.Fatalf("%q became %q", text, whole)
		}
	})
}

// The width used for layout is the font's own: it shares the widths of Helvetica, whose
// H is 722 and whose blank is 278 thousandths of the size (Adobe's font metrics for the
// 14 standard PDF fonts).
func TestWidth(t *testing.T) {
	s := style{size: 1000}
	if h, blank := s.width("H"), s.width(" "); math.Round(h) != 722 || math.Round(blank) != 278 {
		t.Errorf("H is %v, a blank %v", h, blank)
	}
}

func TestTicks(t *testing.T) {
	if got := ticks(-0.3, 1, 0.5); !slices.Equal(got, []float64{0, 0.5, 1}) {
		t.Errorf("%v", got)
	}
}

func TestHatch(t *testing.T) {
	for _, rising := range []bool{true, false} {
		lines := hatch(10, 20, 40, 90, 5, rising)
		if len(lines) != 20 {
			t.Errorf("%d lines", len(lines))
		}
		for _, l := range lines {
			for _, at := range l {
				if at.x < 10 || at.x > 40 || at.y < 20 || at.y > 90 {
					t.Errorf("%v is outside", at)
				}
			}
			if up := (l[1].y-l[0].y)*(l[1].x-l[0].x) < 0; l[0] != l[1] && up != rising {
				t.Errorf("%v rises %v", l, up)
			}
		}
	}
	if hatch(0, 0, 1e6, 1e6, 0.1, true) != nil || hatch(5, 5, 5, 5, 1, true) != nil {
		t.Error("a hatch without an end")
	}
}
