package unit

import (
	"fmt"
	"math"
	"strconv"
	"strings"
)

// System is the pair of units an angler thinks in; a part not stated is zero.
type System struct {
	Depth Length
	Temp  Temperature
}

// ParseSystem reads a pair of units in either order: "ft F", "m C", "metres C".
// One of the two alone is allowed; the other is left unstated.
func ParseSystem(s string) (System, error) {
	var sys System
	for _, word := range strings.FieldsFunc(s, func(r rune) bool { return r == ' ' || r == ',' || r == '/' || r == ';' }) {
		if l, ok := LengthNamed(word); ok && sys.Depth == NoLength && (l == Metre || l == Foot || l == Fathom || l == Yard || l == Centimetre) {
			sys.Depth = l
		} else if t, ok := TemperatureNamed(word); ok && sys.Temp == NoTemperature {
			sys.Temp = t
		} else {
			return System{}, fmt.Errorf("%q is not a pair of units: write e.g. \"ft F\" or \"m C\"", s)
		}
	}
	if sys == (System{}) {
		return System{}, fmt.Errorf("no units given: write e.g. \"ft F\" or \"m C\"")
	}
	return sys, nil
}

// String writes the pair as ParseSystem reads it.
func (s System) String() string {
	var words []string
	if s.Depth != NoLength {
		words = append(words, s.Depth.String())
	}
	if s.Temp != NoTemperature {
		words = append(words, s.Temp.String())
	}
	return strings.Join(words, " ")
}

// Shown is the system that answers are printed in: depths in feet or metres
// (fathoms and yards are read but not printed), Fahrenheit or Celsius.
func (s System) Shown() System {
	switch s.Depth {
	case Foot, Fathom, Yard:
		s.Depth = Foot
	default:
		s.Depth = Metre
	}
	if s.Temp == NoTemperature {
		s.Temp = Celsius
	}
	return s
}

// Feet reports whether depths are shown in feet.
func (s System) Feet() bool { return s.Shown().Depth == Foot }

// DepthStepM is the finest step that a depth is worth: a foot, or a quarter of a
// metre, as lines are marked.
func (s System) DepthStepM() float64 {
	if s.Feet() {
		return 0.3048
	}
	return 0.25
}

// Mark prints a depth without its unit: whole feet, or tenths of a metre, which
// is as fine as a marked line is read.
func (s System) Mark(metres float64) string {
	if s.Feet() {
		return strconv.FormatFloat(math.Round(Foot.From(metres))+0, 'f', 0, 64)
	}
	return strconv.FormatFloat(math.Round(metres*10)/10+0, 'f', -1, 64)
}

// Length is Mark with its unit: "14 ft", "4.3 m".
func (s System) Length(metres float64) string {
	return s.Mark(metres) + " " + s.Shown().Depth.String()
}

// Marked prints a depth as the line is marked: whole feet, or quarters of a metre, "4.75 m".
// One that is no mark is printed as Length does.
func (s System) Marked(metres float64) string {
	if n := metres / s.DepthStepM(); !s.Feet() && math.Abs(n-math.Round(n)) < 1e-3 {
		return Exact(math.Round(n)*s.DepthStepM()) + " m"
	}
	return s.Length(metres)
}

// Span prints a range of depths, "14 to 20 ft", one depth where both ends print
// alike.
func (s System) Span(from, to float64) string {
	a, b := s.Mark(from), s.Mark(to)
	if a == b {
		return s.Length(from)
	}
	return a + " to " + b + " " + s.Shown().Depth.String()
}

// Piece prints the length of a piece of leader, to half a foot or a tenth of a
// metre: "2 ft", "4.5 ft", "1.2 m".
func (s System) Piece(metres float64) string {
	if s.Feet() {
		return strconv.FormatFloat(math.Round(Foot.From(metres)*2)/2, 'f', -1, 64) + " ft"
	}
	return strconv.FormatFloat(math.Round(metres*10)/10, 'f', -1, 64) + " m"
}

// Degrees prints a temperature with its scale, to a degree Fahrenheit or half a
// degree Celsius: "66 F", "18.5 C".
func (s System) Degrees(c float64) string {
	if s.Shown().Temp == Fahrenheit {
		return strconv.FormatFloat(math.Round(Fahrenheit.FromC(c))+0, 'f', 0, 64) + " F"
	}
	return strconv.FormatFloat(math.Round(c*2)/2+0, 'f', -1, 64) + " C"
}

// Exact prints a value to the given digit step without trailing zeros, for
// echoing a reading as it was written.
func Exact(v float64) string {
	return strconv.FormatFloat(math.Round(v*1e6)/1e6+0, 'f', -1, 64)
}
