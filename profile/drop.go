package profile

import (
	"math"

	"coldseam/profile/remark"
	"coldseam/profile/unit"
)

// Marks says where the marks on the line are counted from.
type Marks int

// Where marks are counted.
const (
	MarksNotStated Marks = iota // taken as counted at the water, with half a foot of doubt
	MarksAtWater
	MarksAtGunwale // FreeboardM above the water
)

// Drop is one lowering of the thermometer: what the angler noted, and the readings
// in the order they were written. Text fields are empty and Optional ones unknown
// where nothing was noted.
type Drop struct {
	Water, Spot string
	Date        string // "2026-07-18" or "2026-07-18 14:20"
	Units       unit.System
	Bottom      Optional // depth under the boat, m
	Deepest     Optional // the lake's deepest known water, m
	Secchi      Optional // m
	Altitude    Optional // m above the sea
	LakeLength  Optional // m
	Latitude    Optional // degrees, positive to the north
	Longitude   Optional // degrees, positive to the east
	Wind        Optional // m/s
	WindFrom    string   // the point of the compass that it comes from, "SW"; "" where not noted
	LineAngle   Optional // degrees from the vertical, at the surface
	Marks       Marks
	FreeboardM  float64  // how far above the water the marks are read, for MarksAtGunwale
	BulbBelow   Optional // how far the bulb hangs below the line's zero, m
	IcePoint    Optional // what the thermometer reads in ice water, C
	Precision   Optional // the thermometer's random error, C
	Wait        Optional // time the thermometer was left at each depth, s
	TimeConst   Optional // the thermometer's time constant, s
	OxygenUnit  string   // "mg/L", "%" or "" where not stated
	For         string   // the fish, as written
	Weight      string   // the weight on the line, as written
	FlyWeight   Optional // kg
	Retrieve    Optional // m/s
	Sky         string
	Colour      string
	Anchor      string
	Notes       []string
	Catches     []Catch // in the order written

	Readings []Reading
}

// MarksErrorM is the depth error assumed for a line whose marks' zero was not
// stated: half a foot.
const MarksErrorM = 0.1524

// Correct gives every reading its depth and temperature from what was written: the
// marks' zero, the bulb's offset, the line's angle and the thermometer's ice point.
// It changes the readings in place; calling it again gives the same values.
func (d *Drop) Correct() {
	for i := range d.Readings {
		r := &d.Readings[i]
		r.DepthM = round(d.depth(r.DepthUnit.Metres(r.Depth)))
		r.TempC = round(r.TempUnit.ToC(r.Temp) - d.IcePoint.Or(0))
	}
}

// depth turns line out into depth below the surface.
func (d *Drop) depth(lineM float64) float64 {
	if d.Marks == MarksAtGunwale {
		lineM -= d.FreeboardM
	}
	lineM = math.Max(0, lineM)
	low, high := AngleBounds(d.LineAngle.Or(0))
	return lineM*(low+high)/2 + d.BulbBelow.Or(0)
}

// LagC is how far the i-th reading may still be from its water because the thermometer
// was not left long enough, C: from one depth to the next it closes in exponentially
// with its time constant, and what was left of the way is worked out from the reading
// above, whatever the order in which they were written: thermometers are let down. 0
// where the wait or the time constant is not known, and for the uppermost reading,
// since what the thermometer came from is not known.
func (d *Drop) LagC(i int) float64 {
	if !d.Wait.Known || !d.TimeConst.Known || d.TimeConst.Value <= 0 {
		return 0
	}
	here, above, step := d.Readings[i], -1.0, 0.0
	for _, r := range d.Readings {
		if !r.Used() || r.DepthM >= here.DepthM || r.DepthM < above {
			continue
		}
		if r.DepthM > above {
			above, step = r.DepthM, 0
		}
		step = math.Max(step, math.Abs(here.TempC-r.TempC)) // of several at one depth
	}
	left := math.Exp(-d.Wait.Value / d.TimeConst.Value)
	return step * math.Min(left/(1-left), lagMost)
}

// lagMost times the step from the reading before is the most that a lag is taken for.
const lagMost = 10

// ErrorC is the standard error of the i-th reading's temperature, C: the thermometer's
// random error or the range that was written, whichever is wider, and what is left of
// its lag.
func (d *Drop) ErrorC(i int) float64 {
	return math.Hypot(math.Max(d.PrecisionC(), d.Readings[i].SpreadC), d.LagC(i))
}

// DepthError is the standard error of a depth of depthM: the marks'
// zero where it was not stated, and the line's angle between its two bounds.
func (d *Drop) DepthError(depthM float64) float64 {
	low, high := AngleBounds(d.LineAngle.Or(0))
	e := depthM * (high - low) / (high + low)
	if d.Marks == MarksNotStated {
		e = math.Hypot(e, MarksErrorM)
	}
	return e
}

// belowM is how far under the noted bottom a depth may lie: it was sounded from a boat
// that swings.
const belowM = 0.3

// BelowBottom reports whether a depth lies deeper than the bottom that was noted, by
// more than 0.3 m and the doubt about the depth itself.
func (d *Drop) BelowBottom(depthM float64) bool {
	return d.Bottom.Known && depthM > d.Bottom.Value+math.Max(belowM, d.DepthError(depthM))
}

// AngleBounds gives the least and the greatest depth per length of line for a line
// that leaves the surface at deg degrees from the vertical: cos a, as if it were
// straight, and asinh(tan a)/tan a, the shape of a line with even drag along it and
// a weight at its end. It takes 0 to 60 degrees.
func AngleBounds(deg float64) (low, high float64) {
	if deg == 0 {
		return 1, 1
	}
	a := deg * math.Pi / 180
	return math.Cos(a), math.Asinh(math.Tan(a)) / math.Tan(a)
}

// PrecisionC is the random part of the thermometer's error: as stated, else the
// finest step in which the readings were written, at least 0.25 C.
func (d *Drop) PrecisionC() float64 {
	if d.Precision.Known {
		return d.Precision.Value
	}
	step := math.Inf(1)
	for _, r := range d.Readings {
		step = math.Min(step, r.TempUnit.DiffToC(r.Step))
	}
	if math.IsInf(step, 1) {
		step = 0
	}
	return math.Max(round(step), 0.25)
}

// round keeps a tenth of a millimetre or of a millidegree: finer than any reading,
// and coarse enough that 10 ft and 3.048 m are the same depth.
func round(v float64) float64 { return unit.RoundTo(v, 4) }

// AnchorBlack reports whether the mud on the anchor was noted as black or smelling.
func (d *Drop) AnchorBlack() bool { return remark.Anchor(d.Anchor).Has(remark.BlackMud) }
