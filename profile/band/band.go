package band

import (
	"math"
	"slices"

	"coldseam/profile"
	"coldseam/profile/fish"
	"coldseam/profile/layers"
	"coldseam/profile/light"
)

// Verdict is why there is a band, or none.
type Verdict string

// The verdicts.
const (
	Good       Verdict = "good"        // water that suits
	Warmest    Verdict = "warmest"     // nothing reaches the comfort's low edge: the warmest layer is taken
	NotReached Verdict = "not reached" // too warm as far down as was read; it may be cooler below
	TooWarm    Verdict = "too warm"    // no depth of the lake is cool enough
	NoOxygen   Verdict = "no oxygen"   // the temperature suits somewhere, but without the oxygen
	Squeezed   Verdict = "squeezed"    // too warm as far as was read, and the oxygen measured ends above: deeper is no better
)

// Depths of common practice, metres.
const (
	PracticeM = 20 * 0.3048 // trout feed in water no deeper than this
	shelfM    = 4 * 0.3048  // the food shelf begins about here
	AssumedM  = 2 * 0.3048  // how far below the deepest reading its value is taken to hold
	intoBandM = 0.3048      // how far inside its shallow edge to start

	nearSurfaceM = 1.0 // a reading no deeper than this holds up to the surface
)

// Input is what a band is found from.
type Input struct {
	Column     profile.Column
	Layers     layers.Layers
	Fish       fish.Fish
	Bottom     profile.Optional // under the boat, m
	Deepest    profile.Optional // the lake's, m
	ClearanceM float64          // of the fly above the bottom
	Secchi     profile.Optional // depth, m
	Light      light.Advice     // which way sky and hour move the start
	// AnchorBlack says that the mud on the anchor is black or smells.
	AnchorBlack bool
}

// Interval is a run of depths that suits but for one thing.
type Interval struct {
	TopM, BottomM float64
	Why           Flaw
}

// Flaw is the code of why an interval is not the band.
type Flaw string

// The flaws.
const (
	Thinner      Flaw = "thinner"       // than the band
	LittleOxygen Flaw = "little oxygen" // its temperature suits
	Surer        Flaw = "surer"         // warmer than a coldwater fish likes, but surer of oxygen, which was not measured
)

// Band is the answer. Depths are metres below the surface.
type Band struct {
	Verdict      Verdict
	Found        bool
	Top, Bottom  profile.Estimate // meaningless unless Found
	Start        profile.Estimate // where to put the fly first
	CastShallowM float64          // least depth of water under the fly
	CastDeepM    float64          // greatest
	WaterM       float64          // depth of water to begin in: start plus the clearance, within the two
	Suspended    bool             // the fish keeps to open water: hang the fly at Start over deep water
	Oxygen       bool             // measured where it matters
	// DoubtfulBelow is where oxygen that was not measured may begin to be short: Best, at
	// the safe end, is the depth to print, and Low to High the 80 % interval of where it
	// does in a lake that runs short of it (package oxygen).
	DoubtfulBelow *profile.Estimate
	Others        []Interval

	ToSurface bool // the band reaches the surface
	ToDeepest bool // it reaches as far down as was read: it may go deeper
	Thin      bool // thinner than the doubt about its edges
	OverDeep  bool // deeper than common practice
	// Cold says that the water at the start is colder than the fish likes, so that warmer
	// water is the way to go, and the band's shallow edge no place of danger.
	Cold  bool
	Shift light.Advice
	Shelf light.Shelf       // where the food shelf ends
	Weeds *profile.Estimate // depth of the deepest weeds, where the Secchi depth was given
	// PlantsM is how deep light enough for plants reaches, m, where the Secchi depth was given.
	PlantsM float64

	// Where no band was found: the coolest water that was read, or, where OxygenToM is
	// known, the coolest of that which has the oxygen.
	CoolestC, CoolestM float64
	CoolFromM          profile.Optional // where water first is cool enough; unknown if nowhere
	OxygenToM          profile.Optional // of NoOxygen and Squeezed, where oxygen ends; unknown if it is short everywhere
}

// Safe gives the edges that are printed: the inner ones, fishable 8 times in 10; the
// middle ones where the band is too thin for those. What lies below the deepest reading,
// at deepestM, is assumed.
func (b Band) Safe(deepestM float64) (topM, bottomM float64) {
	topM, bottomM = b.Top.High, b.Bottom.Low
	if b.Thin {
		topM, bottomM = b.Top.Best, b.Bottom.Best
	}
	if b.ToDeepest {
		bottomM = math.Max(bottomM, deepestM)
	}
	return topM, bottomM
}

// Doubtful reports whether some of the band lies below the depth from where on oxygen may
// be short.
func (b Band) Doubtful() bool {
	return b.DoubtfulBelow != nil && b.DoubtfulBelow.Best < b.Bottom.Best
}

// Find finds the band.
func Find(in Input) Band {
	f := &finder{Input: in, k: in.Layers.Curve}
	b := Band{}
	if in.Column.Len() == 0 {
		b.Verdict = NotReached
		return b
	}
	f.extent()
	runs := f.runs(f.suits)
	if len(f.oxygenZ) > 0 { // squeezed to less than is worth a word, it is no water to fish
		runs = slices.DeleteFunc(runs, func(r run) bool { return r.thick() < WordM })
	}
	if len(runs) == 0 {
		return f.noBand(b)
	}
	b.Verdict, b.Found = Good, true
	f.fill(&b, runs)
	return b
}

// finder works on one input.
type finder struct {
	Input
	k         *layers.Curve
	from, to  float64 // the depths that answers may reach into
	oxygenZ   []float64
	oxygenV   []float64
	low, high float64 // comfort range that counts; low is -Inf for coldwater fish
}

// Reach is how far readings are taken to hold, m: up to the surface where the first is
// within a metre of it, and 2 ft below the last (assumed).
func Reach(k *layers.Curve) (fromM, toM float64) {
	if fromM = k.Top(); fromM <= nearSurfaceM {
		fromM = 0
	}
	return fromM, k.Bottom() + AssumedM
}

// extent sets the depths that answers may reach into: as far as readings hold, but below
// the bottom only where a reading was taken there.
func (f *finder) extent() {
	f.from, f.to = Reach(f.k)
	for _, limit := range []profile.Optional{f.Bottom, f.Deepest} {
		if limit.Known {
			f.to = math.Max(f.k.Bottom(), math.Min(f.to, limit.Value))
		}
	}
	for _, p := range f.Column.Points() {
		if p.Oxygen.Known {
			f.oxygenZ = append(f.oxygenZ, p.DepthM)
			f.oxygenV = append(f.oxygenV, p.Oxygen.Value)
		}
	}
	f.high = f.Fish.ComfortHighC.Value
	f.low = math.Inf(-1)
	if f.Fish.Kind != fish.Coldwater {
		f.low = f.Fish.ComfortLowC.Value
	}
}

// oxygenOK reports whether a depth has the oxygen the fish needs, as far as it was
// measured: straight lines between readings, the first value up to the surface when
// it was read within a metre of it, and below the last one the water is taken to be
// no better than there.
func (f *finder) oxygenOK(z float64) bool {
	n := len(f.oxygenZ)
	if n == 0 {
		return true
	}
	need := f.Fish.OxygenMgL.Value
	switch {
	case z <= f.oxygenZ[0]:
		return f.oxygenV[0] >= need || f.oxygenZ[0] > nearSurfaceM
	case z >= f.oxygenZ[n-1]:
		return f.oxygenV[n-1] >= need
	}
	for i := 1; i < n; i++ {
		if z <= f.oxygenZ[i] {
			share := (z - f.oxygenZ[i-1]) / (f.oxygenZ[i] - f.oxygenZ[i-1])
			return f.oxygenV[i-1]+share*(f.oxygenV[i]-f.oxygenV[i-1]) >= need-1e-9
		}
	}
	return true
}

func (f *finder) cool(z float64) bool { return f.k.At(z) <= f.high+1e-9 }

func (f *finder) warm(z float64) bool { return f.k.At(z) >= f.low-1e-9 }

func (f *finder) suits(z float64) bool { return f.cool(z) && f.warm(z) && f.oxygenOK(z) }

// edge is a depth where what suits begins or ends.
type edge struct {
	depthM float64
	byTemp bool    // a crossing of levelC; else of oxygen, or an end of what was read
	levelC float64 // the temperature crossed
	end    bool    // the surface or the deepest depth an answer may reach
}

// run is an unbroken run of depths.
type run struct{ top, bottom edge }

func (r run) thick() float64 { return r.bottom.depthM - r.top.depthM }

// runs finds the runs of depths between from and to for which ok holds: the places
// where anything can change are the readings, and the crossings between them.
func (f *finder) runs(ok func(float64) bool) []run {
	cuts := f.cuts()
	var out []run
	for i := 0; i+1 < len(cuts); i++ {
		if !ok((cuts[i].depthM + cuts[i+1].depthM) / 2) {
			continue
		}
		if n := len(out); n > 0 && out[n-1].bottom.depthM == cuts[i].depthM {
			out[n-1].bottom = cuts[i+1]
		} else {
			out = append(out, run{cuts[i], cuts[i+1]})
		}
	}
	return out
}

// none says why there is no band.
func (f *finder) noBand(b Band) Band {
	b.CoolestM, b.CoolestC = f.coolest(func(float64) bool { return true })
	cool, breathable := f.runs(f.cool), f.runs(f.oxygenOK)
	if len(cool) > 0 {
		b.CoolFromM = profile.Some(cool[0].top.depthM)
	}
	spent := len(f.oxygenZ) > 0 && !f.oxygenOK(f.to) // no better below, see oxygenOK
	switch {
	case len(cool) > 0 && f.low > math.Inf(-1) && len(breathable) > 0 && !f.anyWarm():
		return f.warmest(b)
	case len(cool) > 0:
		return f.tooLittleOxygen(b, NoOxygen, breathable)
	case spent:
		return f.tooLittleOxygen(b, Squeezed, breathable)
	case f.Deepest.Known && f.Deepest.Value <= f.k.Bottom()+AssumedM+1e-9:
		b.Verdict = TooWarm
	default:
		b.Verdict = NotReached
	}
	return b
}

// starve says that measured oxygen leaves no band, and what the water that has it is like.
func (f *finder) tooLittleOxygen(b Band, v Verdict, breathable []run) Band {
	b.Verdict, b.Oxygen = v, true
	if n := len(breathable); n > 0 {
		b.CoolestM, b.CoolestC = f.coolest(f.oxygenOK)
		b.OxygenToM = profile.Some(breathable[n-1].bottom.depthM)
	}
	return b
}

// anyWarm reports whether any water reaches the comfort's low edge.
func (f *finder) anyWarm() bool { return len(f.runs(f.warm)) > 0 }

// warmest takes the warmest water that there is, for a fish to whom all of it is
// too cold: within half a degree of the warmest, with the oxygen.
func (f *finder) warmest(b Band) Band {
	most := math.Inf(-1)
	for _, z := range f.depths() {
		if f.oxygenOK(z) {
			most = math.Max(most, f.k.At(z))
		}
	}
	f.low = most - 0.5
	runs := f.runs(f.suits)
	if len(runs) == 0 {
		return f.tooLittleOxygen(b, NoOxygen, nil)
	}
	b.Verdict, b.Found = Warmest, true
	f.fill(&b, runs)
	return b
}

// coolest gives the depth and temperature of the coolest water for which ok holds, among
// the readings and the depths where anything changes.
func (f *finder) coolest(ok func(float64) bool) (depthM, tempC float64) {
	tempC = math.Inf(1)
	at := slices.Clone(f.k.Depths)
	for _, c := range f.cuts() {
		at = append(at, c.depthM)
	}
	for _, z := range at {
		if t := f.k.At(z); t < tempC-1e-9 && ok(z) {
			depthM, tempC = z, t
		}
	}
	return depthM, tempC
}
