package leader

import "math"

// state is the chain at a time.
type state struct {
	time  float64
	angle []float64 // of each link, down from the level, rad
	at    []vec     // of each node, m
	speed []vec     // m/s
}

func newState(links int) *state {
	return &state{angle: make([]float64, links), at: make([]vec, links+1), speed: make([]vec, links+1)}
}

// fall is a chain on its way down.
type fall struct {
	c                 *chain
	across, round     *law
	before, now, next *state
	stepS, lastS      float64 // the coming step of time and the last one
	coarse            float64 // share of the leader's length by which a step may miss a straight course
	stiff             float64 // N/m of surface and bottom

	// For one step: a node's speed is rate * place - offPlace, and its change of speed
	// in time is rate * speed - offSpeed.
	rate               float64
	offPlace, offSpeed []vec
	dir                []vec // of each link
	force              []vec // on each node, without the links' pull
	matrix             []sym // how it falls with a shift of the node
	turn               []turn
}

// Limits of the solution.
const (
	firstS     = 0.01 // s
	longestS   = 60.0
	leastS     = 1e-7
	rounds     = 12   // of Newton's method in a step
	settledRad = 2e-4 // it ends when no link turns further

	// How far the whole leader's weight would press into the bottom, and how far a
	// floating part stands out of the water: little, but not so hard a wall that
	// Newton's method bounces off it.
	pressM = 0.002
)

// rest starts a chain straight on the surface.
func rest(c *chain, coarse float64) *fall {
	n := len(c.link)
	f := &fall{
		c: c, across: acrossLaw(), round: ballLaw(), coarse: coarse, stepS: firstS,
		before: newState(n), now: newState(n), next: newState(n),
		offPlace: make([]vec, n+1), offSpeed: make([]vec, n+1), dir: make([]vec, n),
		force: make([]vec, n+1), matrix: make([]sym, n+1), turn: make([]turn, n),
	}
	for i, l := range c.link {
		f.now.at[i+1] = vec{f.now.at[i].x + l, 0}
	}
	for _, k := range c.node {
		f.stiff += math.Abs(k.weight) / pressM
	}
	return f
}

// step goes on by one step of time, at most to a time. It is false when no step is
// short enough to be solved, which no leader has brought about.
func (f *fall) step(untilS float64) bool {
	h := math.Min(f.stepS, untilS-f.now.time)
	for ; h >= leastS; h /= 3 {
		miss, ok := f.try(h)
		if !ok || miss > 4*f.coarse {
			continue
		}
		f.before, f.now, f.next = f.now, f.next, f.before
		f.lastS = h
		f.stepS = math.Min(longestS, h*math.Min(2, math.Max(0.5, math.Sqrt(f.coarse/(miss+1e-12)))))
		return true
	}
	return false
}

// try solves a step by the backward formula of second order (Gear 1971, for steps of
// unequal length) and Newton's method. It gives how far the furthest node ends from
// where its last speed would have brought it, as a share of the leader.
func (f *fall) try(h float64) (miss float64, ok bool) {
	w := 0.0 // the first step has nothing before it: first order
	if f.lastS > 0 {
		w = h / f.lastS
	}
	last, older := (1+w)/h, w*w/(1+w)/h
	f.rate = last - older
	for i := range f.offPlace {
		f.offPlace[i] = f.now.at[i].times(last).sub(f.before.at[i].times(older))
		f.offSpeed[i] = f.now.speed[i].times(last).sub(f.before.speed[i].times(older))
	}
	for i := range f.next.angle {
		f.next.angle[i] = f.now.angle[i] + w*(f.now.angle[i]-f.before.angle[i])
	}
	f.next.at[0] = vec{f.now.at[0].x + h*f.now.speed[0].x, 0}
	f.next.time = f.now.time + h
	for range rounds {
		f.place()
		f.load()
		if f.sweep() > settledRad {
			continue
		}
		f.place()
		for i, p := range f.next.at {
			d := p.sub(f.now.at[i]).sub(f.now.speed[i].times(h))
			miss = math.Max(miss, d.length())
		}
		return miss / f.c.lengthM, true
	}
	return 0, false
}

// place works out directions, places and speeds from the angles.
func (f *fall) place() {
	for i, a := range f.next.angle {
		s, c := math.Sincos(a)
		f.dir[i] = vec{c, s}
		f.next.at[i+1] = f.next.at[i].add(f.dir[i].times(f.c.link[i]))
	}
	for i, p := range f.next.at {
		f.next.speed[i] = p.times(f.rate).sub(f.offPlace[i])
	}
}
