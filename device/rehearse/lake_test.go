package rehearse

import (
	"math"
	"os"
	"strings"
	"testing"

	"coldseam/profile"
	"coldseam/profile/layers"
	"coldseam/profile/notebook"
)

// The lake is the demo page's, within the half of the last digit kept in the code.
func TestKettleIsTheDemoPage(t *testing.T) {
	page, err := os.ReadFile("../../testdata/alder-kettle-july.txt")
	if err != nil {
		t.Fatal(err)
	}
	sheets, err := notebook.Read(page, notebook.Options{Name: "alder-kettle-july.txt"})
	if err != nil || len(sheets) != 1 {
		t.Fatalf("%d drops, %v", len(sheets), err)
	}
	d, lake := sheets[0].Drop, Kettle()
	if len(d.Readings) != len(lake.points) || d.Water != lake.Name() {
		t.Fatalf("%d readings of %q, the lake has %d points, %q", len(d.Readings), d.Water, len(lake.points), lake.Name())
	}
	for _, r := range d.Readings {
		if got := lake.TempC(r.DepthM); math.Abs(got-r.TempC) > 0.00051 {
			t.Errorf("%.4f m: %.4f C, the page says %.4f", r.DepthM, got, r.TempC)
		}
	}
	if math.Abs(d.Bottom.Value-lake.BottomM()) > 1e-9 {
		t.Errorf("bottom %v m, the page says %v", lake.BottomM(), d.Bottom)
	}
}

func TestLakesAreWhatTheySay(t *testing.T) {
	for name, want := range map[string]layers.Structure{
		"alder-kettle": layers.Layered, "thimble-flat": layers.Mixed, "tinder-pan": layers.Inverse,
	} {
		lake, err := Named(name)
		if err != nil {
			t.Fatal(err)
		}
		var points []profile.Point
		for depthM := 0.0; depthM < lake.BottomM(); depthM += 0.5 {
			points = append(points, profile.Point{DepthM: depthM, TempC: lake.TempC(depthM), ErrC: 0.1})
		}
		column, err := profile.NewColumn(points)
		if err != nil {
			t.Fatal(err)
		}
		if got := layers.Find(column, layers.WithoutIntervals).Structure; got != want {
			t.Errorf("%s is %s, want %s", name, got, want)
		}
	}
}

func TestTempC(t *testing.T) {
	lake := Lake{bottomM: 9, points: []point{{0, 20}, {4, 18}, {6, 8}}}
	for _, c := range []struct{ depthM, want float64 }{
		{-1, 20}, {math.Inf(-1), 20}, {0, 20}, {1, 19.5}, {4, 18}, {5, 13}, {6, 8}, {9, 8},
		{math.Inf(1), 8}, {math.NaN(), 8},
	} {
		if got := lake.TempC(c.depthM); got != c.want {
			t.Errorf("%v m: %v C, want %v", c.depthM, got, c.want)
		}
	}
	for _, c := range []struct{ from, to, want float64 }{{1, 9, 4}, {4, 9, 6}, {9, 1, 6}, {6, 1, 4}, {1, 3, 3}, {5, 5, 5}} {
		if got := lake.bend(c.from, c.to); got != c.want {
			t.Errorf("from %v to %v: bend at %v, want %v", c.from, c.to, got, c.want)
		}
	}
}

func TestNames(t *testing.T) {
	if len(Names()) < 3 {
		t.Errorf("lakes: %v", Names())
	}
	for _, name := range Names() {
		if lake, err := Named(strings.ToUpper(name)); err != nil || lake.Name() == "" || !(lake.BottomM() > 0) {
			t.Errorf("%s: %+v, %v", name, lake, err)
		}
		if _, err := Named("nowhere"); err == nil || !strings.Contains(err.Error(), name) {
			t.Errorf("the error %v does not name %s", err, name)
		}
	}
}
