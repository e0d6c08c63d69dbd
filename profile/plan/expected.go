package plan

import (
	"math"
	"slices"
	"time"

	"coldseam/profile"
	"coldseam/profile/fish"
	"coldseam/profile/forecast"
	"coldseam/profile/layers"
	"coldseam/profile/rig"
)

// Expected is what can be said of a day to come, without a reading.
type Expected struct {
	forecast.Forecast
	Day     time.Time
	Last    Plan              // of the last drop
	Surface forecast.Surface  // warmer at the top than the fish like, or not
	Top     *profile.Estimate // where it is no longer too warm for them; nil where the last drop does not tell
	Bottom  *profile.Estimate // where it begins to be too cold, of fish that need it warm; nil where the last drop does not tell
	Moved   *Moved            // the last drop with its layers where they are expected; nil where that leaves no band
	Rig     *rig.Rig          // for that
	ReadM   []float64         // the depths to read first, from the surface down
	Level   Level             // of the depths
}

// Expect makes it of the plan of the last drop, which in gave, and of the forecast.
func (p *Plan) Expect(in Input, f forecast.Forecast, day time.Time) Expected {
	e := Expected{Forecast: f, Day: day, Last: *p, Surface: f.Surface(p.Fish.ComfortHighC.Value)}
	reaches := func(f forecast.Forecast, c float64) *profile.Estimate {
		if z, ok := f.Reaches(c); ok {
			return &z
		}
		return nil
	}
	e.Top = reaches(f, p.Fish.ComfortHighC.Value)
	if p.Fish.Kind != fish.Coldwater {
		e.Bottom = reaches(f, p.Fish.ComfortLowC.Value)
	}
	main, was := f.Thermocline, p.Layers.Thermocline.Best
	k := p.Layers.Curve
	switch {
	case e.Top != nil:
		main = *e.Top
		was, _ = k.Crossing(p.Fish.ComfortHighC.Value, k.Top(), k.Bottom())
	case e.Bottom != nil:
		main = *e.Bottom
		was, _ = k.Crossing(p.Fish.ComfortLowC.Value, k.Top(), k.Bottom())
	}
	if m, ok := p.Moved(main.Best - was); ok && m.Band.Found {
		r := rig.Find(p.movedRig(in, m))
		e.Moved, e.Rig = &m, &r
	}
	e.ReadM = p.toRead(main)
	c := Confidence{Level: p.Depths.Level} // never better than that of the drop
	width(f.Thermocline, WideBreak, c.add)
	width(main, WideEdge, c.add)
	e.Level = c.Level
	return e
}

// movedRig is what a rig is worked out from where the layers lie otherwise.
func (p *Plan) movedRig(in Input, m Moved) rig.Input {
	q := *p
	q.Column, q.Band, q.Layers = m.Column, m.Band, layers.Find(m.Column, layers.WithoutIntervals)
	q.Band.WaterM = wholeMarks(q.Band, p.Drop.Units.DepthStepM())
	return q.rigInput(in)
}

// toRead are the ends and the middle of an interval, at marks of the line.
func (p *Plan) toRead(e profile.Estimate) (out []float64) {
	step := p.Drop.Units.DepthStepM()
	for _, z := range []float64{e.Low, e.Best, e.High} {
		z = math.Max(step, math.Round(z/step)*step)
		if p.Drop.Bottom.Known {
			z = math.Min(z, math.Floor(p.Drop.Bottom.Value/step)*step)
		}
		out = append(out, z)
	}
	return slices.Compact(out)
}
