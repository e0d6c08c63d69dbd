package trip

import (
	"math"
	"regexp"
	"slices"
	"testing"
	"time"

	"coldseam/profile"
	"coldseam/profile/expect"
	"coldseam/profile/internal/measured"
	"coldseam/profile/layers"
)

// found is a measured cast: its lake, day and layers, and where it has cooled to each limit.
type found struct {
	lake   string
	day    time.Time
	layers layers.Layers
	at     map[float64]float64 // C to m, where its top is warmer and its bottom colder
}

var limits = []float64{13, 16, 19, 21, 24}

var dayInName = regexp.MustCompile(`\d{4}-\d\d-\d\d|\d+/\d+/\d\d`)

func casts(t *testing.T, files ...string) (out []found) {
	t.Helper()
	for _, file := range files {
		for _, c := range measured.Casts(t, file) {
			l := layers.Find(c.Column(t), layers.WithoutIntervals)
			name := dayInName.FindString(c.Name)
			day, err := time.Parse(time.DateOnly, name)
			if err != nil {
				day, err = time.Parse("1/2/06", name)
			}
			if err != nil {
				t.Fatalf("%s: %v", c.Name, err)
			}
			f := found{c.Lake(), day, l, map[float64]float64{}}
			for _, limit := range limits {
				if z, ok := l.Curve.Crossing(limit, l.Curve.Top(), l.Curve.Bottom()); ok && l.MixedTempC > limit+0.5 {
					f.at[limit] = z
				}
			}
			out = append(out, f)
		}
	}
	return out
}

// score counts how often an interval holds.
type score struct{ held, n float64 }

func (s *score) add(e *profile.Estimate, depthM float64) {
	s.n++
	if e != nil && e.Low <= depthM && depthM <= e.High {
		s.held++
	}
}

func (s score) share() float64 { return s.held / s.n }

// The intervals by a lake's depth alone hold on every other lake of the National Lakes
// Assessments, those that they were not fitted on.
func TestLakesHold(t *testing.T) {
	all := casts(t, "nla_marked.csv", "nla_unmarked.csv")
	var lakes []string
	for _, f := range all {
		lakes = append(lakes, f.lake)
	}
	slices.Sort(lakes)
	lakes = slices.Compact(lakes)
	var thermocline score
	edge := map[float64]*score{}
	for _, limit := range limits {
		edge[limit] = &score{}
	}
	for _, f := range all {
		at, _ := slices.BinarySearch(lakes, f.lake)
		deepest := f.layers.Curve.Bottom()
		if f.layers.Structure != layers.Layered || at%2 == 0 || f.day.Month() < 6 || f.day.Month() > 9 || deepest < layeredFromM {
			continue
		}
		in := Input{Day: f.day, Deepest: profile.Some(deepest)}
		e, err := Expect(in)
		if err != nil || e.From != Lakes {
			t.Fatalf("%+v, %v", e, err)
		}
		thermocline.add(e.Thermocline, f.layers.Thermocline.Best)
		for limit, z := range f.at {
			in.LimitC = profile.Some(limit)
			e, _ = Expect(in)
			edge[limit].add(e.Edge, z)
		}
	}
	t.Logf("thermocline: %.3f of %.0f lakes", thermocline.share(), thermocline.n)
	expect.Near(t, "thermocline", thermocline.share(), 0.8, 0.05)
	for _, limit := range limits {
		t.Logf("%v C: %.3f of %.0f lakes", limit, edge[limit].share(), edge[limit].n)
		expect.Near(t, "an edge", edge[limit].share(), 0.8, 0.05)
	}
}

// The intervals by drops of the same fortnight of other years: the lakes of the Cascade
// Project, on which they were fitted, and the reservoirs of Virginia, each lake once.
func TestYearsHold(t *testing.T) {
	for _, c := range []struct {
		file      string
		low, high float64
	}{{"cascade_dense.csv", 0.8, 0.92}, {"virginia.csv", 0.75, 0.9}} {
		byLake := map[string][]found{}
		for _, f := range casts(t, c.file) {
			byLake[f.lake] = append(byLake[f.lake], f)
		}
		var thermocline, edge []float64
		for lake, all := range byLake {
			var depth, cool score
			for _, f := range all {
				if f.layers.Structure != layers.Layered {
					continue
				}
				in := Input{Day: f.day, LimitC: profile.Some(19)}
				for _, o := range all {
					if year, day := in.yearDay(o.day); year != f.day.Year() && math.Abs(day-float64(f.day.YearDay())) <= aboutDays {
						z, ok := o.at[19]
						when := o.day
						if !when.Before(f.day) { // years are all alike: a later one stands for an earlier
							when = time.Date(f.day.Year()-1-(o.day.Year()-f.day.Year()), o.day.Month(), o.day.Day(), 0, 0, 0, 0, time.UTC)
						}
						in.Drops = append(in.Drops, Drop{When: when, Layers: o.layers, Edge: profile.Optional{Value: z, Known: ok}, WaterM: profile.Optional{Value: z, Known: ok}})
					}
				}
				e, ok := in.years()
				if ok && e.Thermocline != nil {
					depth.add(e.Thermocline, f.layers.Thermocline.Best)
				}
				if z, has := f.at[19]; has && ok && e.Edge != nil {
					cool.add(e.Edge, z)
				}
			}
			t.Logf("%s: thermocline %.2f of %.0f, 19 C %.2f of %.0f", lake, depth.share(), depth.n, cool.share(), cool.n)
			if depth.n >= 10 {
				thermocline = append(thermocline, depth.share())
			}
			if cool.n >= 10 {
				edge = append(edge, cool.share())
			}
		}
		t.Logf("%s: thermocline %.3f, 19 C %.3f", c.file, average(thermocline), average(edge))
		for what, v := range map[string]float64{"thermocline": average(thermocline), "19 C": average(edge)} {
			if v < c.low || v > c.high {
				t.Errorf("%s: %s %.3f", c.file, what, v)
			}
		}
	}
}

func average(v []float64) float64 {
	sum := 0.0
	for _, x := range v {
		sum += x
	}
	return sum / float64(len(v))
}
