package page

import (
	"math"
	"strconv"

	"github.com/go-echarts/go-echarts/v2/charts"
	"github.com/go-echarts/go-echarts/v2/opts"

	"coldseam/chart"
	"coldseam/profile/unit"
)

// Index of each axis in the options.
const (
	tempAxis = iota
	oxygenAxis
	densityAxis
	namesAxis // of the column of lanes and names beside the plot, 0 to 100
)

const (
	textPx = 16 // no text is smaller
	plotPx = 470
	topPx  = 34 // room above the plot: the name of the depths
	overPx = 50 // and the oxygen's axis under it
	axisPx = 52 // room for an axis below it
	footPx = 14
	leftPx = 36
	besPx  = 178 // the column of lanes and names beside it
)

// span is the range of an axis with its steps.
type span struct{ min, max, step float64 }

// around gives a span of round numbers about low to high with at most n steps.
func around(low, high float64, n int) span {
	if !(high > low) {
		low, high = low-1, low+1
	}
	step := chart.Step(high-low, float64(n))
	return span{math.Floor(low/step+1e-9) * step, math.Ceil(high/step-1e-9) * step, step}
}

// hold keeps v within the span.
func (s span) hold(v float64) float64 { return math.Min(math.Max(v, s.min), s.max) }

// at is the value a share of the way along the span.
func (s span) at(share float64) float64 { return round4(s.min + share*(s.max-s.min)) }

// plot is one picture's scales, in the angler's units.
type plot struct {
	u                      unit.System
	depth                  span
	temp, oxygen, density  span
	hasOxygen, hasGradient bool
}

func (p plot) depthOf(m float64) float64 { return round4(p.u.Depth.From(m)) }
func (p plot) tempOf(c float64) float64  { return round4(p.u.Temp.FromC(c)) }
func (p plot) riseOf(perM float64) float64 {
	return round4(perM * p.u.Depth.Metres(1))
}

// riseUnit is the unit that riseOf gives.
func (p plot) riseUnit() string { return "kg/m³ per " + p.u.Depth.String() }

// round4 keeps four decimals: far finer than any reading, and short in the page.
func round4(v float64) float64 { return unit.RoundTo(v, 4) }

// newPlot finds the scales that hold all drops. A reading that was left out stretches
// none.
func newPlot(u unit.System, drops []chart.Drop) plot {
	p := plot{u: u}
	deep, most, low, high := 0.0, 0.0, 0.0, 0.0
	for _, d := range drops {
		deep = math.Max(deep, u.Depth.From(d.DeepestM))
		for _, q := range d.Curve {
			low, high = math.Min(low, q.RisePerM), math.Max(high, q.RisePerM)
		}
		for _, r := range d.Readings {
			if r.Oxygen.Known && r.Used {
				p.hasOxygen, most = true, math.Max(most, r.Oxygen.Value)
			}
		}
	}
	p.hasGradient = high > low && len(drops) == 1
	coldC, warmC := chart.TempRange(drops...)
	cold, warm := math.Floor(u.Temp.FromC(coldC)), math.Ceil(u.Temp.FromC(warmC))
	p.temp = span{cold, warm, math.Max(1, chart.Step(warm-cold, 6))}
	most = math.Max(2*math.Ceil(most/2), 2)
	p.oxygen = span{0, most, chart.Step(most, 5)}
	p.density = around(p.riseOf(low), p.riseOf(high), 3)
	deep = math.Max(deep, u.Depth.From(0.5))
	p.depth = around(0, deep, 7)
	p.depth.max = round4(deep * 1.04) // the bottom is not the edge of the picture
	return p
}

func axisText() *opts.AxisLabel {
	return &opts.AxisLabel{Show: opts.Bool(true), Color: ink, FontSize: textPx, HideOverlap: opts.Bool(true)}
}

func axisLine(color, dash string, width float32) *opts.AxisLine {
	return &opts.AxisLine{Show: opts.Bool(true), OnZero: opts.Bool(false), LineStyle: &opts.LineStyle{Color: color, Width: width, Type: dash}}
}

func grid(show bool) *opts.SplitLine {
	return &opts.SplitLine{Show: opts.Bool(show), LineStyle: &opts.LineStyle{Color: faint, Width: 1}}
}

// ends reports whether an axis begins and ends on one of its steps: only such ends get a
// number.
func (s span) ends() (first, last bool) {
	on := func(v float64) bool { return math.Abs(v/s.step-math.Round(v/s.step)) < 1e-6 }
	return on(s.min), on(s.max)
}

// axes sets the scales, where the still pictures have them: temperature below the plot,
// oxygen above it, depth downward at the left. The second pair is that of the lanes and
// names beside the plot.
func (p plot) axes(c *charts.Line, names bool) {
	x := func(name, at string, s span, show bool, color, dash string) opts.XAxis {
		text := axisText()
		first, last := s.ends()
		text.ShowMinLabel, text.ShowMaxLabel = opts.Bool(first), opts.Bool(last)
		return opts.XAxis{
			Show: opts.Bool(show), Type: "value", Position: at, Name: name, NameLocation: "middle", NameGap: 28,
			Min: s.min, Max: s.max, MinInterval: s.step, MaxInterval: s.step,
			AxisLine: axisLine(color, dash, 2), AxisLabel: text, SplitLine: grid(at == "bottom" && s == p.temp),
		}
	}
	p.gridsOf(c, names)
	hidden := opts.XAxis{Show: opts.Bool(false), Type: "value", GridIndex: 0, Min: 0, Max: 100}
	if names {
		hidden.GridIndex = 1
	}
	c.ExtendXAxis(opts.XAxis{}, opts.XAxis{}, opts.XAxis{})
	c.SetGlobalOptions(
		charts.WithXAxisOpts(x("temperature, "+p.u.Temp.String(), "bottom", p.temp, true, ink, "solid"), tempAxis),
		charts.WithXAxisOpts(x("oxygen, mg/L", "top", p.oxygen, p.hasOxygen && names, ink, "solid"), oxygenAxis),
		charts.WithXAxisOpts(x("density rise, "+p.riseUnit(), "bottom", p.density, false, ink, "solid"), densityAxis),
		charts.WithXAxisOpts(hidden, namesAxis),
	)
	text := axisText()
	text.ShowMaxLabel = opts.Bool(false) // the end of the scale is no round number
	depth := opts.YAxis{
		Show: opts.Bool(true), Type: "value", Inverse: opts.Bool(true), Min: p.depth.min, Max: p.depth.max,
		Name: "depth, " + p.u.Depth.String(), NameLocation: "start", NameGap: 12,
		MinInterval: p.depth.step, MaxInterval: p.depth.step,
		AxisLine: axisLine(ink, "solid", 2), AxisLabel: text, SplitLine: grid(true),
	}
	if p.hasOxygen && names {
		depth.NameGap += overPx
	}
	c.SetGlobalOptions(charts.WithYAxisOpts(depth, 0))
	if names {
		beside := depth
		beside.Show, beside.GridIndex = opts.Bool(false), 1
		beside.SplitLine = grid(false)
		c.ExtendYAxis(beside)
	}
}

// gridsOf lays the plot out, with a column for lanes and names at its right.
func (p plot) gridsOf(c *charts.Line, names bool) {
	top := topPx
	if p.hasOxygen && names {
		top += overPx
	}
	main := opts.Grid{Left: strconv.Itoa(leftPx), Right: "14", Top: strconv.Itoa(top), Bottom: strconv.Itoa(footPx + axisPx)}
	if !names {
		c.SetGlobalOptions(charts.WithGridOpts(main))
		return
	}
	beside := main
	main.Right, beside.Left, beside.Right, beside.Width = strconv.Itoa(besPx), "", "0", strconv.Itoa(besPx)
	c.SetGlobalOptions(charts.WithGridOpts(main, beside))
}
