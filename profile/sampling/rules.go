package sampling

import (
	"math"
	"slices"

	"coldseam/profile"
	"coldseam/profile/water"
)

// byRule advises as long as no mark needs to be weighed: at both ends of the water first,
// then about where lakes of that size have their break; enough where there is one layer.
func (in Input) byRule() (a Advice, ok bool) {
	c := in.Column
	if a, ok := in.surface(); ok {
		return a, true
	}
	if a, ok := in.deeper(); ok {
		return a, true
	}
	first, last := c.First(), c.Last()
	if math.Abs(first.TempC-last.TempC) < quietC && c.Len() >= endsN || c.Len() < 2 {
		return Advice{Enough: true, Why: OneLayer, FromM: first.DepthM, ToM: math.Max(last.DepthM, in.Bottom.Value)}, true
	}
	if c.Len() < endsN {
		if z, ok := in.freeMark(in.expectedThermocline()); ok {
			return Advice{Why: Guess, DepthM: z, FromM: first.DepthM, ToM: last.DepthM}, true
		}
	}
	return a, false
}

// surface advises to read just under the surface, where nothing was read near it.
func (in Input) surface() (Advice, bool) {
	z := in.up(underM)
	if in.Column.Len() == 0 {
		for in.skips(z) {
			z += in.MarkM
		}
		return Advice{Why: Surface, DepthM: z}, true
	}
	first := in.Column.First().DepthM
	z = math.Min(z, math.Max(0, in.down(first-in.MarkM)))
	return Advice{Why: Surface, DepthM: z}, first > atEndM && !in.skips(z)
}

// deeper advises to read below all that was read: close above the bottom, or as deep as
// lines usually reach; from there on as long as a greater step may lie below; and step by
// step where the bottom is not known or was passed over.
func (in Input) deeper() (Advice, bool) {
	c, last, limit := in.Column, in.Column.Last(), deepM
	if in.Bottom.Known {
		deepest := math.Min(in.Bottom.Value, math.Max(deepM, 2*in.expectedThermocline()))
		near := in.down(deepest - underM)
		if last.DepthM >= deepest-math.Max(atEndM, underM+in.MarkM) || near < last.DepthM+in.MarkM-1e-6 {
			z, ok := in.below()
			return Advice{Why: Deeper, DepthM: z}, ok && in.mayHideThermocline()
		}
		if !in.skips(near) {
			return Advice{Why: Bottom, DepthM: near}, true
		}
		limit = near
	}
	z := in.down(last.DepthM + stepM + in.MarkM/2)
	for in.skips(z) {
		z += stepM
	}
	wanted := c.Len() < endsN || !in.deepWaterReached() || in.mayHideThermocline()
	within := z <= limit || !in.Bottom.Known && (c.Len() < endsN || in.mayHideThermocline() && c.Len() < manyN)
	return Advice{Why: Deeper, DepthM: z}, wanted && within
}

// below gives a mark between the deepest reading and the known bottom: half way, or the
// last one where three readings found nothing, since one more then tells all.
func (in Input) below() (depthM float64, ok bool) {
	c, last := in.Column, in.Column.Last().DepthM
	floor := in.down(in.Bottom.Value - underM)
	z := math.Min(floor, in.down(math.Max(last+stepM, (last+in.Bottom.Value)/2)))
	if c.Len() >= endsN && math.Abs(c.First().TempC-c.Last().TempC) < quietC && !in.skips(floor) {
		z = floor
	}
	return z, z > last+in.MarkM-1e-6 && !in.skips(z)
}

// mayHideThermocline reports whether a greater step than any between two readings may lie below the
// deepest: the last step is the greatest, and the water under it could gain more density
// yet before it is as dense as water gets.
func (in Input) mayHideThermocline() bool {
	c, last, most := in.Column, 0.0, 0.0
	for i := 1; i < c.Len(); i++ {
		last = math.Max(0, water.Density(c.At(i).TempC)-water.Density(c.At(i-1).TempC))
		most = math.Max(most, last)
	}
	deepest := c.Last().TempC
	left := water.Density(water.MaxDensityTempC) - water.Density(deepest)
	return deepest > water.MaxDensityTempC && last >= most && left > last
}

// up and down give the mark at or next to a depth.
func (in Input) up(z float64) float64   { return math.Ceil(z/in.MarkM-1e-6) * in.MarkM }
func (in Input) down(z float64) float64 { return math.Floor(z/in.MarkM+1e-6) * in.MarkM }

// deepWaterReached reports whether the deepest readings have reached the even water under a
// break.
func (in Input) deepWaterReached() bool {
	c := in.Column
	a, b := c.At(c.Len()-2), c.Last()
	fallen := c.First().TempC - b.TempC
	return fallen >= quietC && (a.TempC-b.TempC)/(b.DepthM-a.DepthM) < belowC
}

// ByLength is where the thermocline may lie by the size of the lake, m: 4.4 m times the
// square root of the mean of its length and breadth in kilometres (Patalas 1984, from
// memory; the breadth is taken as half the length), but in a small clear lake not far above
// the depth that light reaches (0.8 of the Secchi depth, a rule of our own).
func ByLength(lengthM float64, secchi profile.Optional) float64 {
	return math.Max(4.4*math.Sqrt(0.75*lengthM/1000), 0.8*secchi.Or(0))
}

// expectedThermocline is where the break may lie before anything is known of it: ByLength, or
// by the bottom alone 1.42 times its 0.51th power, a fit to the steepest metre in 386 lakes
// (U.S. EPA, National Lakes Assessment 2007).
func (in Input) expectedThermocline() float64 {
	const lowest = 0.75 // of the bottom's depth
	z := 5.0
	if in.Bottom.Known {
		z = 1.42 * math.Pow(in.Bottom.Value, 0.51)
	}
	if in.Length.Known {
		z = ByLength(in.Length.Value, in.Secchi)
	}
	if in.Bottom.Known {
		z = math.Min(z, lowest*in.Bottom.Value)
	}
	return z
}

// freeMark gives the mark nearest to a depth, when nothing was read there.
func (in Input) freeMark(z float64) (float64, bool) {
	z = math.Round(z/in.MarkM) * in.MarkM
	for _, p := range in.Column.Points() {
		if math.Abs(p.DepthM-z) < in.MarkM-1e-6 {
			return 0, false
		}
	}
	return z, z > in.Column.First().DepthM && z < in.Column.Last().DepthM && !in.skips(z)
}

// skips reports whether the mark at a depth was passed over.
func (in Input) skips(z float64) bool {
	return slices.ContainsFunc(in.Skipped, func(s float64) bool { return math.Abs(s-z) < in.MarkM/2 })
}
