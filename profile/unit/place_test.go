package unit

import (
	"math"
	"strings"
	"testing"

	"pgregory.net/rapid"
)

func TestCoordinates(t *testing.T) {
	for text, want := range map[string]float64{
		"46.1 N": 46.1, "46.1n": 46.1, "N 46.1": 46.1, "46,1": 46.1, "33.5 S": -33.5, "-33.5": -33.5, "s33.5": -33.5, "0": 0, "90 S": -90,
		"46°06'N": 46.1, "46 06 30 N": 46 + 6.5/60, "46° 6' 30\" S": -(46 + 6.5/60), "46 6.5 N": 46 + 6.5/60, "46.1°": 46.1, "46 deg 6 N": 46.1,
	} {
		if got, err := Latitude.Parse(text); err != nil || math.Abs(got-want) > 1e-12 {
			t.Errorf("%q: %v, %v; want %v", text, got, err, want)
		}
	}
	for text, want := range map[string]float64{"89.3 W": -89.3, "18.4 E": 18.4, "-180": -180, "E18 24": 18.4} {
		if got, err := Longitude.Parse(text); err != nil || math.Abs(got-want) > 1e-12 {
			t.Errorf("%q: %v, %v; want %v", text, got, err, want)
		}
	}
	for _, text := range []string{"", "N", "north", "46.1 E", "91", "46.1.2", "46 61 N", "46.5 30 N", "1 2 3 4", "-46 S", "--4", "nan", "inf", "4-6", "46 -6"} {
		if got, err := Latitude.Parse(text); err == nil || !strings.Contains(err.Error(), "latitude") {
			t.Errorf("%q is taken as %v, %v", text, got, err)
		}
	}
	if _, err := Longitude.Parse("181 W"); err == nil || !strings.Contains(err.Error(), "180") {
		t.Errorf("181 W: %v", err)
	}
}

func TestCoordinateReadsBack(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		v := rapid.Float64Range(-90, 90).Draw(t, "v")
		if got, err := Latitude.Parse(Latitude.Write(v, Exact)); err != nil || math.Abs(got-v) > 1e-6 {
			t.Fatalf("%v: %q, %v, %v", v, Latitude.Write(v, Exact), got, err)
		}
	})
}

// The acre is 43,560 square feet of 0.3048 m: 4046.8564224 m2 (NIST SP 811).
func TestAreas(t *testing.T) {
	for text, want := range map[string]float64{"1 acre": 4046.8564224, "24 acres": 97124.5541376, "9,7 ha": 97000, "5000 m2": 5000, "0.5 km²": 5e5, "1 sq mi": 640 * 4046.8564224} {
		if got, err := ParseArea(text); err != nil || math.Abs(got-want) > 1e-6*want {
			t.Errorf("%q: %v, %v; want %v", text, got, err, want)
		}
	}
	for _, text := range []string{"24", "24 ft", "acres", "x ha"} {
		if _, err := ParseArea(text); err == nil || !strings.Contains(err.Error(), "24 acres or 9.7 ha") {
			t.Errorf("%q: %v", text, err)
		}
	}
}
