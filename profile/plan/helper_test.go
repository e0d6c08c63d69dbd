package plan

import (
	"testing"

	"coldseam/profile"
	"coldseam/profile/fish"
	"coldseam/profile/rig"
	"coldseam/profile/unit"
)

const ft = 0.3048 // m, exact

// feet is a drop of Alder Kettle, an invented lake, in feet and Fahrenheit: pairs
// of depth and temperature, marks counted at the water.
func feet(pairs ...float64) profile.Drop {
	return drop(unit.Foot, unit.Fahrenheit, 1, pairs)
}

// metres is the same in metres and Celsius.
func metres(pairs ...float64) profile.Drop {
	return drop(unit.Metre, unit.Celsius, 0.1, pairs)
}

func drop(l unit.Length, temp unit.Temperature, step float64, pairs []float64) profile.Drop {
	d := profile.Drop{Water: "Alder Kettle", Units: unit.System{Depth: l, Temp: temp}, Marks: profile.MarksAtWater}
	for i := 0; i+1 < len(pairs); i += 2 {
		d.Readings = append(d.Readings, profile.Reading{
			Depth: pairs[i], DepthUnit: l, Temp: pairs[i+1], TempUnit: temp, Step: step, Line: i/2 + 1,
		})
	}
	d.Correct()
	return d
}

// withOxygen notes mg/L beside the readings, in their order; a negative one was not
// measured.
func withOxygen(d profile.Drop, mgl ...float64) profile.Drop {
	for i, v := range mgl {
		if v >= 0 {
			d.Readings[i].Oxygen = profile.Some(v)
		}
	}
	return d
}

func named(t testing.TB, key string) fish.Fish {
	t.Helper()
	f, err := fish.Find(key)
	if err != nil {
		t.Fatal(err)
	}
	return f
}

// planOf makes the plan of a drop for a fish, with everything else as it comes.
func planOf(t testing.TB, d profile.Drop, key string) Plan {
	t.Helper()
	p, err := Make(input(t, d, key))
	if err != nil {
		t.Fatal(err)
	}
	return p
}

func input(t testing.TB, d profile.Drop, key string) Input {
	return Input{Drop: d, Fish: named(t, key), ClearanceM: ClearanceM, Tackle: rig.DefaultTackle()}
}
