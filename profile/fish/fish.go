// Package fish says what each fish of a stillwater needs of temperature and
// oxygen, every figure with the source it was taken from.
//
// It is a table, fish.toml, and a way to find a name in it, or among an angler's own
// fishes, which package settings reads: both are written as Entry says. It does not decide
// where a fish is (package band does), does not read files and does not speak of handling or of rules on the water; it only carries
// the two facts those need, whether a fish is of the salmon family and whether it
// can let gas out of its swim bladder.
//
// Published figures for one fish differ by several degrees: with age, season, food
// and method. One is chosen, its source stands beside it, and the Note says what
// others found. A figure nobody here has seen in print says "from memory", one that
// anglers' charts agree on says "common practice", and one not known is left blank
// rather than guessed. Where only the temperature that a fish chooses was published,
// its comfort range is taken as 2 C to either side of it, as thermal niches are.
package fish

import (
	"slices"
	"strconv"
)

// Usual is the fish that is meant where none is named.
const Usual = "rainbow"

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
// the order LowerUseC <= ComfortLowC < ComfortHighC <= UpperUseC <= LethalC, with
// OptimumC inside the comfort range, and OxygenLeastMgL <= OxygenMgL: Misplaced finds
// where they do not. The comfort range and OxygenMgL are known for every fish.
type Fish struct {
	Key        string   // the short name people type, "rainbow"; lower case
	Name       string   // the full name, "rainbow trout"
	Scientific string   // genus and species, of both parents for a cross; "" where not known
	Aliases    []string // other names Find knows
	Kind       Kind
	Salmonid   bool   // trout, char, salmon, grayling or whitefish: warm water makes release unsafe
	OpenWater  bool   // it feeds in open water, not over the bottom (common practice)
	CanVent    bool   // its swim bladder has a duct to the throat, so it can let gas out on the way up
	Teeth      bool   // it bites through tippet (common practice)
	FlyG       Figure // g, of a fly usual for it

	LowerUseC      Figure // the coldest water in which it was found to keep, to feed well or to grow
	ComfortLowC    Figure // colder than this it is found less, see Kind
	OptimumC       Figure // best growth, or the temperature it chooses
	ComfortHighC   Figure // warmer than this it is found less
	UpperUseC      Figure // the warmest water it has been found to use or to bear for days
	LethalC        Figure // half of them die there in some days or weeks; of a publication only
	OxygenLeastMgL Figure // the least oxygen of water it was found to use; not the lethal limit
	OxygenMgL      Figure // the least oxygen of water worth fishing

	Note string // what other sources say, and doubts; a temperature in it ends in " C" or " F"
}

// Named is a figure and the name it has in JSON, which says its unit.
type Named struct {
	Name string
	Figure
}

// Names of the figures.
const (
	UseLow      = "use_low_c"
	ComfortLow  = "comfort_low_c"
	Optimum     = "optimum_c"
	ComfortHigh = "comfort_high_c"
	UseHigh     = "use_high_c"
	Lethal      = "lethal_c"
	OxygenLeast = "oxygen_least_mgl"
	Oxygen      = "oxygen_mgl"
)

// Figures are all figures of f, known or not: six temperatures and two of oxygen, each
// group in rising order.
func (f Fish) Figures() []Named {
	return []Named{
		{UseLow, f.LowerUseC}, {ComfortLow, f.ComfortLowC}, {Optimum, f.OptimumC},
		{ComfortHigh, f.ComfortHighC}, {UseHigh, f.UpperUseC}, {Lethal, f.LethalC},
		{OxygenLeast, f.OxygenLeastMgL}, {Oxygen, f.OxygenMgL},
	}
}

// temperatures is how many of Figures are temperatures.
const temperatures = 6

// Misplaced finds two known figures in the wrong order: the first should not be over
// the second. The ends of the comfort range must differ. ok is false where all is in
// order.
func (f Fish) Misplaced() (first, second Named, ok bool) {
	if f.ComfortLowC.Known && f.ComfortHighC.Known && f.ComfortLowC.Value >= f.ComfortHighC.Value {
		return Named{ComfortLow, f.ComfortLowC}, Named{ComfortHigh, f.ComfortHighC}, true
	}
	all := f.Figures()
	for _, group := range [][]Named{all[:temperatures], all[temperatures:]} {
		group = slices.DeleteFunc(group, func(g Named) bool { return !g.Known })
		for i := 1; i < len(group); i++ {
			if group[i-1].Value > group[i].Value {
				return group[i-1], group[i], true
			}
		}
	}
	return Named{}, Named{}, false
}

// LimitsC gives the temperatures at which water that suits the fish begins or ends:
// for a Coldwater fish the upper one alone.
func (f Fish) LimitsC() []float64 {
	if f.Kind == Coldwater {
		return []float64{f.ComfortHighC.Value}
	}
	return []float64{f.ComfortHighC.Value, f.ComfortLowC.Value}
}
