package light

import (
	"math"

	"coldseam/profile"
	"coldseam/profile/remark"
)

// The Secchi depths that are answered for, m: from thick green water to very clear
// lakes.
const (
	MinSecchiM = 0.05
	MaxSecchiM = 40.0
)

// known gives a Secchi depth back, NaN where it is outside the range.
func known(secchiM float64) float64 {
	if !(secchiM >= MinSecchiM && secchiM <= MaxSecchiM) {
		return math.NaN()
	}
	return secchiM
}

// Extinction returns the coefficient in 1/m by which light fades with depth, 1.7 over
// the Secchi depth in metres. In turbid water the factor is lower: 1.44 (Holmes 1970,
// from memory).
//
// Source: Poole & Atkins 1929, from memory.
func Extinction(secchiM float64) float64 { return 1.7 / known(secchiM) }

// OnePercentM returns the depth in m that 1 % of the light at the surface reaches,
// by a rule of thumb the least that plants can live on: 2.71 times the Secchi depth. It
// follows from Extinction alone.
func OnePercentM(secchiM float64) float64 { return math.Log(100) / Extinction(secchiM) }

// The two lines of Caffrey et al. 2007 on log10 of the Secchi depth in m: the fit of
// the deepest weeds, with its R2, and the outer envelope.
const (
	fitSlope, fitAt1M           = 0.66, 0.31
	fitR2                       = 0.68
	envelopeSlope, envelopeAt1M = 0.53, 0.59
)

// What makes a spread of the fit. secchiSpread is the standard deviation of log10 of
// the Secchi depth over the lakes of the fit, an assumption: two lakes of three are
// within a factor of two of the middle. z80 is the normal distribution's half 80 %.
const (
	secchiSpread = 0.30
	z80          = 1.2815515655446004
)

// halfSpread is half the 80 % interval in log10 of the depth.
var halfSpread = z80 * fitSlope * secchiSpread * math.Sqrt(1/fitR2-1)

// Weeds returns the depth in m of a lake's deepest weeds.
//
// Source: Caffrey et al. 2007, 187 lakes of Florida: log10 of it is 0.66 log10 of the
// Secchi depth + 0.31, R2 0.68. From 0.5 to 10 m of Secchi depth two other authors'
// lines lie within the interval; below 0.35 m and above 20 m one of them does not, and
// the answer is only the line extended.
//
// The interval is partly an assumption, as the fit's scatter is not at hand. For a
// straight line of slope b, the standard deviation about it is b s sqrt(1/R2 - 1),
// where s is that of log10 of the Secchi depths; s is assumed to be 0.30 and the
// scatter normal, which gives a factor of 1.49 either way. It agrees with the envelope,
// which then has 96 % of lakes of 2 m Secchi depth under it. The upper end is never
// above the envelope.
func Weeds(secchiM float64) profile.Estimate {
	x := math.Log10(known(secchiM))
	y := fitSlope*x + fitAt1M
	return profile.Estimate{
		Best: math.Pow(10, y),
		Low:  math.Pow(10, y-halfSpread),
		High: math.Min(math.Pow(10, y+halfSpread), WeedsMostM(secchiM)),
	}
}

// WeedsMostM returns the depth in m that weeds hardly ever grow below: the envelope
// over nearly all lakes of Caffrey et al. 2007.
func WeedsMostM(secchiM float64) float64 {
	return math.Pow(10, envelopeSlope*math.Log10(known(secchiM))+envelopeAt1M)
}

// TSI returns Carlson's trophic state index by the Secchi depth: 60 at 1 m, 10 less for
// each doubling.
//
// Source: Carlson 1977, from memory.
func TSI(secchiM float64) float64 { return 60 - 14.41*math.Log(known(secchiM)) }

// Richness is how much the water grows, in a word.
type Richness string

// The classes of TSI, from memory: under 40, to 50, to 60, and over.
const (
	Unknown     Richness = ""
	Clear       Richness = "clear"
	Middling    Richness = "middling"
	Fertile     Richness = "fertile"
	VeryFertile Richness = "very fertile"
)

// Noted is the class of the Secchi depth where one was measured, else what the words for
// the water's colour say of it: clear, or green and so fertile.
func Noted(secchi profile.Optional, colour string) Richness {
	switch words := remark.Colour(colour); {
	case secchi.Known:
		return RichnessOf(secchi.Value)
	case words.Has(remark.ClearWater):
		return Clear
	case words.Has(remark.GreenWater):
		return Fertile
	}
	return Unknown
}

// RichnessOf names the class of a Secchi depth's TSI, Unknown outside the range.
func RichnessOf(secchiM float64) Richness {
	switch tsi := TSI(secchiM); {
	case math.IsNaN(tsi):
		return Unknown
	case tsi < 40:
		return Clear
	case tsi < 50:
		return Middling
	case tsi <= 60:
		return Fertile
	}
	return VeryFertile
}
