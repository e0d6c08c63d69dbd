package oxygen

import (
	"math"
	"testing"

	"coldseam/profile/layers"
)

// Cold water in one layer holds oxygen enough nearly to the bottom: every measured column of
// that kind, from the sources of the package comment.
func TestTurnedOver(t *testing.T) {
	n, short, waters, first := 0, 0, map[string]bool{}, 1.0
	for i, l := range lakes(t) {
		if !TurnedOver(l.whole.Layers) {
			continue
		}
		n++
		waters[l.water] = true
		if z, how := l.crossing(5); how != never {
			short++
			first = math.Min(first, z/l.z[len(l.z)-1])
		}
		muddy := l.whole
		muddy.AnchorBlack = true
		if e, ok := Below(muddy); ok {
			t.Errorf("column %d, %s: a depth is named, %v", i, l.Name, e)
		}
	}
	t.Logf("%d columns of %d lakes, %d short, from %.2f of the depth on", n, len(waters), short, first)
	if n < 15 || short*15 > n || first < 0.85 {
		t.Errorf("%d of %d columns are short, from %.2f of the depth on", short, n, first)
	}
}

// Warm water in one layer, layered water and water under ice have not just turned over.
func TestNotTurnedOver(t *testing.T) {
	for _, l := range []layers.Layers{
		{Structure: layers.Mixed, MixedTempC: 12.5}, {Structure: layers.Layered, MixedTempC: 9}, {Structure: layers.Inverse, MixedTempC: 1}, {Structure: layers.TooFew, MixedTempC: 9},
	} {
		if TurnedOver(l) {
			t.Errorf("%s at %v C", l.Structure, l.MixedTempC)
		}
	}
}
