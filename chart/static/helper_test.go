package static

import (
	"bytes"
	"fmt"
	"image"
	"image/color"
	"image/png"
	"math"
	"path/filepath"
	"strings"
	"testing"
	"time"

	"coldseam/chart"
	"coldseam/profile/demo"
	"coldseam/profile/unit"

	stdfont "golang.org/x/image/font"
	"gonum.org/v1/plot/vg/recorder"
)

// dropOf is the figure of a page of text.
func dropOf(t testing.TB, page string) chart.Drop {
	t.Helper()
	return chart.Of(demo.Plan(t, page))
}

// lake is the figure of a demo page.
func lake(t testing.TB, name string) chart.Drop {
	t.Helper()
	return dropOf(t, demo.Page(t, name))
}

// named is a figure with a name for messages.
type named struct {
	name string
	drop chart.Drop
}

// drops are the demo pages and the shapes that a lake can have.
func drops(t testing.TB) []named {
	t.Helper()
	pages := demo.Pages(t)
	var out []named
	for _, p := range pages {
		name := strings.TrimSuffix(filepath.Base(p), ".txt")
		out = append(out, named{name, lake(t, name)})
	}
	for _, p := range [][2]string{
		{"one reading", "units: ft F\n0 70\n"},
		{"no band", "units: ft F\n0 80\n10 79.8\n20 79.5\n"},
		{"mixed", "units: m C\n0 12\n5 11.9\n10 11.9\n"},
		{"inverse", "units: m C\n0 0.5\n2 2\n5 3.8\n"},
		{"odd", "units: ft F\nbottom: 31 ft\n0 74\n5 73\n10 720\n12 75\n15 65\n300 50\n18 40\n20 58\n25 54\n"},
		{"long name", "water: " + strings.Repeat("Long Water ", 35) + "\nspot: " + strings.Repeat("W", 200) + "\nunits: ft F\n0 74\n5 73\n15 65\n20 58\n"},
		{"300 readings", longPage(300)},
	} {
		out = append(out, named{p[0], dropOf(t, p[1])})
	}
	return out
}

// longPage is a page with so many readings.
func longPage(n int) string {
	page := "water: Long Water\nunits: m C\n"
	for i := range n {
		z := float64(i) * 15 / float64(n)
		page += fmt.Sprintf("%.2f %.2f\n", z, 8+14/(1+math.Pow(z/4.5, 5)))
	}
	return page
}

// seasonOf is an invented season of n drops, with a longer time after the one at gap.
func seasonOf(t testing.TB, n, gap int) chart.Season {
	s := chart.Season{Title: "Alder Kettle, off the reed point, 2026", Units: unit.System{Depth: unit.Foot, Temp: unit.Fahrenheit}}
	day := 0
	for i := range n {
		at := time.Date(2026, 4, 20, 14, 20, 0, 0, time.UTC).AddDate(0, 0, day)
		k := float64(day)
		warm := 46 + 30*math.Sin(math.Pi*math.Min(k/180, 1))
		page := fmt.Sprintf("water: Alder Kettle\ndate: %s\nunits: ft F\nbottom: 31 ft\n", at.Format("2006-01-02"))
		for z := 0.0; z <= 29-5*float64(i%2); z += 2.5 {
			page += fmt.Sprintf("%.1f %.1f\n", z, 45+0.03*k+(warm-45)/(1+math.Pow(z/(8+0.07*k), 5)))
		}
		s.Drops = append(s.Drops, chart.Dated{When: at, Drop: dropOf(t, page)})
		if day += 9 + i%5; i == gap {
			day += 30
		}
	}
	return s
}

func columnBytes(t testing.TB, f Format, s Size, d chart.Drop) []byte {
	t.Helper()
	var b bytes.Buffer
	if err := Column(&b, f, s, d); err != nil {
		t.Fatal(err)
	}
	return b.Bytes()
}

// recorded is a page that remembers what is drawn on it.
func recorded(s Size) (*page, *recorder.Canvas) {
	c := &recorder.Canvas{}
	return &page{canvas: c, w: s.WidthPt, h: s.HeightPt, foot: s.HeightPt, em: s.TextPt}, c
}

// written is a text and the ink it covers, in points from the top left.
type written struct {
	text           string
	x0, y0, x1, y1 float64
}

// texts are what was written on a recorded page. A line of text takes from 0.72 of its
// size above its baseline (a capital of these fonts) to 0.2 below.
func texts(p *page, c *recorder.Canvas) []written {
	var out []written
	for _, a := range c.Actions {
		f, ok := a.(*recorder.FillString)
		if !ok {
			continue
		}
		s := style{f.Size.Points(), f.Font.Weight == stdfont.WeightBold}
		x, y := f.Point.X.Points(), p.h-f.Point.Y.Points()
		out = append(out, written{f.String, x, y - 0.72*s.size, x + s.width(f.String), y + 0.2*s.size})
	}
	return out
}

// legible fails where two texts overlap or one leaves the page.
func legible(t *testing.T, what string, p *page, c *recorder.Canvas) {
	t.Helper()
	if p.err != nil {
		t.Errorf("%s: %v", what, p.err)
	}
	all := texts(p, c)
	if len(all) < 5 {
		t.Errorf("%s: only %d texts", what, len(all))
	}
	for i, a := range all {
		if a.x0 < 0 || a.y0 < 0 || a.x1 > p.w || a.y1 > p.h {
			t.Errorf("%s: %q leaves the page: %+v", what, a.text, a)
		}
		for _, b := range all[:i] {
			if a.x0 < b.x1 && b.x0 < a.x1 && a.y0 < b.y1 && b.y0 < a.y1 {
				t.Errorf("%s: %q and %q overlap", what, a.text, b.text)
			}
		}
	}
}

var sizes = []struct {
	name   string
	size   Size
	pixels image.Point // of a PNG
}{
	{"desk", Desk, image.Pt(1280, 800)},
	{"phone", Phone, image.Pt(780, 2200)},           // of a screen 390 wide
	{"half sheet", HalfSheet, image.Pt(1100, 1700)}, // 5.5 by 8.5 inches
}

// pixels reads a PNG.
func pixels(t testing.TB, file []byte) image.Image {
	t.Helper()
	img, err := png.Decode(bytes.NewReader(file))
	if err != nil {
		t.Fatal(err)
	}
	return img
}

// pixel is the colour at a place of the page.
func pixel(img image.Image, s Size, at pt) color.RGBA {
	k := float64(s.DPI) / 72
	r, g, b, a := img.At(int(at.x*k), int(at.y*k)).RGBA()
	return color.RGBA{uint8(r >> 8), uint8(g >> 8), uint8(b >> 8), uint8(a >> 8)}
}
