package page

import (
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
			Show: opts.Bool(true), Trigger: "axis", TriggerOn: "mousemove|click", BackgroundColor: "#ffffff", BorderColor: ink,
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
	Name  string    `json:"name,omitempty"`
	Value []float64 `json:"value"`
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

// single is the picture of one drop: layers as areas, the curve within its ribbon,
// readings, oxygen, depths as lines, and a column of names beside the plot.
func single(p plot, d chart.Drop) *charts.Line {
	c := newChart(p, true, "density")
	add := func(s ...charts.SingleSeries) { c.MultiSeries = append(c.MultiSeries, s...) }
	add(p.areas(d))
	add(p.lines(d)...)
	if ring := p.ring(d); len(ring) > 0 {
		s := series("ribbon", "ribbon", tempAxis, style{Color: ribbon, Dash: "solid", Width: 1}, ring)
		s.AreaStyle = &opts.AreaStyle{Color: ribbon, Opacity: opts.Float(0.35)}
		s.SymbolSize = 0
		add(s)
	}
	if p.hasGradient {
		var rise []xy
		for _, q := range d.Curve {
			rise = append(rise, xy{p.riseOf(q.RisePerM), p.depthOf(q.DepthM)})
		}
		add(series("density", "density", densityAxis, densityStyle, rise))
	}
	if p.hasOxygen {
		add(series("oxygen", "oxygen", oxygenAxis, oxygenStyle, p.oxygens(d)))
	}
	for i, run := range runs(d.Curve) {
		look := curveStyle
		if run[len(run)/2].Extended {
			look = assumedStyle
		}
		add(series("curve"+strconv.Itoa(i), "curve", tempAxis, look, p.points(run)))
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

// readings are the points: as read, odd, left out. One that was left out and lies
// beyond the scales stands at their edge; its value follows its place.
func (p plot) readings(d chart.Drop) []charts.SingleSeries {
	var fair, odd, left []item
	for i, r := range d.Readings {
		y := p.depthOf(r.DepthM)
		if y > p.depth.max || y < 0 {
			continue // the page says so
		}
		at := item{strconv.Itoa(i), []float64{p.temp.hold(p.tempOf(r.TempC)), y, p.tempOf(r.TempC)}}
		switch {
		case !r.Used:
			left = append(left, at)
		case r.Flag != "":
			odd = append(odd, at)
		default:
			fair = append(fair, at)
		}
	}
	out := []charts.SingleSeries{series("readings", "readings", tempAxis, readingStyle, fair)}
	if len(odd) > 0 {
		out = append(out, series("odd", "odd", tempAxis, oddStyle, odd))
	}
	if len(left) > 0 {
		out = append(out, series("left", "left", tempAxis, leftOutStyle, left))
	}
	return out
}

// areas are the layers. An area is given by two corners: the one form that is drawn
// where it belongs.
func (p plot) areas(d chart.Drop) charts.SingleSeries {
	s := series("zones", "zones", tempAxis, style{}, []xy{})
	charts.WithMarkAreaStyleOpts(opts.MarkAreaStyle{Label: &opts.Label{Show: opts.Bool(false)}})(&s)
	for _, z := range d.Zones {
		look := zoneLooks[z.Kind]
		charts.WithMarkAreaNameCoordItemOpts(opts.MarkAreaNameCoordItem{
			Name:        plain.Line(z.Name),
			Coordinate0: []any{p.temp.min, p.depthOf(z.TopM)},
			Coordinate1: []any{p.temp.max, p.depthOf(z.BottomM)},
			ItemStyle:   &opts.ItemStyle{Color: look.fill, BorderColor: look.rail.Color, BorderWidth: 0.5},
		})(&s)
	}
	return s
}

// lines are the depths with a name, from edge to edge.
func (p plot) lines(d chart.Drop) []charts.SingleSeries {
	var out []charts.SingleSeries
	for i, m := range d.Marks {
		y := p.depthOf(m.At.Best)
		s := series("mark"+strconv.Itoa(i), "marks", tempAxis, markLooks[m.Kind], []item{
			{plain.Line(m.Name), []float64{p.temp.min, y}}, {plain.Line(m.Name), []float64{p.temp.max, y}},
		})
		s.SymbolSize = 0
		out = append(out, s)
	}
	return out
}
