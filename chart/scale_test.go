package chart

import (
	"math"
	"testing"
)

func TestStep(t *testing.T) {
	for _, tc := range []struct{ span, most, want float64 }{{31, 20, 2}, {31, 32, 1}, {9, 20, 0.5}, {4, 40, 0.1}, {100, 7, 20}, {1e9, 2, 5e8}} {
		if got := Step(tc.span, tc.most); math.Abs(got-tc.want) > 1e-12 {
			t.Errorf("%v in at most %v: %v, want %v", tc.span, tc.most, got, tc.want)
		}
	}
}
