package unit

import (
	"math"
	"testing"
)

// TestDifference: an interval of 9 F is one of 5 C, both ways, with no 32 in it (NIST SP
// 811, appendix B.9).
func TestDifference(t *testing.T) {
	for _, c := range [][2]float64{{0, 0}, {9, 5}, {1.8, 1}, {-9, -5}} {
		if got := Fahrenheit.DiffToC(c[0]); math.Abs(got-c[1]) > 1e-12 {
			t.Errorf("%v F is %v C, want %v", c[0], got, c[1])
		}
		if got := Fahrenheit.DiffFromC(c[1]); math.Abs(got-c[0]) > 1e-12 {
			t.Errorf("%v C is %v F, want %v", c[1], got, c[0])
		}
		if Celsius.DiffToC(c[1]) != c[1] || Celsius.DiffFromC(c[1]) != c[1] {
			t.Errorf("%v C is another difference in C", c[1])
		}
	}
}
