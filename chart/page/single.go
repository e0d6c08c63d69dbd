package page

import (
	"math"
	"slices"
	"strconv"

	"github.com/go-echarts/go-echarts/v2/charts"
	"github.com/go-echarts/go-echarts/v2/opts"

	"coldseam/chart"
	"coldseam/profile/plain"
)

// newChart is an empty picture with what all of them share.
func newChart(p plot, names bool, off ...string) *charts.Line {
	selected := map[string]bool{}
	for _, key := range off {
		selected[key] = false
	}
	c := charts.NewLine()
	c.SetGlobalOptions(
		charts.WithInitializationOpts(opts.Initialization{ChartID: "picture", Theme: "white"}),
		charts.WithAnimation(false),
		charts.WithColorsOpts(opts.Colors{ink}),
		charts.WithLegendOpts(opts.Legend{Show: opts.Bool(false), Selected: selected}),
		charts.WithTooltipOpts(opts.Tooltip{
			Show: opts.Bool(true), Trigger: "axis", TriggerOn: "mousemove|click", BackgroundColor: "transparent", BorderColor: "transparent",
			AxisPointer: &opts.AxisPointer{Type: "line", Axis: "y", Snap: opts.Bool(false)},
		}),
	)
	p.axes(c, names)
	return c
}

// xy is one point: value along its axis, depth.
type xy = [2]float64

// item is a point with its name, and whatever else belongs to it.
type item struct {
	Name   string    `json:"name,omitempty"`
	Value  []float64 `json:"value"`
	Symbol string    `json:"symbol,omitempty"` // where it is not that of the series
	Offset []string  `json:"symbolOffset,omitempty"`
}

func series(id, name string, axis int, s style, data any) charts.SingleSeries {
	out := charts.SingleSeries{
		Id: id, Name: name, Type: "line", XAxisIndex: axis, Data: data,
		LineStyle: s.line(), ItemStyle: s.item(), ShowSymbol: opts.Bool(s.Symbol != ""), Symbol: s.Symbol.path(), SymbolSize: 14,
	}
	if s.Width == 0 { // points alone
		out.LineStyle = &opts.LineStyle{Opacity: opts.Float(0)}
	}
	if s.Symbol == "" {
		out.Symbol, out.SymbolSize = circle.path(), 10 // seen under the finger only
	}
	return out
}

// single is the picture of one drop: the band as an area, the curve within its doubt,
// readings, oxygen, depths as lines, and lanes and names beside the plot.
func single(p plot, d chart.Drop) *charts.Line {
	c := newChart(p, true, "density")
	add := func(s ...charts.SingleSeries) { c.MultiSeries = append(c.MultiSeries, s...) }
	add(p.areas(d))
	if ring := p.ring(d); len(ring) > 0 {
		s := series("ribbon", "ribbon", tempAxis, ribbonStyle, ring)
		s.AreaStyle = &opts.AreaStyle{Color: ribbon, Opacity: opts.Float(1)}
		s.SymbolSize = 0
		add(s)
	}
	add(p.limitLines(d)...)
	add(p.lines(d)...)
	if p.hasGradient {
		var rise []xy
		for _, q := range d.Curve {
			rise = append(rise, xy{p.riseOf(q.RisePerM), p.depthOf(q.DepthM)})
		}
		add(series("density", "density", densityAxis, densityStyle, rise))
	}
	for i, run := range runs(d.Curve) {
		look, key := curveStyle, "curve"
		if run[len(run)/2].Extended {
			look, key = assumedStyle, "assumed"
		}
		add(series("curve"+strconv.Itoa(i), key, tempAxis, look, p.points(run)))
	}
	if p.hasOxygen {
		s := series("oxygen", "oxygen", oxygenAxis, oxygenStyle, p.oxygens(d))
		s.SymbolSize = 11
		add(s)
	}
	add(p.readings(d)...)
	add(p.names(d)...)
	return c
}

func (p plot) points(curve []chart.Point) []xy {
	out := make([]xy, 0, len(curve))
	for _, q := range curve {
		out = append(out, xy{p.tempOf(q.TempC), p.depthOf(q.DepthM)})
	}
	return out
}

// oxygens are the oxygen readings that are used.
func (p plot) oxygens(d chart.Drop) []xy {
	var out []xy
	for _, r := range d.Readings {
		if r.Oxygen.Known && r.Used {
			out = append(out, xy{round4(r.Oxygen.Value), p.depthOf(r.DepthM)})
		}
	}
	return out
}

// ring runs down the ribbon's cold side and up its warm one: the filled line closes
// upon itself, which is how an area between two lines is drawn with depth upright.
func (p plot) ring(d chart.Drop) []xy {
	var out []xy
	for _, q := range d.Curve {
		out = append(out, xy{p.tempOf(q.LowC), p.depthOf(q.DepthM)})
	}
	for _, q := range slices.Backward(d.Curve) {
		out = append(out, xy{p.tempOf(q.HighC), p.depthOf(q.DepthM)})
	}
	if len(out) > 0 {
		out = append(out, out[0])
	}
	return out
}

// runs cuts the curve where it begins or ends to be assumed; runs meet in a point.
func runs(curve []chart.Point) [][]chart.Point {
	var out [][]chart.Point
	from := 0
	for i := 1; i < len(curve); i++ {
		if curve[i].Extended != curve[i-1].Extended {
			end := i // the assumed part is the one that reaches over the gap
			if curve[i].Extended {
				end = i - 1
			}
			if end > from {
				out = append(out, curve[from:end+1])
			}
			from = end
		}
	}
	if len(curve)-from > 1 {
		out = append(out, curve[from:])
	}
	return out
}

// readings are the points with the bars of their error: as read, odd, left out. One that
// was left out and lies beyond the scales stands at their edge as an arrowhead; its value
// follows its place.
func (p plot) readings(d chart.Drop) []charts.SingleSeries {
	var fair, odd, left, off []item
	var bars []any
	for i, r := range d.Readings {
		t, y := p.tempOf(r.TempC), p.depthOf(r.DepthM)
		if y > p.depth.max || y < 0 {
			continue // the page says so
		}
		at := item{Name: strconv.Itoa(i), Value: []float64{p.temp.hold(t), y, t}}
		switch {
		case t > p.temp.max || t < p.temp.min:
			at.Symbol, at.Offset = warmer.path(), []string{"-50%", "0"}
			if t < p.temp.min {
				at.Symbol, at.Offset = colder.path(), []string{"50%", "0"}
			}
			off = append(off, at)
			continue
		case !r.Used:
			left = append(left, at)
			continue
		case r.Flag != "":
			odd = append(odd, at)
		default:
			fair = append(fair, at)
		}
		if len(d.Readings) <= chart.Crowded {
			dt, dz := p.u.Temp.DiffFromC(chart.Within80*r.ErrC), p.u.Depth.From(chart.Within80*r.ErrM)
			bars = append(bars, xy{p.temp.hold(t - dt), y}, xy{p.temp.hold(t + dt), y}, apart, xy{t, math.Max(y-dz, 0)}, xy{t, math.Min(y+dz, p.depth.max)}, apart)
		}
	}
	barred := series("bars", "readings", tempAxis, barStyle, bars)
	barred.SymbolSize = 0
	out := []charts.SingleSeries{barred, pointsOf("readings", readingStyle, fair)}
	for _, s := range []struct {
		id   string
		look style
		data []item
	}{{"odd", oddStyle, odd}, {"left", leftOutStyle, left}, {"off", offStyle, off}} {
		if len(s.data) > 0 {
			out = append(out, pointsOf(s.id, s.look, s.data))
		}
	}
	return out
}

// apart ends one line of a series, so that another can begin.
var apart = [2]string{"-", "-"}

func pointsOf(id string, s style, data []item) charts.SingleSeries {
	out := series(id, id, tempAxis, s, data)
	if out.SymbolSize = 13; s.Filled {
		out.SymbolSize = 10
	}
	return out
}

// areas are the band, hatched where its oxygen is unknown, and the ground.
func (p plot) areas(d chart.Drop) charts.SingleSeries {
	s := series("zones", "zones", tempAxis, style{}, []xy{})
	across := func(name string, top, foot float64, fill, edge string) {
		if foot > top {
			area(&s, name, xy{p.temp.min, top}, xy{p.temp.max, foot}, fill, edge)
		}
	}
	if band, ok := d.Zone(chart.Band); ok {
		across(plain.Line(band.Name), p.depthOf(band.TopM), p.depthOf(band.BottomM), bandTint, bandInk)
		if z, ok := d.BandUnknown(); ok {
			across(plain.Line(z.Name), p.depthOf(z.TopM), p.depthOf(z.BottomM), unknown, bandInk)
		}
	}
	if m, ok := d.Mark(chart.Bottom); ok {
		across(plain.Line(m.Name), p.depthOf(m.At.Best), p.depth.max, rising, paper)
	}
	return s
}

// lines are the depths with a name, from edge to edge, with the bars of their doubt; the
// fly's begins with an arrowhead.
func (p plot) lines(d chart.Drop) []charts.SingleSeries {
	var out []charts.SingleSeries
	var bars []any
	share := 0.97
	for i, m := range d.Marks {
		y := p.depthOf(m.At.Best)
		name := plain.Line(m.Name)
		ends := []item{{Name: name, Value: []float64{p.temp.min, y}}, {Name: name, Value: []float64{p.temp.max, y}}}
		s := series("mark"+strconv.Itoa(i), "marks", tempAxis, markLook(m.Kind), ends)
		if s.SymbolSize = 0; m.Kind == chart.Start {
			s.SymbolSize = 11
			ends[0].Symbol, ends[0].Offset = arrowhead.path(), []string{"50%", "0"}
			ends[1].Symbol = "none"
			s.ShowSymbol, s.ItemStyle = opts.Bool(true), &opts.ItemStyle{Color: ink}
		}
		out = append(out, s)
		if low, high := p.depthOf(m.At.Low), p.depthOf(m.At.High); high-low > p.depth.max/200 && m.Kind != chart.Weeds {
			a, b, c := p.temp.at(share-0.012), p.temp.at(share), p.temp.at(share+0.012)
			bars = append(bars, xy{a, low}, xy{c, low}, apart, xy{b, low}, xy{b, high}, apart, xy{a, high}, xy{c, high}, apart)
			share -= 0.04
		}
	}
	if len(bars) > 0 {
		s := series("doubts", "marks", tempAxis, barStyle, bars)
		s.SymbolSize = 0
		out = append(out, s)
	}
	return out
}
