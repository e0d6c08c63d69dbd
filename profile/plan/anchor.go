package plan

import (
	"math"

	"coldseam/profile/band"
)

// What a reading at the fly, or a cast without a take, asks for depends on the side of
// the fish's range on which the water lies. Under a warm edge warmer is too warm, and the
// way out is down. Where the water is colder than the fish likes, warmer is what it looks
// for, wherever that is.

// AtFly is what one reading at the fly's depth should show, and what to do when it shows
// something else.
type AtFly struct {
	DepthM      float64 // of the fly
	LowC, HighC float64 // as Expected gives them
	Turn        Turn
	PerDegreeM  float64 // how far up or down a degree is, m per C; 0 where the water hardly changes
}

// Turn is the code of what to do when the water at the fly is not as expected.
type Turn string

// The turns.
const (
	NoTurn         Turn = ""                // stay
	WarmerAside    Turn = "warmer aside"    // colder than the fish likes, and no warmer within reach above or under the fly: look elsewhere
	WarmerAbove    Turn = "warmer above"    // colder than it likes, and warmer above the fly
	WarmerUnder    Turn = "warmer under"    // colder than it likes, and warmer under the fly
	TooWarmAbove   Turn = "too warm above"  // warmer: go down; colder: up by as much
	NoOxygenAbove  Turn = "no oxygen above" // all that the fish likes will do, but not over the band
	AllComfort     Turn = "all comfort"     // all that the fish likes will do
	CoolingComfort Turn = "cooling comfort" // it will, and the water cools with depth: colder up, too warm down
)

// FlyM is the depth at which the fly fishes first, m.
func (p *Plan) FlyM() float64 {
	if p.Rig != nil {
		return p.Rig.FlyM
	}
	return p.Band.Start.Best
}

// Expected is the temperature range to expect at a depth: in 80 % of the columns that
// the readings allow, and with the error of the reading that is to come.
func (p *Plan) Expected(depthM float64) (lowC, highC float64) {
	e := p.Layers.Curve.TempInterval(depthM)
	err := 0.8 * p.Drop.PrecisionC()
	return e.Best - math.Hypot(e.Best-e.Low, err), e.Best + math.Hypot(e.High-e.Best, err)
}

// AtFly says what a reading at the fly's depth should show.
func (p *Plan) AtFly() AtFly {
	a := AtFly{DepthM: p.FlyM()}
	a.LowC, a.HighC = p.Expected(a.DepthM)
	fall := p.fallAt(a.DepthM)
	steep := math.Abs(fall) >= steepCPerM
	if steep {
		a.PerDegreeM = 1 / math.Abs(fall)
	}
	switch {
	case p.UnderIce(), p.Band.Verdict == band.OverWarm:
	case p.Band.Cold && !steep:
		a.Turn = WarmerAside
	case p.Band.Cold && fall > 0 && a.PerDegreeM > a.DepthM: // there is not so much water above
		a.Turn, a.PerDegreeM = WarmerAside, 0
	case p.Band.Cold && fall > 0:
		a.Turn = WarmerAbove
	case p.Band.Cold:
		a.Turn = WarmerUnder
	case p.warmEdge() && steep:
		a.Turn = TooWarmAbove
	case p.warmEdge():
	case p.oxygenEdge():
		a.Turn = NoOxygenAbove
	case steep && fall > 0:
		a.Turn = CoolingComfort
	default:
		a.Turn = AllComfort
	}
	return a
}

// warmEdge reports whether the band ends upward at water too warm for the fish.
func (p *Plan) warmEdge() bool {
	b := p.Band
	return !b.ToSurface && b.Verdict != band.Warmest && p.Layers.Curve.At(b.Top.Best) > p.Fish.ComfortHighC.Value-0.1
}

// oxygenEdge reports whether the band ends upward at water that has too little of the
// oxygen that was measured.
func (p *Plan) oxygenEdge() bool {
	for _, o := range p.Band.Others {
		if p.Band.Oxygen && o.Why == band.LittleOxygen && math.Abs(o.BottomM-p.Band.Top.Best) < 1e-6 {
			return true
		}
	}
	return false
}

// steepCPerM: where the water changes by less, a step up or down finds no other
// temperature.
const steepCPerM = 0.5

// fallAt is how fast the water cools with depth about a depth, C per metre.
func (p *Plan) fallAt(depthM float64) float64 {
	k := p.Layers.Curve
	return k.At(depthM-0.5) - k.At(depthM+0.5)
}

// Way is the code of which way to go first when nothing takes, and why.
type Way string

// The ways.
const (
	AnyWay     Way = ""
	UpOxygen   Way = "up, oxygen"   // late in winter oxygen fails from the bottom up
	UpWarmer   Way = "up, warmer"   // the warmer water is there
	DownWarmer Way = "down, warmer" // the warmer water is there
	DownOxygen Way = "down, oxygen" // over the band there is too little
	DownCooler Way = "down, cooler" // over the band it is too warm
)

// FirstWay says which way to go first when nothing takes.
func (p *Plan) FirstWay() Way {
	up, down := p.warmer()
	switch b := p.Band; {
	case p.UnderIce() && !b.Oxygen:
		return UpOxygen
	case b.Cold && up:
		return UpWarmer
	case b.Cold && down:
		return DownWarmer
	case p.oxygenEdge():
		return DownOxygen
	case p.warmEdge():
		return DownCooler
	}
	return AnyWay
}

// warmer says whether warmer water of the band lies over the fly, or under it.
func (p *Plan) warmer() (up, down bool) {
	k, b, z := p.Layers.Curve, p.Band, p.FlyM()
	const feltC = 0.5
	for _, at := range k.Depths {
		if at >= b.Top.Best-1e-9 && at <= b.Bottom.Best+1e-9 && k.At(at) > k.At(z)+feltC {
			up, down = up || at < z, down || at > z
		}
	}
	return up, down
}

// Alike gives the range of temperatures that were used, and whether a step up or down finds
// no other water anywhere.
func (p *Plan) Alike() (coldC, warmC float64, alike bool) {
	coldC = p.ColdestC()
	warmC = coldC
	for _, q := range p.Column.Points() {
		warmC = math.Max(warmC, q.TempC)
	}
	const alikeC = 1
	return coldC, warmC, warmC-coldC <= alikeC
}

// OxygenToM is the depth of the deepest oxygen reading, m; 0 where there is none.
func (p *Plan) OxygenToM() (depthM float64) {
	for _, q := range p.Column.Points() {
		if q.Oxygen.Known {
			depthM = q.DepthM
		}
	}
	return depthM
}

// OverMud is where black mud cuts the band or leaves none, m.
func (p *Plan) OverMud() (depthM float64, ok bool) {
	for _, o := range p.Band.Others {
		if o.Why == band.OverMud {
			return p.Band.DoubtfulBelow.Best, true
		}
	}
	return 0, false
}

// Bottom is the code of how the bottom under the boat suits the water to cast over.
type Bottom string

// The bottoms.
const (
	BottomFits       Bottom = ""            // or it is not known, or the fish keep to open water
	BottomTooDeep    Bottom = "too deep"    // by more than 2 ft: go shallower, or hang the fly
	BottomTooShallow Bottom = "too shallow" // by more than a foot: go deeper
)

// UnderBoat says how the bottom under the boat suits the water to cast over.
func (p *Plan) UnderBoat() Bottom {
	const deeperM, shallowerM = 0.61, 0.3 // a little more, for feet turned into metres
	switch b, at := p.Band, p.Drop.Bottom; {
	case !at.Known || b.Suspended:
	case at.Value > b.CastDeepM+deeperM:
		return BottomTooDeep
	case at.Value < b.CastShallowM-shallowerM:
		return BottomTooShallow
	}
	return BottomFits
}

// DeeperHere reports whether there is deeper water under the boat than was read.
func (p *Plan) DeeperHere() bool {
	const worthM = 1
	return p.Drop.Bottom.Known && p.Drop.Bottom.Value > p.Column.Last().DepthM+worthM
}

// ColdestC is the coldest reading used, C.
func (p *Plan) ColdestC() float64 {
	t := p.Column.First().TempC
	for _, q := range p.Column.Points() {
		t = min(t, q.TempC)
	}
	return t
}
