package sink

import (
	"math"

	"coldseam/profile/rig/drag"
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
	along  float64 // pi * rho * nu * length: friction along is this * drag.Friction * speed
	perMps float64 // Reynolds number across per m/s: diameter/nu
	ball   []ball
}

// ball is a body's drag.
type ball struct {
	drag   float64 // rho/2 * pi/4 * diameter * nu: drag is this * cd*re * speed
	perMps float64 // Reynolds number per m/s
}

// newChain cuts a rig, which must be stated, with links of the usual number times
// fine.
func newChain(r Rig, tip Tip, fine float64) *chain {
	c := &chain{lengthM: r.length(), bottomM: math.Inf(1), slides: tip == Slides}
	if r.BottomM > 0 {
		c.bottomM = r.BottomM
	}
	at := c.places(r, fine)
	rho, nu := water.Density(r.TempC), water.KinematicViscosity(r.TempC)
	c.node = make([]node, len(at))
	c.hangLine(r.Parts, at, rho, nu)
	c.hangBodies(r.Bodies, rho, nu)
	if c.slides {
		c.node[0].mass += rho * math.Pi / 4 * lineWideM * lineWideM * LineM
		c.tipDrag = math.Pi * rho * nu * LineM * drag.Friction(0) / 2
	}
	return c
}

// hangLine lumps the line on the nodes. A link that holds two parts, or more, has
// their weight and their mean width.
func (c *chain) hangLine(parts []Part, at []float64, rho, nu float64) {
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
				c.node[k].weight += water.StandardGravity * section * (p.Density - rho)
				c.node[k].mass += section * (p.Density + rho) // water as much as it displaces moves along
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
		c.node[k].across = rho / 2 * nu * half[k]
		c.node[k].along = math.Pi * rho * nu * half[k]
		c.node[k].perMps = width[k] / half[k] / nu
	}
}

// hangBodies lumps the bodies on their nodes. A dressing is full of water, and a
// ball in motion carries half its volume of water along.
func (c *chain) hangBodies(bodies []Body, rho, nu float64) {
	for i, b := range bodies {
		k := &c.node[c.body[i]]
		bare, size := b.ball(), b.ball()*b.Dressing
		held := math.Max(0, size*size*size-bare*bare*bare)
		k.weight += b.inWater(rho)
		k.mass += b.KgDry + rho*math.Pi/6*(held+size*size*size/2)
		k.ball = append(k.ball, ball{rho / 2 * math.Pi / 4 * size * nu, size / nu})
	}
}
