package vector

import (
	"math"
	"slices"
	"strconv"
	"testing"

	"coldseam/chart"
	"coldseam/profile/demo"
)

// scaleOf is where the numbers of a scale say that its values are: those of texts that stand so.
func scaleOf(t *testing.T, shapes []shape, anchor string, of func(at) float64) func(float64) float64 {
	t.Helper()
	var values, places []float64
	for _, s := range shapes {
		v, err := strconv.ParseFloat(s.text, 64)
		if s.tag != "text" || s.attr["text-anchor"] != anchor || err != nil {
			continue
		}
		values = append(values, v)
		places = append(places, of(at{number(t, s.attr["x"]), number(t, s.attr["y"]) - 0.35*font}))
	}
	if len(values) < 2 {
		t.Fatalf("a scale of %v", values)
	}
	a, b := 0, len(values)-1
	return func(v float64) float64 {
		return places[a] + (v-values[a])/(values[b]-values[a])*(places[b]-places[a])
	}
}

func near(a, b float64) bool { return math.Abs(a-b) < 0.7 }

// Readings, band, thermocline, fly and bottom stand where the scales at their sides say.
func TestProfilePlaces(t *testing.T) {
	for _, name := range []string{"alder-kettle-july", "alder-kettle-january", "as-written"} { // without a scale of oxygen, but for the first
		p := demo.Plan(t, demo.Page(t, name))
		for i := range p.Drop.Readings {
			p.Drop.Readings[i].Oxygen.Known = false
		}
		d := chart.Of(p)
		u := d.Units
		shapes, _, _ := read(t, Profile(d))
		down := scaleOf(t, shapes, right, func(q at) float64 { return q.y })
		across := scaleOf(t, shapes, centre, func(q at) float64 { return q.x })
		dots := slices.DeleteFunc(of(shapes, "dot"), func(s shape) bool { return s.attr["r"] != "4" })
		used := slices.DeleteFunc(slices.Clone(d.Readings), func(r chart.Reading) bool { return !r.Used || r.Flag != "" })
		if len(dots) != len(used)+1 { // one in the legend
			t.Fatalf("%s: %d dots for %d readings", name, len(dots), len(used))
		}
		for i, r := range used {
			x, y := number(t, dots[i].attr["cx"]), number(t, dots[i].attr["cy"])
			if !near(x, across(u.Temp.FromC(r.TempC))) || !near(y, down(u.Depth.From(r.DepthM))) {
				t.Errorf("%s: %+v is drawn at %v, %v", name, r, x, y)
			}
		}
		z, _ := d.Zone(chart.Band)
		b := of(shapes, "band")[0].spots
		if !near(b[0].y, down(u.Depth.From(math.Max(z.TopM, 0)))) || !near(b[2].y, down(u.Depth.From(z.BottomM))) {
			t.Errorf("%s: the band from %v to %v", name, b[0].y, b[2].y)
		}
		for _, m := range d.Marks {
			if m.Kind != chart.Thermocline && m.Kind != chart.Start && m.Kind != chart.Bottom {
				continue
			}
			y := down(u.Depth.From(m.At.Best))
			if !slices.ContainsFunc(of(shapes, "line"), func(s shape) bool {
				return len(s.spots) == 2 && near(s.spots[0].y, y) && near(s.spots[1].y, y) && s.spots[1].x-s.spots[0].x > 100
			}) {
				t.Errorf("%s: no line for %s at %v", name, m.Name, y)
			}
		}
	}
}

// The names have the numbers that every other picture has.
func TestProfileNumbers(t *testing.T) {
	for _, p := range plans(t) {
		d := chart.Of(p.plan)
		shapes, _, _ := read(t, Profile(d))
		for _, z := range d.Zones {
			if z.Kind != chart.MixedLayer && !shows(shapes, z.Name+" "+z.Said(d.Units)) {
				t.Errorf("%s: %s %s is not in the picture", p.name, z.Name, z.Said(d.Units))
			}
		}
		for _, k := range []chart.MarkKind{chart.Thermocline, chart.Start, chart.Bottom} {
			if m, ok := d.Mark(k); ok && !shows(shapes, m.Name+" "+m.Said(d.Units)) {
				t.Errorf("%s: %s %s is not in the picture", p.name, m.Name, m.Said(d.Units))
			}
		}
	}
}

// Each sign is told what it means where it is drawn, and only there.
func TestProfileSigns(t *testing.T) {
	for _, c := range []struct {
		page string
		want map[string]bool
	}{
		{"units: ft F\nbottom: 31 ft\n0 74\n5 73\n10 72\n15 65\n20 58\n25 54\n", map[string]bool{chart.SaidReading: true, chart.SaidCurve: true, chart.SaidAssumed: true}},
		{"units: ft F\nbottom: 26 ft\n0 74 DO 9\n5 73 DO 9\n9 77\n11 65\n12 74\n15 65\n20 58 DO 8\n25 54\n300 50\n",
			map[string]bool{chart.SaidReading: true, chart.SaidCurve: true, chart.SaidAssumed: true, chart.SaidOffScale: true, chart.SaidOdd: true, chart.SaidUnused: true, "oxygen, mg/L": true}},
	} {
		d := chart.Of(demo.Plan(t, c.page))
		shapes, _, _ := read(t, Profile(d))
		for _, s := range []string{chart.SaidReading, chart.SaidCrowded, chart.SaidCurve, chart.SaidAssumed, chart.SaidOffScale, chart.SaidOdd, chart.SaidUnused, "oxygen, mg/L"} {
			if shows(shapes, s) != c.want[s] {
				t.Errorf("%q said: %v\n%s", s, !c.want[s], c.page)
			}
		}
	}
}

// The curve is drawn through between the readings, and broken where it is assumed.
func TestProfileAssumedBroken(t *testing.T) {
	d := chart.Of(demo.Plan(t, "units: m C\nbottom: 12 m\n0.8 20\n4 16\n10 10\n"))
	shapes, _, _ := read(t, Profile(d))
	down := scaleOf(t, shapes, right, func(q at) float64 { return q.y })
	for _, s := range of(shapes, "curve")[:2] {
		for _, q := range s.spots {
			between := q.y > down(0.8)-2 && q.y < down(10)+2
			if broken := s.attr["stroke-dasharray"] != ""; !broken && !between || broken && q.y > down(0.8)+2 && q.y < down(10)-2 {
				t.Errorf("at %v, broken: %v", q, broken)
			}
		}
	}
}

// Water whose oxygen is unknown is hatched within the band, from where the answer says.
func TestProfileUnknown(t *testing.T) {
	d := chart.Of(demo.Plan(t, demo.Page(t, "alder-kettle-july")))
	u, ok := d.BandUnknown()
	shapes, _, _ := read(t, Profile(d))
	down := scaleOf(t, shapes, right, func(q at) float64 { return q.y })
	top, bottom := math.Inf(1), math.Inf(-1)
	for _, q := range of(shapes, "edge")[0].spots {
		top, bottom = math.Min(top, q.y), math.Max(bottom, q.y)
	}
	if !ok || !near(top, down(d.Units.Depth.From(u.TopM))) || !near(bottom, down(d.Units.Depth.From(u.BottomM))) {
		t.Errorf("hatched from %v to %v", top, bottom)
	}
}
