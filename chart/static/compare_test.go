package static

import (
	"bytes"
	"fmt"
	"math"
	"strings"
	"testing"

	"coldseam/chart"
)

func TestCompareCount(t *testing.T) {
	d := lake(t, "alder-kettle-july")
	for n, want := range map[int]string{0: "nothing to compare", 1: "nothing to compare", 2: "", 8: "", 9: "9 drops are too many"} {
		var b bytes.Buffer
		var all []chart.Drop
		for range n {
			all = append(all, d)
		}
		err := Compare(&b, SVG, Desk, all)
		if want == "" && err != nil || want != "" && (err == nil || !strings.Contains(err.Error(), want) || b.Len() > 0) {
			t.Errorf("%d drops: %v", n, err)
		}
	}
	if err := Compare(&bytes.Buffer{}, SVG, Desk, []chart.Drop{d, {}}); err == nil || !strings.HasPrefix(err.Error(), "drop 2: ") {
		t.Errorf("an empty second drop: %v", err)
	}
}

func TestCommon(t *testing.T) {
	for _, tc := range []struct {
		titles []string
		want   string
	}{
		{[]string{"Alder Kettle, off the reed point, 2026-07-18, for rainbow trout", "Alder Kettle, off the reed point, 2026-08-01, for rainbow trout"}, "Alder Kettle, off the reed point: 2 drops compared"},
		{[]string{"Alder Kettle, 2026", "Alder Kettles, 2026"}, "2 drops compared"},
		{[]string{"A, b", "A", "A, b, c"}, "A: 3 drops compared"},
		{[]string{"A\x1b", "A\x1b"}, "A\ufffd: 2 drops compared"},
	} {
		var all []chart.Drop
		for _, s := range tc.titles {
			all = append(all, chart.Drop{Title: s})
		}
		if got := common(all); got != tc.want {
			t.Errorf("%q: %q, want %q", tc.titles, got, tc.want)
		}
	}
}

// Eight of any drops: words do not overlap, each drop has its letter in the picture and
// in the list, on its own curve, and the letters stand apart.
func TestCompareLegible(t *testing.T) {
	var all []chart.Drop
	for _, d := range drops(t) {
		all = append(all, d.drop)
	}
	same := all[0]
	sets := map[string][]chart.Drop{"first eight": all[:8], "last eight": all[len(all)-8:], "one drop eight times": {same, same, same, same, same, same, same, same}}
	for what, set := range sets {
		for _, s := range sizes {
			p, rec := recorded(s.size)
			c := layCompared(p, "Compared", set)
			c.draw(p)
			legible(t, what+", "+s.name, p, rec)
			count := map[string]int{}
			for _, w := range texts(p, rec) {
				count[w.text]++
			}
			for i := range set {
				if count[letter(i)] != 2 {
					t.Errorf("%s, %s: letter %s is there %d times", what, s.name, letter(i), count[letter(i)])
				}
			}
			curves := make([][]pt, len(set))
			for i, d := range set {
				curves[i] = c.curve(d)
			}
			for i, at := range c.letters(p, curves) {
				near := math.Inf(1)
				for _, q := range curves[i] {
					near = math.Min(near, math.Hypot(q.x-at.x, q.y-at.y))
				}
				if near > 1e-9 {
					t.Errorf("%s, %s: letter %s is %v off its curve", what, s.name, letter(i), near)
				}
			}
		}
	}
}

// Drops in other units than the first are drawn in the first's.
func TestCompareUnits(t *testing.T) {
	feet, metres := lake(t, "alder-kettle-july"), lake(t, "sedge-mere-august")
	p, _ := recorded(Desk)
	c := layCompared(p, "", []chart.Drop{feet, metres})
	if !c.u.Feet() {
		t.Fatal("the first is in feet")
	}
	m := metres.Curve[100]
	at := c.place(m.DepthM, m.TempC)
	if want := c.depth.at(m.DepthM / 0.3048); math.Abs(at.y-want) > 1e-9 {
		t.Errorf("%v, want %v", at.y, want)
	}
	if want := c.temp.at(m.TempC*9/5 + 32); math.Abs(at.x-want) > 1e-9 {
		t.Errorf("%v, want %v", at.x, want)
	}
}

// The list says each drop's name, or its place in the row.
func TestCompareNames(t *testing.T) {
	a, b := lake(t, "alder-kettle-july"), dropOf(t, "units: ft F\n0 70\n10 60\n20 58\n")
	file := columnsSVG(t, a, b)
	for _, want := range []string{"2026-07-18 14:20", "drop 2", "thermocline", "band "} {
		if !strings.Contains(file, want) {
			t.Errorf("no %q", want)
		}
	}
}

func columnsSVG(t *testing.T, all ...chart.Drop) string {
	t.Helper()
	var b bytes.Buffer
	if err := Compare(&b, SVG, Desk, all); err != nil {
		t.Fatal(err)
	}
	return fmt.Sprint(svgTexts(t, b.Bytes())["text"])
}
