package chart

import (
	"cmp"
	"math"
	"slices"

	"coldseam/profile/unit"
)

// row is a line of the strip.
type row struct {
	depthM   float64
	far      bool // not to scale
	readings []Reading
	gutter   string   // signs of band and metalimnion beside the plot
	names    []string // of what begins or ends here
}

// deepest is how far down the rows that are to scale go, m.
func (s *strip) deepest() float64 {
	deepest := max(s.AnswerM, s.Bottom.Or(0))
	for _, r := range s.Readings {
		if !r.Far {
			deepest = max(deepest, r.DepthM)
		}
	}
	return deepest
}

// place makes the rows: one for each reading, or for those that share a step, for the bottom
// and for the start of the fly, at its own depth, and even steps between them. Readings far
// below all others come last, not to scale.
func (s *strip) place() {
	var own, far []row
	deepest := s.deepest()
	for _, r := range s.Readings {
		at := row{depthM: r.DepthM, far: r.Far, readings: []Reading{r}}
		if r.Far {
			at.names = []string{"not to scale"}
			far = append(far, at)
			continue
		}
		own = append(own, at)
	}
	if s.shared {
		own = shared(own, s.step)
	}
	stop := func(depthM float64) {
		if !slices.ContainsFunc(own, func(r row) bool { return s.depth(r.depthM) == s.depth(depthM) }) {
			own = append(own, row{depthM: depthM})
		}
	}
	if s.Bottom.Known {
		stop(s.Bottom.Value)
	}
	if m, ok := s.Mark(Start); ok {
		stop(s.printed(m.At.Best))
	}
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
	s.rows = append(own, far...)
}

// printed is a depth as answers print it, to the foot or the tenth of a metre.
func (s *strip) printed(depthM float64) float64 {
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

// steps are those between even rows, from the finest: whole marks, and last one that leaves no
// even row but the first and the last.
func (s *strip) steps() []float64 {
	marks, mark := []float64{0.25, 0.5, 1, 2, 5, 10, 20, 50}, 1.0
	if s.u.Feet() {
		marks, mark = []float64{1, 2, 5, 10, 20, 50, 100}, 0.3048
	}
	var out []float64
	deepest := s.deepest()
	for _, n := range marks {
		if step := n * mark; deepest/step < mostRows && deepest > 2*step {
			out = append(out, step)
		}
	}
	return append(out, max(deepest/6, mark), max(deepest, mark))
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

// name puts the names of what begins or ends at a depth to the rows nearest to it, from
// the surface down as they mostly lie, and the signs of band and metalimnion beside the
// rows that they reach over.
func (s *strip) name() {
	add := func(ok bool, depthM float64, name string) {
		if ok {
			r := &s.rows[s.rowOf(depthM)]
			r.names = append(r.names, name)
		}
	}
	band, inBand := s.Zone(Band)
	unknown, doubt := s.BandUnknown()
	meta, layered := s.Zone(Metalimnion)
	start, _ := s.Mark(Start)
	water, cast := s.Mark(Water)
	thermocline, _ := s.Mark(Thermocline)
	add(s.SkinM > 0, s.SkinM, "skin to here")
	add(inBand && band.TopM > 0, band.TopM, "band top")
	add(inBand, s.printed(start.At.Best), "fly")
	add(doubt, unknown.TopM, "oxygen unknown below")
	add(cast, water.At.Best, water.Name)
	add(layered, meta.TopM, "metalimnion top")
	add(layered, thermocline.At.Best, "thermocline")
	add(layered && !meta.Open, meta.BottomM, "metalimnion bottom")
	add(inBand && !band.Open, band.BottomM, "band bottom")
	add(s.Bottom.Known, s.Bottom.Value, "BOTTOM")
	beside := func(z Zone, ok bool, i int, sign string) string {
		if ok && i >= s.rowOf(z.TopM) && i <= s.rowOf(z.BottomM) {
			return sign
		}
		return " "
	}
	for i, r := range s.rows {
		sign := "#"
		if doubt && (r.depthM > unknown.TopM+1e-6 || unknown.TopM == band.TopM) {
			sign = "?"
		}
		s.rows[i].gutter = beside(band, inBand, i, sign) + beside(meta, layered, i, "=") + " "
	}
}
