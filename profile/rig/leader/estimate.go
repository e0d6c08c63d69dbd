package leader

import (
	"math"
	"slices"

	"coldseam/profile"
)

// What is doubtful where a leader leaves it open: an 80 % interval, each bound with its
// reason.
const (
	LightFlyKgM3, HeavyFlyKgM3 = 3000.0, 6000.0 // wire and thread to tungsten (common practice)
	slimFly, bushyFly          = 1.5, 2.5       // dressing: flies of 0.1 to 0.3 g that fall at 0.2 to 0.5 m/s

	// modelShare is the doubt of the sink time itself, all stated: friction along a line
	// is known to a fifth and drag across it to a tenth, which together move it by
	// 6 % with the tip held and 9 % if it slides, and no leader lies quite straight. It
	// is our judgement: no fall of a leader was measured.
	modelShare = 0.1
)

// SinkTimeEstimate is SinkTime with its 80 % interval, from what the leader leaves open:
// a body's density or dressing, a part's density (nylon or fluorocarbon). It takes up to
// five solutions. Errors are those of the best one.
func (l Leader) SinkTimeEstimate(depthM float64, tip Tip) (profile.Estimate, error) {
	best, err := l.SinkTime(depthM, tip)
	if err != nil {
		return profile.Estimate{}, err
	}
	sooner, later := modelShare*best, modelShare*best
	widen := func(fast, slow Leader) {
		sooner = math.Hypot(sooner, best-fast.bounded(depthM, tip, best))
		later = math.Hypot(later, slow.bounded(depthM, tip, best)-best)
	}
	density, dressing, line := l.open()
	if density || dressing {
		// Both at once and all the way: with two doubts that is somewhat wide.
		widen(l.withFly(HeavyFlyKgM3, slimFly), l.withFly(LightFlyKgM3, bushyFly))
	}
	if line {
		widen(l.withLine(FluoroKgM3), l.withLine(NylonKgM3))
	}
	return profile.Estimate{Best: best, Low: math.Max(0, best-sooner), High: best + later}, nil
}

// bounded is a sink time, an hour where the depth is not reached.
func (l Leader) bounded(depthM float64, tip Tip, best float64) float64 {
	s, err := l.SinkTime(depthM, tip)
	if err != nil {
		return math.Max(mostS, best)
	}
	return s
}

// open says what the leader leaves open.
func (l Leader) open() (density, dressing, line bool) {
	for _, b := range l.Bodies {
		density = density || b.DensityKgM3 == 0
		dressing = dressing || b.Dressing == 0
	}
	for _, p := range l.Parts {
		line = line || p.DensityKgM3 == 0
	}
	return density, dressing, line
}

// withFly is the leader with what is open of its bodies filled in.
func (l Leader) withFly(density, dressing float64) Leader {
	l.Bodies = slices.Clone(l.Bodies)
	for i := range l.Bodies {
		b := &l.Bodies[i]
		b.DensityKgM3, b.Dressing = or(b.DensityKgM3, density), or(b.Dressing, dressing)
	}
	return l
}

// withLine is the leader with what is open of its line filled in.
func (l Leader) withLine(density float64) Leader {
	l.Parts = slices.Clone(l.Parts)
	for i := range l.Parts {
		l.Parts[i].DensityKgM3 = or(l.Parts[i].DensityKgM3, density)
	}
	return l
}
