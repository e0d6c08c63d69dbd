package oxygen

import (
	"fmt"
	"maps"
	"math"
	"slices"
	"strings"
	"testing"

	"coldseam/profile"
	"coldseam/profile/layers"
)

// alarms counts, lake by lake, columns and those of them that are amiss: that never fall
// under 5 mg/L although a depth was named, or that fall above it.
type alarms map[string]*[2]float64

func (a alarms) add(water string, amiss bool) {
	if a[water] == nil {
		a[water] = new([2]float64)
	}
	a[water][0]++
	a[water][1] += one(amiss)
}

// shares are those of columns, of lakes, each counted once, and of the worst lake that
// was read at least ten times; no name where there is none.
func (a alarms) shares() (columns, lakes, worst float64, name string) {
	n := 0.0
	for _, water := range slices.Sorted(maps.Keys(a)) {
		v := a[water]
		share := v[1] / v[0]
		n += v[0]
		columns += v[1]
		lakes += share / float64(len(a))
		if v[0] >= 10 && (name == "" || share > worst) {
			worst, name = share, water
		}
	}
	return columns / n, lakes, worst, name
}

func (a alarms) String() string {
	n := 0.0
	for _, v := range a {
		n += v[0]
	}
	columns, lakes, worst, name := a.shares()
	s := fmt.Sprintf("%4.0f columns, false in %2.0f %%; %3d lakes, %2.0f %%", n, 100*columns, len(a), 100*lakes)
	if name != "" {
		s += fmt.Sprintf("; worst lake %s, %2.0f %%", name, 100*worst)
	}
	return s
}

// deepAndTheRest are the false alarms in lakes known to be deep and in others, as far as
// the readings of oxygen reach the deepest water.
func deepAndTheRest(tb testing.TB) (deep, rest alarms) {
	tb.Helper()
	all := lakes(tb)
	deep, rest = alarms{}, alarms{}
	for i := range all {
		l := &all[i]
		_, how := l.crossing(5)
		_, named := Below(l.whole)
		if how == low || !named || l.whole.Layers.Structure != layers.Layered || l.z[len(l.z)-1] < 0.8*l.Bottom() {
			continue
		}
		if ClassOf(l.Bottom(), profile.Optional{}, "") == AnyLake {
			rest.add(l.water, how == never)
		} else {
			deep.add(l.water, how == never)
		}
	}
	return deep, rest
}

// How often is the doubt a false alarm, set by set, and what it costs then: the columns
// in which oxygen never falls under 5 mg/L. The shares are those that the package comment
// gives; nothing in a temperature tells these columns apart.
func TestNeverShort(t *testing.T) {
	all := lakes(t)
	var b strings.Builder
	for _, want := range []struct {
		group                string
		false, lost, doubted float64 // of columns; of those with cool water, all of it doubted; of their depth
	}{
		{"NLA, fitted", 0.10, 0.57, 0.80}, {"NLA, held out", 0.14, 0.53, 0.79}, {"NLA unmarked, held out", 0.27, 0.65, 0.76},
		{"Cascade, fitted", 0.003, 0, 0.76}, {"Cascade, held out", 0, 0, 0}, {"Virginia, fitted", 0.05, 0.20, 0.67}, {"Virginia, held out", 0.48, 0.60, 0.81},
	} {
		a := alarms{}
		short, cool, lost := 0, 0.0, 0.0
		var doubted []float64
		for i := range all {
			l := &all[i]
			if l.group() != want.group || l.whole.Layers.Structure != layers.Layered {
				continue
			}
			_, how := l.crossing(5)
			e, named := Below(l.whole)
			if how == low {
				short++
				continue
			}
			if !named {
				continue
			}
			a.add(l.water, how == never)
			if how != never {
				continue
			}
			doubted = append(doubted, (l.Bottom()-e.Low)/l.Bottom())
			if edge, ok := l.coolEdge(); ok {
				cool++
				lost += one(edge >= e.Low)
			}
		}
		columns, _, _, _ := a.shares()
		got := [3]float64{columns, lost / max(1, cool), median(doubted)}
		fmt.Fprintf(&b, "\n%-23s %v; too little at the surface already %d. When false, %2.0f %% of the depth is doubted in the median, and in %2.0f %% of %2.0f all of the cool water",
			want.group, a, short, 100*got[2], 100*got[1], cool)
		for j, v := range [3]float64{want.false, want.lost, want.doubted} {
			if math.Abs(got[j]-v) > 0.0051 {
				t.Errorf("%s: %.3f, want the stated %v", want.group, got, [3]float64{want.false, want.lost, want.doubted})
				break
			}
		}
	}
	t.Log(b.String())
}

// What a LakeClass says of deep lakes: a third against a tenth.
func TestFalseAlarms(t *testing.T) {
	deep, rest := deepAndTheRest(t)
	t.Logf("\nfrom 20 m  %v\nothers     %v", deep, rest)
	if _, share, _, _ := deep.shares(); math.Abs(share-1.0/3) > 0.03 || len(deep) < 100 {
		t.Errorf("deep lakes: false in %.3f of %d, want a third of 100 or more", share, len(deep))
	}
	if _, share, _, _ := rest.shares(); math.Abs(share-0.1) > 0.03 {
		t.Errorf("other lakes: false in %.3f, want a tenth", share)
	}
}

// The classes of Secchi depth are those of Carlson 1977: clear over 4 m, fertile under 2.
func TestClassOf(t *testing.T) {
	for _, x := range []struct {
		lakeM   float64
		secchiM profile.Optional
		colour  string
		want    LakeClass
	}{
		{20, profile.Optional{}, "", DeepLake},
		{19.9, profile.Optional{}, "", AnyLake},
		{19.9, profile.Some(8), "clear", AnyLake},
		{30, profile.Some(4.1), "", DeepClearLake},
		{30, profile.Some(3.9), "clear", DeepLake}, // measured stands above the word
		{30, profile.Some(1.9), "", AnyLake},
		{30, profile.Some(0.5), "clear", AnyLake},
		{30, profile.Optional{}, "Clear", DeepClearLake},
		{30, profile.Optional{}, "green", AnyLake},
		{30, profile.Optional{}, "not clear", DeepLake},
		{30, profile.Optional{}, "clear, no algae", DeepClearLake},
		{30, profile.Optional{}, "not green", DeepLake},
		{30, profile.Optional{}, "stained", DeepLake},
		{math.NaN(), profile.Some(8), "clear", AnyLake},
	} {
		if got := ClassOf(x.lakeM, x.secchiM, x.colour); got != x.want {
			t.Errorf("%v m, Secchi %v, %q: %q, want %q", x.lakeM, x.secchiM, x.colour, got, x.want)
		}
	}
}
