package notebook

import (
	"testing"

	"pgregory.net/rapid"

	"coldseam/profile"
	"coldseam/profile/unit"
)

// TestPagesAgain: every page of the tables that is read gives the same Column when
// it is written out and read back.
func TestPagesAgain(t *testing.T) {
	for _, p := range pages {
		sheets, err := Read([]byte(p.page), p.options())
		if err != nil {
			continue
		}
		for _, s := range sheets {
			t.Run(p.name, func(t *testing.T) { again(t, s.Drop) })
		}
	}
}

// TestRoundTrip: so does any drop.
func TestRoundTrip(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) { again(t, drawDrop(t)) })
}

// drawDrop makes a drop with readings in one or several units, fine and coarse
// steps, spreads, oxygen, and the header keys that change a Column.
func drawDrop(t *rapid.T) profile.Drop {
	lengths := []unit.Length{unit.Metre, unit.Foot}
	scales := []unit.Temperature{unit.Celsius, unit.Fahrenheit}
	d := profile.Drop{Units: unit.System{Depth: rapid.SampledFrom(lengths).Draw(t, "depth"), Temp: rapid.SampledFrom(scales).Draw(t, "temp")}}
	maybe := func(name string, low, high float64) profile.Optional {
		if !rapid.Bool().Draw(t, name) {
			return profile.Optional{}
		}
		return profile.Some(nano(rapid.Float64Range(low, high).Draw(t, name)))
	}
	d.Water = rapid.SampledFrom([]string{"", "Alder Kettle", "Long: water"}).Draw(t, "water")
	d.Bottom, d.Secchi, d.Altitude = maybe("bottom", 1, 90), maybe("secchi", 0.2, 12), maybe("altitude", 0, 3000)
	d.LineAngle, d.BulbBelow, d.IcePoint = maybe("angle", 0, 50), maybe("bulb", 0, 0.5), maybe("ice", -2, 2)
	d.Precision = maybe("precision", 0.1, 2)
	if rapid.Bool().Draw(t, "gunwale") {
		d.Marks, d.FreeboardM = profile.MarksAtGunwale, nano(rapid.Float64Range(0, 1).Draw(t, "freeboard"))
	}
	for range rapid.IntRange(1, 12).Draw(t, "n") {
		step := rapid.SampledFrom([]float64{1, 0.1, 0.01, 0.5, 0.25}).Draw(t, "step")
		part := map[float64][]int{1: {0}, 0.1: {0, 1, 2, 3}, 0.01: {0, 1, 2, 3}, 0.5: {1}, 0.25: {1, 3}}[step] // "65 1/2" has a step of a half, 65 has not
		r := profile.Reading{
			Depth: float64(rapid.IntRange(0, 400).Draw(t, "z")) / 4, DepthUnit: d.Units.Depth,
			Temp: float64(rapid.IntRange(-2, 90).Draw(t, "whole")) + step*float64(rapid.SampledFrom(part).Draw(t, "part")), TempUnit: d.Units.Temp, Step: step,
		}
		r.Temp = nano(r.Temp)
		if rapid.IntRange(0, 4).Draw(t, "other") == 0 {
			r.DepthUnit, r.TempUnit = rapid.SampledFrom(lengths).Draw(t, "du"), rapid.SampledFrom(scales).Draw(t, "tu")
		}
		if rapid.IntRange(0, 4).Draw(t, "spread") == 0 {
			r.SpreadC = nano(r.TempUnit.DiffToC(float64(rapid.IntRange(1, 4).Draw(t, "by")) / 2))
		}
		if rapid.IntRange(0, 2).Draw(t, "oxygen") == 0 {
			r.Oxygen = profile.Some(float64(rapid.IntRange(0, 150).Draw(t, "mgl")) / 10)
		}
		d.Readings = append(d.Readings, r)
	}
	d.Correct()
	return d
}
