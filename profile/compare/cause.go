package compare

import (
	"math"

	"coldseam/profile"
	"coldseam/profile/band"
	"coldseam/profile/plan"
	"coldseam/profile/tilt"
)

func overWarm(p *plan.Plan) bool { return p.Band.Verdict == band.OverWarm }

// cause says whether wind alone can be why the thermoclines differ: those of the drops
// that lie furthest apart.
func (a *Answer) cause(plans []plan.Plan) {
	a.Cause = NoThermocline
	for i := range plans {
		z := plans[i].Layers.Thermocline
		if z == nil {
			return
		}
		if z.Best < plans[a.High].Layers.Thermocline.Best {
			a.High = i
		}
		if z.Best > plans[a.Low].Layers.Thermocline.Best {
			a.Low = i
		}
	}
	x, y := *plans[a.High].Layers.Thermocline, *plans[a.Low].Layers.Thermocline
	by, doubt := y.Best-x.Best, between(x, y)
	a.Apart = profile.Estimate{Best: by, Low: math.Max(0, by-doubt), High: by + doubt}
	switch {
	case by <= doubt || by < worthM:
		a.Cause = WithinDoubt
	case !a.OneWater || a.DaysApart > 0:
		a.Cause = OtherWater
	default:
		a.Cause = a.wind(plans)
	}
}

// wind says whether the wind can tilt the thermocline so far, as noted with any of the
// drops: the two ends of the lake are the furthest apart that two spots can be. The strong
// end of the range is more than the swing of a sudden wind, twice its middle.
func (a *Answer) wind(plans []plan.Plan) Cause {
	p := plans[a.High] // a copy
	for i := range plans {
		if d := &plans[i].Drop; !p.Drop.Wind.Known && d.Wind.Known {
			p.Drop.Wind, p.Drop.WindFrom = d.Wind, d.WindFrom
		}
		if d := &plans[i].Drop; !p.Drop.LakeLength.Known {
			p.Drop.LakeLength = d.LakeLength
		}
	}
	t, no := p.Tilt(profile.Optional{}, tilt.AnyPlace)
	if no == tilt.ThinLayer { // it was read further down at the other
		p.Layers, p.Column = plans[a.Low].Layers, plans[a.Low].Column
		t, no = p.Tilt(profile.Optional{}, tilt.AnyPlace)
	}
	a.NeedsWind, a.NeedsLength = !p.Drop.Wind.Known, p.Drop.LakeLength.Or(0) <= 0
	switch {
	case a.NeedsWind || a.NeedsLength:
		return WindNotKnown
	case no != "":
		return TooShallow
	case t.WindMps == 0:
		return NoWindToTiltIt
	case a.Apart.Low > 2*t.Steady.High:
		a.Tilt = t
		return WindCannot
	}
	a.Tilt = t
	return WindCan
}
