package rehearse

import (
	"fmt"
	"math"
	"slices"
	"strconv"
	"strings"
	"testing"
	"testing/synctest"
	"time"
)

func number(t *testing.T, text string) float64 {
	t.Helper()
	v, err := strconv.ParseFloat(text, 64)
	if err != nil {
		t.Fatalf("%q is no number", text)
	}
	return v
}

// From air of 24 C into water of 23 C, by the lag's closed form.
func TestLinesAfterTheStart(t *testing.T) {
	synctest.Test(t, func(t *testing.T) {
		for i, text := range run(t, Options{NoiseC: -1}, 32, 64) {
			atS := 0.5 * float64(i+1)
			if want := fmt.Sprintf("%.2f", 23+math.Exp(-atS/8)); text != want {
				t.Errorf("after %v s: %q, want %q", atS, text, want)
			}
		}
	})
}

func TestLoweredProbeReachesTheWater(t *testing.T) {
	synctest.Test(t, func(t *testing.T) {
		for _, name := range Names() {
			lake, err := Named(name)
			if err != nil {
				t.Fatal(err)
			}
			for _, depthM := range []float64{0, lake.BottomM() / 2, lake.BottomM(), lake.BottomM() + 5} {
				all := run(t, Options{Lake: lake, NoiseC: -1, DepthNoiseM: -1, StatesDepth: true}, 241, 64, move{1, depthM})
				depthM = min(depthM, lake.BottomM())
				// After two minutes less than 24 C times exp(-12) is left of the lag.
				want := fmt.Sprintf("%.2f,%.2f", depthM, lake.TempC(depthM))
				if all[0] != "depth_m,temp_c" || all[240] != want {
					t.Errorf("%s: %q, ... %q, want %q", name, all[0], all[240], want)
				}
			}
		}
	})
}

func TestSameSeedSameLines(t *testing.T) {
	synctest.Test(t, func(t *testing.T) {
		o := Options{Seed: 7, StatesDepth: true, Faults: Faults{Boot: true, Torn: true, Sentinel: true, Quiet: true}}
		moves := []move{{3.21, 4}, {20.005, 9}, {41, 1.5}, {77.7, 6}}
		base := run(t, o, 400, 64, moves...)
		if again := run(t, o, 400, 1, moves...); !slices.Equal(again, base) {
			t.Error("byte by byte the lines are others")
		}
		fast := o
		fast.Speed = 20
		if again := run(t, fast, 400, 64, moves...); !slices.Equal(again, base) {
			t.Error("on a fast clock the lines are others")
		}
		other := o
		other.Seed = 8
		if again := run(t, other, 400, 64, moves...); slices.Equal(again, base) {
			t.Error("another seed gives the same lines")
		}
	})
}

// Whoever asks for the depth, comes late or goes in between hears the same lines.
func TestAskingChangesNothing(t *testing.T) {
	synctest.Test(t, func(t *testing.T) {
		base := run(t, Options{}, 60, 64, move{1.3, 8})
		p := New(Options{})
		time.Sleep(1300 * time.Millisecond)
		p.Lower(8)
		for range 20 {
			time.Sleep(137 * time.Millisecond)
			p.Depth()
		}
		port := open(t, p)
		first := int(p.elapsed()/p.period) + 1
		got := ""
		for strings.Count(got, "\r\n") < 10 {
			got += next(t, port)
		}
		if want := strings.Join(base[first-1:first+9], "\r\n") + "\r\n"; !strings.HasPrefix(got, want) {
			t.Errorf("%q, want %q", got, want)
		}
	})
}

// The sample's mean, spread and correlation of neighbours lie within four standard
// errors of a normal noise's (sd/sqrt n, sd/sqrt 2n, 1/sqrt n); 0.01/sqrt 12 C is the
// rounding's.
func TestNoise(t *testing.T) {
	synctest.Test(t, func(t *testing.T) {
		const n, settled = 4000, 300
		all := run(t, Options{NoiseC: 0.05, DepthNoiseM: 0.2, StatesDepth: true, Speed: 100, Seed: 3}, 1+settled+n, 64, move{0.1, 9})
		for field, c := range []struct{ sd, mean float64 }{{0.2, 9}, {0.05, Kettle().TempC(9)}} {
			var sum, squares, pairs, before float64
			for _, text := range all[1+settled:] {
				off := number(t, strings.Split(text, ",")[field]) - c.mean
				sum, squares, pairs, before = sum+off, squares+off*off, pairs+off*before, off
			}
			sd := math.Hypot(c.sd, 0.01/math.Sqrt(12))
			if math.Abs(sum/n) > 4*sd/math.Sqrt(n) || math.Abs(math.Sqrt(squares/n)-sd) > 4*sd/math.Sqrt(2*n) ||
				math.Abs(pairs/squares) > 4/math.Sqrt(n) {
				t.Errorf("field %d: mean %.5f, sd %.5f (%.5f), neighbours %.4f", field, sum/n, math.Sqrt(squares/n), sd, pairs/squares)
			}
		}
	})
}

func TestLower(t *testing.T) {
	synctest.Test(t, func(t *testing.T) {
		p := New(Options{Speed: 2, SpeedMps: 0.25})
		for _, c := range []struct {
			toM  float64
			wait time.Duration // of the wall, twice as long on the lake
			want float64
		}{
			{3, 0, 0}, {3, time.Second, 0.5}, {3, 10 * time.Second, 3}, {math.NaN(), time.Second, 3},
			{1, 2 * time.Second, 2}, {math.Inf(1), time.Minute, Kettle().BottomM()},
			{-3, time.Second, Kettle().BottomM() - 0.5}, {math.Inf(-1), time.Minute, 0},
		} {
			p.Lower(c.toM)
			time.Sleep(c.wait)
			if got := p.Depth(); math.Abs(got-c.want) > 1e-9 {
				t.Errorf("%v after Lower(%v): %v m, want %v", c.wait, c.toM, got, c.want)
			}
		}
	})
}

// Moves between two lines count from their own time: 0.5 m/s from 1.3 s to 4.7 s, then up.
func TestDepthOfLines(t *testing.T) {
	synctest.Test(t, func(t *testing.T) {
		all := run(t, Options{DepthNoiseM: -1, StatesDepth: true}, 21, 64, move{1.3, 5}, move{4.7, 0})
		for i, line := range all[1:] {
			atS := 0.5 * float64(i+1)
			want := max(0, min((atS-1.3)*0.5, 1.7-(atS-4.7)*0.5))
			if got := number(t, strings.Split(line, ",")[0]); math.Abs(got-want) > 0.005001 { // two decimals
				t.Errorf("%q after %v s, want %v m", line, atS, want)
			}
		}
	})
}

func TestNoNegativeZero(t *testing.T) {
	synctest.Test(t, func(t *testing.T) {
		all := run(t, Options{StatesDepth: true, DepthNoiseM: 0.01}, 300, 64)
		below, zero := 0, 0
		for _, line := range all[1:] {
			switch depth, _, _ := strings.Cut(line, ","); {
			case depth == "-0.00":
				t.Fatal(line)
			case depth == "0.00":
				zero++
			case depth[0] == '-':
				below++
			}
		}
		if zero == 0 || below == 0 {
			t.Errorf("%d lines at 0, %d above the water: noise tries nothing", zero, below)
		}
	})
}

func TestNow(t *testing.T) {
	synctest.Test(t, func(t *testing.T) {
		start := time.Now()
		p := New(Options{Speed: 20})
		time.Sleep(3 * time.Second)
		if got := p.Now().Sub(start); got != time.Minute {
			t.Errorf("%v on the lake after 3 s", got)
		}
	})
}

func TestOptions(t *testing.T) {
	standard := Options{TauS: 8, NoiseC: 0.03, DepthNoiseM: 0.03, PeriodS: 0.5, SpeedMps: 0.5, Speed: 1}
	nan := math.NaN()
	for _, c := range []struct{ in, want Options }{
		{Options{}, standard},
		{Options{TauS: nan, NoiseC: nan, DepthNoiseM: nan, PeriodS: nan, SpeedMps: nan, Speed: nan}, standard},
		{Options{TauS: -1, NoiseC: -1, DepthNoiseM: -1, PeriodS: -1, SpeedMps: -1, Speed: -1},
			Options{TauS: 0.01, PeriodS: 0.05, SpeedMps: 0.01, Speed: 0.01}},
		{Options{TauS: math.Inf(1), NoiseC: 1e300, DepthNoiseM: 3, PeriodS: 1e9, SpeedMps: 11, Speed: math.Inf(1)},
			Options{TauS: 600, NoiseC: 2, DepthNoiseM: 2, PeriodS: 600, SpeedMps: 10, Speed: 100}},
	} {
		got := c.in.whole()
		if got.Lake.Name() != Kettle().Name() {
			t.Errorf("%+v: on %q", c.in, got.Lake.Name())
		}
		got.Lake = Lake{}
		if fmt.Sprint(got) != fmt.Sprint(c.want) {
			t.Errorf("%+v: %+v, want %+v", c.in, got, c.want)
		}
	}
}
