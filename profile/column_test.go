package profile

import (
	"math"
	"testing"

	"github.com/google/go-cmp/cmp"

	"coldseam/profile/unit"
)

var nan, inf = math.NaN(), math.Inf(1)

// TestColumnGate: what a Column refuses.
func TestColumnGate(t *testing.T) {
	ok := Point{DepthM: 1, TempC: 20, ErrC: 0.25}
	for _, tc := range []struct {
		name   string
		points []Point
		err    string
	}{
		{"empty", nil, "no readings"},
		{"depth not a number", []Point{ok, {DepthM: nan, TempC: 20}}, "a reading at NaN m is not a number"},
		{"temperature not a number", []Point{{DepthM: 3, TempC: nan}}, "a reading at 3 m is not a number"},
		{"error not a number", []Point{{DepthM: 3, TempC: 20, ErrC: nan}}, "a reading at 3 m is not a number"},
		{"depth error infinite", []Point{{DepthM: 3, TempC: 20, ErrM: inf}}, "a reading at 3 m is not a number"},
		{"oxygen not a number", []Point{{DepthM: 3, TempC: 20, Oxygen: Some(nan)}}, "a reading at 3 m is not a number"},
		{"infinitely deep", []Point{{DepthM: inf, TempC: 20}}, "a reading at +Inf m is not a number"},
		{"infinitely cold", []Point{{DepthM: 3, TempC: -inf}}, "a reading at 3 m is not a number"},
		{"above the water", []Point{{DepthM: -0.1, TempC: 20}}, "a depth of -0.1 m is outside 0 to 2000 m"},
		{"too deep", []Point{{DepthM: 2000.5, TempC: 4}}, "a depth of 2000.5 m is outside 0 to 2000 m"},
		{"too cold", []Point{{DepthM: 3, TempC: -5.5}}, "a temperature of -5.5 C is outside -5 to 60 C"},
		{"too warm", []Point{{DepthM: 3, TempC: 394.4}}, "a temperature of 394.4 C is outside -5 to 60 C"},
		{"the limits themselves", []Point{{DepthM: 0, TempC: 60}, {DepthM: 2000, TempC: -5}}, ""},
	} {
		c, err := NewColumn(tc.points)
		got := ""
		if err != nil {
			got = err.Error()
		}
		if got != tc.err || (err != nil) != (c.Len() == 0) {
			t.Errorf("%s: error %q, %d points; want %q", tc.name, got, c.Len(), tc.err)
		}
	}
}

// TestColumnOrderAndJoin: points in any order come out sorted, those of one depth
// joined into their mean, or the median of three or more, with the error that covers
// them.
func TestColumnOrderAndJoin(t *testing.T) {
	for _, tc := range []struct {
		name     string
		in, want []Point
	}{
		{"unsorted", []Point{{DepthM: 4, TempC: 18}, {DepthM: 0, TempC: 22}, {DepthM: 2, TempC: 20}},
			[]Point{{DepthM: 0, TempC: 22}, {DepthM: 2, TempC: 20}, {DepthM: 4, TempC: 18}}},
		{"two of one depth", []Point{{DepthM: 2, TempC: 20, ErrC: 0.25}, {DepthM: 2, TempC: 21, ErrC: 0.3}},
			[]Point{{DepthM: 2, TempC: 20.5, ErrC: 0.5}}},
		{"two alike keep their error", []Point{{DepthM: 2, TempC: 20, ErrC: 0.25}, {DepthM: 2, TempC: 20.25, ErrC: 0.375}},
			[]Point{{DepthM: 2, TempC: 20.125, ErrC: 0.375}}},
		{"three of one depth", []Point{{DepthM: 2, TempC: 20}, {DepthM: 2, TempC: 26}, {DepthM: 2, TempC: 20.5}},
			[]Point{{DepthM: 2, TempC: 20.5, ErrC: 3}}},
		{"almost one depth", []Point{{DepthM: 2, TempC: 20}, {DepthM: 2.049, TempC: 21}}, []Point{{DepthM: 2, TempC: 20.5, ErrC: 0.5}}},
		{"just two depths", []Point{{DepthM: 2, TempC: 20}, {DepthM: 2.051, TempC: 21}}, []Point{{DepthM: 2, TempC: 20}, {DepthM: 2.051, TempC: 21}}},
		{"oxygen of those that have it", []Point{{DepthM: 2, TempC: 20}, {DepthM: 2, TempC: 20, Oxygen: Some(7)}, {DepthM: 2, TempC: 20, Oxygen: Some(8)}},
			[]Point{{DepthM: 2, TempC: 20, Oxygen: Some(7.5)}}},
		{"one odd makes it odd", []Point{{DepthM: 2, TempC: 20}, {DepthM: 2, TempC: 20, Odd: true}}, []Point{{DepthM: 2, TempC: 20, Odd: true}}},
	} {
		given := append([]Point{}, tc.in...)
		c, err := NewColumn(tc.in)
		if err != nil {
			t.Errorf("%s: %v", tc.name, err)
			continue
		}
		if diff := cmp.Diff(tc.want, c.Points()); diff != "" {
			t.Errorf("%s (-want +got):\n%s", tc.name, diff)
		}
		if diff := cmp.Diff(given, tc.in); diff != "" {
			t.Errorf("%s: the points given were changed:\n%s", tc.name, diff)
		}
		c.Points()[0].TempC = 99
		if c.At(0).TempC == 99 {
			t.Errorf("%s: a Column can be changed from outside", tc.name)
		}
		if c.First() != c.At(0) || c.Last() != c.At(c.Len()-1) {
			t.Errorf("%s: first %v, last %v", tc.name, c.First(), c.Last())
		}
	}
	if z := (Column{}); z.Len() != 0 || z.First() != (Point{}) || z.Last() != (Point{}) {
		t.Error("the zero Column has points")
	}
}

// feet makes a drop of depths in feet and temperatures in Fahrenheit.
func feet(depthTemp ...float64) Drop {
	d := Drop{Units: unit.System{Depth: unit.Foot, Temp: unit.Fahrenheit}}
	for i := 0; i+1 < len(depthTemp); i += 2 {
		d.Readings = append(d.Readings, Reading{Depth: depthTemp[i], DepthUnit: unit.Foot, Temp: depthTemp[i+1], TempUnit: unit.Fahrenheit, Step: 1})
	}
	return d
}

// TestCorrect: line out into depth, thermometer into temperature. A depth is rounded
// to a tenth of a millimetre, a temperature to a tenth of a millidegree: that is the
// tolerance.
func TestCorrect(t *testing.T) {
	const tolerance = 5.1e-5
	for _, tc := range []struct {
		name          string
		change        func(*Drop)
		depthM, tempC float64
	}{
		{"as written", func(d *Drop) {}, 6.096, 14.4444}, // 20 ft of 0.3048 m; (58-32)/1.8
		{"marks at the water", func(d *Drop) { d.Marks = MarksAtWater }, 6.096, 14.4444},
		{"marks at the gunwale, 1.5 ft", func(d *Drop) { d.Marks, d.FreeboardM = MarksAtGunwale, 0.4572 }, 5.6388, 14.4444},
		{"a freeboard that does not count", func(d *Drop) { d.Marks, d.FreeboardM = MarksAtWater, 0.4572 }, 6.096, 14.4444},
		{"bulb half a foot below", func(d *Drop) { d.BulbBelow = Some(0.1524) }, 6.2484, 14.4444},
		{"gunwale and bulb", func(d *Drop) { d.Marks, d.FreeboardM, d.BulbBelow = MarksAtGunwale, 0.4572, Some(0.1524) }, 5.7912, 14.4444},
		{"more freeboard than line", func(d *Drop) { d.Marks, d.FreeboardM = MarksAtGunwale, 7 }, 0, 14.4444},
		{"ice point of 32.5 F", func(d *Drop) { d.IcePoint = Some(0.277778) }, 6.096, 14.1667}, // a difference: 0.5 F is 0.28 C
		{"ice point of -0.3 C", func(d *Drop) { d.IcePoint = Some(-0.3) }, 6.096, 14.7444},
		// the middle of cos 30 = 0.866025 and asinh(tan 30)/tan 30 = 0.951426
		{"line at 30 degrees", func(d *Drop) { d.LineAngle = Some(30) }, 6.096 * (0.866025 + 0.951426) / 2, 14.4444},
		{"the bulb hangs straight under a slanting line", func(d *Drop) { d.LineAngle, d.BulbBelow = Some(30), Some(0.1524) }, 6.096*(0.866025+0.951426)/2 + 0.1524, 14.4444},
	} {
		d := feet(20, 58)
		tc.change(&d)
		for pass := range 2 { // a second time gives the same
			d.Correct()
			if r := d.Readings[0]; math.Abs(r.DepthM-tc.depthM) > tolerance || math.Abs(r.TempC-tc.tempC) > tolerance {
				t.Errorf("%s, pass %d: %v m, %v C; want %v m, %v C", tc.name, pass, r.DepthM, r.TempC, tc.depthM, tc.tempC)
			}
		}
	}
}

// TestIcePointOnEveryReading: 32.5 F in ice water takes 0.28 C off each.
func TestIcePointOnEveryReading(t *testing.T) {
	plain, corrected := feet(0, 74, 10, 72, 20, 58), feet(0, 74, 10, 72, 20, 58)
	corrected.IcePoint = Some(unit.Fahrenheit.ToC(32.5))
	plain.Correct()
	corrected.Correct()
	for i := range plain.Readings {
		if off := plain.Readings[i].TempC - corrected.Readings[i].TempC; math.Abs(off-0.2778) > 1.1e-4 {
			t.Errorf("reading %d: %v C off, want 0.2778", i, off)
		}
	}
}

// TestAngleBounds: standard geometry of a towed line: straight, and the catenary-like
// curve of even drag along the line and a weight at its end. At 60 degrees tan is
// 1.7320508 and asinh of it 1.3169579 (ln(2 + sqrt 3)).
func TestAngleBounds(t *testing.T) {
	for _, tc := range []struct{ deg, low, high, tolerance float64 }{
		{0, 1, 1, 0},
		{1e-6, 1, 1, 1e-12},
		{10, 0.984808, 0.994889, 1e-6}, // asinh(0.1763270)/0.1763270
		{30, 0.866025, 0.951426, 5e-7},
		{45, 0.7071068, 0.8813736, 5e-8}, // ln(1 + sqrt 2)
		{60, 0.5, 1.3169579 / 1.7320508, 1e-7},
	} {
		low, high := AngleBounds(tc.deg)
		if math.Abs(low-tc.low) > tc.tolerance || math.Abs(high-tc.high) > tc.tolerance {
			t.Errorf("%v degrees: %v to %v, want %v to %v", tc.deg, low, high, tc.low, tc.high)
		}
	}
}

// TestDepthError: half a foot where the marks' zero is not stated, and half the width
// between the angle's bounds, together.
func TestDepthError(t *testing.T) {
	for _, tc := range []struct {
		name          string
		d             Drop
		depthM, wantM float64
	}{
		{"not stated", Drop{}, 6, 0.1524},
		{"at the water", Drop{Marks: MarksAtWater}, 6, 0},
		{"at the gunwale", Drop{Marks: MarksAtGunwale, FreeboardM: 0.5}, 6, 0},
		// 6 m times (0.951426 - 0.866025)/(0.951426 + 0.866025)
		{"30 degrees", Drop{Marks: MarksAtWater, LineAngle: Some(30)}, 6, 0.281937},
		{"30 degrees, not stated", Drop{LineAngle: Some(30)}, 6, 0.320490}, // root of the squares' sum
		{"30 degrees at the surface", Drop{Marks: MarksAtWater, LineAngle: Some(30)}, 0, 0},
	} {
		if got := tc.d.DepthError(tc.depthM); math.Abs(got-tc.wantM) > 2e-6 {
			t.Errorf("%s: %v m, want %v", tc.name, got, tc.wantM)
		}
	}
}

// TestPrecision: as stated, else the finest step written, at least 0.25 C.
func TestPrecision(t *testing.T) {
	reading := func(u unit.Temperature, step float64) Reading { return Reading{Temp: 60, TempUnit: u, Step: step} }
	for _, tc := range []struct {
		name     string
		readings []Reading
		stated   Optional
		want     float64
	}{
		{"no readings", nil, Optional{}, 0.25},
		{"whole Fahrenheit", []Reading{reading(unit.Fahrenheit, 1)}, Optional{}, 0.5556},
		{"half Fahrenheit", []Reading{reading(unit.Fahrenheit, 1), reading(unit.Fahrenheit, 0.5)}, Optional{}, 0.2778},
		{"tenths of Fahrenheit", []Reading{reading(unit.Fahrenheit, 0.1)}, Optional{}, 0.25},
		{"whole Celsius", []Reading{reading(unit.Celsius, 1)}, Optional{}, 1},
		{"tenths of Celsius", []Reading{reading(unit.Celsius, 0.1), reading(unit.Celsius, 1)}, Optional{}, 0.25},
		{"stated finer than written", []Reading{reading(unit.Fahrenheit, 1)}, Some(0.1), 0.1},
		{"stated coarser than written", []Reading{reading(unit.Celsius, 0.1)}, Some(0.8), 0.8},
	} {
		d := Drop{Readings: tc.readings, Precision: tc.stated}
		if got := d.PrecisionC(); math.Abs(got-tc.want) > 5e-5 {
			t.Errorf("%s: %v C, want %v", tc.name, got, tc.want)
		}
	}
}

// TestFlagsLeaveOut: only the two flags of water that may be real keep a reading in.
func TestFlagsLeaveOut(t *testing.T) {
	for flag, out := range map[Flag]bool{"": false, RepeatDisagrees: false, WarmerBelow: false, OutOfRange: true, Spike: true,
		SlippedDigit: true, ColumnsSwapped: true, WrongUnit: true, BelowBottom: true} {
		if flag.LeavesOut() != out || (Reading{Flag: flag}).Used() == out {
			t.Errorf("%q: left out %v, want %v", flag, flag.LeavesOut(), out)
		}
	}
}
