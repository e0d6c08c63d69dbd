package page

import (
	"github.com/go-echarts/go-echarts/v2/charts"
	"strconv"

	"coldseam/chart"
)

// several is the picture of drops laid over each other: curves and readings, each drop
// with its own colour, dash and symbol; oxygen, off at first, as thin lines.
func several(p plot, drops []chart.Drop) *charts.Line {
	c := newChart(p, false, "oxygen")
	for i, d := range drops {
		look := overlay(i, len(drops))
		name := "d" + strconv.Itoa(i)
		line := look
		line.Symbol = ""
		c.MultiSeries = append(c.MultiSeries, series("curve"+strconv.Itoa(i), name, tempAxis, line, p.points(d.Curve)))
		var used []item
		for k, r := range d.Readings {
			if r.Used {
				used = append(used, item{Name: strconv.Itoa(k), Value: []float64{p.tempOf(r.TempC), p.depthOf(r.DepthM)}})
			}
		}
		points := look
		points.Width = 0
		s := series("readings"+strconv.Itoa(i), name, tempAxis, points, used)
		s.SymbolSize = 11
		c.MultiSeries = append(c.MultiSeries, s)
		if p.hasOxygen {
			thin := look
			thin.Width = 1
			o := series("oxygen"+strconv.Itoa(i), "oxygen", oxygenAxis, thin, p.oxygens(d))
			o.SymbolSize = 7
			c.MultiSeries = append(c.MultiSeries, o)
		}
	}
	return c
}
