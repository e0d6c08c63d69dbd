package layers

import (
	"math"

	"coldseam/profile"
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
	SteepCPerM  = 1.0    // an interval of at least this is steep
	wideM       = 1.0    // a wider interval is steep by its fall alone,
	wideFallC   = 1.0    // when it is at least this
	bridgeShare = 0.5    // water of this share of steep belongs to the metalimnion
	bridgeM     = 2.0    // where at most so much of it lies between two steep intervals
	layeredC    = 1.5    // the least fall, in all, of a layered column
	mixedC      = 0.5    // how far the mixed layer's temperature may fall
	underSkinM  = 0.3048 // a first reading this deep is under the thinnest skins
	inverseC    = 0.5    // the least rise of an inverse column, or twice the precision
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
	Structure         Structure
	MixedLayer        *profile.Estimate
	MetalimnionTop    *profile.Estimate
	MetalimnionBottom *profile.Estimate
	Thermocline       *profile.Estimate
	SteepestCPerM     float64 // fall at the thermocline; meaningless unless layered
	OtherBreaks       []Break
	BottomReached     bool // the metalimnion runs past the deepest reading

	SkinM      float64 // depth of the skin's lower edge; 0 when there is none
	SkinC      float64 // its fall
	MaybeSkin  bool    // the break may be no more than a skin, if there is one deeper than was read
	MixedTempC float64 // temperature of the mixed layer, under any skin
	Curve      *Curve
	Ensemble   *Ensemble // the columns that the readings allow; nil without intervals or under two readings
	Warnings   []string  // what a reader should know, without units
	WideTop    bool      // the surface was read, and nothing in the next 4 ft

	start int // the first reading under the skin
}

// An Option changes what Find works out.
type Option func(*options)

type options struct{ members int } // of the ensemble

// WithoutIntervals leaves the intervals out: Low and High of every estimate equal Best, and
// there is no Ensemble. It is for archives of many columns, where speed counts.
func WithoutIntervals(o *options) { o.members = 0 }

// Members gives the Ensemble n members in place of 64. The intervals stay those of its
// first 64, and so the same.
func Members(n int) Option {
	return func(o *options) { o.members = max(n, ensembleSize) }
}

// Find finds the layers of a column.
func Find(c profile.Column, opts ...Option) Layers {
	o := options{ensembleSize}
	for _, set := range opts {
		set(&o)
	}
	l := best(c)
	if k := l.Curve; o.members > 0 && len(k.Depths) > 1 {
		l.Ensemble = newEnsemble(k, c, o.members)
		k.ensemble = l.Ensemble.head(ensembleSize)
		l.intervals()
	}
	return l
}

// best finds the layers of a column without their intervals.
func best(c profile.Column) Layers {
	k := newCurve(c)
	l := Layers{Structure: TooFew, Curve: k}
	n := len(k.Depths)
	if n == 0 {
		return l
	}
	l.MixedTempC = k.Temps[0]
	if n < 3 {
		return l
	}
	l.WideTop = k.Depths[0] < underSkinM-equal && k.Depths[1] >= 4*underSkinM-equal
	f := newGradients(k.Depths, k.Temps)
	if f.inverse(k.ErrC[0]) {
		l.Structure = Inverse
		return l
	}
	l.start, l.MaybeSkin = f.skin()
	if l.start > 0 {
		l.SkinM, l.SkinC = k.Depths[l.start], k.Temps[0]-k.Temps[l.start]
	}
	l.MixedTempC = k.Temps[l.start]
	if !f.anySteep(l.start) || k.Temps[l.start]-k.Temps[n-1] < layeredC-equal {
		l.Structure = Mixed
		if l.start > 0 {
			l.Structure = SkinOnly
		}
		l.mixed()
		return l
	}
	l.Structure = Layered
	plane := f.greatestRise(l.start)
	l.thermocline(f, plane)
	l.edges()
	l.mixed()
	first, last := f.zone(l.start, plane)
	for _, b := range f.others(l.start, first, last) {
		if b.DepthM < l.MetalimnionTop.Best || b.DepthM > l.MetalimnionBottom.Best {
			l.OtherBreaks = append(l.OtherBreaks, b)
		}
	}
	return l
}

// mixed finds the mixed layer: from the first reading under the skin to mixedC below
// its temperature, never past the metalimnion's top.
func (l *Layers) mixed() {
	k := l.Curve
	limit := k.Bottom()
	if l.MetalimnionTop != nil {
		limit = l.MetalimnionTop.Best
	}
	if z, ok := k.Crossing(k.Temps[l.start]-mixedC, k.Depths[l.start], k.Bottom()); ok {
		limit = math.Min(limit, z)
	}
	e := profile.Exactly(limit)
	l.MixedLayer = &e
}

// thermocline sets the plane of the steepest rise of density, near interval i of the
// readings.
func (l *Layers) thermocline(f *gradients, i int) {
	k := l.Curve
	z, ok := k.steepestMetre(k.Depths[l.start])
	if !ok {
		z = (k.Depths[i] + k.Depths[i+1]) / 2
	}
	e := profile.Exactly(z)
	l.Thermocline = &e
	for j, fall := range f.fall { // the steepest of the readings' intervals in that metre
		if j >= l.start && k.Depths[j] < z+windowM/2-equal && k.Depths[j+1] > z-windowM/2+equal {
			l.SteepestCPerM = math.Max(l.SteepestCPerM, fall)
		}
	}
}

// edges sets the metalimnion's top and bottom, as crews mark them.
func (l *Layers) edges() {
	k := l.Curve
	f, start := newGradients(k.z, k.t), k.reading[l.start]
	plane := f.greatestRise(start)
	if plane < 0 {
		plane = k.indexAt(l.Thermocline.Best)
	}
	var c edgeModel
	c.apply(f, start, plane)
	t, b := c.choose(l.Thermocline.Best)
	top, bottom := profile.Exactly(t), profile.Exactly(b)
	l.MetalimnionTop, l.MetalimnionBottom = &top, &bottom
	if b >= k.Bottom()-equal {
		l.BottomReached = true
		l.Warnings = append(l.Warnings, "the break runs past the deepest reading")
	}
}
