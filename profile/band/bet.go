package band

import "math"

// Bet is which part of the band is the best bet for oxygen.
type Bet string

// The bets.
const (
	AllOfIt   Bet = "all of it"  // oxygen was measured, or is not in doubt
	UpperPart Bet = "upper part" // below the doubtful depth oxygen is unknown
	NoPart    Bet = "no part"    // oxygen is unknown in all of it
)

// BestBet gives the part of the printed band in which there is oxygen enough in most lakes,
// or was measured; the edges mean nothing for NoPart. A part thinner than is worth a word
// is none.
func (b Band) BestBet(deepestM float64) (topM, bottomM float64, bet Bet) {
	topM, bottomM = b.Safe(deepestM)
	if b.Oxygen || b.DoubtfulBelow == nil || bottomM-b.DoubtfulBelow.Best < WordM {
		return topM, bottomM, AllOfIt
	}
	if b.DoubtfulBelow.Best-topM < WordM {
		return 0, 0, NoPart
	}
	return topM, math.Min(bottomM, b.DoubtfulBelow.Best), UpperPart
}
