package page

import (
	"strconv"

	"github.com/go-echarts/go-echarts/v2/charts"

	"coldseam/chart"
	"coldseam/profile/unit"
)

// limit is one of the fish's limits as an upright line, as in the still picture.
type limit struct {
	axis int
	at   float64
	text string
	look style
}

// limits are those of the fish that lie within the scales.
func (p plot) limits(d chart.Drop) []limit {
	var out []limit
	add := func(known bool, s span, l limit) {
		if known && l.at > s.min && l.at < s.max {
			out = append(out, l)
		}
	}
	warm, poor := style{Color: warmth, Dash: "8 3 2 3", Width: 1.7}, style{Color: oxygen, Dash: "8 3 2 3 2 3", Width: 1.7}
	l := d.Limits
	for _, c := range []struct {
		known bool
		degC  float64
	}{{l.ColdC.Known, l.ColdC.Value}, {l.WarmC.Known, l.WarmC.Value}} {
		add(c.known, p.temp, limit{tempAxis, p.tempOf(c.degC), p.u.Degrees(c.degC) + ", the fish's limit", warm})
	}
	add(l.OxygenMgL.Known && p.hasOxygen, p.oxygen, limit{oxygenAxis, round4(l.OxygenMgL.Value), unit.Digits(l.OxygenMgL.Value, 1) + " mg/L, its limit of oxygen", poor})
	return out
}

// limitLines draws them down the plot; each is switched by its own name.
func (p plot) limitLines(d chart.Drop) []charts.SingleSeries {
	var out []charts.SingleSeries
	for i, l := range p.limits(d) {
		key := "limit" + strconv.Itoa(i)
		s := series(key, key, l.axis, l.look, []xy{{l.at, 0}, {l.at, p.depth.max}})
		s.SymbolSize = 0
		out = append(out, s)
	}
	return out
}
