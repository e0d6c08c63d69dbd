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

// label is one name beside the plot.
type label struct {
	lines []string
	at    float64 // where it belongs
	top   float64 // of what it names
	foot  float64
	rail  float64 // how far from the plot its bracket stands, % of the column
	look  style
}

const (
	linePx   = 19
	gapPx    = 7 // between labels
	wide     = 14
	namesAt  = 20.0 // % of the column
	nameTags = "labels"
)

// labels names the layers and the depths, in order of depth.
func (p plot) labels(d chart.Drop) []label {
	var out []label
	for _, z := range d.Zones {
		rail := 3.0
		switch z.Kind {
		case chart.Band:
			rail = 7.5
		case chart.Unproven:
			rail = 12
		}
		top, foot := p.depthOf(z.TopM), p.depthOf(z.BottomM)
		out = append(out, label{folded(plain.Line(z.Name), wide), (top + foot) / 2, top, foot, rail, zoneLooks[z.Kind].rail})
	}
	for _, m := range d.Marks {
		y := p.depthOf(m.At.Best)
		out = append(out, label{joined(folded(plain.Line(m.Name), wide), markDepth(p.u, m), wide), y, y, y, 0, markLooks[m.Kind]})
	}
	slices.SortStableFunc(out, func(a, b label) int { return cmp.Compare(a.at, b.at) })
	return out
}

// names draws the column beside the plot: a bracket for each layer, and a thin line
// from there, or from a depth, to its name.
func (p plot) names(d chart.Drop) []charts.SingleSeries {
	all := p.labels(d)
	want, high := make([]float64, len(all)), make([]float64, len(all))
	scale := plotPx / p.depth.max
	for i, l := range all {
		want[i], high[i] = l.at*scale, float64(len(l.lines)*linePx+gapPx)
	}
	var out []charts.SingleSeries
	var texts []item
	for i, y := range spread(want, high, plotPx) {
		l := all[i]
		y = round4(y / scale)
		if l.foot > l.top {
			rail := series("rail"+strconv.Itoa(i), "names", namesAxis, l.look, []xy{{l.rail, l.top}, {l.rail, l.foot}})
			rail.YAxisIndex, rail.SymbolSize = 1, 0
			out = append(out, rail)
		}
		from := min(max(y, l.top), l.foot)
		lead := series("lead"+strconv.Itoa(i), "names", namesAxis, style{Color: quiet, Dash: "solid", Width: 1}, []xy{{l.rail, from}, {15, y}, {namesAt - 1, y}})
		lead.YAxisIndex, lead.SymbolSize = 1, 0
		out = append(out, lead)
		texts = append(texts, item{strings.Join(l.lines, "\n"), []float64{namesAt, y}})
	}
	if len(texts) == 0 {
		return nil
	}
	return append(out, charts.SingleSeries{
		Id: nameTags, Name: "names", Type: "scatter", XAxisIndex: namesAxis, YAxisIndex: 1, Data: texts, SymbolSize: 1,
		ItemStyle: &opts.ItemStyle{Color: "rgba(0,0,0,0)", Opacity: opts.Float(1)}, // its opacity would be the text's too
		Label:     &opts.Label{Show: opts.Bool(true), Position: "right", Align: "left", VerticalAlign: "middle", FontSize: textPx, LineHeight: linePx, Color: ink},
	})
}
