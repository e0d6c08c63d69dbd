package report

import (
	"testing"

	"coldseam/profile/rig"
	"coldseam/profile/unit"
)

// Two depths that print alike are not set against each other, and one fly is no plural.
func TestShortLeaderWords(t *testing.T) {
	feet := speaker{u: unit.System{Depth: unit.Foot, Temp: unit.Fahrenheit}}
	for want, reachFt := range map[string]float64{"does not quite reach 13 ft": 12.8, "reaches about 12 ft, not 13 ft": 12.2} {
		if got := feet.reaches(rig.Rig{ReachM: reachFt * 0.3048, FlyM: 13.2 * 0.3048}); got != want {
			t.Errorf("%q, want %q", got, want)
		}
	}
	if flies(1) != "one fly" || flies(2) != "2 flies" {
		t.Errorf("%q, %q", flies(1), flies(2))
	}
}
