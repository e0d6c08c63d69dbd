// Package fish says what each fish of a stillwater needs of temperature and
// oxygen, every figure with the source it was taken from.
//
// It is a table and a way to find a name in it. It does not decide where a fish is
// (package band does), does not hold an angler's own figures (package settings
// does) and does not speak of handling or of rules on the water; it only carries
// the two facts those need, whether a fish is of the salmon family and whether it
// can let gas out of its swim bladder.
//
// Published figures for one fish differ by several degrees: with age, season, food
// and method. One is chosen, its source stands beside it, and the Note says what
// others found. A figure nobody here has seen in print says "from memory", one that
// anglers' charts agree on says "common practice", and one not known is left blank
// rather than guessed.
package fish

import "strconv"

// Kind is the group of a fish by the water it seeks.
//
// For a Coldwater fish ComfortLowC is only information: colder water does not keep
// it away. For the other kinds both edges of the comfort range count.
type Kind int

// The kinds, in the order of All.
const (
	Coldwater Kind = iota // trout, char, salmon, grayling, whitefish
	Coolwater             // walleye, perch, pike, smallmouth bass
	Warmwater             // largemouth bass, sunfish
)

// String returns the kind as a word for people, "coldwater".
func (k Kind) String() string {
	switch k {
	case Coldwater:
		return "coldwater"
	case Coolwater:
		return "coolwater"
	case Warmwater:
		return "warmwater"
	}
	return "kind " + strconv.Itoa(int(k))
}

// Figure is one number and where it comes from. The zero Figure is one not known.
type Figure struct {
	Value  float64 // meaningless unless Known
	Known  bool
	Source string // "Author year, journal", "common practice" or "from memory (...)"; under 70 characters, empty when not Known
}

// Fish is one kind of fish and its needs. Temperatures are degrees Celsius within 0
// to 40, oxygen milligrams per litre within 0 to 12. Where known, the figures keep
// the order ComfortLowC < ComfortHighC <= UpperUseC, with OptimumC inside the
// comfort range. The comfort range and the oxygen are known for every fish.
type Fish struct {
	Key        string   // the short name people type, "rainbow"; lower case
	Name       string   // the full name, "rainbow trout"
	Scientific string   // genus and species
	Aliases    []string // other names Find knows
	Kind       Kind
	Salmonid   bool // trout, char, salmon, grayling or whitefish: warm water makes release unsafe
	OpenWater  bool // it feeds in open water, not over the bottom (common practice)
	CanVent    bool // its swim bladder has a duct to the throat, so it can let gas out on the way up

	ComfortLowC  Figure // colder than this it is found less, see Kind
	ComfortHighC Figure // warmer than this it is found less
	UpperUseC    Figure // the warmest water it has been found to use or to bear for days
	OptimumC     Figure // best growth, or the temperature it chooses
	OxygenMgL    Figure // the least oxygen of water worth fishing; not the lethal limit

	Note string // what other sources say, and doubts
}

// All returns every fish, coldwater first, then coolwater, then warmwater, always
// in the same order. The slice and all in it are the caller's own.
func All() []Fish {
	return append(coldwater(), warmer()...)
}

// known is a figure seen in the named source.
func known(value float64, source string) Figure {
	return Figure{Value: value, Known: true, Source: source}
}

// recalled is a figure known from memory only; what names the publication.
func recalled(value float64, what string) Figure {
	return known(value, "from memory ("+what+")")
}

// practice is a figure of anglers' charts, which give whole degrees Fahrenheit:
// here to 0.1 C, close enough to come back as the same whole degree.
func practice(value float64) Figure {
	return known(value, "common practice")
}

// LimitsC gives the temperatures at which water that suits the fish begins or ends:
// for a Coldwater fish the upper one alone.
func (f Fish) LimitsC() []float64 {
	if f.Kind == Coldwater {
		return []float64{f.ComfortHighC.Value}
	}
	return []float64{f.ComfortHighC.Value, f.ComfortLowC.Value}
}
