package layers

import "math"

// Zone is a metalimnion as one method says.
type Zone struct {
	Name          string // what the method looks for
	Source        string // who published it, or "common practice"
	TopM, BottomM float64
	OK            bool // whether it finds anything; else TopM and BottomM are 0
}

// Names of the metalimnion's methods.
const (
	FirstToLast   = "first to last interval of 1 C per metre"
	Unbroken      = "unbroken fall of 1 C per metre"
	UnbrokenDense = "unbroken rise of 0.1 kg/m3 per metre"
	StepEdges     = "85 % of a fitted step"
)

const (
	steepCPerM  = 1.0
	steepRise   = 0.1 // kg/m3 per metre
	edgesWidths = 2.5 // of the step, on either side of its centre
)

// Edges gives the metalimnion's top and bottom by each method, in the order of their
// names above. Input is as for Thermoclines; other input gives zones that are not OK.
//
//   - FirstToLast: from the first to the last interval in which temperature falls at
//     least 1 C per metre (Birge 1904), whatever lies between.
//   - Unbroken: the intervals of at least 1 C per metre that reach the steepest one
//     without a gap.
//   - UnbrokenDense: the same with density and 0.1 kg/m3 per metre, a customary limit
//     (from memory; compared with others by Wilson et al. 2020, HESS 24:5559).
//   - StepEdges: two and a half widths above and below the centre of a step fitted to
//     temperature, within the column. The step is that of Pujoni et al. 2019 (see
//     Thermoclines), the number of widths ours: of 1 to 3 it overlapped best with the
//     metalimnia that crews marked in 2007 (U.S. EPA, National Lakes Assessment).
func Edges(depths, temps []float64) []Zone {
	out := []Zone{
		{Name: FirstToLast, Source: "Birge 1904"},
		{Name: Unbroken, Source: "Birge 1904"},
		{Name: UnbrokenDense, Source: "common practice"},
		{Name: StepEdges, Source: "Pujoni et al. 2019"},
	}
	c, ok := newPublishedColumn(depths, temps)
	if !ok {
		return out
	}
	first, last := -1, -1
	for i, fall := range c.fall {
		if fall >= steepCPerM-equal {
			last = i
			if first < 0 {
				first = i
			}
		}
	}
	if first >= 0 {
		out[0].TopM, out[0].BottomM, out[0].OK = c.z[first], c.z[last+1], true
	}
	out[1].TopM, out[1].BottomM, out[1].OK = c.around(c.fall, steepCPerM)
	out[2].TopM, out[2].BottomM, out[2].OK = c.around(c.rise, steepRise)
	if s, ok := fitStep(c.z, c.t); ok && s.upper > s.lower {
		half := edgesWidths * s.widthM
		out[3].TopM = math.Max(s.centreM-half, c.z[0])
		out[3].BottomM = math.Min(s.centreM+half, c.z[len(c.z)-1])
		out[3].OK = true
	}
	return out
}

// around gives the ends of the unbroken run of rates of at least limit that holds the
// greatest.
func (c publishedColumn) around(rates []float64, limit float64) (topM, bottomM float64, ok bool) {
	first := fastest(rates)
	if first < 0 || rates[first] < limit-equal {
		return 0, 0, false
	}
	last := first
	for first > 0 && rates[first-1] >= limit-equal {
		first--
	}
	for last+1 < len(rates) && rates[last+1] >= limit-equal {
		last++
	}
	return c.z[first], c.z[last+1], true
}
