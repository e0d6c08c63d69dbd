package static

import (
	"strings"
	"testing"

	"coldseam/chart"
	"coldseam/profile"
)

// Nothing overlaps and nothing leaves the page, for any drop at any size.
func TestColumnLegible(t *testing.T) {
	for _, d := range drops(t) {
		for _, s := range sizes {
			p, c := recorded(s.size)
			layColumn(p, d.drop).draw(p)
			legible(t, d.name+", "+s.name, p, c)
		}
	}
}

// The band's colour fills the depths of the band and no others, to a pixel.
func TestBandPixels(t *testing.T) {
	t.Parallel()
	d := lake(t, "sedge-mere-august")
	for _, s := range sizes {
		p, _ := recorded(s.size)
		c := layColumn(p, d)
		img := pixels(t, columnBytes(t, PNG, s.size, d))
		if got := img.Bounds().Size(); got != s.pixels {
			t.Errorf("%s: %v pixels, want %v", s.name, got, s.pixels)
		}
		var band chart.Zone
		for _, z := range d.Zones {
			if z.Kind == chart.Band {
				band = z
			}
		}
		dot := 72 / float64(s.size.DPI)
		x := c.temp.from + 11 // between the arrowhead and the curve, clear of the grid
		for depthM, want := range map[float64]bool{
			band.TopM + 0.45*(band.BottomM-band.TopM): true, band.TopM + 0.85*(band.BottomM-band.TopM): true,
			band.TopM - 0.4: false, band.BottomM + 0.4: false,
		} {
			if got := pixel(img, s.size, pt{x, c.y(depthM)}); (got == bandTint) != want {
				t.Errorf("%s: %v at %.2f m, in the band: %v", s.name, got, depthM, want)
			}
		}
		// the tint begins and ends where the plot's own scale puts the band
		for _, edge := range []struct {
			depthM, inward float64
		}{{band.TopM, 1}, {band.BottomM, -1}} {
			y := c.y(edge.depthM)
			past := 0.45 + 1.5*dot // half of the edge's line, and the pixel that it half covers
			inside := pixel(img, s.size, pt{x, y + edge.inward*past})
			outside := pixel(img, s.size, pt{x, y - edge.inward*past})
			if inside != bandTint || outside == bandTint {
				t.Errorf("%s: just in and out of the band's edge at %.2f m are %v and %v", s.name, edge.depthM, inside, outside)
			}
		}
		// and the lane beside it has the same
		l := c.lanes[bandLane]
		if got := pixel(img, s.size, pt{l.x0 + 2.5, c.y(band.TopM + 0.1)}); got != bandTint {
			t.Errorf("%s: the lane of the band is %v", s.name, got)
		}
	}
}

// A reading stands where its depth and temperature are on the scales.
func TestReadingPixels(t *testing.T) {
	t.Parallel()
	d := lake(t, "alder-kettle-july")
	p, _ := recorded(Desk)
	c := layColumn(p, d)
	img := pixels(t, columnBytes(t, PNG, Desk, d))
	for _, r := range d.Readings[1:] {
		if got := pixel(img, Desk, pt{c.x(r.TempC), c.y(r.DepthM)}); got != ink {
			t.Errorf("the reading at %.2f m: %v", r.DepthM, got)
		}
	}
	if a, b := c.depth.at(0), c.depth.at(10); !(a == c.depth.from && b > a) {
		t.Errorf("the surface at %v, 10 ft at %v: depth must go down", a, b)
	}
}

// Every zone, mark, flag and scale is there in words.
func TestColumnWords(t *testing.T) {
	find := func(d chart.Drop, s Size) string {
		p, c := recorded(s)
		layColumn(p, d).draw(p)
		var all []string
		for _, w := range texts(p, c) {
			all = append(all, w.text)
		}
		return strings.Join(all, " ")
	}
	odd := dropOf(t, "units: ft F\nbottom: 31 ft\n0 74\n5 73\n10 720\n12 75\n15 65\n20 58 DO 6.2\n25 54\n300 50\n")
	for _, s := range sizes {
		got := find(odd, s.size)
		for _, want := range []string{
			"mixed layer", "metalimnion", "band", "oxygen unknown", "thermocline", "fly 16 ft", "cast over", "bottom 31 ft",
			"slipped digit", "720 F at 10 ft", "not used", "warmer below", "below bottom", "off the scale", "odd, but used", "oxygen, mg/L", "temperature, F", "depth, ft", "No catch and release",
		} {
			if !strings.Contains(got, want) {
				t.Errorf("%s: no %q in %s", s.name, want, got)
			}
		}
	}
	plain := find(dropOf(t, "units: m C\n0 12\n5 11.9\n10 11.9\n"), Desk)
	for _, no := range []string{"oxygen, mg/L", "odd", "thermocline", "off the scale"} {
		if strings.Contains(plain, no) {
			t.Errorf("%q, of which there is none, in %s", no, plain)
		}
	}
}

// Flags that find no room are counted, not dropped.
func TestManyFlags(t *testing.T) {
	d := dropOf(t, longPage(300))
	for i := range d.Readings {
		d.Readings[i].Flag = string(profile.Spike)
		d.Readings[i].Used = i%2 == 0
	}
	for _, s := range sizes {
		p, c := recorded(s.size)
		layColumn(p, d).draw(p)
		legible(t, s.name, p, c)
		words := ""
		for _, w := range texts(p, c) {
			words += w.text + " "
		}
		if !strings.Contains(words, "more flagged") {
			t.Errorf("%s: no count of the flags left out in %q", s.name, words)
		}
	}
}

// One layer is not blown up to a slope: the scale spans two degrees at least.
func TestMixedScale(t *testing.T) {
	c := column{d: dropOf(t, "units: m C\n0 12\n5 11.99\n10 11.98\n")}
	c.u = c.d.Units
	if lo, hi := c.degrees(); hi-lo < 2 || lo > 11.98 || hi < 12 {
		t.Errorf("scale of %v to %v", lo, hi)
	}
}
