package plan

import (
	"fmt"
	"hash/fnv"
	"maps"
	"math"
	"math/rand/v2"
	"runtime"
	"slices"
	"sync"
	"testing"

	"coldseam/profile"
	"coldseam/profile/band"
	"coldseam/profile/check"
	"coldseam/profile/fish"
	"coldseam/profile/internal/measured"
	"coldseam/profile/layers"
)

// sample is one drop, taken from a measured lake, with how far off its answers are.
type sample struct {
	lake   string
	depths Confidence
	widthM float64 // of the wider interval
	offM   float64 // the worse of the thermocline and the band's upper edge
}

// taken reads a cast as an angler would, with an error of 0.1 C written to a tenth: five,
// seven or ten even readings, or five and then three half way down the steepest interval.
func taken(c *measured.Cast, way int) profile.Drop {
	h := fnv.New64a()
	fmt.Fprintf(h, "%s %d", c.Name, way)
	rng := rand.New(rand.NewPCG(h.Sum64(), 0))
	read := func(z float64) float64 { return math.Round(10*(c.At(z)+0.1*rng.NormFloat64())) / 10 }
	depths := c.Even([]int{5, 7, 10, 5}[way])
	at := map[float64]float64{}
	for _, z := range depths {
		at[z] = read(z)
	}
	for more := 0; way == 3 && more < 3; more++ {
		steepest := 0
		for i := range depths[1:] {
			if at[depths[i]]-at[depths[i+1]] > at[depths[steepest]]-at[depths[steepest+1]] {
				steepest = i
			}
		}
		z := (depths[steepest] + depths[steepest+1]) / 2
		depths, at[z] = slices.Insert(depths, steepest+1, z), read(z)
	}
	var pairs []float64
	for _, z := range depths {
		pairs = append(pairs, z, at[z])
	}
	return metres(pairs...)
}

// drops are a cast and the plans of the drops taken from it, one for each way.
type drops struct {
	measured.Cast
	truth measured.Truth
	plans [4]graded
}

// graded is what the tables ask of a plan; its columns and ensembles are let go.
type graded struct {
	depths, oxygen Confidence
	structure      layers.Structure
	thermocline    *profile.Estimate
	band           band.Band
}

func gradesOf(p Plan) graded {
	return graded{p.sureOfDepth(), p.sureOfOxygen(), p.Layers.Structure, p.Layers.Thermocline, p.Band}
}

// allDrops are those of every lake, once they were worked out.
var allDrops []drops

// taking takes every lake's drops, or some of them in a short run, by side.
func taking(t *testing.T) []drops {
	t.Helper()
	if allDrops != nil {
		return allDrops
	}
	f := named(t, "rainbow")
	for _, file := range files {
		for i, c := range measured.Casts(t, file) {
			if len(c.Depths) >= 5 && (!testing.Short() || i%10 == 0) {
				allDrops = append(allDrops, drops{Cast: c})
			}
		}
	}
	sideBySide(len(allDrops), func(i int) {
		d := &allDrops[i]
		d.truth = d.Truth()
		for way := range d.plans {
			d.plans[way] = gradesOf(planned(t, taken(&d.Cast, way), f))
		}
	})
	return allDrops
}

// sideBySide does n things on all processors.
func sideBySide(n int, do func(int)) {
	var wg sync.WaitGroup
	for part := range runtime.NumCPU() {
		wg.Go(func() {
			for i := part; i < n; i += runtime.NumCPU() {
				do(i)
			}
		})
	}
	wg.Wait()
}

// samples are the drops that have an answer.
func samples(t *testing.T) (out []sample) {
	t.Helper()
	comfortC := named(t, "rainbow").ComfortHighC.Value
	for _, d := range taking(t) {
		edgeM, edge := d.Reaches(comfortC)
		for _, p := range d.plans {
			s := sample{lake: d.Lake(), depths: p.depths}
			if d.truth.Layered && p.thermocline != nil {
				s.add(*p.thermocline, d.truth.Thermocline)
			}
			if edge && p.band.Found && !p.band.ToSurface {
				s.add(p.band.Top, edgeM)
			}
			if s.widthM > 0 {
				out = append(out, s)
			}
		}
	}
	return out
}

// files are the measured casts: U.S. EPA, National Lakes Assessments of 2007 and 2017, with
// and without a crew's mark; Carpenter et al., Cascade Project at NTL-LTER, EDI
// knb-lter-ntl.352; Carey et al., EDI edi.198.
var files = []string{"nla_marked.csv", "nla_unmarked.csv", "cascade_dense.csv", "virginia.csv"}

// planned is the plan of a drop as far as its confidence asks: without a rig.
func planned(t *testing.T, d profile.Drop, f fish.Fish) Plan {
	checked := check.Of(d)
	d = checked.Drop()
	column, err := checked.Column()
	if err != nil {
		t.Error(err) // it may be on another goroutine
	}
	p := Plan{Drop: d, Fish: f, Column: column, Layers: layers.Find(column)}
	p.Band = band.Find(band.Input{Column: column, Layers: p.Layers, Fish: f, ClearanceM: ClearanceM})
	return p
}

func (s *sample) add(e profile.Estimate, truth float64) {
	s.widthM = max(s.widthM, e.High-e.Low)
	s.offM = max(s.offM, math.Abs(e.Best-truth))
}

// off is the share of samples that are off by more than a depth: each lake counted once,
// and in the worst lake with at least ten of them.
func off(all []sample, moreM float64) (mean, worst float64, n int, name string) {
	count, wrong := map[string]float64{}, map[string]float64{}
	for _, s := range all {
		count[s.lake]++
		if s.offM > moreM {
			wrong[s.lake]++
		}
	}
	for _, lake := range slices.Sorted(maps.Keys(count)) {
		share := wrong[lake] / count[lake]
		mean += share / float64(len(count))
		if count[lake] >= 10 && (name == "" || share > worst) {
			worst, name = share, lake
		}
	}
	return mean, worst, len(count), name
}

// limit is the width, m, at which so large a share of drops is off by more than 1 m: of a
// logistic fit of that to the logarithm of the width, in which each lake counts once.
func limit(all []sample, share float64) float64 {
	count := map[string]float64{}
	for _, s := range all {
		count[s.lake]++
	}
	var a, b float64
	for range 30 { // Newton's steps
		var ga, gb, haa, hab, hbb float64
		for _, s := range all {
			x, y := math.Log(s.widthM), 0.0
			if s.offM > 1 {
				y = 1
			}
			p, w := 1/(1+math.Exp(-a-b*x)), 1/count[s.lake]
			ga, gb = ga+w*(y-p), gb+w*(y-p)*x
			v := w * p * (1 - p)
			haa, hab, hbb = haa+v, hab+v*x, hbb+v*x*x
		}
		det := haa*hbb - hab*hab
		a, b = a+(hbb*ga-hab*gb)/det, b+(haa*gb-hab*ga)/det
	}
	return math.Exp((math.Log(share/(1-share)) - a) / b)
}

// What each grade of the depths promises: of good drops at most one in twenty is off by
// more than 1 m, in the thermocline or the band's upper edge, whichever is worse; of fair
// ones at most one in five. Each lake counts once. The limits of width are where a drop
// just as wide is off so often, worked out on a random half of the lakes, and the promise
// is shown on the other half.
func TestGrades(t *testing.T) {
	all := samples(t)
	var halves [2][]sample
	names := slices.Sorted(maps.Keys(lakesOf(all)))
	rng := rand.New(rand.NewPCG(1, 0))
	rng.Shuffle(len(names), func(i, j int) { names[i], names[j] = names[j], names[i] })
	half := map[string]int{}
	for i, lake := range names {
		half[lake] = i % 2
	}
	for _, s := range all {
		halves[half[s.lake]] = append(halves[half[s.lake]], s)
	}
	good, fair := limit(halves[0], goodShare), limit(halves[0], fairShare)
	table := fmt.Sprintf("\nlimits %.2f and %.2f m by one half of the lakes, %.2f and %.2f m by the other", good, fair, limit(halves[1], goodShare), limit(halves[1], fairShare))
	row := func(what string, from []sample, in func(sample) bool) (mean, worst float64) {
		from = slices.DeleteFunc(slices.Clone(from), func(s sample) bool { return !in(s) })
		half, _, _, _ := off(from, 0.5)
		mean, worst, lakes, name := off(from, 1)
		two, _, _, _ := off(from, 2)
		table += fmt.Sprintf("\n%-28s %5d drops, %3d lakes: off by more than 0.5 m %2.0f %%, 1 m %4.1f %% (worst lake %s %.0f %%), 2 m %4.1f %%", what, len(from), lakes, 100*half, 100*mean, name, 100*worst, 100*two)
		return mean, worst
	}
	for _, x := range []struct {
		level       Level
		least, most float64
	}{{Good, 0, goodShare}, {Fair, goodShare, fairShare}, {Poor, fairShare, 1}} {
		row(string(x.level)+", limits made on", halves[0], func(s sample) bool { return s.depths.Level == x.level })
		mean, worst := row(string(x.level)+", held out", halves[1], func(s sample) bool { return s.depths.Level == x.level })
		if !testing.Short() && (mean < x.least || mean > x.most) {
			t.Errorf("%s: %.3f off by more than 1 m, want %v to %v", x.level, mean, x.least, x.most)
		}
		if !testing.Short() && worst > 3*x.most {
			t.Errorf("%s: %.3f off by more than 1 m in the worst lake", x.level, worst)
		}
	}
	for _, d := range []Doubt{MaybeSkin, MethodsApart, BreakCutOff, Disagreeing, NoNearSurface, DeepWaterUnread} {
		row("narrow, but "+string(d), all, func(s sample) bool { return slices.Contains(s.depths.Why, d) && s.widthM <= narrowM })
	}
	t.Log(table)
	// the limits move a little with every change of the layers; the promises above must hold
	if !testing.Short() && (math.Abs(good-narrowM) > 0.2 || math.Abs(fair-wideM) > 0.3) {
		t.Errorf("limits %.2f and %.2f m, the program has %v and %v", good, fair, narrowM, wideM)
	}
}

func lakesOf(all []sample) map[string]bool {
	out := map[string]bool{}
	for _, s := range all {
		out[s.lake] = true
	}
	return out
}

// Whether there is a thermocline at all: how often drops and the dense column do not agree,
// each lake counted once. Where they do not, the column is near the limit of layered (1 C
// per metre, 1.5 C in all): its fall is told beside. A good drop is wrong in that in at
// most one of twenty.
func TestGradesOfStructure(t *testing.T) {
	all := map[Level][]sample{}
	falls := map[Level][]float64{}
	for _, d := range taking(t) {
		for _, p := range d.plans {
			level, s := p.depths.Level, sample{lake: d.Lake()}
			if d.truth.Layered != (p.structure == layers.Layered) {
				s.offM = 2 // counted as off
				falls[level] = append(falls[level], d.Temps[0]-slices.Min(d.Temps))
			}
			all[level] = append(all[level], s)
		}
	}
	var table string
	for _, l := range []Level{Good, Fair, Poor} {
		mean, worst, lakes, name := off(all[l], 1)
		slices.Sort(falls[l])
		median := 0.0
		if n := len(falls[l]); n > 0 {
			median = falls[l][n/2]
		}
		table += fmt.Sprintf("\n%s: %5d drops, %3d lakes: a thermocline too many or too few in %.1f %% (worst lake %s %.0f %%), the column's fall then %.1f C in the median", l, len(all[l]), lakes, 100*mean, name, 100*worst, median)
		if l == Good && !testing.Short() && mean > goodShare {
			t.Errorf("good: %.3f disagree with the dense column", mean)
		}
	}
	t.Log(table)
}

// What each word on the oxygen promises: it was hidden, and looked up where the fly
// starts. Likely: nine lakes in ten have what the fish needs there; of the unknown some
// half. Measured at the same depths as the temperatures: more than nine in ten.
func TestOxygenGrades(t *testing.T) {
	f := named(t, "rainbow")
	need := f.OxygenMgL.Value
	var all [2][3][]sample // hidden or measured; likely, unknown, measured
	lakes := slices.DeleteFunc(slices.Clone(taking(t)), func(d drops) bool { return len(d.Oxygen) < 2 })
	measuredToo := make([]graded, len(lakes))
	const seven = 1 // even readings: the way
	sideBySide(len(lakes), func(i int) {
		d := taken(&lakes[i].Cast, seven)
		for j := range d.Readings {
			v, _ := lakes[i].OxygenAt(d.Readings[j].DepthM)
			d.Readings[j].Oxygen = profile.Some(v)
		}
		measuredToo[i] = gradesOf(planned(t, d, f))
	})
	for i, l := range lakes {
		for shown, p := range []graded{l.plans[seven], measuredToo[i]} {
			if !p.band.Found {
				continue
			}
			v, _ := l.OxygenAt(p.band.Start.Best)
			s := sample{lake: l.Lake()}
			if v < need {
				s.offM = 2 // too little: counted as off
			}
			g := slices.Index([]Level{Likely, Unknown, Measured}, p.oxygen.Level)
			all[shown][g] = append(all[shown][g], s)
		}
	}
	var table string
	for _, x := range []struct {
		name         string
		shown, grade int
		least, most  float64
	}{
		{"hidden: likely", 0, 0, 0, 0.10}, {"hidden: unknown", 0, 1, 0.25, 1}, {"measured", 1, 2, 0, 0.05},
		{"measured, not over the band: likely", 1, 0, 0, 1}, {"measured, not over the band: unknown", 1, 1, 0, 1},
	} {
		s := all[x.shown][x.grade]
		mean, worst, lakes, name := off(s, 1)
		table += fmt.Sprintf("\n%-38s %5d drops, %3d lakes: too little at the start in %4.1f %%; worst lake %s %.0f %%", x.name, len(s), lakes, 100*mean, name, 100*worst)
		if !testing.Short() && (mean < x.least || mean > x.most) {
			t.Errorf("%s: too little in %.3f, want %v to %v", x.name, mean, x.least, x.most)
		}
	}
	t.Log(table)
	if n := len(all[0][2]); n > 0 {
		t.Errorf("oxygen hidden, and called measured %d times", n)
	}
}
