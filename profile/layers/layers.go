package layers

import (
	"fmt"
	"math"

	"coldseam/profile"
	"coldseam/profile/water"
)

// Structure is what kind of column it is.
type Structure string

// The structures. TooFew is under three depths.
const (
	Layered  Structure = "layered"
	Mixed    Structure = "mixed"
	Inverse  Structure = "inverse"
	SkinOnly Structure = "skin only"
	TooFew   Structure = "too few readings"
)

// Criteria of the definitions in the package comment.
const (
	SteepCPerM  = 1.0 // an interval of at least this is steep
	wideM       = 1.0 // a wider interval is steep by its fall alone,
	wideFallC   = 1.0 // when it is at least this
	bridgeShare = 0.5 // water of this share of steep belongs to the metalimnion
	bridgeM     = 2.0 // where at most so much of it lies between two steep intervals,
	tailM       = 1.0 // and so much under the last
	layeredC    = 1.5 // the least fall, in all, of a layered column
	mixedC      = 0.5 // how far the mixed layer's temperature may fall
	alike       = 0.8 // neighbours of at least this share of the steepest share the thermocline
	inverseC    = 0.5 // the least rise of an inverse column, or twice the precision
	equal       = 1e-9
)

// Break is a steep interval or run of intervals apart from the metalimnion.
type Break struct {
	DepthM float64 `json:"depth_m"` // its middle
	CPerM  float64 `json:"c_per_m"` // its mean fall
}

// Layers is what is known of a column's layers. Pointers are nil where there is no
// such layer. Depths are metres.
type Layers struct {
	Structure     Structure
	MixedLayer    *profile.Estimate
	MetaTop       *profile.Estimate
	MetaBottom    *profile.Estimate
	Thermocline   *profile.Estimate
	SteepestCPerM float64 // fall at the thermocline; meaningless unless layered
	OtherBreaks   []Break
	BottomReached bool // the metalimnion runs past the deepest reading

	SkinM      float64 // depth of the skin's lower edge; 0 when there is none
	SkinC      float64 // its fall
	MixedTempC float64 // temperature of the mixed layer, under any skin
	Curve      *Curve
	Warnings   []string // what a reader should know, without units
	WideTop    bool     // nothing was read in the first 2 m under the surface
}

// Find finds the layers of a column.
func Find(c profile.Column) Layers {
	k := NewCurve(c)
	l := Layers{Structure: TooFew, Curve: k}
	n := len(k.Depths)
	if n == 0 {
		return l
	}
	l.MixedTempC = k.Temps[0]
	if n < 3 {
		return l
	}
	l.WideTop = k.Depths[0] < 1 && k.Depths[1] >= 2*0.61 && k.Depths[1]-k.Depths[0] > 1
	f := newFalls(k)
	if f.inverse() {
		l.Structure = Inverse
		return l
	}
	start := f.skin()
	if start > 0 {
		l.SkinM, l.SkinC = k.Depths[start], k.Temps[0]-k.Temps[start]
	}
	l.MixedTempC = k.Temps[start]
	if f.steepest(start) < 0 || k.Temps[start]-k.Temps[n-1] < layeredC-equal {
		l.Structure = Mixed
		if start > 0 {
			l.Structure = SkinOnly
		}
		l.mixed(k, start, k.Bottom())
		return l
	}
	l.Structure = Layered
	plane := f.densest(start)
	first, last := f.zone(start, plane)
	l.thermocline(f, start, plane)
	l.edges(f, start, first, last)
	l.mixed(k, start, l.MetaTop.Best)
	l.OtherBreaks = f.others(start, first, last)
	return l
}

// mixed finds the mixed layer from reading start, no deeper than limit.
func (l *Layers) mixed(k *Curve, start int, limit float64) {
	level := k.Temps[start] - mixedC
	e := profile.Exactly(limit)
	if z, ok := k.Crossing(level, k.Depths[start], k.Bottom()); ok && z < limit-equal {
		e = k.Doubt(z, level)
		e.High = math.Max(e.Best, math.Min(e.High, limit))
	} else if l.MetaTop != nil {
		e = *l.MetaTop
	}
	l.MixedLayer = &e
}

// thermocline sets the plane of the steepest rise of density. Where neighbouring
// intervals rise nearly as fast it lies somewhere in all of them.
func (l *Layers) thermocline(f *falls, start, i int) {
	k := f.k
	first, last := i, i
	for first > start && f.rho[first-1] >= alike*f.rho[i] {
		first--
	}
	for last+1 < len(f.rho) && f.rho[last+1] >= alike*f.rho[i] {
		last++
	}
	e := profile.Estimate{Low: k.Depths[first], High: k.Depths[last+1]}
	if first == last {
		e.Best = k.steepest(i)
	} else {
		sum, weight := 0.0, 0.0
		for j := first; j <= last; j++ {
			rise := f.rho[j] * (k.Depths[j+1] - k.Depths[j])
			sum += rise * (k.Depths[j] + k.Depths[j+1]) / 2
			weight += rise
		}
		e.Best = sum / weight
	}
	e = widened(e, k.ErrM[i])
	l.Thermocline = &e
	l.SteepestCPerM = f.fall[k.interval(e.Best)]
}

// steepest is the depth within interval i at which the curve's density rises
// fastest.
func (k *Curve) steepest(i int) float64 {
	const steps = 64
	from, to := k.Depths[i], k.Depths[i+1]
	h := (to - from) / steps
	best, most := (from+to)/2, 0.0
	prev := water.Density(k.At(from))
	for j := 1; j <= steps; j++ {
		rho := water.Density(k.At(from + float64(j)*h))
		if rho-prev > most*(1+1e-9) {
			most, best = rho-prev, from+(float64(j)-0.5)*h
		}
		prev = rho
	}
	return best
}

// edges sets the metalimnion's top and bottom: the ends of the zone of steep
// intervals, at readings where these are close together. In a wide interval the
// break may begin anywhere, so the edge moves inwards by a share of what is wider
// than 1 m.
func (l *Layers) edges(f *falls, start, first, last int) {
	k := f.k
	inset := func(i int) float64 { return math.Max(0, k.Depths[i+1]-k.Depths[i]-wideM) * insetShare }
	top := profile.Estimate{Low: k.Depths[first], High: k.Depths[first+1]}
	top.Best = top.Low + inset(first)
	if first > start {
		top.Low -= gapShare * (k.Depths[first] - k.Depths[first-1])
	}
	bottom := profile.Estimate{Low: k.Depths[last], High: k.Depths[last+1]}
	if last+1 == len(k.Depths)-1 {
		l.BottomReached = true
		bottom = profile.Estimate{Best: k.Bottom(), Low: k.Depths[last], High: k.Bottom()}
	} else {
		bottom.Best = bottom.High - inset(last)
		bottom.High += gapShare * (k.Depths[last+2] - k.Depths[last+1])
	}
	top.Best = math.Min(top.Best, l.Thermocline.Best)
	bottom.Best = math.Max(bottom.Best, l.Thermocline.Best)
	top.Low = math.Min(top.Low, top.Best)
	bottom.High = math.Max(bottom.High, bottom.Best)
	top.High = math.Max(top.Best, math.Min(top.High, l.Thermocline.High))
	bottom.Low = math.Min(bottom.Best, math.Max(bottom.Low, l.Thermocline.Low))
	top, bottom = widened(top, k.ErrM[first]), widened(bottom, k.ErrM[last+1])
	l.MetaTop, l.MetaBottom = &top, &bottom
	if l.BottomReached {
		l.Warnings = append(l.Warnings, "the break runs past the deepest reading")
	}
}

// widened adds the error of the depths themselves to an interval.
func widened(e profile.Estimate, errM float64) profile.Estimate {
	if errM == 0 {
		return e
	}
	e.Low = math.Max(0, e.Best-math.Hypot(e.Best-e.Low, sd80*errM))
	e.High = e.Best + math.Hypot(e.High-e.Best, sd80*errM)
	return e
}

// insetShare of the width beyond 1 m: how far into a wide interval a break is taken
// to begin. Assumed, not measured: the interval given covers all of it.
const insetShare = 0.25

// String is a short form for messages in tests.
func (l Layers) String() string {
	s := string(l.Structure)
	if l.Thermocline != nil {
		s += fmt.Sprintf(", thermocline %.2f m", l.Thermocline.Best)
	}
	return s
}
