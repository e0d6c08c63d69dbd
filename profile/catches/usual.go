package catches

import "strings"

// The rules of the second opinion; see the package comment.
const (
	Enough      = 8    // fish, before they have a say
	perLine     = 3    // of a line's fish count, the most
	usualShare  = 0.75 // of the fish are in the usual range
	widestC     = 4.0  // of a usual range that says anything
	halfWeightN = 8.0  // sure fish weigh as much as the table
)

// Usual is where a fish was taken before.
type Usual struct {
	Fish        string
	Here        bool    // in this water alone
	In, Of      int     // fish in the usual range, and all whose temperature is known
	LowC, HighC float64 // the usual range
	MedianC     float64
	// ShallowM and DeepM are the middle half of the depths of those in the usual range.
	ShallowM, DeepM float64
	Weight          float64 // of the opinion beside the table of fish, 0 to 1
	Contradict      bool    // the range is too wide to say anything
}

// UsualOf is where a fish was taken in a water, or, where that is too seldom, in all; ok is
// false where that is too seldom as well.
func UsualOf(taken []Taken, fish, water string) (u Usual, ok bool) {
	var all, here []Taken
	for _, t := range taken {
		if t.Fish != fish || fish == "" || !t.TempC.Known || !t.DepthM.Known {
			continue
		}
		all = append(all, t)
		if strings.TrimSpace(water) != "" && strings.EqualFold(strings.TrimSpace(t.Water), strings.TrimSpace(water)) {
			here = append(here, t)
		}
	}
	if counted(here) >= Enough {
		u = usual(here)
		u.Here = true
	} else if counted(all) >= Enough {
		u = usual(all)
	} else {
		return u, false
	}
	u.Fish = fish
	return u, true
}

// counted is how many fish count.
func counted(taken []Taken) (n int) {
	for _, t := range taken {
		n += min(t.Count, perLine)
	}
	return n
}

func usual(taken []Taken) (u Usual) {
	var temps, depths []weighed
	for _, t := range taken {
		temps = append(temps, weighed{t.TempC.Value, float64(min(t.Count, perLine)) / (1 + t.ErrC*t.ErrC)})
	}
	n := sorted(temps)
	u.MedianC = quantile(temps, n, 0.5)
	u.LowC, u.HighC = shortest(temps, n*usualShare)
	for _, t := range taken {
		u.Of += t.Count
		if t.TempC.Value >= u.LowC && t.TempC.Value <= u.HighC {
			u.In += t.Count
			depths = append(depths, weighed{t.DepthM.Value, float64(min(t.Count, perLine))})
		}
	}
	s := spread(depths)
	u.ShallowM, u.DeepM = s.Low, s.High
	u.Weight = n / (n + halfWeightN)
	u.Contradict = u.HighC-u.LowC > widestC
	return u
}

// shortest is the shortest range of sorted values that holds a weight.
func shortest(vs []weighed, weight float64) (low, high float64) {
	low, high = vs[0].v, vs[len(vs)-1].v
	const same = 1e-9
	sum, to := 0.0, 0
	for from := range vs {
		for to < len(vs) && sum < weight-same {
			sum += vs[to].weight
			to++
		}
		if sum < weight-same {
			break
		}
		if w := vs[to-1].v - vs[from].v; w < high-low-same {
			low, high = vs[from].v, vs[to-1].v
		}
		sum -= vs[from].weight
	}
	return low, high
}
