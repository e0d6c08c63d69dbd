package tilt

import (
	"math"

	"coldseam/profile"
	"coldseam/profile/layers"
)

// Place is where on the water a drop was taken.
type Place string

// The places.
const (
	AnyPlace Place = "" // not known
	Upwind   Place = "upwind"
	Middle   Place = "middle"
	Downwind Place = "downwind"
)

// Input is a layered water and the wind on it.
type Input struct {
	Layers      layers.Layers
	BottomM     float64 // the greatest depth known
	BottomKnown bool    // else BottomM is that of the deepest reading
	Length      profile.Optional
	Wind        profile.Optional // m/s
	Blown       profile.Optional // how long, s
	At          Place            // of the drop
	Want        Want
}

// Refusal is the code of why nothing can be said.
type Refusal string

// The refusals.
const (
	NotLayered Refusal = "not layered"
	NoLength   Refusal = "no length"
	NoWind     Refusal = "no wind"
	ThinLayer  Refusal = "thin layer" // above or below the thermocline there is hardly any water, as far as is known
)

// Tilt is the answer. Depths and lengths are metres, times seconds.
type Tilt struct {
	Layers      TwoLayers
	Thermocline profile.Estimate // as it was read
	LengthM     float64
	WindMps     float64
	BlownKnown  bool
	AfterS      float64 // that the wind has blown, where that is known
	At          Place
	BottomKnown bool
	Period      profile.Estimate // of rocking there and back
	Wedderburn  profile.Estimate
	Share       profile.Estimate // of the steady displacement that is reached; 1 where the time is not known
	Steady      profile.Estimate // displacement at either end once the wind has blown long enough
	End         profile.Estimate // displacement at either end now
	Up, Down    profile.Estimate // where the thermocline lies at the upwind and the downwind end
	Rise        Rise
	Choice      Choice
}

// Rise is the code of whether cold water comes up at the upwind end.
type Rise string

// The rises.
const (
	StaysDown Rise = "stays down"
	MayRise   Rise = "may rise" // at the strong end of the range
	Rises     Rise = "rises"
)

// Factors of the doubt, which the package comment explains.
const (
	dragBest, dragLow, dragHigh = 1.3e-3, 1.0e-3, 2.0e-3
	windOff                     = 0.25  // of the speed
	shelterM                    = 500.0 // that trees of 10 m shelter
	shelterLost                 = 0.5   // of the stress there
	section                     = 2.0 / 3
	sectionLow                  = 0.5
	riseW                       = 1.0 // a Wedderburn number at which cold water comes up
)

// RoughM is how long a lake is in which the turning of the earth and bays count: about
// twice the distance that the rocking goes while the earth turns it aside, 2.5 km in
// ordinary layers.
const RoughM = 5000

// Find finds the tilt. Where the refusal is not "" the Tilt says nothing, and the wind and
// the length may be unknown.
func Find(in Input) (t Tilt, no Refusal) {
	l := in.Layers
	switch {
	case l.Structure != layers.Layered || l.Thermocline == nil:
		return t, NotLayered
	case !in.Length.Known || in.Length.Value <= 0:
		return t, NoLength
	case !in.Wind.Known:
		return t, NoWind
	}
	z := *l.Thermocline
	box, ok := Parted(l.Curve, z.Best, in.BottomM)
	if !ok {
		return t, ThinLayer
	}
	t = Tilt{
		Layers: box, Thermocline: z, LengthM: in.Length.Value, WindMps: in.Wind.Value,
		BlownKnown: in.Blown.Known, AfterS: in.Blown.Value, At: in.At, BottomKnown: in.BottomKnown,
	}
	t.Layers.LowerM *= section
	others := partings(l.Curve, z, in.BottomM)
	t.period(box, others)
	t.displace(others)
	t.ends(in.BottomM)
	t.Choice = choose(t, in.Want)
	return t, ""
}

// partings are the layers at either end of the thermocline's interval.
func partings(c *layers.Curve, z profile.Estimate, bottomM float64) (out []TwoLayers) {
	for _, at := range []float64{z.Low, z.High} {
		if w, ok := Parted(c, math.Min(math.Max(at, leastUpperM), bottomM-leastLowerM), bottomM); ok {
			out = append(out, w)
		}
	}
	return out
}

// period is the time of rocking; box is the water as if its sides were steep.
func (t *Tilt) period(box TwoLayers, others []TwoLayers) {
	at := func(w TwoLayers, share float64) float64 {
		w.LowerM *= share
		return w.PeriodS(t.LengthM)
	}
	best := at(box, section)
	deepest := box
	if !t.BottomKnown {
		deepest.LowerM = math.Inf(1)
	}
	form := around(best, at(box, sectionLow), deepest.PeriodS(t.LengthM))
	var ps []float64
	for _, w := range others {
		ps = append(ps, at(w, section))
	}
	t.Period = spread(best, product(form, around(best, ps...)))
}

func spread(best float64, s span) profile.Estimate {
	return profile.Estimate{Best: best, Low: best * s.low, High: best * s.high}
}

// displace works out the steady displacement and how much of it is reached. It is never
// more than all of the warm layer.
func (t *Tilt) displace(others []TwoLayers) {
	stress := Stress(t.WindMps, dragBest)
	best := t.Layers.EndM(stress, t.LengthM)
	var by []float64
	for _, w := range others {
		by = append(by, w.EndM(stress, t.LengthM))
	}
	open := 1 - shelterLost*math.Min(1, shelterM/t.LengthM)
	s := product(
		span{dragLow / dragBest, dragHigh / dragBest},
		span{square(1 - windOff), square(1 + windOff)},
		span{open, 1},
		aroundOr(best, by),
	)
	if t.WindMps == 0 {
		s = span{1, 1}
	}
	steady := spread(best, s)
	w := t.Layers.Wedderburn
	t.Wedderburn = profile.Estimate{Best: w(best), Low: w(steady.High), High: w(steady.Low)}
	t.Share = profile.Exactly(1)
	if t.BlownKnown {
		t.Share = profile.Estimate{Best: Share(t.AfterS, t.Period.Best), Low: Share(t.AfterS, t.Period.High), High: overshoot(t.AfterS, t.Period.Low)}
	}
	most := func(v float64) float64 { return math.Min(v, t.Layers.UpperM) }
	t.Steady = profile.Estimate{Best: most(best), Low: most(steady.Low), High: most(steady.High)}
	now := spread(best*t.Share.Best, product(s, aroundOr(t.Share.Best, []float64{t.Share.Low, t.Share.High})))
	t.End = profile.Estimate{Best: most(now.Best), Low: most(now.Low), High: most(now.High)}
	t.Rise = StaysDown
	switch full := t.Share.Best >= 1; {
	case t.WindMps > 0 && full && t.Wedderburn.Best <= riseW:
		t.Rise = Rises
	case t.WindMps > 0 && t.Wedderburn.Low <= riseW:
		t.Rise = MayRise
	}
}

// aroundOr is around, of what is there.
func aroundOr(best float64, others []float64) span {
	if best == 0 {
		return span{1, 1}
	}
	return around(best, others...)
}

// ends says where the thermocline lies at either end, from where it was read and the place
// of that: at the place itself as it was read, at the other end by twice the displacement
// away. Where the place is not known all of that is possible.
func (t *Tilt) ends(bottomM float64) {
	apart := func(steps span, best float64) profile.Estimate {
		return profile.Estimate{Best: best * t.End.Best, Low: steps.low * t.End.Low, High: steps.high * t.End.High}
	}
	up, down := apart(span{0, 2}, 1), apart(span{0, 2}, 1)
	switch t.At {
	case Upwind:
		up, down = apart(span{0, 0}, 0), apart(span{2, 2}, 2)
	case Middle:
		up, down = apart(span{1, 1}, 1), apart(span{1, 1}, 1)
	case Downwind:
		up, down = apart(span{2, 2}, 2), apart(span{0, 0}, 0)
	}
	z := t.Thermocline
	within := func(v float64) float64 { return math.Min(math.Max(v, 0), bottomM) }
	t.Up = profile.Estimate{
		Best: within(z.Best - up.Best),
		Low:  within(z.Best - up.Best - math.Hypot(z.Best-z.Low, up.High-up.Best)),
		High: within(z.Best - up.Best + math.Hypot(z.High-z.Best, up.Best-up.Low)),
	}
	t.Down = profile.Estimate{
		Best: within(z.Best + down.Best),
		Low:  within(z.Best + down.Best - math.Hypot(z.Best-z.Low, down.Best-down.Low)),
		High: within(z.Best + down.Best + math.Hypot(z.High-z.Best, down.High-down.Best)),
	}
}
