package chart

import (
	"math"
	"slices"
	"strings"
	"testing"

	"coldseam/profile"
	"coldseam/profile/band"
	"coldseam/profile/demo"
)

// The rise of density, summed over the column, is the difference of the water's density
// between its ends: 998.2067 kg/m3 at 20 C, 999.7026 at 10 C and 999.9749 at 4 C (Tanaka
// et al. 2001, Metrologia 38, 301, table 1). Under ice it is warmer and heavier below.
func TestDensityRise(t *testing.T) {
	for page, want := range map[string]float64{
		"units: m C\n0 20\n2 19\n4 16\n6 13\n8 11\n10 10\n": 999.7026 - 998.2067,
		"units: m C\n0 20\n3 14\n6 8\n10 4\n":               999.9749 - 998.2067,
	} {
		d := Of(demo.Plan(t, page))
		sum, last := 0.0, d.Curve[0]
		for _, q := range d.Curve[1:] {
			if q.DepthM > 10 {
				break
			}
			sum += (q.RisePerM + last.RisePerM) / 2 * (q.DepthM - last.DepthM)
			last = q
		}
		if math.Abs(sum-want) > 0.01*want {
			t.Errorf("%q: density rises by %.4f kg/m3, want %.4f", page, sum, want)
		}
	}
	for _, q := range Of(demo.Plan(t, "units: m C\n0 0.5\n2 2\n5 3.8\n")).Curve {
		if q.RisePerM < 0 {
			t.Errorf("under ice density falls by %v at %v m", q.RisePerM, q.DepthM)
		}
	}
}

// Where oxygen was not measured in the band, the water in which it may be short is a zone
// of the picture, from the depth that the answer names to the bottom.
func TestUnprovenZone(t *testing.T) {
	p := demo.Plan(t, demo.Page(t, "alder-kettle-july"))
	d := Of(p)
	at := func(d Drop) int {
		return slices.IndexFunc(d.Zones, func(z Zone) bool { return z.Kind == Unproven })
	}
	i := at(d)
	if i < 0 || p.Band.DoubtfulBelow == nil {
		t.Fatalf("no zone in %+v", d.Zones)
	}
	if z := d.Zones[i]; z.TopM != p.Band.DoubtfulBelow.Best || z.BottomM != d.DeepestM || d.DeepestM != p.Drop.Bottom.Value {
		t.Errorf("%+v, to the bottom at %v m", z, p.Drop.Bottom.Value)
	}
	measured := "units: ft F\nbottom: 26 ft\n0 74 DO 9\n5 73 DO 9\n10 70 DO 9\n15 62 DO 8\n20 55 DO 8\n25 52 DO 8\n"
	if i := at(Of(demo.Plan(t, measured))); i >= 0 {
		t.Error("a zone of doubt where oxygen was measured to the bottom")
	}
}

// The part of the band whose oxygen nobody knows begins where the answer says so, ends with
// the band, and has a sign of its own in the strip: above it "#", below it "?".
func TestBandUnknown(t *testing.T) {
	plan := func(oxygen string) Drop {
		return Of(demo.Plan(t, "units: ft F\nbottom: 31 ft\n0 73\n5 73\n10 72\n15 66\n17 62\n20 58"+oxygen+"\n25 53\n29 51\n"))
	}
	part := plan(" DO 6.2")
	u, ok := part.BandUnknown()
	band, _ := part.Zone(Band)
	if !ok || u.BottomM != band.BottomM || math.Abs(u.TopM-20*0.3048) > 1e-6 {
		t.Fatalf("%v %+v in the band %+v; the deepest oxygen reading is at 20 ft", ok, u, band)
	}
	strip := Strip(part, 80, 40)
	if !strings.Contains(strip, "? oxygen unknown") || !strings.Contains(strip, "| oxygen unknown below\n") {
		t.Errorf("not named:\n%s", strip)
	}
	for _, line := range strings.Split(strip, "\n") {
		if f := strings.Fields(line); len(f) > 2 && (f[0] == "17" && !strings.HasPrefix(f[2], "#") || f[0] == "25" && !strings.HasPrefix(f[2], "?")) {
			t.Errorf("the wrong sign: %q", line)
		}
	}
	whole := plan("")
	if u, ok = whole.BandUnknown(); !ok || u.TopM < band.TopM || strings.Contains(Strip(whole, 80, 40), "#") {
		t.Errorf("nothing known: %v %+v\n%s", ok, u, Strip(whole, 80, 40))
	}
	read := Of(demo.Plan(t, "units: ft F\nbottom: 26 ft\n0 74 DO 9\n5 73 DO 9\n10 70 DO 9\n15 62 DO 8\n20 55 DO 8\n25 52 DO 8\n"))
	if _, ok := read.BandUnknown(); ok || strings.Contains(Strip(read, 80, 40), "?") {
		t.Errorf("a doubt where oxygen was measured:\n%s", Strip(read, 80, 40))
	}
}

// What the picture marks is what the answer says: all but the best bet of the band, for a doubt
// anywhere in it and about its edges.
func TestBandUnknownIsAllButTheBestBet(t *testing.T) {
	p := demo.Plan(t, demo.Page(t, "alder-kettle-july"))
	top, bottom := p.Band.Safe(p.Column.Last().DepthM)
	for doubt := top - 1; doubt < bottom+1; doubt += 0.05 {
		at := profile.Exactly(doubt)
		p.Band.DoubtfulBelow = &at
		from, to, bet := p.Band.BestBet(p.Column.Last().DepthM)
		u, ok := Of(p).BandUnknown()
		switch {
		case ok == (bet == band.AllOfIt):
			t.Errorf("doubtful below %.2f m: marked %v, best bet %s", doubt, ok, bet)
		case bet == band.NoPart && u.TopM != top, bet == band.UpperPart && u.TopM != to, ok && u.BottomM != bottom:
			t.Errorf("doubtful below %.2f m: marked %.2f to %.2f m, best bet %s, %.2f to %.2f m", doubt, u.TopM, u.BottomM, bet, from, to)
		}
	}
}

// The curve is assumed above the first reading and below the last one, there and there
// alone.
func TestExtended(t *testing.T) {
	d := Of(demo.Plan(t, "units: m C\nbottom: 12 m\n0.8 20\n4 16\n10 10\n"))
	above, below := 0, 0
	for _, q := range d.Curve {
		if want := q.DepthM < 0.8-1e-6 || q.DepthM > 10+1e-6; q.Extended != want {
			t.Errorf("at %v m assumed: %v", q.DepthM, q.Extended)
		}
		if q.DepthM < 0.8 {
			above++
		}
		if q.DepthM > 10 {
			below++
		}
	}
	if above == 0 || below == 0 {
		t.Errorf("%d points above the readings, %d below", above, below)
	}
}

// A comparison goes from the oldest drop to the newest; those without a date come first,
// in the order given, and the order given is left as it was.
func TestSorted(t *testing.T) {
	given := []Drop{{Date: "2026-09-01", Title: "c"}, {Title: "a"}, {Date: "2025-12-31", Title: "b"}, {Title: "x"}, {Date: "2026-09-01 07:00", Title: "d"}}
	titles := func(drops []Drop) (out string) {
		for _, d := range drops {
			out += d.Title
		}
		return out
	}
	if got := titles(Sorted(given)); got != "axbcd" || titles(given) != "cabxd" {
		t.Errorf("%s, of %s", got, titles(given))
	}
}

// A drop without an hour stands at noon, one with its hour there.
func TestHour(t *testing.T) {
	for date, want := range map[string]string{"2026-07-18": "2026-07-18 12:00", "2026-07-18 06:45": "2026-07-18 06:45"} {
		if got, err := whenOf(date); err != nil || got.Format("2006-01-02 15:04") != want {
			t.Errorf("%s: %v, %v", date, got, err)
		}
	}
	for _, date := range []string{"", "18 July", "2026-07-18T06:45"} {
		if _, err := whenOf(date); err == nil {
			t.Errorf("%q was read", date)
		}
	}
}
