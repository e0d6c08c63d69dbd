package unit

import (
	"math"
	"testing"
)

// One standard atmosphere, 101325 Pa (exact, BIPM), is 29.92 inches of mercury (US Standard
// Atmosphere), 760 mm of it, or 14.696 psi.
func TestStandardAtmosphere(t *testing.T) {
	for _, text := range []string{"29.92 inHg", "1013.25 hPa", "101.325 kPa", "1.01325 bar"} {
		if got, err := ParsePressure(text); err != nil || math.Abs(got-101325) > 12 {
			t.Errorf("%s is %v Pa, %v", text, got, err)
		}
	}
}
