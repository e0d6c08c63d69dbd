package catches

import (
	"cmp"
	"slices"
	"strconv"
	"strings"

	"coldseam/profile"
)

// Taken is a catch with what the drop of its day tells of it.
type Taken struct {
	Fish  string // the key of the table of fish, or as written; "" where not named
	Count int
	Water string
	Date  string // of the drop, "2026-07-18" or with its time; "" where not noted
	Time  string // of the day, "18:10"; "" where not noted

	DepthM profile.Optional // of the fly
	TempC  profile.Optional // of the water there
	ErrC   float64          // its standard error
	BelowM profile.Optional // how far below the thermocline, above it where negative
	Part   Part
}

// Part is where a catch was in the band of its fish on that day.
type Part string

// The parts.
const (
	NotKnown Part = ""         // the depth or the fish is not known, or there was no band
	Above    Part = "above"    // the band
	BestBet  Part = "best bet" // in it, and oxygen measured or likely
	Rest     Part = "rest"     // in it, and oxygen unknown
	Below    Part = "below"    // the band
)

// Parts are those that are known, from the surface down.
var Parts = []Part{Above, BestBet, Rest, Below}

// Spread is how the values of some fish lie.
type Spread struct {
	N           int     // fish
	Median      float64 //
	Low, High   float64 // the middle half
	Least, Most float64
}

// Tally counts what was caught of one fish.
type Tally struct {
	Fish               string
	Count              int // of fish
	NoDepth            int // of those, without a depth
	Depth, Temp, Below Spread
	Parts              map[Part]int
	Months             [12]int
	Hours              [24]int
	NoMonth, NoHour    int
}

// TallyBy counts catches by fish, the one taken most often first.
func TallyBy(taken []Taken) []Tally {
	by := map[string][]Taken{}
	for _, t := range taken {
		by[t.Fish] = append(by[t.Fish], t)
	}
	var out []Tally
	for fish, of := range by {
		out = append(out, tally(fish, of))
	}
	slices.SortFunc(out, func(a, b Tally) int {
		return cmp.Or(cmp.Compare(b.Count, a.Count), cmp.Compare(a.Fish, b.Fish))
	})
	return out
}

func tally(fish string, taken []Taken) Tally {
	t := Tally{Fish: fish, Parts: map[Part]int{}}
	var depth, temp, below []weighed
	add := func(to *[]weighed, v profile.Optional, n int) {
		if v.Known {
			*to = append(*to, weighed{v.Value, float64(n)})
		}
	}
	for _, c := range taken {
		t.Count += c.Count
		if !c.DepthM.Known {
			t.NoDepth += c.Count
		}
		add(&depth, c.DepthM, c.Count)
		add(&temp, c.TempC, c.Count)
		add(&below, c.BelowM, c.Count)
		if c.Part != NotKnown {
			t.Parts[c.Part] += c.Count
		}
		if m := c.Month(); m > 0 {
			t.Months[m-1] += c.Count
		} else {
			t.NoMonth += c.Count
		}
		if h, ok := c.Hour(); ok {
			t.Hours[h] += c.Count
		} else {
			t.NoHour += c.Count
		}
	}
	t.Depth, t.Temp, t.Below = spread(depth), spread(temp), spread(below)
	return t
}

// Month is the month of the drop, 1 to 12; 0 where it is not known.
func (t Taken) Month() int {
	if len(t.Date) < len("2026-07") {
		return 0
	}
	m, err := strconv.Atoi(t.Date[len("2026-"):len("2026-07")])
	if err != nil || m < 1 || m > 12 {
		return 0
	}
	return m
}

// Hour is the hour of the day, 0 to 23.
func (t Taken) Hour() (h int, ok bool) {
	hour, _, found := strings.Cut(t.Time, ":")
	h, err := strconv.Atoi(hour)
	return h, found && err == nil && h >= 0 && h < 24
}

// weighed is a value and how much it counts.
type weighed struct{ v, weight float64 }

// spread is how values lie that count as often as their weight says.
func spread(vs []weighed) Spread {
	if len(vs) == 0 {
		return Spread{}
	}
	sum := sorted(vs)
	return Spread{
		N: int(sum + 0.5), Median: quantile(vs, sum, 0.5), Low: quantile(vs, sum, 0.25), High: quantile(vs, sum, 0.75),
		Least: vs[0].v, Most: vs[len(vs)-1].v,
	}
}

// sorted sorts values, and gives the sum of their weights.
func sorted(vs []weighed) (sum float64) {
	slices.SortFunc(vs, func(a, b weighed) int { return cmp.Compare(a.v, b.v) })
	for _, w := range vs {
		sum += w.weight
	}
	return sum
}

// quantile is the value below which a share of the sum of sorted values lies; the mean of
// two where it falls between them.
func quantile(vs []weighed, sum, share float64) float64 {
	const same = 1e-9
	at, below := share*sum, 0.0
	for i, w := range vs {
		below += w.weight
		switch {
		case below > at+same:
			return w.v
		case below > at-same && i+1 < len(vs):
			return (w.v + vs[i+1].v) / 2
		}
	}
	return vs[len(vs)-1].v
}
