package band

import (
	"math"
	"testing"

	"coldseam/profile"
	"coldseam/profile/expect"
	"coldseam/profile/fish"
	"coldseam/profile/layers"
)

var near = expect.Near

const ft = 0.3048 // m, exact

// none is an oxygen value that was not measured.
var none = math.NaN()

// column makes a Column of depths, temperatures and oxygen (nil: none measured).
func column(t testing.TB, depths, temps, oxygen []float64) profile.Column {
	t.Helper()
	var points []profile.Point
	for i, z := range depths {
		p := profile.Point{DepthM: z, TempC: temps[i], ErrC: 0.25}
		if oxygen != nil && !math.IsNaN(oxygen[i]) {
			p.Oxygen = profile.Some(oxygen[i])
		}
		points = append(points, p)
	}
	c, err := profile.NewColumn(points)
	if err != nil {
		t.Fatal(err)
	}
	return c
}

// input is what Find works on, with the fly 1 ft above the bottom and no bottom
// known.
func input(c profile.Column, f fish.Fish) Input {
	return Input{Column: c, Layers: layers.Find(c), Fish: f, ClearanceM: ft}
}

// trout is a made-up coldwater fish: at most 20 C, at least 5 mg/L.
func trout() fish.Fish {
	f := fish.Fish{Key: "trout", Name: "trout", Kind: fish.Coldwater, Salmonid: true}
	f.ComfortLowC = fish.Figure{Value: 10, Known: true}
	f.ComfortHighC = fish.Figure{Value: 20, Known: true}
	f.OptimumC = fish.Figure{Value: 13, Known: true}
	f.OxygenMgL = fish.Figure{Value: 5, Known: true}
	return f
}

// bass is a made-up coolwater fish: 19 to 24 C, at least 5 mg/L.
func bass() fish.Fish {
	f := trout()
	f.Key, f.Name, f.Kind, f.Salmonid = "bass", "bass", fish.Coolwater, false
	f.ComfortLowC.Value, f.ComfortHighC.Value, f.OptimumC.Value = 19, 24, 21
	return f
}

func ask(t testing.TB, key string) fish.Fish {
	t.Helper()
	f, err := fish.Find(key)
	if err != nil {
		t.Fatal(err)
	}
	return f
}

// summer is an invented column with its break between 4 and 7 m.
var (
	summerZ = []float64{0, 2, 4, 5, 6, 7, 9, 11}
	summerT = []float64{24, 24, 23.5, 20.5, 15, 11, 8, 7}
)
