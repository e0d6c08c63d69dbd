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
	OverWarm   Verdict = "over warm"   // what suits best lies over black mud: the warmer water above that, which the fish uses
	Smothered  Verdict = "smothered"   // its temperature suits only below the depth that black mud leaves in doubt
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
	Usual       *Usual // where the angler took this fish before; nil where that is not known
}

// Usual is a second opinion on the start.
type Usual struct {
	TempC   float64 // at which the fish was usually taken
	Weight  float64 // of that, from 0 to 1
	StopC   float64 // no warmer water is gone to, for the fish's sake
	FromToM float64 // nor deeper water than this from above it
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
	OverMud      Flaw = "over mud"      // its temperature suits, but black mud leaves little hope of oxygen
	Surer        Flaw = "surer"         // warmer than a coldwater fish likes, but more likely to hold oxygen, which was not measured
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
	// WithoutM is where the start would be without what was caught before; unknown where that
	// does not move it.
	WithoutM profile.Optional
	Unmoved  light.Advice      // what sky and hour asked for where the start did not follow, or that they ask for nothing
	Shelf    light.Shelf       // where the food shelf ends
	Weeds    *profile.Estimate // depth of the deepest weeds, where the Secchi depth was given
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

// Find finds the band.
func Find(in Input) Band {
	f := &finder{Input: in, k: in.Layers.Curve, sureM: math.Inf(1)}
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
	return f.fill(b, runs)
}
