package plan

import (
	"math"
	"slices"

	"coldseam/profile"
	"coldseam/profile/band"
	"coldseam/profile/check"
)

// CheckedAt compares one reading, taken at the anchor, with the column of a plan.
type CheckedAt struct {
	ExpectedC   float64 // of the middle curve
	LowC, HighC float64 // as Expected gives them
	Finding     Finding
	Guess       string  // of Implausible: what may have been meant, "64 F"; may be empty
	ShiftM      float64 // the layers lie this much deeper; of LayersMoved and MovedFar, else 0
	Better      bool    // of those two: it is warmer, and the fish like it warmer
	Moved       *Moved  // of LayersMoved: the answer where they lie now, nil where nothing is left
}

// Finding is the code of what a reading at the anchor says.
type Finding string

// The findings.
const (
	NotReadSoDeep Finding = "not read so deep" // nothing to compare with
	AsExpected    Finding = "as expected"
	Implausible   Finding = "implausible" // no water is so: a slipped digit, the other scale
	LayersMoved   Finding = "layers moved"
	MovedFar      Finding = "moved far"     // further than wind moves them: to be read again first
	NowTooWarm    Finding = "now too warm"  // no depth of the page was so warm, and no fish likes it
	NowWarmer     Finding = "now warmer"    // no depth of the page was so warm, and the fish like it
	NowTooCold    Finding = "now too cold"  // no depth of the page was so cold, and they like it warmer
	NowOtherwise  Finding = "now otherwise" // no depth of the page had this temperature
)

// farM is more than wind tilts the layers of a small lake in a few hours (common
// practice): one reading alone does not move a plan so far.
const farM = 2.0

// Check compares one reading with the column. Where it is not as expected, the depth at
// which the column had that temperature tells how far the layers have moved, to the
// millimetre, and the band is found again where they lie now, if that is not too far for
// one reading to be believed.
func (p *Plan) Check(r profile.Reading) CheckedAt {
	k := p.Layers.Curve
	c := CheckedAt{ExpectedC: k.At(r.DepthM)}
	if guess, odd := p.implausible(r); odd {
		c.Finding, c.Guess = Implausible, guess
		return c
	}
	const slackM = 0.01 // for feet turned into metres
	if r.DepthM > k.Bottom()+band.AssumedM+slackM {
		c.Finding = NotReadSoDeep
		return c
	}
	c.LowC, c.HighC = p.Expected(r.DepthM)
	const printedC = 0.01
	if r.TempC >= c.LowC-printedC && r.TempC <= c.HighC+printedC {
		c.Finding = AsExpected
		return c
	}
	warmer := r.TempC > c.HighC
	was, ok := k.Crossing(r.TempC, k.Top(), k.Bottom())
	switch {
	case ok:
		c.Finding, c.ShiftM = LayersMoved, math.Round((r.DepthM-was)*1e3)/1e3+0
		c.Better = p.Band.Found && p.Band.Cold && warmer
		if math.Abs(c.ShiftM) > farM {
			c.Finding = MovedFar
		} else if m, ok := p.Moved(c.ShiftM); ok {
			c.Moved = &m
		}
	case warmer && r.TempC > p.Fish.ComfortHighC.Value:
		c.Finding = NowTooWarm
	case warmer:
		c.Finding = NowWarmer
	case p.Band.Cold:
		c.Finding = NowTooCold
	default:
		c.Finding = NowOtherwise
	}
	return c
}

// implausible reports whether a reading beside those of the page cannot be one of water, and
// what was meant perhaps.
func (p *Plan) implausible(r profile.Reading) (guess string, odd bool) {
	d := p.Drop
	d.Readings = append(slices.Clone(d.Readings), r)
	checked := check.Of(d)
	all := checked.Drop().Readings
	switch last := all[len(all)-1]; last.Flag {
	case profile.SlippedDigit, profile.WrongUnit, profile.ColumnsSwapped, profile.OutOfRange:
		return last.Guess, true
	}
	return "", false
}
