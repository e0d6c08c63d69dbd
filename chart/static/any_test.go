package static

import (
	"bytes"
	"math"
	"testing"
	"time"

	"coldseam/chart"
	"coldseam/profile"
	"coldseam/profile/unit"

	"pgregory.net/rapid"
)

// anyDrop is a figure with any finite numbers at all, sensible or not.
func anyDrop(t *rapid.T) chart.Drop {
	number := rapid.OneOf(rapid.Float64Range(-5, 40), rapid.Float64Range(-1e6, 1e6), rapid.SampledFrom([]float64{0, 1e-300, -1e-9, 1e6}))
	positive := rapid.OneOf(rapid.Float64Range(0, 3), rapid.Float64Range(0, 1e6))
	text := rapid.StringMatching(`[^NI]{0,30}`) // so that a NaN found is not the angler's
	d := chart.Drop{
		Title: text.Draw(t, "title"), Short: text.Draw(t, "short"),
		Units:    unit.System{Depth: rapid.SampledFrom([]unit.Length{unit.NoLength, unit.Metre, unit.Foot, unit.Fathom}).Draw(t, "depths"), Temp: rapid.SampledFrom([]unit.Temperature{unit.NoTemperature, unit.Celsius, unit.Fahrenheit}).Draw(t, "degrees")},
		DeepestM: rapid.OneOf(rapid.Float64Range(0.5, 60), rapid.SampledFrom([]float64{1e-9, 1e6})).Draw(t, "deepest"),
		Answer:   rapid.SliceOfN(text, 0, 3).Draw(t, "answer"),
	}
	for range rapid.IntRange(1, 9).Draw(t, "readings") {
		d.Readings = append(d.Readings, chart.Reading{
			DepthM: number.Draw(t, "z"), TempC: number.Draw(t, "t"), ErrM: positive.Draw(t, "dz"), ErrC: positive.Draw(t, "dt"),
			Oxygen: profile.Optional{Value: number.Draw(t, "o"), Known: rapid.Bool().Draw(t, "known")},
			Used:   rapid.Bool().Draw(t, "used"), Flag: rapid.SampledFrom([]string{"", "", "spike"}).Draw(t, "flag"),
		})
	}
	z := 0.0
	for range rapid.IntRange(0, 8).Draw(t, "points") {
		z += rapid.OneOf(rapid.Float64Range(0, 10), rapid.Just(0.0)).Draw(t, "down")
		c := number.Draw(t, "c")
		d.Curve = append(d.Curve, chart.Point{DepthM: z, TempC: c, LowC: c - positive.Draw(t, "low"), HighC: c + positive.Draw(t, "high"), Extended: rapid.Bool().Draw(t, "extended")})
	}
	for i := range d.Curve {
		d.Curve[i].LowC, d.Curve[i].HighC = math.Max(d.Curve[i].LowC, -1e6), math.Min(d.Curve[i].HighC, 1e6)
	}
	for range rapid.IntRange(0, 4).Draw(t, "zones") {
		d.Zones = append(d.Zones, chart.Zone{Kind: rapid.SampledFrom([]chart.ZoneKind{chart.MixedLayer, chart.Metalimnion, chart.Band, chart.Unproven, "new"}).Draw(t, "kind"), Name: text.Draw(t, "name"), TopM: number.Draw(t, "top"), BottomM: number.Draw(t, "bottom")})
	}
	for range rapid.IntRange(0, 4).Draw(t, "marks") {
		d.Marks = append(d.Marks, chart.Mark{Kind: rapid.SampledFrom([]chart.MarkKind{chart.Thermocline, chart.Start, chart.Water, chart.Bottom, "new"}).Draw(t, "mark"), Name: text.Draw(t, "name"), At: profile.Estimate{Best: number.Draw(t, "best"), Low: number.Draw(t, "low"), High: number.Draw(t, "high")}})
	}
	return d
}

// Any finite figure is drawn, without a panic and without a number that is none.
func TestAnything(t *testing.T) {
	t.Parallel()
	rapid.Check(t, func(t *rapid.T) {
		var all []chart.Drop
		season := chart.Season{Title: "Any"}
		for range rapid.IntRange(2, 4).Draw(t, "drops") {
			all = append(all, anyDrop(t))
			at := time.Date(2026, 1, 1, 0, 0, 0, 0, time.UTC).Add(time.Duration(rapid.IntRange(0, 60*24).Draw(t, "hours")) * time.Hour)
			season.Drops = append(season.Drops, chart.Dated{When: at, Drop: all[len(all)-1]})
		}
		size := rapid.SampledFrom([]Size{Desk, Phone, HalfSheet, {200, 200, 5, 72}}).Draw(t, "size")
		for what, draw := range []func(b *bytes.Buffer) error{
			func(b *bytes.Buffer) error { return Column(b, SVG, size, all[0]) },
			func(b *bytes.Buffer) error { return Compare(b, SVG, size, all) },
			func(b *bytes.Buffer) error { return DrawSeason(b, SVG, size, season) },
		} {
			var b bytes.Buffer
			if err := draw(&b); err != nil {
				t.Fatalf("picture %d: %v", what, err)
			}
			if bad := firstBad(b.Bytes()); bad != "" {
				t.Fatalf("picture %d: %s", what, bad)
			}
		}
	})
}
