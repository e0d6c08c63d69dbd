// Package figure holds what a picture shows, as numbers in SI with labels in the
// angler's units: one drop with its curve, its doubt and its layers, several drops to
// compare, or a season of them. Every kind of picture draws from the same figure, so
// that they cannot disagree with each other or with the text.
//
// It draws nothing and asks no clock. Every number in it is finite.
package figure

import (
	"cmp"
	"math"
	"slices"
	"strings"

	"coldseam/profile"
	"coldseam/profile/plain"
	"coldseam/profile/plan"
	"coldseam/profile/report"
	"coldseam/profile/unit"
	"coldseam/profile/water"
)

// Reading is one reading as a point.
type Reading struct {
	DepthM, TempC float64
	ErrM, ErrC    float64          // standard errors
	Oxygen        profile.Optional // mg/L
	Used          bool
	Flag          string // "" where nothing is odd
}

// Point is one point of the curve between the readings.
type Point struct {
	DepthM   float64
	TempC    float64
	LowC     float64 // 80 % interval of the temperature
	HighC    float64
	RisePerM float64 // rise of density with depth, kg/m3 per m, of the middle curve
	Extended bool    // above the first or below the last reading: assumed
}

// Zone is a run of depths with a name.
type Zone struct {
	Kind          ZoneKind
	Name          string // "band", "metalimnion": as it is printed
	TopM, BottomM float64
}

// ZoneKind is what a zone is.
type ZoneKind string

// The zones.
const (
	MixedLayer  ZoneKind = "mixed layer"
	Metalimnion ZoneKind = "metalimnion"
	Band        ZoneKind = "band"
	Unproven    ZoneKind = "unproven" // oxygen not measured, and may be missing
)

// Mark is a depth with a name: thermocline, start, bottom, food shelf.
type Mark struct {
	Kind MarkKind
	Name string
	At   profile.Estimate // m
}

// MarkKind is what a mark is.
type MarkKind string

// The marks.
const (
	Thermocline MarkKind = "thermocline"
	Start       MarkKind = "start" // of the fly
	Water       MarkKind = "water" // depth of water under the fly to begin over
	Bottom      MarkKind = "bottom"
)

// Drop is one drop.
type Drop struct {
	Title    string // water, spot, date and fish
	Short    string // its date, or where there is none its spot or water; "" where nothing was noted
	Date     string
	Units    unit.System
	Readings []Reading // from the surface down
	Curve    []Point   // from the surface down, even steps
	Zones    []Zone
	Marks    []Mark
	DeepestM float64  // how deep the picture goes
	Warnings []string // what stands before the answer
	Answer   []string // the plan's paragraphs, in the angler's units
	Sure     string
	Cautions []string
}

// Of makes the figure of a plan.
func Of(p plan.Plan) Drop {
	u := p.Drop.Units.Shown()
	d := Drop{Title: report.Title(p), Short: short(p), Date: p.Drop.Date, Units: u, Warnings: report.Warnings(p), Answer: report.Answer(p), Sure: report.Sure(p), Cautions: report.Cautions(p)}
	for i, r := range p.Drop.Readings {
		d.Readings = append(d.Readings, Reading{
			DepthM: r.DepthM, TempC: r.TempC, ErrM: p.Drop.DepthError(r.DepthM), ErrC: p.Drop.ErrorC(i),
			Oxygen: r.Oxygen, Used: r.Used(), Flag: string(r.Flag),
		})
	}
	slices.SortStableFunc(d.Readings, func(a, b Reading) int { return cmp.Compare(a.DepthM, b.DepthM) })
	d.DeepestM = deepest(p)
	d.curve(p)
	d.zones(p)
	d.marks(p)
	return d
}

// short is the drop's date, or where there is none its water or spot.
func short(p plan.Plan) string {
	for _, s := range []string{p.Drop.Date, p.Drop.Spot, p.Drop.Water} {
		if s != "" {
			return plain.Line(s)
		}
	}
	return ""
}

// deepest is how deep the picture goes: to the bottom, where it is known, and no
// reading that was left out as absurd stretches it.
func deepest(p plan.Plan) float64 {
	z := p.Column.Last().DepthM
	for _, r := range p.Drop.Readings {
		if r.DepthM < 2*z+1 {
			z = math.Max(z, r.DepthM)
		}
	}
	if b := p.Drop.Bottom; b.Known && b.Value < 4*z+5 {
		z = math.Max(z, b.Value)
	}
	if p.Band.Found {
		z = math.Max(z, p.Band.Bottom.Best)
	}
	return math.Max(z, 0.5)
}

const curveSteps = 160

// curve samples the middle curve and its doubt from the surface, or the first reading,
// to as far below the last one as answers reach.
func (d *Drop) curve(p plan.Plan) {
	k := p.Layers.Curve
	if k == nil || len(k.Depths) == 0 {
		return
	}
	from, to := k.Top(), k.Bottom()
	if from <= 1 {
		from = 0
	}
	to = math.Min(to+0.6096, math.Max(to, d.DeepestM))
	step := (to - from) / curveSteps
	if step <= 0 {
		return
	}
	for i := 0; i <= curveSteps; i++ {
		z := from + float64(i)*step
		e := k.TempInterval(z)
		rise := 0.0
		if a, b := math.Max(z-step/2, from), math.Min(z+step/2, to); b > a {
			rise = (water.Density(k.At(b)) - water.Density(k.At(a))) / (b - a)
		}
		d.Curve = append(d.Curve, Point{z, e.Best, e.Low, e.High, rise, z < k.Top()-1e-9 || z > k.Bottom()+1e-9})
	}
}

func (d *Drop) zones(p plan.Plan) {
	add := func(kind ZoneKind, name string, top, bottom float64) {
		if bottom > top {
			d.Zones = append(d.Zones, Zone{kind, name, top, bottom})
		}
	}
	l, b := p.Layers, p.Band
	if l.MixedLayer != nil {
		add(MixedLayer, "mixed layer", math.Max(l.SkinM, 0), l.MixedLayer.Best)
	}
	if l.MetalimnionTop != nil {
		add(Metalimnion, "break (metalimnion)", l.MetalimnionTop.Best, l.MetalimnionBottom.Best)
	}
	if b.Found {
		top, bottom := b.Safe(p.Column.Last().DepthM)
		add(Band, "band", top, bottom)
		if b.DoubtfulBelow != nil {
			add(Unproven, "oxygen unproven", b.DoubtfulBelow.Best, d.DeepestM)
		}
	}
}

func (d *Drop) marks(p plan.Plan) {
	l, b := p.Layers, p.Band
	if l.Thermocline != nil {
		d.Marks = append(d.Marks, Mark{Thermocline, "thermocline", *l.Thermocline})
	}
	if b.Found {
		d.Marks = append(d.Marks, Mark{Start, "start the fly here", b.Start})
		if !b.Suspended {
			d.Marks = append(d.Marks, Mark{Water, "water to begin over", profile.Exactly(b.WaterM)})
		}
	}
	if p.Drop.Bottom.Known && p.Drop.Bottom.Value <= d.DeepestM+1e-9 {
		d.Marks = append(d.Marks, Mark{Bottom, "bottom under the boat", profile.Exactly(p.Drop.Bottom.Value)})
	}
}

// Sorted gives drops by date, those without one first, in their order.
func Sorted(drops []Drop) []Drop {
	out := slices.Clone(drops)
	slices.SortStableFunc(out, func(a, b Drop) int { return strings.Compare(a.Date, b.Date) })
	return out
}
