// Package chart holds what a picture shows, as numbers in SI with labels in the
// angler's units: one drop with its curve, its doubt and its layers, several drops to
// compare, or a season of them. Every kind of picture draws from the same Drop, so
// that they cannot disagree with each other or with the text.
//
// It asks no clock, and every number in it is finite. Of pictures it draws the two of the
// terminal, Strip and Growing; those in files are drawn by chart/static and chart/page and
// marked as this program's own here (Seal).
package chart

import (
	"cmp"
	"iter"
	"math"
	"slices"
	"strconv"
	"strings"

	"coldseam/profile"
	"coldseam/profile/band"
	"coldseam/profile/fish"
	"coldseam/profile/layers"
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
	Far           bool   // so far below all else that no picture reaches down to it
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
	Open          bool // it may go deeper: nothing was read below
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
	Secchi      MarkKind = "Secchi disk" // out of sight
	Weeds       MarkKind = "weed limit"  // of the deepest weeds
)

// Limits are what the fish bears: no warmer and no colder than it likes, and oxygen enough.
type Limits struct {
	WarmC, ColdC profile.Optional // C
	OxygenMgL    profile.Optional
}

func limitsOf(f fish.Fish) Limits {
	known := func(g fish.Figure) profile.Optional { return profile.Optional{Value: g.Value, Known: g.Known} }
	l := Limits{WarmC: known(f.ComfortHighC), OxygenMgL: known(f.OxygenMgL)}
	if f.Kind != fish.Coldwater { // of a fish of cold water it keeps none away
		l.ColdC = known(f.ComfortLowC)
	}
	return l
}

// Drop is one drop.
type Drop struct {
	Water    string // as it was noted
	Spot     string // as it was noted
	Fish     string // "rainbow trout"
	Title    string // water, spot, date and fish
	Short    string // its date, or where there is none its spot or water; "" where nothing was noted
	Date     string
	Units    unit.System
	Readings []Reading // from the surface down
	Curve    []Point   // from the surface down, even steps
	Zones    []Zone
	Marks    []Mark
	DeepestM float64          // how deep the picture goes
	AnswerM  float64          // how far down the answer reaches: the deepest reading used, or the band's end below it
	SkinM    float64          // how far down a warm skin reaches; 0: there is none
	Bottom   profile.Optional // under the boat, m, however deep
	Limits   Limits           // of the fish
	Brief    report.Brief     // the answer at a glance
	Scene    *Scene           // the answer drawn to scale; nil where there is no water to fish
	Confirm  []string         // at the anchor
	Warnings []string         // what stands before the answer
	Answer   []string         // the plan's paragraphs, in the angler's units
	Sure     string
	Cautions []string

	measured *layers.Curve // through the readings
}

// Of is what a picture of a plan shows.
func Of(p plan.Plan) Drop {
	readM := p.Column.Last().DepthM
	d := Drop{
		Water: p.Drop.Water, Spot: p.Drop.Spot, Fish: p.Fish.Name, Limits: limitsOf(p.Fish), Brief: report.Short(p, nil), Confirm: report.Confirm(p), Title: report.Title(p), Short: short(p), Date: p.Drop.Date, Units: p.Drop.Units.Shown(),
		AnswerM: readM, SkinM: p.Layers.SkinM, Bottom: p.Drop.Bottom, measured: p.Layers.Curve,
		Warnings: report.Warnings(p), Answer: report.Answer(p), Sure: report.Sure(p), Cautions: report.Cautions(p),
	}
	if p.Band.Found {
		d.AnswerM = math.Max(readM, p.Band.Bottom.Best)
	}
	for i, r := range p.Drop.Readings {
		d.Readings = append(d.Readings, Reading{
			DepthM: r.DepthM, TempC: r.TempC, ErrM: p.Drop.DepthError(r.DepthM), ErrC: p.Drop.ErrorC(i),
			Oxygen: r.Oxygen, Used: r.Used(), Flag: string(r.Flag),
			Far: r.DepthM >= 2*readM+1 && r.DepthM > math.Max(d.AnswerM, d.Bottom.Or(0)),
		})
	}
	slices.SortStableFunc(d.Readings, func(a, b Reading) int { return cmp.Compare(a.DepthM, b.DepthM) })
	d.DeepestM = d.deepest(readM)
	d.curve()
	d.zones(p)
	d.marks(p)
	d.Scene = sceneOf(p)
	return d
}

// Zone is the zone of a kind, and whether there is one.
func (d Drop) Zone(k ZoneKind) (z Zone, ok bool) {
	for _, z := range d.Zones {
		if z.Kind == k {
			return z, true
		}
	}
	return z, false
}

// BandUnknown is the part of the band in which oxygen was not measured and may be too low,
// and whether there is any; it ends with the band.
func (d Drop) BandUnknown() (z Zone, ok bool) {
	found, inBand := d.Zone(Band)
	z, doubt := d.Zone(Unproven)
	if z.TopM-found.TopM < band.WordM { // no part worth a word is known
		z.TopM = found.TopM
	}
	z.BottomM, z.Open = found.BottomM, found.Open
	return z, inBand && doubt && z.BottomM-z.TopM >= band.WordM
}

// Mark is the mark of a kind, and whether there is one.
func (d Drop) Mark(k MarkKind) (m Mark, ok bool) {
	for _, m := range d.Marks {
		if m.Kind == k {
			return m, true
		}
	}
	return m, false
}

// TempAt is the temperature of the curve at a depth, C, or of its end where that is no
// further than nearM. ok is false where the depth is further from all that was read.
func (d Drop) TempAt(depthM, nearM float64) (tempC float64, ok bool) {
	k := d.measured
	if k == nil || !(depthM >= k.Top()-nearM && depthM <= k.Bottom()+nearM) {
		return 0, false
	}
	return k.At(math.Min(math.Max(depthM, k.Top()), k.Bottom())), true
}

// Numbers are all numbers of a drop, each with the name of what it belongs to.
func (d Drop) Numbers() iter.Seq2[string, float64] {
	return func(yield func(string, float64) bool) {
		on := true
		give := func(what string, i int, values ...float64) {
			for _, v := range values {
				on = on && yield(what+" "+strconv.Itoa(i+1), v)
			}
		}
		give("depth of picture", 0, d.DeepestM)
		for i, r := range d.Readings {
			give("reading", i, r.DepthM, r.TempC, r.ErrM, r.ErrC, r.Oxygen.Value)
		}
		for i, p := range d.Curve {
			give("point of the curve", i, p.DepthM, p.TempC, p.LowC, p.HighC, p.RisePerM)
		}
		for i, z := range d.Zones {
			give("zone", i, z.TopM, z.BottomM)
		}
		for i, m := range d.Marks {
			give("mark", i, m.At.Low, m.At.Best, m.At.High)
		}
	}
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

// deepest is how deep the picture goes: as far as the readings, down to readM those that
// are used, the answer and a bottom that is not absurdly far below them.
func (d *Drop) deepest(readM float64) float64 {
	z := readM
	for _, r := range d.Readings {
		if !r.Far {
			z = math.Max(z, r.DepthM)
		}
	}
	if d.Bottom.Known && d.Bottom.Value < 4*z+5 {
		z = math.Max(z, d.Bottom.Value)
	}
	const least = 0.5
	return math.Max(math.Max(z, d.AnswerM), least)
}

const curveSteps = 160

// curve samples the middle curve and its doubt from the surface, or the first reading,
// to as far below the last one as answers reach.
func (d *Drop) curve() {
	k := d.measured
	if k == nil || len(k.Depths) == 0 {
		return
	}
	from, to := band.Reach(k)
	to = math.Min(to, math.Max(k.Bottom(), d.DeepestM))
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
	add := func(kind ZoneKind, name string, top, bottom float64, open bool) {
		if bottom > top {
			d.Zones = append(d.Zones, Zone{kind, name, top, bottom, open})
		}
	}
	l, b := p.Layers, p.Band
	if l.MixedLayer != nil {
		add(MixedLayer, "mixed layer", math.Max(l.SkinM, 0), l.MixedLayer.Best, false)
	}
	if l.MetalimnionTop != nil {
		add(Metalimnion, "metalimnion", l.MetalimnionTop.Best, l.MetalimnionBottom.Best, l.BottomReached)
	}
	if b.Found {
		top, bottom := b.Safe(p.Column.Last().DepthM)
		add(Band, "band", top, bottom, b.ToDeepest)
		if b.DoubtfulBelow != nil {
			add(Unproven, "oxygen unknown", b.DoubtfulBelow.Best, d.DeepestM, false)
		}
	}
}

func (d *Drop) marks(p plan.Plan) {
	l, b := p.Layers, p.Band
	if l.Thermocline != nil {
		d.Marks = append(d.Marks, Mark{Thermocline, "thermocline", *l.Thermocline})
	}
	if b.Found {
		fly := p.FlyM()
		d.Marks = append(d.Marks, Mark{Start, "fly", profile.Estimate{Best: fly, Low: math.Min(b.Start.Low, fly), High: math.Max(b.Start.High, fly)}})
		if !b.Suspended {
			d.Marks = append(d.Marks, Mark{Water, over(d.Brief), profile.Exactly(b.WaterM)})
		}
	}
	if z := p.Drop.Secchi; z.Known && z.Value < d.DeepestM {
		d.Marks = append(d.Marks, Mark{Secchi, "Secchi disk", profile.Exactly(z.Value)})
	}
	if w := b.Weeds; w != nil && w.Best < d.DeepestM {
		d.Marks = append(d.Marks, Mark{Weeds, "weed limit", *w})
	}
	if d.Bottom.Known && d.Bottom.Value <= d.DeepestM+1e-9 {
		d.Marks = append(d.Marks, Mark{Bottom, "bottom", profile.Exactly(d.Bottom.Value)})
	}
}

// over is how the answer names the depth of water: "cast over", "anchor over", "hole over".
func over(b report.Brief) string {
	for _, r := range b.Rows {
		if strings.HasSuffix(r.Label, " over") {
			return strings.ToLower(r.Label)
		}
	}
	return "cast over"
}

// Sorted gives drops by date, those without one first, in their order.
func Sorted(drops []Drop) []Drop {
	out := slices.Clone(drops)
	slices.SortStableFunc(out, func(a, b Drop) int { return strings.Compare(a.Date, b.Date) })
	return out
}
