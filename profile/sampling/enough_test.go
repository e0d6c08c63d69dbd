package sampling

import (
	"math"
	"testing"

	"coldseam/profile"
)

// TestEnough: a drop that is called enough knows the break to 3 ft and the depth of a
// limit to 2.5 ft, in 7 readings where the break is thin; over a broad one it goes on for
// as long as readings tell.
func TestEnough(t *testing.T) {
	t.Parallel()
	for breakAt := 2.0; breakAt < 10; breakAt += 1.4 {
		for _, half := range []float64{0.2, 0.6, 1.2, 2.5} {
			for _, levels := range [][]float64{nil, {12}} {
				lake := smooth(23, 8, breakAt, half)
				depths, a := take(t, lake, Input{Bottom: profile.Some(14), MarkM: quarterM, LevelsC: levels})
				if half == 2.5 {
					if len(depths) < 8 {
						t.Errorf("break at %v m, broad: %q after %d readings", breakAt, a.Why, len(depths))
					}
					continue
				}
				if levels == nil && (a.Why != CloseEnough || len(depths) > 7) {
					t.Errorf("break at %v m, half %v m: %q after %d readings", breakAt, half, a.Why, len(depths))
				}
				if a.Why != CloseEnough {
					continue
				}
				known(t, newEvaluator(read(t, lake, depths...), levels))
			}
		}
	}
}

// The limit far below the break is sought until it is known as well.
func TestEnoughOfALimit(t *testing.T) {
	t.Parallel()
	for fall := 0.3; fall < 1; fall += 0.1 { // C a metre, under a sharp break
		lake := func(z float64) float64 { return smooth(22, 14, 4, 0.3)(z) - fall*math.Max(0, z-6) }
		in := Input{Bottom: profile.Some(15), MarkM: quarterM, LevelsC: []float64{12}}
		if depths, a := take(t, lake, in); a.Why == CloseEnough {
			known(t, newEvaluator(read(t, lake, depths...), in.LevelsC))
		}
	}
}

// known reports what is not known to 3 ft, a limit to 2.5 ft.
func known(t *testing.T, k *evaluator) {
	t.Helper()
	for _, a := range k.targets {
		most := 3 * footM
		if a.why == Isotherm {
			most = 2.5 * footM
		}
		if a.high-a.low > most {
			t.Errorf("enough with %s %v known to %.2f m", a.why, a.levelC, a.high-a.low)
		}
	}
}
