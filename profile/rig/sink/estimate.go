package sink

import (
	"math"

	"coldseam/profile"
)

// What is doubtful where a rig leaves it open: an 80 % interval, each bound with its
// reason.
const (
	lightFly, heavyFly = 3000.0, 6000.0 // kg/m3, wire and thread to tungsten (common practice)
	slimFly, bushyFly  = 1.5, 2.5       // dressing: flies of 0.1 to 0.3 g that fall at 0.2 to 0.5 m/s

	// modelShare is the doubt of the wait itself, all stated: friction along a line
	// is known to a fifth and drag across it to a tenth, which together move a wait by
	// 6 % with the tip held and 9 % if it slides, and no leader lies quite straight. It
	// is our judgement: no fall of a leader was measured.
	modelShare = 0.1
)

// WaitEstimate is Wait with its 80 % interval, from what the rig leaves open: a
// body's Density or Dressing of 0, a part's Density of 0 (nylon or fluorocarbon). It
// takes up to five solutions. Errors are those of the best one.
func WaitEstimate(r Rig, depthM float64, tip Tip) (profile.Estimate, error) {
	best, err := Wait(r, depthM, tip)
	if err != nil {
		return profile.Estimate{}, err
	}
	sooner, later := modelShare*best, modelShare*best
	widen := func(fast, slow Rig) {
		sooner = math.Hypot(sooner, best-bounded(fast, depthM, tip, best))
		later = math.Hypot(later, bounded(slow, depthM, tip, best)-best)
	}
	density, dressing, line := r.open()
	if density || dressing {
		// Both at once and all the way: with two doubts that is somewhat wide.
		widen(r.withFly(heavyFly, slimFly), r.withFly(lightFly, bushyFly))
	}
	if line {
		widen(r.withLine(Fluoro), r.withLine(Nylon))
	}
	return profile.Estimate{Best: best, Low: math.Max(0, best-sooner), High: best + later}, nil
}

// bounded is a wait, an hour where the depth is not reached.
func bounded(r Rig, depthM float64, tip Tip, best float64) float64 {
	s, err := Wait(r, depthM, tip)
	if err != nil {
		return math.Max(mostS, best)
	}
	return s
}

// open says what the rig leaves open.
func (r Rig) open() (density, dressing, line bool) {
	for _, b := range r.Bodies {
		density = density || b.Density == 0
		dressing = dressing || b.Dressing == 0
	}
	for _, p := range r.Parts {
		line = line || p.Density == 0
	}
	return density, dressing, line
}

func (r Rig) withFly(density, dressing float64) Rig {
	bodies := make([]Body, len(r.Bodies))
	for i, b := range r.Bodies {
		if b.Density == 0 {
			b.Density = density
		}
		if b.Dressing == 0 {
			b.Dressing = dressing
		}
		bodies[i] = b
	}
	r.Bodies = bodies
	return r
}

func (r Rig) withLine(density float64) Rig {
	parts := make([]Part, len(r.Parts))
	for i, p := range r.Parts {
		if p.Density == 0 {
			p.Density = density
		}
		parts[i] = p
	}
	r.Parts = parts
	return r
}

// Scale is by how much to multiply a model's waits after the fly touched the bottom
// at touchedS seconds where the model said modelS: their ratio, within 0.5 and 2,
// beyond which it is likelier that something else was touched. It is 1 if either is
// no time.
func Scale(touchedS, modelS float64) float64 {
	if !(touchedS > 0 && modelS > 0) || math.IsInf(touchedS, 0) || math.IsInf(modelS, 0) {
		return 1
	}
	return math.Min(2, math.Max(0.5, touchedS/modelS))
}
