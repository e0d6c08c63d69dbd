package layers

import (
	"slices"
	"testing"

	"coldseam/profile"
)

var eight = []float64{0, 5, 10, 15, 20, 25, 30, 35} // ft

// Pages as an angler writes them: invented temperatures in Fahrenheit at feet.
func TestFindOnPages(t *testing.T) {
	for _, c := range []struct {
		name          string
		depths, temps []float64
		want          Structure
		skinM         float64
	}{
		{"layered", eight, []float64{74, 73.5, 73, 66, 57, 52, 50, 49}, Layered, 0},
		{"all one temperature", eight, []float64{72, 72, 72, 72, 72, 72, 72, 72}, Mixed, 0},
		{"a thermometer's noise", eight, []float64{72, 72.5, 72, 71.5, 72, 72, 71.5, 71.5}, Mixed, 0},
		{"slowly colder", eight, []float64{72, 71.5, 71, 70.5, 70, 69.5, 69, 68.5}, Mixed, 0},
		{"warm skin only", eight[:4], []float64{76, 73, 72.5, 72}, SkinOnly, 1.524},
		{"warm skin over a break", eight, []float64{77, 73, 72.5, 72, 64, 55, 51, 50}, Layered, 1.524},
		{"cooled skin over a break", eight, []float64{71, 72, 72, 71.5, 64, 55, 51, 50}, Layered, 0},
		{"under ice", eight[:5], []float64{33, 35, 37, 38.5, 39.2}, Inverse, 0},
		{"two readings", eight[:2], []float64{74, 60}, TooFew, 0},
		{"one reading", eight[:1], []float64{74}, TooFew, 0},
		{"one reading repeated", []float64{10, 10, 10, 10}, []float64{60, 61, 60, 59}, TooFew, 0},
	} {
		l := Find(feet(t, c.depths, c.temps))
		if l.Structure != c.want {
			t.Errorf("%s: %v, want %s", c.name, l, c.want)
		}
		near(t, c.name+": skin", l.SkinM, c.skinM, 1e-9)
		if layered := l.Structure == Layered; layered != (l.Thermocline != nil) || layered != (l.MetalimnionTop != nil) || layered != (l.MetalimnionBottom != nil) {
			t.Errorf("%s: %s with thermocline %v, metalimnion %v to %v", c.name, l.Structure, l.Thermocline, l.MetalimnionTop, l.MetalimnionBottom)
		}
		known := l.Structure != TooFew && l.Structure != Inverse
		if known != (l.MixedLayer != nil) {
			t.Errorf("%s: %s with mixed layer %v", c.name, l.Structure, l.MixedLayer)
		}
	}
}

func TestWhatPagesSay(t *testing.T) {
	l := Find(feet(t, eight, []float64{74, 73.5, 73, 66, 57, 52, 50, 49}))
	if z := l.Thermocline.Best / 0.3048; z < 10 || z > 20 {
		t.Errorf("thermocline at %v ft, want 10 to 20", z)
	}
	l = Find(feet(t, eight, []float64{72, 72, 72, 72, 72, 72, 72, 72}))
	near(t, "mixed layer of one temperature", l.MixedLayer.Best, 35*0.3048, 1e-9)
	l = Find(feet(t, eight, []float64{77, 73, 72.5, 72, 64, 55, 51, 50}))
	near(t, "mixed layer's temperature under a skin", l.MixedTempC, (73-32)/1.8, 1e-9)
	near(t, "the skin's fall", l.SkinC, 4/1.8, 1e-9)
	if !l.WideTop {
		t.Error("nothing was read between 0 and 5 ft, and it is not said")
	}
}

func TestBreaks(t *testing.T) {
	for _, c := range []struct {
		name          string
		depths, temps []float64
		top, bottom   [2]float64 // between these
		reached       bool
		others        []float64
	}{
		{"cut off by the deepest reading", []float64{0, 1, 2, 3, 4, 5}, []float64{22, 22, 22, 22, 19, 16}, [2]float64{3, 3.5}, [2]float64{5, 5}, true, nil},
		{"ends above the deepest reading", []float64{0, 1, 2, 3, 4, 5, 6}, []float64{22, 22, 22, 22, 19, 16, 15.8}, [2]float64{3, 3.5}, [2]float64{5, 5}, false, nil},
		{"two breaks", []float64{0, 1, 2, 3, 4, 5, 6, 7, 8, 9}, []float64{24, 24, 18, 17.8, 17.6, 17.4, 14, 13.9, 13.8, 13.8}, [2]float64{1, 1}, [2]float64{2, 2}, false, []float64{5.5}},
		{"half as steep water between", []float64{0, 2, 3, 4, 5, 6, 7, 8}, []float64{24, 24, 20, 19.4, 18.8, 17, 16.8, 16.7}, [2]float64{2, 2}, [2]float64{4, 6}, false, nil},
		{"more than 2 m of it", []float64{0, 2, 3, 4, 5, 6, 7, 8, 9}, []float64{24, 24, 20, 19.4, 18.8, 18.2, 16.6, 16.5, 16.4}, [2]float64{2, 2}, [2]float64{3, 5}, false, []float64{6.5}},
		{"a tail of half as steep water", []float64{0, 2, 3, 4, 5, 6}, []float64{24, 24, 20, 19.4, 18.8, 18.7}, [2]float64{2, 2}, [2]float64{3, 5}, false, nil},
		{"in a wide gap", []float64{0, 2, 4, 6, 8}, []float64{20, 20, 14, 13.8, 13.6}, [2]float64{2, 3}, [2]float64{3, 4}, false, nil},
	} {
		l := Find(metres(t, c.depths, c.temps))
		if l.Structure != Layered {
			t.Errorf("%s: %v", c.name, l)
			continue
		}
		if z := l.MetalimnionTop.Best; z < c.top[0]-1e-9 || z > c.top[1]+1e-9 {
			t.Errorf("%s: top at %v m, want within %v", c.name, z, c.top)
		}
		if z := l.MetalimnionBottom.Best; z < c.bottom[0]-1e-9 || z > c.bottom[1]+1e-9 {
			t.Errorf("%s: bottom at %v m, want within %v", c.name, z, c.bottom)
		}
		if l.BottomReached != c.reached {
			t.Errorf("%s: runs past the deepest reading: %v, want %v", c.name, l.BottomReached, c.reached)
		}
		var others []float64
		for _, b := range l.OtherBreaks {
			others = append(others, b.DepthM)
		}
		if !slices.Equal(others, c.others) {
			t.Errorf("%s: further breaks at %v, want %v", c.name, others, c.others)
		}
	}
}

func TestOtherOrdersOfMagnitude(t *testing.T) {
	for _, c := range []struct {
		name        string
		n           int
		step        float64
		top, bottom float64 // of an even fall from 20 C to 6 C
	}{
		{"a lake of 300 m", 301, 1, 20, 30},
		{"readings 0.1 m apart", 60, 0.1, 2, 4},
		{"two hundred readings", 200, 0.5, 40, 47},
	} {
		var z, temps []float64
		for i := range c.n {
			d := float64(i) * c.step
			share := min(1, max(0, (d-c.top)/(c.bottom-c.top)))
			z, temps = append(z, d), append(temps, 20-14*share)
		}
		l := Find(metres(t, z, temps))
		if l.Structure != Layered {
			t.Errorf("%s: %v", c.name, l)
			continue
		}
		near(t, c.name+": top", l.MetalimnionTop.Best, c.top, 0.5)
		near(t, c.name+": bottom", l.MetalimnionBottom.Best, c.bottom, 0.6) // see edgeModel: half a metre low in close readings
		if b := l.Thermocline.Best; b < c.top || b > c.bottom {
			t.Errorf("%s: thermocline at %v m, want %v to %v", c.name, b, c.top, c.bottom)
		}
	}
}

// Doubt about the depths widens every estimate and moves none.
func TestDepthErrorWidens(t *testing.T) {
	c := feet(t, eight, []float64{74, 73.5, 73, 66, 57, 52, 50, 49})
	sure := Find(c)
	points := c.Points()
	for i := range points {
		points[i].ErrM = 0.5
	}
	loose, err := profile.NewColumn(points)
	if err != nil {
		t.Fatal(err)
	}
	doubtful := Find(loose)
	for _, e := range []struct {
		name string
		a, b *profile.Estimate
	}{
		{"mixed layer", sure.MixedLayer, doubtful.MixedLayer}, {"top", sure.MetalimnionTop, doubtful.MetalimnionTop},
		{"thermocline", sure.Thermocline, doubtful.Thermocline}, {"bottom", sure.MetalimnionBottom, doubtful.MetalimnionBottom},
	} {
		near(t, e.name, e.b.Best, e.a.Best, 1e-9)
		if e.b.High-e.b.Low <= e.a.High-e.a.Low {
			t.Errorf("%s: %+v with an error of depth, %+v without", e.name, *e.b, *e.a)
		}
	}
}
