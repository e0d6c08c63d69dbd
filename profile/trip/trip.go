// Package trip says what to expect of a water on a day to come, before anything was read
// there, and what to take along: the thermocline and the fish's band with their spread, the
// leaders to tie at home, the line to mark, the anchor's rope.
//
// It expects by the best of what there is: a forecast from this season's drops (package
// forecast), drops of the same fortnight of other years, or what measured lakes of that
// depth do in summer. The last two have intervals of 80 % that were fitted on some lakes
// and hold on others (this package's tests); nothing of them is as good as a drop.
package trip

import (
	"time"

	"coldseam/profile"
	"coldseam/profile/layers"
)

// Drop is one drop of the water, and what its plan said for the fish of the trip.
type Drop struct {
	When   time.Time
	Layers layers.Layers
	Ice    bool
	Edge   profile.Optional // where the band begins, m; unknown where it reaches the surface or there is none
	WaterM profile.Optional // the depth of water to begin over, m; unknown without a band
}

// Input is what is known before the trip.
type Input struct {
	Day        time.Time
	Drops      []Drop           // of the water, of all years, in any order
	Latitude   profile.Optional // degrees; the north is taken where it is not known
	Deepest    profile.Optional // the lake's deepest known water, m
	Length     profile.Optional // of the lake, m
	Secchi     profile.Optional // m
	LimitC     profile.Optional // at which the band of a coldwater fish ends upward; unknown for others
	ClearanceM float64          // of the fly above the bottom
}

// Learn takes what a page says of the water, where it is not known yet; the first to say
// something wins, but for the deepest water, which is the deepest of all that is noted.
func (in *Input) Learn(d profile.Drop) {
	for _, k := range []struct{ known, said *profile.Optional }{
		{&in.Latitude, &d.Latitude}, {&in.Length, &d.LakeLength}, {&in.Secchi, &d.Secchi},
	} {
		if !k.known.Known {
			*k.known = *k.said
		}
	}
	for _, z := range []profile.Optional{d.Deepest, d.Bottom} {
		if z.Known && z.Value > in.Deepest.Or(0) {
			in.Deepest = z
		}
	}
}

// State is what kind of water is expected.
type State string

// The states.
const (
	Layered  State = "layered"
	OneLayer State = "one layer" // from top to bottom, or no more than a warm skin
	Iced     State = "ice"       // or ice is likely
	Unsure   State = "unsure"    // one layer or several: nothing says which
)

// Source is what it is expected by.
type Source string

// The sources.
const (
	Season Source = "season" // a forecast from this season's drops
	Years  Source = "years"  // drops of that fortnight, of other years or of the last weeks
	Lakes  Source = "lakes"  // measured lakes of that depth, in summer
	Length Source = "length" // a rule of thumb by the lake's length: no measured lakes bear out its spread
	Month  Source = "month"  // the time of the year alone
)

// Expectation is what to expect. Depths are m; the estimates have their 80 % interval.
type Expectation struct {
	State State
	From  Source
	Drops int       // that it comes from, of Season and Years
	Years int       // in which they were taken, of Years
	Last  time.Time // the last of them

	Thermocline *profile.Estimate // of Layered
	// Edge is where the fish's band begins; nil where it is likely to reach the surface.
	Edge     *profile.Estimate
	MaybeTop bool // the water may have cooled enough right to the top
	// Water is the depth of water under the fly to begin over, by common practice alone
	// where WaterTaken; nil under ice, and where the band may begin deeper than the lake goes.
	Water      *profile.Estimate
	WaterTaken bool
	TooWarm    bool             // the band is likely to begin deeper than the lake goes
	EdgeUnsure bool             // it may: Edge ends at the lake's deepest water
	MixedC     profile.Optional // temperature of the upper water, of Season
}

// Unknown is the error where nothing is known of the water, or no more than a length that
// the rule of thumb does not speak for.
type Unknown struct{ Length bool }

func (u Unknown) Error() string {
	if u.Length {
		return "its length is not one that the rule speaks for"
	}
	return "nothing is known of this water"
}

// Lengths of lakes that the rule of thumb speaks for, m (an assumption).
const (
	LeastLengthM = 50.0
	MostLengthM  = 20000.0
)

// Depths of common practice, m: how far into the band the fly begins, and between which
// depths of water trout feed on the shelf.
const (
	intoBandM  = 0.3048
	shelfFromM = 8 * 0.3048
	shelfToM   = 20 * 0.3048
)

// Expect says what to expect, or Unknown.
func Expect(in Input) (Expectation, error) {
	e, ok := in.season()
	if !ok {
		e, ok = in.years()
	}
	switch {
	case ok:
	case in.winter():
		e = Expectation{State: Iced, From: Month}
	case !in.Deepest.Known && !in.lengthCounts():
		return e, Unknown{Length: in.Length.Known}
	default:
		e = in.lakes()
	}
	if e.State != Iced {
		in.water(&e)
	}
	return e, nil
}

// water sets the depth of water to begin over where it is not set: a foot into the band,
// else the food shelf.
func (in Input) water(e *Expectation) {
	switch {
	case e.Edge != nil:
		add := intoBandM + in.ClearanceM
		e.Water = &profile.Estimate{Best: e.Edge.Best + add, Low: e.Edge.Low + add, High: e.Edge.High + add}
	case e.Water == nil:
		e.WaterTaken = true
		e.Water = &profile.Estimate{Best: (shelfFromM + shelfToM) / 2, Low: shelfFromM, High: shelfToM}
		if e.Thermocline != nil { // over the warm layer's own bottom
			e.Water.High = min(shelfToM, max(shelfFromM, e.Thermocline.Best))
			e.Water.Best = (e.Water.Low + e.Water.High) / 2
		}
	}
	if !in.Deepest.Known {
		return
	}
	if e.TooWarm = e.Edge != nil && e.Edge.Best+intoBandM > in.Deepest.Value; e.TooWarm {
		e.Water = nil
		return
	}
	deepest := in.Deepest.Value
	if e.Edge != nil && e.Edge.High > deepest {
		e.EdgeUnsure = true
		in.within(e.Edge)
	}
	*e.Water = profile.Estimate{Best: min(e.Water.Best, deepest), Low: min(e.Water.Low, deepest), High: min(e.Water.High, deepest)}
}

// south reports whether the seasons are half a year apart.
func (in Input) south() bool { return in.Latitude.Known && in.Latitude.Value < 0 }

// yearDay is the day of a year that has its summer in the middle.
func (in Input) yearDay(t time.Time) (year int, day float64) {
	if in.south() {
		t = t.AddDate(0, 0, 182)
	}
	return t.Year(), float64(t.YearDay())
}

// iceFromDeg: nearer to the equator lakes hardly freeze, but on mountains (from memory).
const iceFromDeg = 38

func (in Input) lengthCounts() bool {
	return in.Length.Known && in.Length.Value >= LeastLengthM && in.Length.Value <= MostLengthM
}

// winter reports whether lakes may be under ice: December to March of the north.
func (in Input) winter() bool {
	if in.Latitude.Known && in.Latitude.Value < iceFromDeg && in.Latitude.Value > -iceFromDeg {
		return false
	}
	_, day := in.yearDay(in.Day)
	return day >= 335 || day <= 90
}
