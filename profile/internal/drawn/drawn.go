// Package drawn is for tests: drops of all kinds that a page can hold.
package drawn

import (
	"math"
	"strconv"

	"pgregory.net/rapid"

	"coldseam/profile"
	"coldseam/profile/unit"
)

// Drop makes a drop with readings in one or several units, fine and coarse
// steps, spreads, oxygen, every header key, and some of the catches.
func Drop(t *rapid.T, caught []profile.Catch) profile.Drop {
	lengths := []unit.Length{unit.Metre, unit.Foot, unit.Fathom, unit.Yard, unit.Centimetre}
	scales := []unit.Temperature{unit.Celsius, unit.Fahrenheit}
	d := profile.Drop{Units: unit.System{Depth: rapid.SampledFrom(lengths).Draw(t, "depth"), Temp: rapid.SampledFrom(scales).Draw(t, "temp")}}
	maybe := func(name string, low, high float64) profile.Optional {
		if !rapid.Bool().Draw(t, name) {
			return profile.Optional{}
		}
		return profile.Some(rounded(rapid.Float64Range(low, high).Draw(t, name)))
	}
	words := func(name string) string {
		return rapid.SampledFrom([]string{"", "Alder Kettle", "long: water", "5 10 15", "depth and temp", "74", "Größe ½ ″", "--"}).Draw(t, name)
	}
	d.Water, d.Spot, d.For, d.Weight = words("water"), words("spot"), words("for"), words("weight")
	d.Sky, d.Colour, d.Anchor = words("sky"), words("colour"), words("anchor")
	for range rapid.IntRange(0, 2).Draw(t, "notes") {
		if n := words("note"); n != "" {
			d.Notes = append(d.Notes, n)
		}
	}
	for range rapid.IntRange(0, 2).Draw(t, "catches") {
		d.Catches = append(d.Catches, rapid.SampledFrom(caught).Draw(t, "catch"))
	}
	d.Date = rapid.SampledFrom([]string{"", "2026-07-18", "2026-07-18 06:05"}).Draw(t, "date")
	d.OxygenUnit = rapid.SampledFrom([]string{"", "mg/L", "%"}).Draw(t, "oxygen unit")
	d.Deepest, d.LakeLength, d.Wind = maybe("deepest", 0, 2000), maybe("lake length", 0, 1e6), maybe("wind", 0, 40)
	d.WindFrom = rapid.SampledFrom([]string{"", "S", "SW", "ENE"}).Draw(t, "wind from")
	d.Wait, d.TimeConst = maybe("wait", 0, 3600), maybe("time constant", 0, 3600)
	d.FlyWeight, d.Retrieve = maybe("fly weight", 0, 0.05), maybe("retrieve", 0, 5)
	d.Bottom, d.Secchi, d.Altitude = maybe("bottom", 1, 90), maybe("secchi", 0.2, 12), maybe("altitude", 0, 3000)
	d.Latitude, d.Longitude = maybe("latitude", -90, 90), maybe("longitude", -180, 180)
	d.LineAngle, d.BulbBelow, d.IcePoint = maybe("angle", 0, 50), maybe("bulb", 0, 0.5), maybe("ice", -2, 2)
	d.Precision = maybe("precision", 0.1, 2)
	switch d.Marks = rapid.SampledFrom([]profile.Marks{profile.MarksNotStated, profile.MarksAtWater, profile.MarksAtGunwale}).Draw(t, "marks"); d.Marks {
	case profile.MarksAtGunwale:
		d.FreeboardM = rounded(rapid.Float64Range(0, 1).Draw(t, "freeboard"))
	}
	for range rapid.IntRange(1, 12).Draw(t, "n") {
		step := rapid.SampledFrom([]float64{1, 0.1, 0.01, 0.5, 0.25, 0.125}).Draw(t, "step")
		part := map[float64][]int{1: {0}, 0.1: {0, 1, 2, 3}, 0.01: {0, 1, 2, 3}, 0.5: {1}, 0.25: {1, 3}, 0.125: {1, 3, 5, 7}}[step] // "65 1/2" has a step of a half, 65 has not
		r := profile.Reading{
			Depth: float64(rapid.IntRange(0, 400).Draw(t, "z")) / rapid.SampledFrom([]float64{1, 4, 10}).Draw(t, "of"), DepthUnit: d.Units.Depth,
			Temp: float64(rapid.IntRange(-2, 90).Draw(t, "whole")) + step*float64(rapid.SampledFrom(part).Draw(t, "part")), TempUnit: d.Units.Temp, Step: step,
		}
		r.Temp = rounded(r.Temp)
		if n := len(d.Readings); n > 0 && rapid.IntRange(0, 3).Draw(t, "again") == 0 { // two temperatures at one depth
			r.Depth, r.DepthUnit = d.Readings[n-1].Depth, d.Readings[n-1].DepthUnit
		} else if rapid.IntRange(0, 4).Draw(t, "other") == 0 {
			r.DepthUnit, r.TempUnit = rapid.SampledFrom(lengths).Draw(t, "du"), rapid.SampledFrom(scales).Draw(t, "tu")
		}
		if rapid.IntRange(0, 4).Draw(t, "spread") == 0 {
			r.SpreadC = rounded(r.TempUnit.DiffToC(float64(rapid.IntRange(1, 4).Draw(t, "by")) / 2))
		}
		if rapid.IntRange(0, 2).Draw(t, "oxygen") == 0 {
			r.Oxygen = profile.Some(float64(rapid.IntRange(0, 150).Draw(t, "mgl")) / 10)
		}
		d.Readings = append(d.Readings, r)
	}
	d.Correct()
	return d
}

// rounded keeps nine decimals, and no more than twelve digits in all, as a page does.
func rounded(v float64) float64 {
	whole := len(strconv.FormatFloat(math.Trunc(math.Abs(v)), 'f', 0, 64))
	short, err := strconv.ParseFloat(strconv.FormatFloat(v, 'f', min(9, 12-whole), 64), 64)
	if err != nil {
		panic(err)
	}
	return short
}
