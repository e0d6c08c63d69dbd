package layers

import (
	"fmt"
	"math"
	"slices"
	"testing"

	"gonum.org/v1/gonum/stat"

	"coldseam/profile"
	"coldseam/profile/internal/measured"
	"coldseam/profile/layers/method"
)

// waters are the dense columns that methods are measured on. Many of them are of one
// lake or of one day, so the figures say less than their number.
var waters = []struct{ name, file string }{
	{"Cascade", "cascade_dense.csv"}, // Carpenter et al., Cascade Project at NTL-LTER, EDI knb-lter-ntl.352
	{"Virginia", "virginia.csv"},     // Carey et al., EDI edi.198
}

// fittedLakes are those on which the ways of filling gaps were chosen (see infill).
var fittedLakes = map[string]bool{"L": true, "R": true, "BVR": true} // Paul, Peter, Beaverdam

// thinnings are how many evenly spaced readings are left of a dense column. adaptive
// is 5 of them and then 3 more, each half way down the interval in which density
// rises fastest, as somebody reads who looks for the break.
var thinnings = []int{5, 7, 8, 10, adaptive}

const adaptive = -53

func thinningName(n int) string {
	if n == adaptive {
		return "5+3"
	}
	return fmt.Sprint(n)
}

// thin reads a cast in one of the thinnings, with an error of 0.1 C.
func thin(tb testing.TB, c *measured.Cast, n int) profile.Column {
	tb.Helper()
	if n != adaptive {
		return c.Read(tb, c.Even(n), 0.1, 0)
	}
	depths := c.Even(5)
	for range 3 {
		k := NewCurve(c.Read(tb, depths, 0.1, 0))
		i := newGradients(k.Depths, k.Temps).greatestRise(0)
		if i < 0 {
			break
		}
		depths = slices.Insert(depths, i+1, (depths[i]+depths[i+1])/2)
	}
	return c.Read(tb, depths, 0.1, 0)
}

// trial is one column, thinned, and what is made of it.
type trial struct {
	lake    string
	n       int             // which thinning
	shared  float64         // the thermocline of the dense column, m
	plain   float64         // and where it is if no neighbours share it
	column  profile.Column  // thinned
	layers  Layers          // of that, without intervals
	answers []method.Answer // of every method on its readings, and ours
	mixed   [2][]method.Answer
}

// Names of the rows that are no methods of package method.
const (
	thisPackage = "this package"
	plainMetre  = "steepest metre of the readings' cubic"
)

// trials thins those columns of a file that are layered, have at least 8 readings and
// none more than 1 m apart at the break. It fails where a thinned column is not
// called layered, so that no method is spared one.
func trials(tb testing.TB, file string) []trial {
	tb.Helper()
	var all []trial
	casts := measured.Casts(tb, file)
	for i := range casts {
		c := &casts[i]
		truth := c.Truth()
		if !truth.Layered || len(c.Depths) < 8 {
			continue
		}
		start := max(0, slices.Index(c.Depths, truth.SkinM))
		z, temps := c.Depths[start:], stable(c.Temps)[start:]
		if plane := newGradients(z, temps).greatestRise(0); z[plane+1]-z[plane] > 1+equal {
			continue
		}
		plain := depthOf(tb, method.Thermoclines(z, temps), method.Cubic)
		dense := mixedLayers(Best(c.Column(tb)))
		for _, n := range thinnings {
			tr := trial{lake: c.Lake(), n: n, shared: truth.Thermocline, plain: plain, column: thin(tb, c, n)}
			tr.layers = Best(tr.column)
			if tr.layers.Structure != Layered {
				tb.Errorf("%s: %v at %s readings", c.Name, tr.layers, thinningName(n))
				continue
			}
			tr.answers = thermoclines(tr.layers)
			tr.mixed = [2][]method.Answer{mixedLayers(tr.layers), dense}
			all = append(all, tr)
		}
	}
	if len(all) < 100*len(thinnings) {
		tb.Errorf("%s: only %d trials", file, len(all))
	}
	return all
}

// thermoclines are the methods' answers from the readings under the skin, that of a plain
// cubic and ours.
func thermoclines(l Layers) []method.Answer {
	z, t := l.Curve.Depths, l.Curve.Temps
	first := measured.Cast{Depths: z, Temps: t}
	truth := first.Truth()
	return append(method.Thermoclines(z[l.start:], t[l.start:]),
		method.Answer{Name: plainMetre, DepthM: truth.Thermocline, OK: truth.Layered},
		method.Answer{Name: thisPackage, DepthM: l.Thermocline.Best, OK: true})
}

// mixedLayers are the same of the mixed layer.
func mixedLayers(l Layers) []method.Answer {
	return append(method.MixedLayers(l.Curve.Depths[l.start:], l.Curve.Temps[l.start:]),
		method.Answer{Name: thisPackage, DepthM: l.MixedLayer.Best, OK: true})
}

// depthOf is the depth of a named answer, or the end of the test.
func depthOf(tb testing.TB, answers []method.Answer, name string) float64 {
	tb.Helper()
	a := method.Named(answers, name)
	if !a.OK {
		tb.Fatalf("no answer by %q", name)
	}
	return a.DepthM
}

// tally sums up errors of depth, m.
type tally struct {
	n                      int
	median, mean           float64 // with its sign; without
	withinHalf, withinOneM float64 // shares
}

func tallyOf(errs []float64) tally {
	s := tally{n: len(errs)}
	if s.n == 0 {
		return s
	}
	s.median = stat.Quantile(.5, stat.LinInterp, slices.Sorted(slices.Values(errs)), nil)
	for _, e := range errs {
		a := math.Abs(e)
		s.mean += a / float64(s.n)
		if a <= .5+equal {
			s.withinHalf += 1 / float64(s.n)
		}
		if a <= 1+equal {
			s.withinOneM += 1 / float64(s.n)
		}
	}
	return s
}

func (s tally) String() string {
	return fmt.Sprintf("%5.2f %5.3f %4.0f %4.0f", s.median, s.mean, 100*s.withinHalf, 100*s.withinOneM)
}
