package static

import (
	"math"
	"testing"

	"pgregory.net/rapid"
)

// grid is a field with a temperature at every node.
func grid(xs, ys []float64, of func(x, y float64) float64) *field {
	f := &field{xs: xs, ys: ys}
	for _, x := range xs {
		var t []float64
		var known []bool
		for _, y := range ys {
			t, known = append(t, of(x, y)), append(known, true)
		}
		f.t, f.known, f.open = append(f.t, t), append(f.known, known), append(f.open, true)
	}
	return f
}

func even(n int, to float64) []float64 {
	out := make([]float64, n+1)
	for i := range out {
		out[i] = to * float64(i) / float64(n)
	}
	return out
}

// area of loops, holes taken off.
func area(loops [][]pt) (sum float64) {
	for _, l := range loops {
		for i, a := range l {
			b := l[(i+1)%len(l)]
			sum += (a.x*b.y - b.x*a.y) / 2
		}
	}
	return sum
}

// On a plane the isotherm is a straight line, and all is exact.
func TestIsothermOfPlane(t *testing.T) {
	f := grid(even(7, 70), even(9, 90), func(x, y float64) float64 { return 30 - 0.2*y + 0.1*x })
	loops, lines := f.trace(20) // 0.2 y = 10 + 0.1 x
	if len(loops) != 1 || len(lines) != 1 {
		t.Fatalf("%d loops and %d lines", len(loops), len(lines))
	}
	for _, at := range lines[0] {
		if want := 50 + at.x/2; math.Abs(at.y-want) > 1e-9 {
			t.Errorf("at %v the isotherm is %v deep, want %v", at.x, at.y, want)
		}
	}
	ends := []pt{lines[0][0], lines[0][len(lines[0])-1]}
	if ends[0] != (pt{70, 85}) || ends[1] != (pt{0, 50}) {
		t.Errorf("from %v to %v", ends[0], ends[1])
	}
	if got, want := area(loops), (50.0+85)/2*70; math.Abs(got-want) > 1e-6 {
		t.Errorf("area %v, want %v", got, want)
	}
}

// A warm lens is a ring, and water around a cold one has a hole.
func TestIsothermOfLens(t *testing.T) {
	lens := func(x, y float64) float64 { return 20 - math.Hypot(x-50, y-50)/10 }
	f := grid(even(50, 100), even(50, 100), lens)
	loops, lines := f.trace(17)
	if len(loops) != 1 || len(lines) != 1 || lines[0][0] != lines[0][len(lines[0])-1] {
		t.Fatalf("%d loops, %d lines: want one ring", len(loops), len(lines))
	}
	if got, want := area(loops), math.Pi*900; math.Abs(got-want) > 0.01*want {
		t.Errorf("area %v, want %v", got, want)
	}
	f = grid(even(50, 100), even(50, 100), func(x, y float64) float64 { return -lens(x, y) })
	loops, _ = f.trace(-17)
	if got, want := area(loops), 10000-math.Pi*900; len(loops) != 2 || math.Abs(got-want) > 0.01*want {
		t.Errorf("%d loops of area %v, want a border and a hole, %v", len(loops), got, want)
	}
}

// Whatever the field, with holes and saddles: all of it is filled at no limit, nothing
// over the warmest, the warm part shrinks as the limit rises, with its mirror image it
// makes up the whole, and every isotherm begins and ends at the border or is a ring.
func TestIsothermsOfAnything(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		nx, ny := rapid.IntRange(2, 7).Draw(t, "columns"), rapid.IntRange(2, 7).Draw(t, "rows")
		f := grid(even(nx-1, 60), even(ny-1, 40), func(x, y float64) float64 { return float64(rapid.IntRange(0, 9).Draw(t, "t")) })
		want := 0.0
		for i := range nx {
			f.open[i] = rapid.IntRange(0, 4).Draw(t, "open") > 0
			for j := range ny {
				f.known[i][j] = rapid.IntRange(0, 6).Draw(t, "known") > 0
			}
		}
		for i := range nx - 1 {
			for j := range ny - 1 {
				if f.cell(i, j) {
					want += (f.xs[i+1] - f.xs[i]) * (f.ys[j+1] - f.ys[j])
				}
			}
		}
		whole := func(f *field, level float64) float64 { return area(f.chain(f.edges(level), level)) } // not thinned
		if got := whole(f, math.Inf(-1)); math.Abs(got-want) > 1e-6 {
			t.Fatalf("all of it is %v, want %v", got, want)
		}
		if none, _ := f.trace(10); len(none) != 0 {
			t.Fatalf("warmer than the warmest: %v", none)
		}
		cold := &field{f.xs, f.ys, nil, f.known, f.open}
		for _, col := range f.t {
			neg := make([]float64, len(col))
			for j, v := range col {
				neg[j] = -v
			}
			cold.t = append(cold.t, neg)
		}
		before := want
		for _, level := range []float64{0.6, 2.3, 4.55, 6.8, 8.4} { // no mean of four whole numbers, so that no saddle is a draw
			_, lines := f.trace(level)
			warm := whole(f, level)
			if warm > before+1e-6 {
				t.Fatalf("over %v there is more than over less: %v, %v", level, warm, before)
			}
			before = warm
			if got := warm + whole(cold, -level); math.Abs(got-want) > 1e-6 {
				t.Fatalf("over and under %v are %v together, want %v", level, got, want)
			}
			for _, l := range lines {
				for _, at := range l {
					if math.IsNaN(at.x+at.y) || at.x < 0 || at.x > 60 || at.y < 0 || at.y > 40 {
						t.Fatalf("%v is outside", at)
					}
				}
			}
		}
	})
}

// A thinned line stays within its tolerance of the whole one.
func TestThin(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		var line []pt
		x, y := 0.0, 0.0
		for range rapid.IntRange(2, 60).Draw(t, "n") {
			x, y = x+rapid.Float64Range(0, 2).Draw(t, "dx"), y+rapid.Float64Range(-0.2, 0.2).Draw(t, "dy")
			line = append(line, pt{x, y})
		}
		out := thin(append([]pt(nil), line...))
		if out[0] != line[0] || out[len(out)-1] != line[len(line)-1] {
			t.Fatalf("the ends moved: %v", out)
		}
		for _, q := range line {
			near := math.Inf(1)
			for i := 1; i < len(out); i++ {
				near = math.Min(near, away(q, out[i-1], out[i]))
			}
			if near > 1.0/30+1e-9 {
				t.Fatalf("%v is %v away", q, near)
			}
		}
	})
}
