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
	namesAxis // of the column of names beside the plot, 0 to 100
)

const (
	textPx   = 16 // no text is smaller
	plotPx   = 470
	topPx    = 58 // room for the temperatures above the plot
	axisPx   = 52 // room for an axis below it
	bottomPx = 14
	namesPx  = 158 // the column of names
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
	warm, cold, deep := math.Inf(-1), math.Inf(1), 0.0
	most, low, high := 0.0, 0.0, 0.0
	for _, d := range drops {
		deep = math.Max(deep, u.Depth.From(d.DeepestM))
		for _, q := range d.Curve {
			cold, warm = math.Min(cold, q.LowC), math.Max(warm, q.HighC)
			low, high = math.Min(low, q.RisePerM), math.Max(high, q.RisePerM)
		}
		for _, r := range d.Readings {
			if r.Used {
				cold, warm = math.Min(cold, r.TempC), math.Max(warm, r.TempC)
			}
			if r.Oxygen.Known && r.Used {
				p.hasOxygen, most = true, math.Max(most, r.Oxygen.Value)
			}
		}
	}
	if cold > warm { // nothing was used
		cold, warm = 0, 25
	}
	if warm-cold < 2 { // one layer is a straight edge, not noise blown up
		cold, warm = (cold+warm)/2-1, (cold+warm)/2+1
	}
	p.hasGradient = high > low && len(drops) == 1
	p.temp = around(u.Temp.FromC(cold), u.Temp.FromC(warm), 4)
	p.oxygen = around(0, math.Max(most, 1), 4)
	p.density = around(p.riseOf(low), p.riseOf(high), 3)
	deep = math.Max(deep, u.Depth.From(0.5))
	p.depth = around(0, deep, 7)
	p.depth.max = round4(deep * 1.03) // the bottom is not the edge of the picture
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

// axes sets the scales: temperature above the plot, oxygen below it, depth downward.
// The second pair is that of the names beside the plot.
func (p plot) axes(c *charts.Line, names bool) {
	x := func(name, at string, s span, show bool, color, dash string) opts.XAxis {
		return opts.XAxis{
			Show: opts.Bool(show), Type: "value", Position: at, Name: name, NameLocation: "middle", NameGap: 28,
			Min: s.min, Max: s.max, MinInterval: s.step, MaxInterval: s.step,
			AxisLine: axisLine(color, dash, 2), AxisLabel: axisText(), SplitLine: grid(at == "top"),
		}
	}
	oxygenShown := p.hasOxygen && names
	p.gridsOf(c, names, oxygenShown)
	hidden := opts.XAxis{Show: opts.Bool(false), Type: "value", GridIndex: 0, Min: 0, Max: 100}
	if names {
		hidden.GridIndex = 1
	}
	c.ExtendXAxis(opts.XAxis{}, opts.XAxis{}, opts.XAxis{})
	c.SetGlobalOptions(
		charts.WithXAxisOpts(x("temperature, "+p.u.Temp.String(), "top", p.temp, true, warmth, "solid"), tempAxis),
		charts.WithXAxisOpts(x("oxygen, mg/L", "bottom", p.oxygen, oxygenShown, oxygen, "dashed"), oxygenAxis),
		charts.WithXAxisOpts(x("density rise, "+p.riseUnit(), "bottom", p.density, false, density, "dotted"), densityAxis),
		charts.WithXAxisOpts(hidden, namesAxis),
	)
	text := axisText()
	text.ShowMaxLabel = opts.Bool(false) // the end of the scale is no round number
	depth := opts.YAxis{
		Show: opts.Bool(true), Type: "value", Inverse: opts.Bool(true), Min: p.depth.min, Max: p.depth.max,
		MinInterval: p.depth.step, MaxInterval: p.depth.step,
		AxisLine: axisLine(ink, "solid", 2), AxisLabel: text, SplitLine: grid(true),
	}
	c.SetGlobalOptions(charts.WithYAxisOpts(depth, 0))
	if names {
		beside := depth
		beside.Show, beside.GridIndex = opts.Bool(false), 1
		beside.SplitLine = grid(false)
		c.ExtendYAxis(beside)
	}
}

// gridsOf lays the plot out, with a column for names at its right.
func (p plot) gridsOf(c *charts.Line, names, oxygenShown bool) {
	bottom := bottomPx
	if oxygenShown {
		bottom += axisPx
	}
	main := opts.Grid{Left: "54", Right: "14", Top: strconv.Itoa(topPx), Bottom: strconv.Itoa(bottom)}
	if !names {
		c.SetGlobalOptions(charts.WithGridOpts(main))
		return
	}
	beside := main
	main.Right, beside.Left, beside.Right, beside.Width = strconv.Itoa(namesPx), "", "0", strconv.Itoa(namesPx)
	c.SetGlobalOptions(charts.WithGridOpts(main, beside))
}
