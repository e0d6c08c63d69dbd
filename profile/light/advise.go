package light

import (
	"math"
	"strings"
	"time"

	"coldseam/profile"
	"coldseam/profile/remark"
)

// Shift is which way the light moves the depth to fish within the band.
type Shift string

// The shifts.
const (
	None      Shift = "none"
	Shallower Shift = "shallower"
	Deeper    Shift = "deeper"
)

// Reason is the code of why; empty for None.
type Reason string

// The reasons, in the order in which they are asked for.
const (
	LowSun     Reason = "low-sun"     // shallower: dawn, dusk or night by the sky text, a sun under 20 degrees, or before 8 h or after 19 h
	Overcast   Reason = "overcast"    // shallower: cloud, rain, fog
	Chop       Reason = "chop"        // shallower: waves, or wind that makes them
	BrightCalm Reason = "bright-calm" // deeper: a clear sky, the sun at 45 degrees or from 10 to 16 h, and next to no wind
	NoEffect   Reason = "no-effect"   // none: for callers, where sky or hour were noted and Advise gives no reason
)

// The bounds, common practice. The wind of chop is the beginning of Beaufort 3, where
// crests begin to break (from memory).
const (
	lowUntilH, lowAfterH     = 8, 19
	brightFromH, brightTillH = 10, 16
	calmBelowMps             = 2.0
	chopFromMps              = 3.4
	// Where it is known how high the sun stands, that decides in place of the hour. These are
	// about what the hours mean in July at 45 degrees north by summer time, where they come
	// from: low at 8 h and at 19 h, high at 10 h and at 16 h.
	lowBelowDeg, brightFromDeg = 20, 45
)

// Sky is what the page says about the light.
type Sky struct {
	Date string           // "2026-07-18 14:20"; without a time of day the hour is not known
	Text string           // free words: clear, overcast, dusk, whitecaps
	Wind profile.Optional // m/s; negative or not a number counts as not known
	// SunDeg is how high the sun stood, degrees; it wins over the hour.
	SunDeg profile.Optional
}

// Advice is a shift with its reason.
type Advice struct {
	Shift Shift
	Why   Reason
}

// Advise says which way the light moves the depth. Words of the angler go before the
// clock, and a measured wind before "calm"; sun and cloud together, like chop and calm,
// cancel out, and what is not known moves nothing.
//
// That fish come up in low light and under a broken surface and go down under a bright
// sky is common practice, and untested: no data here can test it. So are the hours,
// which are those of the page's clock where the sun's elevation is not known.
func Advise(s Sky) Advice {
	has := remark.Sky(s.Text).Has
	sunny, covered := has(remark.Bright), has(remark.Cloud)
	if has(remark.Mixed) || sunny && covered {
		sunny, covered = false, false
	}
	windKnown := s.Wind.Known && s.Wind.Value >= 0 && !math.IsInf(s.Wind.Value, 1)
	choppy := has(remark.Chop) && !has(remark.Calm) || windKnown && s.Wind.Value >= chopFromMps
	still := has(remark.Calm)
	if windKnown {
		still = s.Wind.Value < calmBelowMps
	}
	low, high := s.height()
	switch {
	case has(remark.Low), low:
		return Advice{Shallower, LowSun}
	case covered:
		return Advice{Shallower, Overcast}
	case choppy:
		return Advice{Shallower, Chop}
	case sunny && still && !has(remark.Chop) && high:
		return Advice{Deeper, BrightCalm}
	}
	return Advice{Shift: None}
}

// Noted reports whether a sky or an hour was noted at all.
func (s Sky) Noted() bool { return strings.TrimSpace(s.Text) != "" || !math.IsNaN(hour(s.Date)) }

// height reports whether the sun stood low, or high.
func (s Sky) height() (low, high bool) {
	if s.SunDeg.Known {
		return s.SunDeg.Value < lowBelowDeg, s.SunDeg.Value >= brightFromDeg
	}
	h := hour(s.Date) // comparisons with NaN are false
	return h < lowUntilH || h > lowAfterH, h >= brightFromH && h <= brightTillH
}

// hour gives the time of day of a page's date in hours, NaN where there is none.
func hour(date string) float64 {
	t, err := time.Parse("2006-01-02 15:04", strings.TrimSpace(date))
	if err != nil {
		return math.NaN()
	}
	return float64(t.Hour()) + float64(t.Minute())/60
}

// How far a shift moves the start, common practice: a few feet, and no nearer to the
// band's shallow edge than a foot.
const (
	StepM = 3 * 0.3048
	edgeM = 0.3048
)

// Start moves startM, a depth to start at within the band from topM to bottomM, by a
// shift: Shallower up by StepM, to a foot under the shallow edge at the most; Deeper
// down by StepM, to the middle of the band at the most. A start that is already beyond
// that stays; one outside the band is put on its nearer edge first. Call it on the
// start as it was found: a second call moves again.
//
// That fish move by a few feet with the light is common practice, untested. Depths are
// m; a band that is not 0 <= topM <= bottomM, or what is not a number, gives NaN.
func Start(topM, bottomM, startM float64, shift Shift) float64 {
	if !(topM >= 0 && topM <= bottomM && !math.IsInf(bottomM, 1)) || math.IsNaN(startM) {
		return math.NaN()
	}
	startM = math.Min(math.Max(startM, topM), bottomM)
	switch shift {
	case Shallower:
		return math.Min(startM, math.Max(startM-StepM, topM+edgeM))
	case Deeper:
		return math.Max(startM, math.Min(startM+StepM, topM+(bottomM-topM)/2))
	}
	return startM
}
