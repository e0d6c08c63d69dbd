package static

import (
	"bytes"
	"math"
	"slices"
	"strings"
	"testing"
	"time"

	"coldseam/chart"
	"coldseam/profile"
	"coldseam/profile/unit"
)

// straight is a drop whose temperature falls evenly from the surface to a depth, without
// layers, so that nothing but water is drawn.
func straight(surfaceC, perM, toM float64) chart.Drop {
	d := chart.Drop{Units: unit.System{Depth: unit.Metre, Temp: unit.Celsius}, DeepestM: toM}
	for i := range 161 {
		z := toM * float64(i) / 160
		t := surfaceC - perM*z
		d.Curve = append(d.Curve, chart.Point{DepthM: z, TempC: t, LowC: t, HighC: t})
	}
	d.Readings = []chart.Reading{{TempC: surfaceC, Used: true}}
	return d
}

func day(n int) time.Time { return time.Date(2026, 6, 1, 12, 0, 0, 0, time.UTC).AddDate(0, 0, n) }

// on is a drop of a day.
func on(n int, d chart.Drop) chart.Dated { return chart.Dated{When: day(n), Drop: d} }

// metric is a season in metres and Celsius.
func metric(drops ...chart.Dated) chart.Season {
	return chart.Season{Title: "Season", Units: unit.System{Depth: unit.Metre, Temp: unit.Celsius}, Drops: drops}
}

func laid(t testing.TB, s chart.Season, size Size) (*season, *page) {
	t.Helper()
	p, _ := recorded(size)
	return laySeason(p, s.Title, s), p
}

// Between a drop of 20 - z and one of 24 - 2z, at share w of the time, the temperature is
// 20 + 4w - (1+w)z: an isotherm of T lies at z = (20 + 4w - T)/(1+w).
func TestIsothermDepth(t *testing.T) {
	in := metric(on(0, straight(20, 1, 9)), on(20, straight(24, 2, 9)))
	for _, s := range sizes {
		got, _ := laid(t, in, s.size)
		px := 72 / float64(s.size.DPI)
		for _, level := range []float64{8, 11, 14, 18, 21} {
			_, lines := got.field.trace(level)
			if len(lines) != 1 {
				t.Fatalf("%v C: %d isotherms", level, len(lines))
			}
			for i, at := range lines[0] {
				places := []pt{at}
				if i > 0 { // and half way along each piece
					b := lines[0][i-1]
					places = append(places, pt{(at.x + b.x) / 2, (at.y + b.y) / 2})
				}
				for _, q := range places {
					w := (q.x - got.x(0)) / (got.x(1) - got.x(0))
					z := (20 + 4*w - level) / (1 + w)
					if z < -0.01 || z > 9.01 {
						t.Fatalf("%v C, %s: a piece at w = %v, where there is no such water", level, s.name, w)
					}
					if off := math.Abs(q.y - got.depth.at(z)); off > px {
						t.Errorf("%v C, %s: at w = %.3f it is %.2f pixels off", level, s.name, w, off/px)
					}
				}
			}
		}
	}
}

// Every pixel of water has the colour of its temperature; what is not is the ink and the
// plates of numbers, never the colour of another temperature.
func TestSeasonPixels(t *testing.T) {
	t.Parallel()
	in := metric(on(0, straight(20, 1, 9)), on(20, straight(24, 2, 9)))
	var b bytes.Buffer
	if err := DrawSeason(&b, PNG, Desk, in); err != nil {
		t.Fatal(err)
	}
	img := pixels(t, b.Bytes())
	s, _ := laid(t, in, Desk)
	right, other := 0, 0
	for w := 0.02; w < 0.99; w += 0.02 {
		for z := 0.1; z < 8.9; z += 0.1 {
			degC := 20 + 4*w - (1+w)*z
			if near := math.Abs(degC - math.Round(degC)); near < 0.15 { // too near an isotherm
				continue
			}
			band, _ := slices.BinarySearch(s.degrees, degC)
			got := pixel(img, Desk, pt{s.x(0) + w*(s.x(1)-s.x(0)), s.depth.at(z)})
			switch at := slices.Index(s.colors, got); {
			case at == band:
				right++
			case at >= 0:
				t.Errorf("at w = %.2f, %.1f m, %.2f C: the colour of step %d, want %d", w, z, degC, at, band)
			default:
				other++
			}
		}
	}
	if right < 1500 || other*10 > right {
		t.Errorf("%d places right, %d covered", right, other)
	}
}

// Over 21 days nothing is filled, to 21 days it is; a lone drop is a narrow bar.
func TestGap(t *testing.T) {
	t.Parallel()
	for _, apart := range []int{21, 22, 60} {
		in := metric(on(0, straight(20, 1, 9)), on(10, straight(21, 1, 9)), on(10+apart, straight(22, 1, 9)))
		s, _ := laid(t, in, Phone)
		var b bytes.Buffer
		if err := DrawSeason(&b, PNG, Phone, in); err != nil {
			t.Fatal(err)
		}
		img := pixels(t, b.Bytes())
		colored := func(x float64) (n int) {
			for z := 0.05; z < 9; z += 0.05 {
				if slices.Contains(s.colors, pixel(img, Phone, pt{x, s.depth.at(z)})) {
					n++
				}
			}
			return n
		}
		mid := (s.x(1) + s.x(2)) / 2
		if n := colored(mid); (n > 0) != (apart <= chart.GapDays) {
			t.Errorf("%d days: %d coloured pixels in the middle", apart, n)
		}
		if n := colored((s.x(0) + s.x(1)) / 2); n < 100 {
			t.Errorf("%d days: between joined drops only %d coloured pixels", apart, n)
		}
		if n := colored(s.x(2) - 0.7*halfBar); n < 100 {
			t.Errorf("%d days: beside the last drop %d coloured pixels", apart, n)
		}
		said := slices.ContainsFunc(s.legend, func(e entry) bool { return strings.Contains(e.text, "more than 21 days") })
		if said != (apart > chart.GapDays) {
			t.Errorf("%d days: the legend speaks of a gap: %v", apart, said)
		}
		for _, l := range s.lines {
			for _, run := range l.runs {
				if len(run) > 1 && run[0].x < mid && run[len(run)-1].x > mid && apart > chart.GapDays {
					t.Errorf("%d days: %s crosses the gap", apart, l.name)
				}
			}
		}
	}
}

// Where one of two neighbours did not reach, nothing is filled between them.
func TestNotReached(t *testing.T) {
	s, _ := laid(t, metric(on(0, straight(20, 1, 9)), on(10, straight(20, 1, 5))), Desk)
	loops, _ := s.field.trace(math.Inf(-1))
	if got, want := area(loops), (s.x(1)-s.x(0))*(s.depth.at(5)-s.depth.at(0)); math.Abs(got-want) > 1e-6*want {
		t.Errorf("%v filled, want %v", got, want)
	}
}

// Two drops of one hour: the water goes to the first and on from the second.
func TestSameTime(t *testing.T) {
	for _, in := range []chart.Season{
		metric(on(0, straight(20, 1, 9)), on(5, straight(20, 1, 9)), on(5, straight(15, 1, 9)), on(9, straight(15, 1, 9))),
		metric(on(5, straight(20, 1, 9)), on(5, straight(15, 1, 9))),
	} {
		s, _ := laid(t, in, Desk)
		level := 12.5 // 7.5 m deep before, 2.5 m after
		loops, lines := s.field.trace(level)
		if len(loops) != 2 || len(lines) != 2 {
			t.Fatalf("%d pieces, %d isotherms", len(loops), len(lines))
		}
		for i, want := range []float64{7.5, 2.5} {
			for _, at := range lines[i] {
				if math.Abs(at.y-s.depth.at(want)) > 0.01 {
					t.Errorf("piece %d at %v, want %v", i, at.y, s.depth.at(want))
				}
			}
		}
	}
}

// The band is filled from its top to its bottom between drops that are joined, and from the
// depth below which nobody knows its oxygen in another way; nothing of it lies outside.
func TestBandFilled(t *testing.T) {
	banded := func(top, unknown, foot float64) chart.Drop {
		d := straight(20, 1, 9)
		d.Zones = []chart.Zone{{Kind: chart.Band, TopM: top, BottomM: foot}, {Kind: chart.Unproven, TopM: unknown, BottomM: 9}}
		return d
	}
	in := metric(on(0, banded(2, 4, 8)), on(20, banded(4, 5, 6)), on(60, banded(1, 2, 3)))
	s, _ := laid(t, in, Desk)
	p, rec := recorded(Desk)
	s.bandFill(p)
	share := func(x, a, b float64) float64 { return s.depth.at(a + (x-s.x(0))/(s.x(1)-s.x(0))*(b-a)) }
	known, unknown, alone := 0, 0, 0
	for _, line := range strokes(rec) {
		for i := 0; i+1 < len(line.path); i += 2 {
			x, y0, y1 := line.path[i].Pos.X.Points(), p.h-line.path[i].Pos.Y.Points(), p.h-line.path[i+1].Pos.Y.Points()
			want := [2]float64{share(x, 2, 4), share(x, 4, 5)}
			switch {
			case x > s.x(1) && math.Abs(x-s.x(2)) < 1e-6:
				alone++
				continue
			case x < s.x(0) || x > s.x(1):
				t.Errorf("filled at %v, in the gap", x)
			case len(line.dash) > 0:
				unknown++
				want = [2]float64{share(x, 4, 5), share(x, 8, 6)}
			default:
				known++
			}
			if math.Abs(y0-want[0]) > 0.01 || math.Abs(y1-want[1]) > 0.01 {
				t.Errorf("at %v from %v to %v, want %v", x, y0, y1, want)
			}
		}
	}
	if most := (s.x(1) - s.x(0)) / bandEvery; known < int(most)-1 || unknown != known || alone != 2 {
		t.Errorf("%d and %d strokes of about %.0f, and %d alone", known, unknown, most, alone)
	}
}

// The bottom is drawn where it is, under each drop that noted it.
func TestSeasonBottom(t *testing.T) {
	a, b := straight(20, 1, 9), straight(20, 1, 9)
	a.Marks = []chart.Mark{{Kind: chart.Bottom, At: profile.Exactly(8)}}
	b.Marks = []chart.Mark{{Kind: chart.Bottom, At: profile.Exactly(9)}}
	s, _ := laid(t, metric(on(0, a), on(20, b), on(40, straight(20, 1, 9))), Desk)
	p, rec := recorded(Desk)
	s.ground(p)
	line := strokes(rec)[0].path
	want := []pt{{s.x(0), s.depth.at(8)}, {s.x(1), s.depth.at(9)}}
	if len(line) != 2 {
		t.Fatalf("%v", line)
	}
	for i, q := range line {
		if math.Abs(q.Pos.X.Points()-want[i].x) > 1e-6 || math.Abs(p.h-q.Pos.Y.Points()-want[i].y) > 1e-6 {
			t.Errorf("%v, want %v", q, want[i])
		}
	}
}

func TestSeasonLegible(t *testing.T) {
	t.Parallel()
	seasons := map[string]chart.Season{"full": seasonOf(t, 10, 99), "gap": seasonOf(t, 5, 2), "one": seasonOf(t, 1, 9)}
	years := seasonOf(t, 4, 9)
	for i := range years.Drops {
		years.Drops[i].When = years.Drops[i].When.AddDate(i, 0, 0)
	}
	seasons["years"] = years
	seasons["metres"] = metric(on(0, straight(4, 0, 9)), on(1, straight(4.2, 0.01, 200)))
	for name, in := range seasons {
		for _, s := range sizes {
			p, rec := recorded(s.size)
			laySeason(p, in.Title, in).draw(p)
			legible(t, name+", "+s.name, p, rec)
			var b bytes.Buffer
			if err := DrawSeason(&b, SVG, s.size, in); err != nil {
				t.Fatal(err)
			}
			svgTexts(t, b.Bytes())
			if bad := firstBad(b.Bytes()); bad != "" {
				t.Errorf("%s: %s", name, bad)
			}
		}
	}
}

func TestSeasonRefused(t *testing.T) {
	good := straight(20, 1, 9)
	for i, tc := range []struct {
		in   chart.Season
		want string
	}{
		{metric(), "no drops"},
		{metric(chart.Dated{Drop: good}), "drop 1 has no date"},
		{metric(on(0, good), chart.Dated{When: day(1)}), "drop 2: no readings"},
		{metric(on(0, good), chart.Dated{When: day(0).AddDate(300, 0, 0), Drop: good}), "too far apart"},
		{metric(slices.Repeat([]chart.Dated{on(0, good)}, mostDrops+1)...), "too many"},
	} {
		var b bytes.Buffer
		if err := DrawSeason(&b, SVG, Desk, tc.in); err == nil || !strings.Contains(err.Error(), tc.want) || b.Len() > 0 {
			t.Errorf("%d: %v, want %q", i, err, tc.want)
		}
	}
}

// The order of the drops given makes no difference, nor does their time zone's name.
func TestSeasonOrder(t *testing.T) {
	a := on(0, straight(20, 1, 9))
	b := on(10, straight(22, 1, 8))
	moved := b
	moved.When = time.Date(2026, 6, 11, 12, 0, 0, 0, time.FixedZone("lake", -7*3600))
	var one, two bytes.Buffer
	if err := DrawSeason(&one, SVG, Phone, metric(a, b)); err != nil {
		t.Fatal(err)
	}
	if err := DrawSeason(&two, SVG, Phone, metric(moved, a)); err != nil {
		t.Fatal(err)
	}
	if !bytes.Equal(one.Bytes(), two.Bytes()) {
		t.Error("the pictures differ")
	}
}

func TestLevels(t *testing.T) {
	for _, tc := range []struct {
		lo, hi     float64
		fahrenheit bool
		want       []float64
	}{
		{50, 57, true, []float64{52, 54, 56}},
		{10, 13.5, false, []float64{11, 12, 13}},
		{60.2, 60.9, true, nil},
		{4, 27, false, []float64{6, 8, 10, 12, 14, 16, 18, 20, 22, 24, 26}},
	} {
		if got := levels(tc.lo, tc.hi, tc.fahrenheit); !slices.Equal(got, tc.want) {
			t.Errorf("%v to %v: %v, want %v", tc.lo, tc.hi, got, tc.want)
		}
	}
}

func TestDayTicks(t *testing.T) {
	first := time.Date(2026, 12, 28, 12, 0, 0, 0, time.UTC) // a Monday
	for _, tc := range []struct {
		lo, hi, apart, month float64
		want                 string
	}{
		{0, 3, 1, 1, "29 Dec/2026 30 Dec/ 31 Dec/"},
		{0, 16, 3, 3, "4 Jan/2027 11 Jan/"},
		{0, 40, 20, 10, "Jan/2027"}, // too little shows of December and February
		{0, 58, 3, 10, "Jan/2027 Feb/"},
		{-20, 40, 3, 10, "Dec/2026 Jan/2027"},
		{0, 400, 80, 80, "Jan/2027 Apr/ Jul/ Oct/ Jan/2028"},
	} {
		var got []string
		last := math.Inf(-1)
		for _, tick := range dayTicks(first, tc.lo, tc.hi, tc.apart, tc.month) {
			if tick.line && (tick.day < tc.lo || tick.day > tc.hi) {
				t.Errorf("a line at day %v, of %v to %v", tick.day, tc.lo, tc.hi)
			}
			if tick.name == "" {
				continue
			}
			got = append(got, tick.name+"/"+tick.year)
			if tick.at < tc.lo || tick.at > tc.hi || tick.at-last < min(tc.apart, tc.month) {
				t.Errorf("tick %v at day %v, the last at %v", tick.name, tick.at, last)
			}
			last = tick.at
		}
		if s := strings.Join(got, " "); s != tc.want {
			t.Errorf("%v to %v, %v apart: %s, want %s", tc.lo, tc.hi, tc.apart, s, tc.want)
		}
	}
	// a month's name stands in its middle: January's at its 16th
	for _, tick := range dayTicks(first, 0, 58, 3, 10) {
		if mid := days(first, time.Date(2027, 1, 16, 12, 0, 0, 0, time.UTC)); tick.name == "Jan" && math.Abs(tick.at-mid) > 0.6 {
			t.Errorf("January's name stands at day %v, want %v", tick.at, mid)
		}
	}
}
