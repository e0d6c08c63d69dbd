package layers

import (
	"fmt"
	"math"
	"slices"
	"sync"
	"testing"

	"gonum.org/v1/gonum/stat"

	"coldseam/profile"
	"coldseam/profile/internal/measured"
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
		k := newCurve(c.Read(tb, depths, 0.1, 0))
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
	n       int            // which thinning
	shared  float64        // the thermocline of the dense column, m
	plain   float64        // and where it is if no neighbours share it
	column  profile.Column // thinned
	layers  Layers         // of that, without intervals
	answers []Answer       // of every method on its readings, and ours
	mixed   [2][]Answer
}

// Names of the rows that are no published methods.
const (
	thisPackage = "this package"
	plainMetre  = "steepest metre of the readings' cubic"
)

// trialsOf are the trials of each file, once they were made.
var (
	trialsOf = map[string][]trial{}
	trialsMu sync.Mutex
)

// trials gives the trials of a file, which are made once and not to be changed.
func trials(tb testing.TB, file string) []trial {
	tb.Helper()
	trialsMu.Lock()
	defer trialsMu.Unlock()
	if trialsOf[file] == nil {
		trialsOf[file] = makeTrials(tb, file)
	}
	return slices.Clone(trialsOf[file])
}

// makeTrials thins those columns of a file that are layered, have at least 8 readings and
// none more than 1 m apart at the break. It fails where a thinned column is not
// called layered, so that no method is spared one.
func makeTrials(tb testing.TB, file string) (all []trial) {
	tb.Helper()
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
		plain := depthOf(tb, Thermoclines(z, temps), Cubic)
		dense := mixedLayers(Find(c.Column(tb), WithoutIntervals))
		for _, n := range thinnings {
			tr := trial{lake: c.Lake(), n: n, shared: truth.Thermocline, plain: plain, column: thin(tb, c, n)}
			tr.layers = Find(tr.column, WithoutIntervals)
			if tr.layers.Structure != Layered {
				tb.Errorf("%s: %v at %s readings", c.Name, tr.layers, thinningName(n))
				continue
			}
			tr.answers = thermoclines(tr.layers)
			tr.mixed = [2][]Answer{mixedLayers(tr.layers), dense}
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
func thermoclines(l Layers) []Answer {
	z, t := l.Curve.Depths, l.Curve.Temps
	first := measured.Cast{Depths: z, Temps: t}
	truth := first.Truth()
	return append(Thermoclines(z[l.start:], t[l.start:]),
		Answer{Name: plainMetre, DepthM: truth.Thermocline, OK: truth.Layered},
		Answer{Name: thisPackage, DepthM: l.Thermocline.Best, OK: true})
}

// mixedLayers are the same of the mixed layer.
func mixedLayers(l Layers) []Answer {
	return append(MixedLayers(l.Curve.Depths[l.start:], l.Curve.Temps[l.start:]),
		Answer{Name: thisPackage, DepthM: l.MixedLayer.Best, OK: true})
}

// depthOf is the depth of a named answer, or the end of the test.
func depthOf(tb testing.TB, answers []Answer, name string) float64 {
	tb.Helper()
	a := Named(answers, name)
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
