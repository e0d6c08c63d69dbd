package unit

import (
	"math"
	"testing"
)

// A half goes away from zero (2.5 to 3), and what rounds to nought prints without a sign.
func TestRoundTo(t *testing.T) {
	for _, c := range []struct {
		v        float64
		decimals int
		want     float64
		text     string
	}{
		{2.5, 0, 3, "3"}, {-2.5, 0, -3, "-3"}, {0.125, 2, 0.13, "0.13"}, {-0.04, 1, 0, "0"}, {12, 3, 12, "12"}, {1.2999999, 4, 1.3, "1.3"},
	} {
		if got := RoundTo(c.v, c.decimals); got != c.want || math.Signbit(got) != (c.want < 0) || Digits(c.v, c.decimals) != c.text {
			t.Errorf("%v to %d: %v, %q; want %v, %q", c.v, c.decimals, got, Digits(c.v, c.decimals), c.want, c.text)
		}
	}
}
