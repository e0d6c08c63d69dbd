package method

import (
	"fmt"
	"hash/fnv"
	"math"
	"math/rand/v2"
	"slices"
	"testing"

	"gonum.org/v1/gonum/interp"
)

// lakes are the dense columns that methods are measured on. Carpenter et al., Cascade
// Project at NTL-LTER, EDI knb-lter-ntl.352; Carey et al., EDI edi.198. Many columns
// are of one lake or of one day, so the figures say less than their number.
var lakes = []struct{ name, file string }{
	{"Cascade", "cascade_dense.csv"},
	{"Virginia", "virginia.csv"},
}

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

// trial is one thinned column, and where the thermocline of the dense one is.
type trial struct {
	lake      string
	thinning  int
	truth     float64 // the dense column's cubic
	middle    float64 // the middle of the same dense interval
	widthM    float64 // of the thinned column's interval of the fastest rise
	answers   []Answer
	chosenErr float64 // without its sign
}

// trials thins the columns of a lake that are layered.
func trials(tb testing.TB, lake, file string) []trial {
	tb.Helper()
	var out []trial
	for _, c := range casts(tb, file) {
		truth, middle, ok := c.thermocline()
		if !ok {
			continue
		}
		for _, n := range thinnings {
			z, temps := c.thin(n)
			tr := trial{lake: lake, thinning: n, truth: truth, middle: middle, answers: Thermoclines(z, temps)}
			d, ok := newColumn(z, temps)
			i := most(d.rise)
			if !ok || i < 0 {
				tb.Errorf("%s: nothing left of it at %d readings", c.name, n)
				continue
			}
			tr.widthM = z[i+1] - z[i]
			tr.chosenErr = math.Abs(answer(tb, tr.answers, Chosen) - truth)
			out = append(out, tr)
		}
	}
	if len(out) < 100 {
		tb.Errorf("%s: only %d trials", lake, len(out))
	}
	return out
}

// thermocline is that of a dense column: the steepest place of its cubic, and the
// middle, of the interval in which density rises fastest under any skin. ok is false
// for a column that is not layered there (an interval of 1 C/m, a fall of 1.5 C in
// all), has fewer than 8 readings, or is not dense at the place.
func (c cast) thermocline() (truth, middle float64, ok bool) {
	d, ok := newColumn(c.z, stable(c.t))
	if !ok || len(c.z) < 8 {
		return 0, 0, false
	}
	skin := d.skin()
	if d, ok = newColumn(d.z[skin:], d.t[skin:]); !ok {
		return 0, 0, false
	}
	if slices.Max(d.fall) < 1-equal || d.t[0]-d.t[len(d.t)-1] < 1.5-equal {
		return 0, 0, false
	}
	i := most(d.rise)
	return d.cubic(i), d.middle(i), d.z[i+1]-d.z[i] <= 1+equal
}

// skin is the reading at the lower edge of a surface skin: a fall of at least 0.5 C
// and 1 C/m that begins within 1 m of the surface, with less than 1 C/m under it.
func (c column) skin() int {
	for i := 0; i+1 < len(c.fall) && c.z[i] <= 1+equal; i++ {
		if c.fall[i] >= 1-equal && c.t[i]-c.t[i+1] >= .5-equal && c.fall[i+1] < 1-equal {
			return i + 1
		}
	}
	return 0
}

// thin reads a dense column's monotone cubic at fewer depths, with an error of 0.1 C
// (standard deviation; the same each time for the same column and number) and to
// 0.1 C, and makes it stable. A skin stays in it: few readings cannot tell it.
func (c cast) thin(n int) (z, temps []float64) {
	var f interp.FritschButland
	if err := f.Fit(c.z, stable(c.t)); err != nil {
		return nil, nil
	}
	h := fnv.New64a()
	fmt.Fprintf(h, "%s %d", c.name, n)
	noise := rand.New(rand.NewPCG(h.Sum64(), 1))
	read := func(z float64) float64 { return math.Round((f.Predict(z)+.1*noise.NormFloat64())*10) / 10 }
	even, more := n, 0
	if n == adaptive {
		even, more = 5, 3
	}
	top, bottom := c.z[0], c.z[len(c.z)-1]
	for i := range even {
		z = append(z, top+float64(i)*(bottom-top)/float64(even-1))
		temps = append(temps, read(z[i]))
	}
	for range more {
		d, ok := newColumn(z, stable(temps))
		i := most(d.rise)
		if !ok || i < 0 {
			break
		}
		at := d.middle(i)
		z = slices.Insert(z, i+1, at)
		temps = slices.Insert(temps, i+1, read(at))
	}
	return z, stable(temps)
}
