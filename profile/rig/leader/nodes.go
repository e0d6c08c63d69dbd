package leader

import (
	"math"
	"slices"
)

// The lengths of links, as shares of the leader: the line bends within a hand's
// breadth of a falling body at first and in a wide bow far from it, so that links
// grow away from the bodies and the end. That takes a third of the links that equal
// ones would.
const (
	leastLink = 0.005
	linkGrows = 0.3 // of the distance to the body
	mostLink  = 0.1
)

// nearM: bodies closer than this to another, or to the tip or the end, share its node.
const nearM = 0.02

// places puts the nodes: the tip, the bodies, the end, and what the lengths of links
// ask for between them. It gives their distances from the tip and sets link and body.
func (c *chain) places(l Leader, fine float64) []float64 {
	stops, stopOf := c.stops(l.Bodies)
	at, nodeOf := []float64{0}, []int{0}
	for i := 1; i < len(stops); i++ {
		from, to := stops[i-1], stops[i]
		size := func(s float64) float64 {
			away := to - s
			if i > 1 { // nothing hangs from the tip
				away = math.Min(away, s-from)
			}
			grown := linkGrows * math.Max(0, away) / c.lengthM
			return c.lengthM / fine * math.Min(mostLink, leastLink+grown)
		}
		first := len(at)
		for s := from; s < to; at = append(at, s) {
			s += size(s + size(s)/2)
		}
		fit := (to - from) / (at[len(at)-1] - from)
		for k := first; k < len(at); k++ {
			at[k] = from + fit*(at[k]-from)
		}
		at[len(at)-1] = to
		nodeOf = append(nodeOf, len(at)-1)
	}
	for i := 1; i < len(at); i++ {
		c.link = append(c.link, at[i]-at[i-1])
	}
	for _, s := range stopOf {
		c.body = append(c.body, nodeOf[s])
	}
	return at
}

// stops gives the distances at which there must be nodes, and which of them each
// body hangs on.
func (c *chain) stops(bodies []Body) (stops []float64, stopOf []int) {
	var sorted []float64
	for _, b := range bodies {
		sorted = append(sorted, b.AtM)
	}
	slices.Sort(sorted)
	stops = []float64{0}
	for _, at := range sorted {
		if at > stops[len(stops)-1]+nearM && at < c.lengthM-nearM {
			stops = append(stops, at)
		}
	}
	stops = append(stops, c.lengthM)
	for _, b := range bodies {
		nearest := 0
		for i, s := range stops {
			if math.Abs(s-b.AtM) < math.Abs(stops[nearest]-b.AtM) {
				nearest = i
			}
		}
		stopOf = append(stopOf, nearest)
	}
	return stops, stopOf
}
