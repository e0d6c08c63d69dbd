package chart

import (
	"cmp"
	"math"
	"slices"

	"coldseam/profile"
	"coldseam/profile/unit"
)

// row is a line of the strip.
type row struct {
	depthM   float64
	readings []profile.Reading
	names    []string // of what begins or ends here
}

// place makes the rows: one for each reading, for the bottom and for the start of the
// fly, at its own depth, and even steps between them. Readings far below all others come last, not to scale.
func (s *strip) place() {
	k, d := s.p.Layers.Curve, s.p.Drop
	deepest := max(k.Bottom(), d.Bottom.Or(0))
	if s.p.Band.Found {
		deepest = max(deepest, s.p.Band.Bottom.Best)
	}
	var own, absurd []row
	for _, r := range d.Readings {
		at := row{depthM: r.DepthM, readings: []profile.Reading{r}}
		if r.DepthM >= 2*k.Bottom()+1 && r.DepthM > deepest {
			absurd = append(absurd, at)
			continue
		}
		own = append(own, at)
	}
	for _, r := range own {
		deepest = max(deepest, r.depthM)
	}
	slices.SortStableFunc(own, func(a, b row) int { return cmp.Compare(a.depthM, b.depthM) })
	slices.SortStableFunc(absurd, func(a, b row) int { return cmp.Compare(a.depthM, b.depthM) })
	s.step = stepFor(deepest, s.u)
	if s.shared = len(own) > crowded; s.shared {
		own = shared(own, s.step)
	}
	stop := func(known bool, depthM float64) {
		if known && !slices.ContainsFunc(own, func(r row) bool { return s.depth(r.depthM) == s.depth(depthM) }) {
			own = append(own, row{depthM: depthM})
		}
	}
	stop(d.Bottom.Known, d.Bottom.Value)
	stop(s.p.Band.Found, s.marked(s.p.Band.Start.Best))
	taken := map[int]bool{}
	for _, r := range own {
		taken[cell(r.depthM, s.step)] = true
	}
	for i := range cell(deepest, s.step) + 1 {
		if !taken[i] {
			own = append(own, row{depthM: float64(i) * s.step})
		}
	}
	slices.SortStableFunc(own, func(a, b row) int { return cmp.Compare(a.depthM, b.depthM) })
	s.scaled = len(own)
	s.rows = append(own, absurd...)
	for i := s.scaled; i < len(s.rows); i++ {
		s.rows[i].names = []string{"not to scale"}
	}
}

// marked is a depth as answers print it, to the foot or the tenth of a metre.
func (s *strip) marked(depthM float64) float64 {
	if s.u.Feet() {
		return unit.Foot.Metres(math.Round(unit.Foot.From(depthM)))
	}
	return math.Round(depthM*10) / 10
}

// cell is the even step that a depth belongs to: every depth has one.
func cell(depthM, step float64) int { return int(math.Floor(depthM/step + 0.5)) }

// shared puts readings, in order of depth, into one row a step, which stands at the
// middle one of them; the deepest has its own.
func shared(own []row, step float64) []row {
	var out []row
	last := len(own) - 1
	for i := 0; i <= last; {
		n := i + 1
		for n < last && cell(own[n].depthM, step) == cell(own[i].depthM, step) {
			n++
		}
		r := own[(i+n-1)/2]
		r.readings = nil
		for _, q := range own[i:n] {
			r.readings = append(r.readings, q.readings...)
		}
		out = append(out, r)
		i = n
	}
	return out
}

// stepFor picks whole marks so that the picture fits the rows.
func stepFor(deepest float64, u unit.System) float64 {
	steps := []float64{0.25, 0.5, 1, 2, 5, 10, 20, 50}
	mark := 1.0
	if u.Feet() {
		steps, mark = []float64{1, 2, 5, 10, 20, 50, 100}, 0.3048
	}
	for _, n := range steps {
		if deepest/(n*mark) <= stripRows-1 {
			return n * mark
		}
	}
	return deepest / (stripRows - 1)
}

// rowOf is the row that is nearest to a depth, the shallower of two.
func (s *strip) rowOf(depthM float64) int {
	best := 0
	for i, r := range s.rows[:s.scaled] {
		if math.Abs(r.depthM-depthM) < math.Abs(s.rows[best].depthM-depthM)-1e-9 {
			best = i
		}
	}
	return best
}

// name puts the names of what begins or ends at a depth to the rows nearest to it.
func (s *strip) name() {
	add := func(ok bool, depthM float64, name string) {
		if ok {
			r := &s.rows[s.rowOf(depthM)]
			r.names = append(r.names, name)
		}
	}
	l, b := s.p.Layers, s.p.Band
	add(l.SkinM > 0, l.SkinM, "skin to here")
	add(b.Found && !b.ToSurface, s.top, "band top")
	add(b.Found, s.marked(b.Start.Best), "start")
	add(b.Found && !b.Suspended, b.WaterM, "cast over")
	if l.MetalimnionTop != nil {
		add(true, l.MetalimnionTop.Best, "break top")
		add(true, l.Thermocline.Best, "thermocline")
		add(!l.BottomReached, l.MetalimnionBottom.Best, "break end")
	}
	add(b.Found && !b.ToDeepest, s.bottom, "band end")
	add(s.p.Drop.Bottom.Known, s.p.Drop.Bottom.Value, "BOTTOM")
}
