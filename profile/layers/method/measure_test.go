package method

import (
	"fmt"
	"math"
	"slices"
	"strings"
	"testing"

	"gonum.org/v1/gonum/stat"
)

// score sums up errors of depth, m.
type score struct {
	n                      int
	median, mean           float64 // with its sign; without
	withinHalf, withinOneM float64 // shares
}

func newScore(errs []float64) score {
	s := score{n: len(errs)}
	if s.n == 0 {
		return s
	}
	sorted := slices.Sorted(slices.Values(errs))
	s.median = stat.Quantile(.5, stat.LinInterp, sorted, nil)
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

func (s score) String() string {
	return fmt.Sprintf("%5.2f %5.2f %4.0f %4.0f", s.median, s.mean, 100*s.withinHalf, 100*s.withinOneM)
}

// reached is each method's mean error, m, rounded up: in Cascade and Virginia, at the
// thinnings in their order.
var reached = []struct {
	method string
	mean   [2][5]float64
}{
	{FallMiddle, [2][5]float64{{1.02, 0.70, 0.62, 0.52, 0.28}, {1.02, 0.86, 0.77, 0.75, 0.41}}},
	{RiseMiddle, [2][5]float64{{0.83, 0.58, 0.49, 0.41, 0.24}, {0.82, 0.69, 0.55, 0.48, 0.38}}},
	{Parabola, [2][5]float64{{0.68, 0.44, 0.37, 0.32, 0.24}, {0.65, 0.56, 0.48, 0.40, 0.38}}},
	{Cubic, [2][5]float64{{1.04, 0.48, 0.40, 0.34, 0.23}, {0.78, 0.61, 0.49, 0.42, 0.38}}},
	{StepCentre, [2][5]float64{{0.56, 0.43, 0.40, 0.38, 0.33}, {0.74, 0.64, 0.62, 0.61, 0.56}}},
	{RiseCentre, [2][5]float64{{0.51, 0.39, 0.35, 0.31, 0.24}, {0.64, 0.56, 0.48, 0.41, 0.38}}},
}

// chosenWithin is the share of the chosen method's answers within 1 m, rounded down.
var chosenWithin = [2][5]float64{{.89, .97, .98, .98, .97}, {.81, .92, .93, .94, .92}}

// The table of errors, which the choice rests on: made on Cascade, and looked at
// again in Virginia.
func TestErrors(t *testing.T) {
	for l, lake := range lakes {
		all := trials(t, lake.name, lake.file)
		var b strings.Builder
		fmt.Fprintf(&b, "\n%s, %d columns: median error, mean error without sign, m; within 0.5 and 1 m, %%\n%-40s", lake.name, len(all)/len(thinnings), "")
		for _, n := range thinnings {
			fmt.Fprintf(&b, " | %-20s", thinningName(n)+" readings")
		}
		total := map[string]float64{}
		for _, r := range reached {
			fmt.Fprintf(&b, "\n%-40s", r.method)
			for k, n := range thinnings {
				s := newScore(errorsOf(t, all, r.method, n, false))
				fmt.Fprintf(&b, " | %v", s)
				total[r.method] += s.mean / float64(len(thinnings))
				if s.mean > r.mean[l][k] {
					t.Errorf("%s, %s, %s readings: mean error %.3f m, above the %.2f reached before", lake.name, r.method, thinningName(n), s.mean, r.mean[l][k])
				}
				if r.method == Chosen && s.withinOneM < chosenWithin[l][k] {
					t.Errorf("%s, %s, %s readings: %.3f within 1 m, below the %.2f reached before", lake.name, r.method, thinningName(n), s.withinOneM, chosenWithin[l][k])
				}
			}
			fmt.Fprintf(&b, " | mean %.3f", total[r.method])
		}
		b.WriteString("\nagainst the middle of the dense interval:")
		for _, r := range reached {
			fmt.Fprintf(&b, "\n%-40s", r.method)
			for _, n := range thinnings {
				fmt.Fprintf(&b, " | %v", newScore(errorsOf(t, all, r.method, n, true)))
			}
		}
		t.Log(b.String())
		for _, r := range reached {
			// In Virginia another may be better by a little: it has no say in the choice.
			if slack := []float64{0, .03}[l]; total[r.method] < total[Chosen]-slack {
				t.Errorf("%s: mean error of %s %.3f m, less than %.3f of the choice", lake.name, r.method, total[r.method], total[Chosen])
			}
		}
	}
}

// errorsOf are the errors of a method at one thinning.
func errorsOf(tb testing.TB, all []trial, name string, thinning int, middle bool) []float64 {
	var errs []float64
	for _, tr := range all {
		if tr.thinning != thinning {
			continue
		}
		truth := tr.truth
		if middle {
			truth = tr.middle
		}
		errs = append(errs, answer(tb, tr.answers, name)-truth)
	}
	return errs
}

// Does agreement among the methods say how good the chosen one is? The spread of all,
// the distance between step and centre, and, to compare, the width of the interval;
// then step and centre at each thinning. The floor is what was reached, rounded.
func TestAgreementAsSign(t *testing.T) {
	bins := [][2]float64{{-1, .5}, {.5, 1}, {1, 2}, {2, math.Inf(1)}}
	for _, lake := range lakes {
		all := trials(t, lake.name, lake.file)
		var b, perN strings.Builder
		fmt.Fprintf(&b, "\n%s: number; median error, mean error, m; within 0.5 and 1 m, %%\n%-22s", lake.name, "")
		for _, bin := range bins {
			fmt.Fprintf(&b, " | %-25s", fmt.Sprintf("%g to %g m apart", math.Max(bin[0], 0), bin[1]))
		}
		for _, row := range []struct {
			name string
			of   func(trial) float64
		}{
			{"all methods", func(tr trial) float64 { return spread(tr) }},
			{"step and centre", func(tr trial) float64 { return spread(tr, StepCentre, RiseCentre) }},
			{"width of interval", func(tr trial) float64 { return tr.widthM }},
		} {
			fmt.Fprintf(&b, "\n%-22s", row.name)
			for _, bin := range bins {
				s := newScore(chosenErrs(all, func(tr trial) bool { v := row.of(tr); return v > bin[0] && v <= bin[1] }))
				fmt.Fprintf(&b, " | %4d %v", s.n, s)
			}
			fmt.Fprintf(&b, " | rank correlation with the error:")
			for _, n := range thinnings {
				fmt.Fprintf(&b, " %5.2f", rankCorrelation(all, n, row.of))
			}
		}
		var near, apart []float64 // from 7 even readings on
		for _, n := range thinnings {
			side := func(far bool) []float64 {
				return chosenErrs(all, func(tr trial) bool {
					return tr.thinning == n && (spread(tr, StepCentre, RiseCentre) > ApartM) == far
				})
			}
			in, out := newScore(side(false)), newScore(side(true))
			fmt.Fprintf(&perN, "\n%-4s readings: %4d %v | %4d %v", thinningName(n), in.n, in, out.n, out)
			if n >= 7 {
				near, apart = append(near, side(false)...), append(apart, side(true)...)
			}
		}
		sNear, sApart := newScore(near), newScore(apart)
		fmt.Fprintf(&perN, "\n7, 8 and 10:   %4d %v | %4d %v", sNear.n, sNear, sApart.n, sApart)
		t.Logf("%s\nstep and centre within %g m | further apart%s", b.String(), ApartM, perN.String())
		if sNear.withinOneM < .97 {
			t.Errorf("%s: %.3f within 1 m where step and centre agree, below the 0.97 reached before", lake.name, sNear.withinOneM)
		}
		if sApart.withinOneM > sNear.withinOneM-.1 {
			t.Errorf("%s: %.3f within 1 m where step and centre differ, no warning beside %.3f", lake.name, sApart.withinOneM, sNear.withinOneM)
		}
	}
}

func spread(tr trial, names ...string) float64 {
	v, _ := Agreement(tr.answers, names...)
	return v
}

// chosenErrs are the errors of the chosen method, without sign, of some trials.
func chosenErrs(all []trial, which func(trial) bool) []float64 {
	var errs []float64
	for _, tr := range all {
		if which(tr) {
			errs = append(errs, tr.chosenErr)
		}
	}
	return errs
}

// rankCorrelation is Spearman's, of a sign and the chosen method's error, at one
// thinning.
func rankCorrelation(all []trial, thinning int, sign func(trial) float64) float64 {
	var signs, errs []float64
	for _, tr := range all {
		if tr.thinning == thinning {
			signs, errs = append(signs, sign(tr)), append(errs, tr.chosenErr)
		}
	}
	return stat.Correlation(ranks(signs), ranks(errs), nil)
}

// ranks of values; equal ones share the mean of theirs.
func ranks(values []float64) []float64 {
	sorted := slices.Sorted(slices.Values(values))
	out := make([]float64, len(values))
	for i, v := range values {
		first, _ := slices.BinarySearch(sorted, v)
		last, _ := slices.BinarySearch(sorted, math.Nextafter(v, math.Inf(1)))
		out[i] = float64(first+last-1) / 2
	}
	return out
}
