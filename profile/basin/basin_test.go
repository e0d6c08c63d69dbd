package basin

import (
	"errors"
	"math"
	"testing"

	"pgregory.net/rapid"
)

func near(t *testing.T, what string, got, want, off float64) {
	t.Helper()
	if !(math.Abs(got-want) <= off) {
		t.Errorf("%s: %v, want %v", what, got, want)
	}
}

func table(t *testing.T, rows ...Row) Basin {
	t.Helper()
	b, err := New(rows)
	if err != nil {
		t.Fatal(err)
	}
	return b
}

// cone has the area A0 (1 - z/H)^2, cut into so many rows.
func cone(t *testing.T, height, area float64, rows int) Basin {
	t.Helper()
	var out []Row
	for i := range rows {
		z := height * float64(i) / float64(rows-1)
		out = append(out, Row{z, area * (1 - z/height) * (1 - z/height)})
	}
	return table(t, out...)
}

// Straight walls: area stays, and all of the bottom is the floor. A cone: the share is the
// difference of the squares, however the table is cut.
func TestShares(t *testing.T) {
	walls := table(t, Row{0, 5000}, Row{10, 5000})
	near(t, "walls at 7 m", walls.AreaM2(7), 5000, 0)
	near(t, "walls, half way", walls.BottomShare(2, 7), 0, 0)
	near(t, "walls, to the floor", walls.BottomShare(2, 10), 1, 0)
	near(t, "walls, past the floor", walls.BottomShare(9.9, 30), 1, 0)
	near(t, "below the floor", walls.AreaM2(10.1), 0, 0)
	for _, rows := range []int{2, 3, 6} {
		c := cone(t, 10, 40000, rows)
		near(t, "cone at 2.5 m", c.AreaM2(2.5), 40000*0.5625, 1e-9)
		near(t, "cone, 2 to 4 m", c.BottomShare(2, 4), 0.64-0.36, 1e-12)
		near(t, "cone, all", c.BottomShare(0, 10), 1, 1e-12)
		near(t, "cone, turned round", c.BottomShare(4, 2), 0, 0)
	}
}

// The shares of runs of depth add up to that of all, and none is below nothing.
func TestSharesAddUp(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		rows := []Row{{0, rapid.Float64Range(1, 1e8).Draw(t, "area")}}
		for range rapid.IntRange(1, 6).Draw(t, "rows") {
			last := rows[len(rows)-1]
			rows = append(rows, Row{last.DepthM + rapid.Float64Range(0.1, 20).Draw(t, "step"), last.AreaM2 * rapid.Float64Range(0, 1).Draw(t, "left")})
		}
		b, err := New(rows)
		if err != nil {
			t.Fatal(err)
		}
		a := rapid.Float64Range(0, b.FloorM()).Draw(t, "a")
		parts := []float64{b.BottomShare(0, a), b.BottomShare(a, b.FloorM())}
		if sum := parts[0] + parts[1]; a > 0 && a < b.FloorM() && math.Abs(sum-1) > 1e-9 || parts[0] < 0 || parts[1] < 0 {
			t.Fatalf("%+v at %v: %v", rows, a, parts)
		}
	})
}

func TestTablesRefused(t *testing.T) {
	nan := math.NaN()
	for _, c := range []struct {
		name string
		rows []Row
		row  int
	}{
		{"nothing", nil, 0}, {"the surface alone", []Row{{0, 5}}, 0}, {"no surface", []Row{{1, 5}, {2, 4}}, 0},
		{"a surface of nothing", []Row{{0, 0}, {2, 0}}, 0}, {"more area below", []Row{{0, 5}, {2, 4}, {3, 4.1}}, 2},
		{"one depth twice", []Row{{0, 5}, {2, 4}, {2, 3}}, 2}, {"back up", []Row{{0, 5}, {2, 4}, {1, 3}}, 2},
		{"no number", []Row{{0, 5}, {nan, 4}}, 1}, {"no area", []Row{{0, 5}, {1, nan}}, 1}, {"less than none", []Row{{0, 5}, {1, -1}}, 1},
		{"deeper than lakes are", []Row{{0, 5}, {2001, 1}}, 1}, {"larger than lakes are", []Row{{0, 2e12}, {1, 1}}, 0},
	} {
		_, err := New(c.rows)
		var wrong *RowError
		if !errors.As(err, &wrong) || wrong.Row != c.row || wrong.Error() == "" {
			t.Errorf("%s: %v, want row %d", c.name, err, c.row)
		}
	}
	if _, err := New([]Row{{0, 5}, {2, 5}}); err != nil {
		t.Errorf("straight walls: %v", err)
	}
}
