package leader

import (
	"math"

	"coldseam/profile/water"
)

// chain is a leader cut into links. Node 0 is the tip of the fly line.
type chain struct {
	link    []float64 // m; link i joins nodes i and i+1
	node    []node
	body    []int // node of each body
	slides  bool
	tipDrag float64 // N s/m, of the line that a sliding tip draws
	bottomM float64 // +Inf without one
	lengthM float64
}

// node is a joint of the chain with what is lumped there: half of either link and
// the bodies.
type node struct {
	weight float64 // N in water, below 0 if it floats
	mass   float64 // kg, with the water that moves along
	across float64 // rho/2 * nu * length: drag across is this * cd*re * speed
	along  float64 // pi * rho * nu * length: friction along is this * friction * speed
	perMps float64 // Reynolds number across per m/s: diameter/nu
	ball   []ball
}

// ball is a body's drag.
type ball struct {
	drag   float64 // rho/2 * pi/4 * diameter * nu: drag is this * cd*re * speed
	perMps float64 // Reynolds number per m/s
}

// The floating line that a sliding tip pulls after it.
const (
	// slidingM is how much of it moves: a head of 30 ft, half of it under water. More line
	// than that lies in curves, which straighten before they slide.
	slidingM     = 9.144
	slidingWideM = 0.0011 // across (from memory, of a floating line of weight 5)
)

// newChain cuts a leader that has passed check, with links of the usual number times
// fine.
func newChain(l Leader, tip Tip, fine float64) *chain {
	c := &chain{lengthM: l.LengthM(), bottomM: math.Inf(1), slides: tip == Slides}
	if l.BottomM > 0 {
		c.bottomM = l.BottomM
	}
	at := c.places(l, fine)
	f := fluidAt(l.TempC)
	c.node = make([]node, len(at))
	c.hangLine(level(l.Parts), at, f)
	c.hangBodies(l.Bodies, f)
	if c.slides {
		c.node[0].mass += f.rho * math.Pi / 4 * slidingWideM * slidingWideM * slidingM
		c.tipDrag = math.Pi * f.rho * f.nu * slidingM * friction(0) / 2
	}
	return c
}

// hangLine lumps the line on the nodes. A link that holds two parts, or more, has
// their weight and their mean width.
func (c *chain) hangLine(parts []Part, at []float64, f fluid) {
	width := make([]float64, len(at)) // times length, m2
	half := make([]float64, len(at))  // length, m
	part, end := 0, parts[0].LengthM
	for i := range c.link {
		for from := at[i]; from < at[i+1]; {
			to := at[i+1]
			if part < len(parts)-1 { // rounding may leave the last one short
				to = math.Min(to, end)
			}
			p, l := parts[part], math.Max(0, to-from)/2
			section := math.Pi / 4 * p.DiameterM * p.DiameterM * l
			for k := i; k <= i+1; k++ {
				c.node[k].weight += water.StandardGravity * section * (p.density() - f.rho)
				c.node[k].mass += section * (p.density() + f.rho) // water as much as it displaces moves along
				width[k] += l * p.DiameterM
				half[k] += l
			}
			from = to
			if from < at[i+1] {
				part++
				end += parts[part].LengthM
			}
		}
	}
	for k := range c.node {
		c.node[k].across = f.rho / 2 * f.nu * half[k]
		c.node[k].along = math.Pi * f.rho * f.nu * half[k]
		c.node[k].perMps = width[k] / half[k] / f.nu
	}
}

// hangBodies lumps the bodies on their nodes. A dressing is full of water, and a
// ball in motion carries half its volume of water along.
func (c *chain) hangBodies(bodies []Body, f fluid) {
	for i, b := range bodies {
		k := &c.node[c.body[i]]
		bare, size := b.ball(), b.width()
		held := math.Max(0, size*size*size-bare*bare*bare)
		k.weight += f.weight(b.KgDry, b.density())
		k.mass += b.KgDry + f.rho*math.Pi/6*(held+size*size*size/2)
		k.ball = append(k.ball, ball{f.rho / 2 * math.Pi / 4 * size * f.nu, size / f.nu})
	}
}

// taperPieces is how many level pieces stand for a tapered part while it sinks.
const taperPieces = 3

// level puts level parts in the place of those that taper.
func level(parts []Part) []Part {
	out := make([]Part, 0, len(parts)+taperPieces)
	for _, p := range parts {
		n := taperPieces
		if p.end() == p.DiameterM {
			n = 1
		}
		for i := range n {
			share := (float64(i) + 0.5) / float64(n)
			out = append(out, Part{LengthM: p.LengthM / float64(n), DiameterM: p.DiameterM + share*(p.end()-p.DiameterM), DensityKgM3: p.DensityKgM3})
		}
	}
	return out
}
