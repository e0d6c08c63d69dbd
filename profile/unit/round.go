package unit

import (
	"math"
	"strconv"
)

// RoundTo rounds a value to so many decimals, halves away from zero; a nought has no sign.
func RoundTo(v float64, decimals int) float64 {
	k := math.Pow10(decimals)
	return math.Round(v*k)/k + 0
}

// Digits prints a value to at most so many decimals, without noughts at its end.
func Digits(v float64, decimals int) string {
	return strconv.FormatFloat(RoundTo(v, decimals), 'f', -1, 64)
}
