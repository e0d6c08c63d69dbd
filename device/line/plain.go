package line

import "coldseam/profile/plain"

// ScanNumber reads a number from the start of b: an optional sign and digits with an
// optional decimal part after the byte point. It returns how many bytes it took, 0
// where b does not begin with a number. Exponents, NaN and infinities are none.
func ScanNumber(b []byte, point byte) (v float64, n int) { return scanNumber(b, point) }

// CheckTempC refuses a temperature in degrees Celsius that stands for a fault (85 and
// -127 exactly, 999, 8888, 9999) or lies outside -5 to 50.
func CheckTempC(c float64) error { return checkTempC(c) }

// CheckDepthM refuses a probe's depth in metres that stands for a fault or lies
// outside -2 to 1000.
func CheckDepthM(m float64) error { return checkDepthM(m) }

// Shown quotes bytes of a line for a message: at most 40 of its characters.
func Shown(b []byte) string { return plain.Quote(string(b), 40) }
