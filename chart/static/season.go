package static

import (
	"errors"
	"fmt"
	"image/color"
	"io"
	"math"
	"slices"

	"coldseam/chart"
	"coldseam/profile/unit"
)

// mostDrops bounds a season's work and its file.
const mostDrops = 400

// DrawSeason draws a season: time across, depth downward, the water coloured by its
// temperature in equal steps with a line at each, the depths of the layers as lines.
// Between two drops temperature goes straight in time; where they are more than 21 days
// apart (chart.GapDays), or where one of them did not reach, nothing is filled. The clock
// of a drop counts, not its time zone. Its errors are those of Column; it also refuses a
// season without drops or with more than 400, a drop without a date, and dates more than
// 200 years apart.
func DrawSeason(w io.Writer, f Format, size Size, s chart.Season) error {
	if len(s.Drops) == 0 {
		return errors.New("no drops to draw a season of")
	}
	if len(s.Drops) > mostDrops {
		return fmt.Errorf("%d drops are too many for one picture: %d at most", len(s.Drops), mostDrops)
	}
	drops := slices.Clone(s.Drops)
	for i, d := range drops {
		if d.When.IsZero() {
			return fmt.Errorf("drop %d has no date, so it has no place in a season", i+1)
		}
		if err := check(d.Drop); err != nil {
			return fmt.Errorf("drop %d: %w", i+1, err)
		}
		drops[i].When = wall(d.When)
	}
	slices.SortStableFunc(drops, func(a, b chart.Dated) int { return a.When.Compare(b.When) })
	s.Drops = drops
	if first, last := drops[0].When, drops[len(drops)-1].When; last.Year()-first.Year() > 200 {
		return fmt.Errorf("the drops of %s and %s are too far apart for one picture", first.Format("2006-01-02"), last.Format("2006-01-02"))
	}
	title := drawable(s.Title)
	return render(w, f, size, title, func(p *page) { laySeason(p, title, s).draw(p) })
}

// season is where everything of a season's picture stands.
type season struct {
	title   string
	drops   []chart.Dated
	u       unit.System
	margin  float64
	time    axis      // days since the first drop, to the page
	depth   axis      // depth in the angler's unit, to the page
	degrees []float64 // where the colour changes, on the angler's scale
	colors  []color.RGBA
	field   *field
	lines   []layerLine
	names   []label // at the ends of the lines
	wide    float64 // of the place for them
	legend  []entry
	key     float64 // y of the scale of colours
	keyFrom float64 // x of its first box
	keyName string
	below   float64 // y of the legend's first line
}

func laySeason(p *page, title string, in chart.Season) *season {
	s := &season{title: title, drops: in.Drops, u: in.Units.Shown(), margin: 1.2 * p.em}
	first := s.drops[0].When
	span := days(first, s.drops[len(s.drops)-1].When)
	pad := math.Max(0.025*span, 0.5)
	if span == 0 {
		pad = 5
	}
	s.time = axis{lo: -pad, hi: span + pad}
	lo, hi := math.Inf(1), math.Inf(-1)
	for _, d := range s.drops {
		s.depth.hi = math.Max(s.depth.hi, s.u.Depth.From(d.Drop.DeepestM)*1.04)
		for _, q := range d.Drop.Curve {
			lo, hi = math.Min(lo, s.u.Temp.FromC(q.TempC)), math.Max(hi, s.u.Temp.FromC(q.TempC))
		}
	}
	s.degrees = levels(lo, hi, s.u.Temp == unit.Fahrenheit)
	n := len(s.degrees) + 1
	spread := max(n, fewColors) // a degree or two are not blown up to the ends of the scale
	for i := range n {
		s.colors = append(s.colors, heat(i+(spread-n)/2, spread))
	}
	s.legend = s.entries()
	s.depth.from = p.headed(title, s.margin) + 2.9*p.em
	s.below = p.legendTop(s.legend, s.margin)
	s.key = s.below - 3.1*p.em
	s.keyName = "temperature, " + s.u.Temp.String()
	s.keyFrom = s.margin + p.bold().width(s.keyName) + p.em
	s.depth.to = s.key - 4*p.em
	if p.w-s.margin-s.keyFrom < 1.9*p.em*float64(len(s.colors)) { // the name goes above the colours
		s.keyFrom = s.margin
		s.depth.to -= 1.3 * p.em
	}
	s.wide = 0.31 * p.w
	if p.w > 60*p.em {
		s.wide = 14 * p.em
	}
	last := s.drops[len(s.drops)-1].Drop
	if !slices.ContainsFunc(layerLines(), func(l layerLine) bool { _, ok := l.of(last); return ok }) {
		s.wide = 2 * p.em
	}
	s.time.from = p.besideDepths(s.depth, s.margin)
	s.time.to = p.w - s.margin/2 - s.wide
	s.field = s.fill()
	s.lines = s.layers()
	s.names = s.ends()
	return s
}

// levels are where the colour changes between two temperatures: whole steps, as fine as
// the colours can be told apart.
func levels(lo, hi float64, fahrenheit bool) []float64 {
	steps := []float64{1, 2, 5, 10, 20, 50}
	if fahrenheit {
		steps = steps[1:]
	}
	for _, n := range steps {
		at := ticks(lo, hi, n)
		for len(at) > 0 && at[0] <= lo {
			at = at[1:]
		}
		for len(at) > 0 && at[len(at)-1] >= hi {
			at = at[:len(at)-1]
		}
		if len(at) < mostColors {
			return at
		}
	}
	return nil
}

// mostColors is how many steps of colour can still be told from their neighbours.
const mostColors = 20

// fewColors is how many steps spread over the whole scale of colours at least.
const fewColors = 7

// x is where drop k stands, y a depth in metres.
func (s *season) x(k int) float64 {
	return s.time.at(days(s.drops[0].When, s.drops[k].When))
}
func (s *season) y(metres float64) float64 {
	return s.depth.at(s.depth.inside(s.u.Depth.From(metres)))
}

// joined reports whether the water between drop k and the next one is drawn.
func (s *season) joined(k int) bool {
	if k < 0 || k+1 >= len(s.drops) {
		return false
	}
	d := days(s.drops[k].When, s.drops[k+1].When)
	return d > 0 && d <= chart.GapDays
}

const (
	slicePt = 10.0 // width of a column of the field between two drops
	rowsAll = 200  // rows of the field, besides those at the ends of curves
	halfBar = 5.0  // half the width of a drop that has no neighbour
)

// depths are the rows of the field, m: even ones, and those at the ends of curves.
func (s *season) depths() []float64 {
	var depths []float64
	deepest := 0.0
	for _, d := range s.drops {
		deepest = math.Max(deepest, d.Drop.DeepestM)
		if c := d.Drop.Curve; len(c) > 0 {
			depths = append(depths, c[0].DepthM, c[len(c)-1].DepthM)
		}
	}
	for i := range rowsAll + 1 {
		depths = append(depths, deepest*float64(i)/rowsAll)
	}
	slices.Sort(depths)
	return slices.CompactFunc(depths, func(a, b float64) bool { return math.Abs(b-a) < 1e-9 })
}

// fill is the field of temperatures.
func (s *season) fill() *field {
	depths := s.depths()
	f := &field{}
	for _, z := range depths {
		f.ys = append(f.ys, s.y(z))
	}
	for k := range s.drops {
		t, known := sampled(s.drops[k].Drop.Curve, depths)
		if !s.joined(k-1) && !s.joined(k) { // a bar of its own
			l, r := s.bar(k)
			f.column(l, t, known, true)
			f.column(r, t, known, false)
			continue
		}
		x := s.x(k)
		f.column(x, t, known, s.joined(k))
		if !s.joined(k) {
			continue
		}
		next, reached := sampled(s.drops[k+1].Drop.Curve, depths)
		n := int(math.Ceil((s.x(k+1) - x) / slicePt))
		for i := 1; i < n; i++ {
			share := float64(i) / float64(n)
			mid, both := make([]float64, len(depths)), make([]bool, len(depths))
			for j := range depths {
				mid[j], both[j] = t[j]+share*(next[j]-t[j]), known[j] && reached[j]
			}
			f.column(x+share*(s.x(k+1)-x), mid, both, true)
		}
	}
	return f
}

// bar is from where to where a drop without a neighbour is drawn: half as wide where
// another was taken at once.
func (s *season) bar(k int) (left, right float64) {
	x := s.x(k)
	switch {
	case k > 0 && s.x(k-1) == x:
		return x, x + halfBar
	case k+1 < len(s.drops) && s.x(k+1) == x:
		return x - halfBar, x
	}
	return x - halfBar, x + halfBar
}

// sampled is a curve at given depths, straight between its points, and where it is known.
func sampled(curve []chart.Point, depths []float64) (t []float64, known []bool) {
	t, known = make([]float64, len(depths)), make([]bool, len(depths))
	i := 0
	for j, z := range depths {
		for i+1 < len(curve) && curve[i+1].DepthM < z {
			i++
		}
		if i+1 >= len(curve) || z < curve[0].DepthM-1e-9 || z > curve[len(curve)-1].DepthM+1e-9 {
			continue
		}
		a, b := curve[i], curve[i+1]
		share := 0.0
		if b.DepthM > a.DepthM {
			share = math.Min(math.Max((z-a.DepthM)/(b.DepthM-a.DepthM), 0), 1)
		}
		t[j], known[j] = a.TempC+share*(b.TempC-a.TempC), true
	}
	return t, known
}
