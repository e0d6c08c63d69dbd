package static

import (
	"image/color"
	"math"
	"testing"
)

// sight turns linear red, green and blue into what an eye of one kind sees of them.
type sight struct {
	name string
	m    [3][3]float64
}

// Complete loss of one kind of cone: Machado, Oliveira and Fernandes 2009, IEEE
// Transactions on Visualization and Computer Graphics 15(6), severity 1.0, for linear
// RGB. The numbers are from memory; that each row sums to one, so that grey stays grey,
// is checked below. Grey print keeps the luminance alone.
var sights = []sight{
	{"full colour", [3][3]float64{{1, 0, 0}, {0, 1, 0}, {0, 0, 1}}},
	{"protanopia", [3][3]float64{{0.152286, 1.052583, -0.204868}, {0.114503, 0.786281, 0.099216}, {-0.003882, -0.048116, 1.051998}}},
	{"deuteranopia", [3][3]float64{{0.367322, 0.860646, -0.227968}, {0.280085, 0.672501, 0.047413}, {-0.011820, 0.042940, 0.968881}}},
	{"tritanopia", [3][3]float64{{1.255528, -0.076749, -0.178779}, {-0.078411, 0.930809, 0.147602}, {0.004733, 0.691367, 0.303900}}},
	{"grey print", [3][3]float64{{0.2126, 0.7152, 0.0722}, {0.2126, 0.7152, 0.0722}, {0.2126, 0.7152, 0.0722}}},
}

// linear undoes the coding of an sRGB byte (IEC 61966-2-1).
func linear(b uint8) float64 {
	v := float64(b) / 255
	if v <= 0.04045 {
		return v / 12.92
	}
	return math.Pow((v+0.055)/1.055, 2.4)
}

func (s sight) light(c color.RGBA) float64 {
	in := [3]float64{linear(c.R), linear(c.G), linear(c.B)}
	var out [3]float64
	for i := range out {
		for k := range in {
			out[i] += s.m[i][k] * in[k]
		}
		out[i] = math.Min(math.Max(out[i], 0), 1)
	}
	return light(out)
}

// contrast is the ratio of WCAG 2.1, 1 to 21.
func (s sight) contrast(a, b color.RGBA) float64 {
	la, lb := s.light(a), s.light(b)
	return (math.Max(la, lb) + 0.05) / (math.Min(la, lb) + 0.05)
}

func TestSights(t *testing.T) {
	black, white := color.RGBA{A: 0xff}, color.RGBA{0xff, 0xff, 0xff, 0xff}
	for _, s := range sights {
		for i, row := range s.m {
			if sum := row[0] + row[1] + row[2]; math.Abs(sum-1) > 1e-5 {
				t.Errorf("%s: row %d sums to %v", s.name, i, sum)
			}
		}
		if c := s.contrast(black, white); math.Abs(c-21) > 1e-4 { // WCAG 2.1: the largest ratio there is
			t.Errorf("%s: black on white is %v", s.name, c)
		}
	}
	// WCAG 2.1, understanding 1.4.3: #767676 is the lightest grey with 4.5 on white
	if c := sights[0].contrast(color.RGBA{0x76, 0x76, 0x76, 0xff}, white); c < 4.5 || sights[0].contrast(color.RGBA{0x77, 0x77, 0x77, 0xff}, white) >= 4.5 {
		t.Errorf("#767676 on white is %v", c)
	}
}

// Text has 4.5 to 1 on all that it stands on, and lines and signs have 3 to 1 (WCAG 2.1,
// 1.4.3 and 1.4.11), in every kind of sight and in grey print.
func TestContrast(t *testing.T) {
	type pair struct {
		what    string
		a, b    color.RGBA
		atLeast float64
	}
	pairs := []pair{
		{"text on paper", ink, paper, 4.5},
		{"second lines on paper", quiet, paper, 4.5},
		{"marks on the band", ink, bandTint, 3},
		{"marks on the doubt", ink, ribbon, 3},
		{"marks on the mixed layer", ink, mixedTint, 3},
		{"leaders on the band", quiet, bandTint, 3},
		{"leaders on the mixed layer", quiet, mixedTint, 3},
		{"curve on paper", curveInk, paper, 3},
		{"curve on its doubt", curveInk, ribbon, 3},
		{"edge of the doubt on paper", ribbonInk, paper, 3},
		{"edge of the doubt on the band", ribbonInk, bandTint, 3},
		{"edge of the band on paper", bandInk, paper, 3},
		{"edge of the band on its tint", bandInk, bandTint, 3},
		{"oxygen on paper", oxygenInk, paper, 3},
		{"oxygen on the band", oxygenInk, bandTint, 3},
		{"oxygen on the doubt", oxygenInk, ribbon, 3},
		// these differ in dash and sign too; their colours must not be one
		{"curve and oxygen", curveInk, oxygenInk, 1.5},
	}
	for _, c := range compareInks {
		pairs = append(pairs, pair{"a compared curve on paper", c, paper, 3})
	}
	const n = mostColors
	for i := range n {
		pairs = append(pairs, pair{"isotherms on water", ink, heat(i, n), 3}, pair{"ends of the colours", heat(0, n), heat(n-1, n), 3})
	}
	for _, s := range sights {
		for _, p := range pairs {
			if c := s.contrast(p.a, p.b); c < p.atLeast {
				t.Errorf("%s, %s: %v and %v have %.2f, want %v", s.name, p.what, p.a, p.b, c, p.atLeast)
			}
		}
	}
}

// Warmer is lighter, step by step, in every kind of sight and in grey print. Between
// neighbours an isotherm runs, so a twentieth is enough to see which side is which.
func TestHeatOrder(t *testing.T) {
	for n := 2; n <= mostColors; n++ {
		for _, s := range sights {
			for i := 1; i < n; i++ {
				a, b := heat(i-1, n), heat(i, n)
				if s.light(b) <= s.light(a) || s.contrast(a, b) < 1.05 {
					t.Errorf("%s, colour %d of %d: %v is not lighter than %v by a twentieth (%.3f)", s.name, i, n, b, a, s.contrast(a, b))
				}
			}
		}
	}
	if heat(0, 1).A != 0xff {
		t.Error("one colour alone is not a colour")
	}
}

// Compared curves of one colour differ in dash or sign, and neighbours in all three.
func TestPens(t *testing.T) {
	for i := range mostCompared {
		for j := range i {
			a, signA := penOf(i)
			b, signB := penOf(j)
			sameDash := len(a.dash) == len(b.dash)
			for k := range a.dash {
				sameDash = sameDash && a.dash[k] == b.dash[k]
			}
			p, q := signA(pt{}, 1), signB(pt{}, 1)
			sameSign := len(p) == len(q) && p[0] == q[0]
			if sameDash && sameSign {
				t.Errorf("drops %d and %d have the same dash and sign", i, j)
			}
			if i-j == 1 && (a.color == b.color || sameDash || sameSign) {
				t.Errorf("neighbours %d and %d: colour %v, dash %v, sign %v alike", i, j, a.color == b.color, sameDash, sameSign)
			}
		}
	}
}
