package page

import (
	"cmp"
	"slices"
	"strconv"
	"strings"

	"github.com/go-echarts/go-echarts/v2/charts"
	"github.com/go-echarts/go-echarts/v2/opts"

	"coldseam/chart"
	"coldseam/profile/plain"
)

// label is one name beside the plot, and its value.
type label struct {
	name  []string // lines
	value string
	below bool    // the value has a line of its own
	at    float64 // where it belongs
	top   float64 // of what it names
	foot  float64
	from  float64 // how far from the plot its leader begins, % of the column
}

const (
	linePx   = 19
	gapPx    = 7  // between labels
	wide     = 13 // letters
	namesAt  = 30.0
	nameTags = "labels"
)

// named breaks a name into lines and puts its value behind the last where it has room.
func named(name, value string) (l label) {
	l.name, l.value = folded(plain.Line(name), wide), value
	last := ""
	if n := len(l.name); n > 0 {
		last = l.name[n-1]
	}
	l.below = len([]rune(last))+1+len([]rune(value)) > wide
	return l
}

// lines is how many lines a label takes.
func (l label) lines() int {
	if l.below {
		return len(l.name) + 1
	}
	return len(l.name)
}

// text is a label for the page's script: what is between {b| and } is bold, the value quiet.
func (l label) text() string {
	var out []string
	for _, line := range l.name {
		out = append(out, "{b|"+line+"}")
	}
	joint := " "
	if l.below {
		joint = "\n"
	}
	return strings.Join(out, "\n") + joint + "{v|" + l.value + "}"
}

// labels names the layers and the depths, in order of depth.
func (p plot) labels(d chart.Drop) []label {
	var out []label
	for _, z := range d.Zones {
		l, lane := named(z.Name, z.Said(p.u)), laneOf(z.Kind)
		l.top, l.foot, l.from = p.depthOf(z.TopM), p.depthOf(z.BottomM), (lane.from+lane.to)/2
		l.at = (l.top + l.foot) / 2
		out = append(out, l)
	}
	for _, m := range d.Marks {
		l := named(m.Name, m.Said(p.u))
		l.at = p.depthOf(m.At.Best)
		l.top, l.foot = l.at, l.at
		out = append(out, l)
	}
	slices.SortStableFunc(out, func(a, b label) int { return cmp.Compare(a.at, b.at) })
	return out
}

// names draws the column beside the plot: a lane for each layer, and a thin line from
// there, or from a depth, to its name.
func (p plot) names(d chart.Drop) []charts.SingleSeries {
	all := p.labels(d)
	want, high := make([]float64, len(all)), make([]float64, len(all))
	scale := plotPx / p.depth.max
	for i, l := range all {
		want[i], high[i] = l.at*scale, float64(l.lines()*linePx+gapPx)
	}
	out := []charts.SingleSeries{p.lanes(d)}
	var texts, starts []item
	for i, y := range spread(want, high, plotPx) {
		l := all[i]
		y = round4(y / scale)
		from := min(max(y, l.top), l.foot)
		if l.foot > l.top {
			starts = append(starts, item{Value: []float64{l.from, from}})
		}
		lead := series("lead"+strconv.Itoa(i), "names", namesAxis, leaderStyle, []xy{{l.from, from}, {25, from}, {namesAt - 3, y}, {namesAt - 1, y}})
		lead.YAxisIndex, lead.SymbolSize = 1, 0
		out = append(out, lead)
		texts = append(texts, item{Name: l.text(), Value: []float64{namesAt, y}})
	}
	if len(texts) == 0 {
		return nil
	}
	return append(out, charts.SingleSeries{
		Id: "starts", Name: "names", Type: "scatter", XAxisIndex: namesAxis, YAxisIndex: 1, Data: starts, SymbolSize: 5,
		ItemStyle: &opts.ItemStyle{Color: ink, Opacity: opts.Float(1)},
	}, charts.SingleSeries{
		Id: nameTags, Name: "names", Type: "scatter", XAxisIndex: namesAxis, YAxisIndex: 1, Data: texts, SymbolSize: 1,
		ItemStyle: &opts.ItemStyle{Color: "rgba(0,0,0,0)", Opacity: opts.Float(1)}, // its opacity would be the text's too
		Label:     &opts.Label{Show: opts.Bool(true), Position: "right", Align: "left", VerticalAlign: "middle", FontSize: textPx, LineHeight: linePx, Color: ink},
	})
}

// lanes are the zones beside the plot.
func (p plot) lanes(d chart.Drop) charts.SingleSeries {
	s := series("lanes", "names", namesAxis, style{}, []xy{})
	s.YAxisIndex = 1
	for _, z := range d.Zones {
		l := laneOf(z.Kind)
		area(&s, plain.Line(z.Name), xy{l.from, p.depthOf(z.TopM)}, xy{l.to, p.depthOf(z.BottomM)}, l.fill, ink)
	}
	return s
}

// area adds an area to a series, given by two corners: the one form that is drawn where
// it belongs.
func area(s *charts.SingleSeries, name string, a, b xy, fill, edge string) {
	charts.WithMarkAreaStyleOpts(opts.MarkAreaStyle{Label: &opts.Label{Show: opts.Bool(false)}})(s)
	charts.WithMarkAreaNameCoordItemOpts(opts.MarkAreaNameCoordItem{
		Name: name, Coordinate0: []any{a[0], a[1]}, Coordinate1: []any{b[0], b[1]},
		ItemStyle: &opts.ItemStyle{Color: fill, BorderColor: edge, BorderWidth: 1},
	})(s)
}
