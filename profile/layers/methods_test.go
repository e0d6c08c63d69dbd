package layers

import (
	"fmt"
	"math"
	"slices"
	"strings"
	"testing"
)

// The thermocline by every method and by this package, in thinned columns, against
// that of the dense ones: as package measured defines it, where nearly equal
// neighbours share it, and as the steepest place of the cubic alone. Ours has to have
// the least mean error over the thinnings of Cascade by both, and also in the lakes of
// Cascade that no figure of the curve was chosen on; where another is better, the table
// says so. The floors are what was reached, rounded outwards.
func TestMethods(t *testing.T) {
	t.Parallel()
	floors := map[string]struct{ mean, withinOneM [5]float64 }{
		"Cascade":  {[5]float64{.29, .21, .19, .17, .125}, [5]float64{.98, .985, .985, .985, .985}},
		"Virginia": {[5]float64{.50, .405, .33, .315, .25}, [5]float64{.865, .935, .965, .955, .945}},
	}
	names := []string{FallMiddle, RiseMiddle, Parabola, Cubic, StepCentre, RiseCentre, plainMetre, thisPackage}
	for _, w := range waters {
		all := trials(t, w.file)
		var b strings.Builder
		fmt.Fprintf(&b, "\n%s, %d columns: median error, mean error without sign, m; within 0.5 and 1 m, %%", w.name, len(all)/len(thinnings))
		for _, truth := range []struct {
			name string
			of   func(trial) float64
		}{
			{"thermocline of the dense column", func(tr trial) float64 { return tr.shared }},
			{"its steepest place alone", func(tr trial) float64 { return tr.plain }},
		} {
			fmt.Fprintf(&b, "\n%-42s", truth.name)
			for _, n := range thinnings {
				fmt.Fprintf(&b, " | %-21s", thinningName(n)+" readings")
			}
			means, unfitted := map[string]float64{}, map[string]float64{}
			table := map[string][]tally{}
			for _, name := range names {
				fmt.Fprintf(&b, "\n  %-40s", name)
				for _, n := range thinnings {
					err := func(tr trial) float64 { return depthOf(t, tr.answers, name) - truth.of(tr) }
					s := tallyOf(errorsOf(all, n, err))
					fmt.Fprintf(&b, " | %v", s)
					means[name] += s.mean / float64(len(thinnings))
					table[name] = append(table[name], s)
					others := slices.DeleteFunc(slices.Clone(all), func(tr trial) bool { return fittedLakes[tr.lake] })
					unfitted[name] += tallyOf(errorsOf(others, n, err)).mean / float64(len(thinnings))
				}
				fmt.Fprintf(&b, " | mean %.3f, in lakes not fitted %.3f", means[name], unfitted[name])
			}
			for k, ours := range table[thisPackage] {
				for _, name := range names {
					if other := table[name][k]; other.mean < ours.mean {
						fmt.Fprintf(&b, "\n  better at %s readings: %s, %.3f m against %.3f m", thinningName(thinnings[k]), name, other.mean, ours.mean)
					}
				}
				if truth.name != "thermocline of the dense column" {
					continue
				}
				if f := floors[w.name].mean[k]; ours.mean > f {
					t.Errorf("%s, %s readings: mean error %.3f m, above the %.3f reached before", w.name, thinningName(thinnings[k]), ours.mean, f)
				}
				if f := floors[w.name].withinOneM[k]; ours.withinOneM < f {
					t.Errorf("%s, %s readings: %.3f within 1 m, below the %.3f reached before", w.name, thinningName(thinnings[k]), ours.withinOneM, f)
				}
			}
			for _, name := range names {
				if name == thisPackage || w.name != "Cascade" {
					continue
				}
				if means[name] <= means[thisPackage] || unfitted[name] <= unfitted[thisPackage] {
					t.Errorf("%s, %s: mean error by %s %.3f m (%.3f in lakes not fitted), not above our %.3f (%.3f)",
						w.name, truth.name, name, means[name], unfitted[name], means[thisPackage], unfitted[thisPackage])
				}
			}
		}
		t.Log(b.String())
	}
}

// errorsOf are the errors at one thinning.
func errorsOf(all []trial, n int, of func(trial) float64) []float64 {
	var errs []float64
	for _, tr := range all {
		if tr.n == n {
			errs = append(errs, of(tr))
		}
	}
	return errs
}

// The mixed layer by every method: how far the thinned column's lies from the same
// method's in the dense column. They look for different things, so none is the truth
// of another, and a method of a larger fall is easier to be true to.
func TestMethodsMixedLayer(t *testing.T) {
	t.Parallel()
	floors := map[string][5]float64{ // mean error of ours
		"Cascade":  {.405, .31, .265, .22, .24},
		"Virginia": {.51, .42, .355, .31, .42},
	}
	for _, w := range waters {
		all := trials(t, w.file)
		var b strings.Builder
		fmt.Fprintf(&b, "\n%s, mixed layer: median error, mean error without sign, m; within 0.5 and 1 m, %%\n%-42s", w.name, "")
		for _, n := range thinnings {
			fmt.Fprintf(&b, " | %-21s", thinningName(n)+" readings")
		}
		for i, a := range all[0].mixed[0] {
			fmt.Fprintf(&b, "\n  %-40s", a.Name)
			for k, n := range thinnings {
				s := tallyOf(errorsOf(all, n, func(tr trial) float64 { return tr.mixed[0][i].DepthM - tr.mixed[1][i].DepthM }))
				fmt.Fprintf(&b, " | %v", s)
				if f := floors[w.name][k]; a.Name == thisPackage && s.mean > f {
					t.Errorf("%s, %s readings: mean error of the mixed layer %.3f m, above the %.3f reached before", w.name, thinningName(n), s.mean, f)
				}
			}
		}
		t.Log(b.String())
	}
}

// Does a smooth step fitted to the readings say how good our thermocline is? With 7
// readings or more it is a warning where the step's centre is further off than
// stepApartM: that distance was chosen on Cascade, for the greatest correlation of
// the warning with errors over 1 m, and looked at again in Virginia. With 5 readings
// it says nothing reliable. The limits are what was reached, rounded outwards.
func TestMethodsApart(t *testing.T) {
	t.Parallel()
	limits := map[string]struct{ near, apart float64 }{ // shares within 1 m
		"Cascade":  {.985, .87},
		"Virginia": {.98, .88},
	}
	for _, w := range waters {
		all := trials(t, w.file)
		type sample struct {
			n                 int
			apart, err, width float64
			inside            bool
		}
		var samples []sample
		for _, tr := range all {
			e := Find(tr.column).Thermocline
			samples = append(samples, sample{
				n:     tr.n,
				apart: math.Abs(depthOf(t, tr.answers, StepCentre) - e.Best),
				err:   e.Best - tr.shared, width: e.High - e.Low,
				inside: e.Low <= tr.shared && tr.shared <= e.High,
			})
		}
		// row gives the tallies of those that are near and of those that are apart.
		var b strings.Builder
		row := func(name string, apartM float64, in func(sample) bool) (near, apart tally, phi float64) {
			var errs [2][]float64
			var inside [2]float64
			for _, s := range samples {
				if !in(s) {
					continue
				}
				i := 0
				if s.apart > apartM {
					i = 1
				}
				errs[i] = append(errs[i], s.err)
				if s.inside {
					inside[i]++
				}
			}
			near, apart = tallyOf(errs[0]), tallyOf(errs[1])
			nearN, apartN := float64(near.n), float64(apart.n)
			phi = correlation(nearN, apartN, near.withinOneM, apart.withinOneM)
			fmt.Fprintf(&b, "\n%-12s %.1f m | %5d %v, held %.2f | %5d %v, held %.2f | raised in %4.1f %%, correlation %5.2f",
				name, apartM, near.n, near, inside[0]/nearN, apart.n, apart, inside[1]/apartN, 100*apartN/(nearN+apartN), phi)
			return near, apart, phi
		}
		for _, n := range thinnings {
			row(thinningName(n), stepApartM, func(s sample) bool { return s.n == n })
		}
		row("7+, narrow", stepApartM, func(s sample) bool { return s.n != 5 && s.width < 1.7 })
		best, bestM := 0.0, 0.0
		for _, apartM := range []float64{.3, .4, .5, .6, .7, .8, .9, 1, 1.2, 1.5} {
			near, apart, phi := row("7 and more", apartM, func(s sample) bool { return s.n != 5 })
			if phi > best {
				best, bestM = phi, apartM
			}
			if apartM != stepApartM {
				continue
			}
			if near.withinOneM < limits[w.name].near {
				t.Errorf("%s: %.3f within 1 m where the step is near, below the %.3f reached before", w.name, near.withinOneM, limits[w.name].near)
			}
			if apart.withinOneM > limits[w.name].apart {
				t.Errorf("%s: %.3f within 1 m where the step is apart: a weaker warning than the %.3f reached before", w.name, apart.withinOneM, limits[w.name].apart)
			}
		}
		if w.name == "Cascade" && bestM != stepApartM {
			t.Errorf("%s: correlation is greatest at %g m, not at %g m", w.name, bestM, stepApartM)
		}
		t.Logf("\n%s: step near | step apart: number; median, mean error, m; within 0.5 and 1 m, %%; share held by the 80 %% interval%s", w.name, b.String())
	}
}

// correlation is that of two yes-or-no signs (phi): a warning, and an error that is
// not small. near and apart count those without and with the warning.
func correlation(near, apart, nearGood, apartGood float64) float64 {
	bad := near*(1-nearGood) + apart*(1-apartGood)
	good := near*nearGood + apart*apartGood
	return near * apart * (nearGood - apartGood) / math.Sqrt(near*apart*bad*good)
}
