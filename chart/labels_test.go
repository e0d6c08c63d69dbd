package chart

import (
	"slices"
	"testing"

	"pgregory.net/rapid"
)

// Stacked labels keep their order, do not overlap, stay in their room, and no small
// change that keeps all this brings them nearer to where they want to be.
func TestMiddles(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		n := rapid.IntRange(0, 12).Draw(t, "n")
		want := rapid.SliceOfN(rapid.Float64Range(0, 400), n, n).Draw(t, "want")
		high := rapid.SliceOfN(rapid.Float64Range(5, 30), n, n).Draw(t, "high")
		slices.Sort(want)
		const top, bottom = 0, 400
		got := PlaceLabels(want, high, top, bottom)
		cost := func(at []float64) (sum float64) {
			for i := range at {
				sum += (at[i] - want[i]) * (at[i] - want[i])
			}
			return sum
		}
		fits := func(at []float64) bool {
			for i := range at {
				if at[i]-high[i]/2 < top-1e-9 || at[i]+high[i]/2 > bottom+1e-9 || i > 0 && at[i]-high[i]/2 < at[i-1]+high[i-1]/2-1e-9 {
					return false
				}
			}
			return true
		}
		if !fits(got) {
			t.Fatalf("%v do not fit", got)
		}
		for i := range got {
			for j := i; j < n; j++ { // a run of neighbours moved together
				for _, d := range []float64{-0.01, 0.01} {
					other := slices.Clone(got)
					for k := i; k <= j; k++ {
						other[k] += d
					}
					if fits(other) && cost(other) < cost(got)-1e-9 {
						t.Fatalf("labels %d to %d would be nearer if moved by %v: %v", i, j, d, got)
					}
				}
			}
		}
	})
}

// Where there is no room for all, they stand close together from the top, in order.
func TestNoRoom(t *testing.T) {
	if got, want := PlaceLabels([]float64{10, 50, 90}, []float64{40, 60, 20}, 5, 100), []float64{25, 75, 115}; !slices.Equal(got, want) {
		t.Errorf("%v, want %v", got, want)
	}
}
