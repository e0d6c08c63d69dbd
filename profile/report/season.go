package report

import (
	"fmt"
	"math"
	"strconv"
	"strings"
	"time"

	"coldseam/profile"
	"coldseam/profile/fish"
	"coldseam/profile/forecast"
	"coldseam/profile/layers"
	"coldseam/profile/plain"
	"coldseam/profile/plan"
	"coldseam/profile/unit"
)

// seasonal says what a season's drops have in them; its speaker has the last drop.
type seasonal struct {
	speaker
	e plan.Season
}

// Season says in words, for a terminal of a width, what changed in a water and what is to come.
func Season(e plan.Season, width int) string {
	s := seasonal{speak(*e.Last), e}
	return laid(width, s.title(), nil, s.since(), s.rows(), nil)
}

// SeasonLines are the same, a sentence each, for a page and for those who see no picture.
func SeasonLines(e plan.Season) []string {
	s := seasonal{speak(*e.Last), e}
	out := []string{strings.TrimSuffix(s.since(), ":")}
	out[0] = sentence(out[0])
	for _, r := range s.rows() {
		t := r.Label + ": " + r.Value
		if r.Detail != "" {
			t += ", " + r.Detail
		}
		out = append(out, sentence(t))
	}
	return out
}

func (s seasonal) title() string {
	t := day(s.e.When[len(s.e.When)-1]) + ", for " + s.p.Fish.Name
	if first := day(s.e.When[0]); s.e.Before != nil {
		t = first + " to " + t
	}
	t = count(len(s.e.Drops), "drop") + ", " + t
	if w := s.p.Drop.Water; w != "" {
		return plain.Line(w) + ": " + t
	}
	return capital(t)
}

func day(t time.Time) string { return t.Format(time.DateOnly) }

// since says against which drop the last is compared.
func (s seasonal) since() string {
	if s.e.Before == nil {
		return "The only day of this season: nothing to compare it with yet."
	}
	at := ""
	if s.e.Elsewhere {
		at = " at another spot"
	}
	return fmt.Sprintf("Compared with the drop before it, %s earlier%s:", count(int(math.Round(s.e.DaysBefore)), "day"), at)
}

func (s seasonal) rows() []Row {
	out := []Row{s.thermoclines(), s.edge(), s.warmth()}
	if row, ok := s.oxygen(); ok {
		out = append(out, row)
	}
	if row, ok := s.years(); ok {
		out = append(out, row)
	}
	return append(out, s.sinking(), s.turnover())
}

// thermoclines are the last and the one before.
func (s seasonal) thermoclines() Row {
	row := s.thermoclineRow()
	d := s.e.Thermocline
	switch {
	case s.e.Before == nil:
	case d.Was == nil && d.Now == nil:
		row.Detail += ", as before"
	case d.Was == nil:
		row.Detail = "there was none before"
	case d.Now == nil:
		row.Detail += "; it was " + s.u.Span(d.Was.Low, d.Was.High)
	default:
		row.Detail = s.against(d, d.Was)
	}
	return row
}

// against says how a depth differs from what it was.
func (s seasonal) against(d plan.Difference, was *profile.Estimate) string {
	t := "was " + s.u.Span(was.Low, was.High)
	switch {
	case !d.Shown:
		return t + ": no change that the readings show"
	case d.By > 0:
		return t + ": about " + s.span(d.By) + " deeper"
	}
	return t + ": about " + s.span(-d.By) + " shallower"
}

// edge is where the water is no longer too warm, or, for fish that need it warm, where it
// begins to be too cold.
func (s seasonal) edge() Row {
	level, label := s.p.Fish.ComfortHighC.Value, "Fish from"
	if s.p.Fish.Kind != fish.Coldwater {
		level, label = s.p.Fish.ComfortLowC.Value, "Fish to"
	}
	row, d := Row{Label: label, Detail: s.u.Degrees(level) + " there"}, s.e.Edge
	now := d.Now
	if s.e.Before == nil {
		now = s.p.Edge()
	}
	switch {
	case now != nil:
		row.Value = s.u.Span(now.Low, now.High)
	case s.p.Layers.MixedTempC <= level && label == "Fish from":
		row.Value, row.Detail = "the surface", s.u.Degrees(level)+" or less all the way"
	case s.p.Layers.MixedTempC <= level:
		row.Value, row.Detail = "nowhere", "all of it is colder than "+s.u.Degrees(level)
	default:
		row.Value, row.Detail = "not reached", "as far as was read it is warmer than "+s.u.Degrees(level)
	}
	if d.Was != nil && now != nil {
		row.Detail += "; " + s.against(d, d.Was)
	}
	return row
}

// warmth is the mixed layer's.
func (s seasonal) warmth() Row {
	row := Row{"Top water", s.u.Degrees(s.p.Layers.MixedTempC), ""}
	if m := s.p.Layers.MixedLayer; m != nil && s.p.Layers.Structure == layers.Layered {
		row.Detail = "down to " + s.u.Length(math.Max(m.Best, 0))
	}
	if s.e.Before == nil {
		return row
	}
	if row.Detail != "" {
		row.Detail += "; "
	}
	row.Detail += "was " + s.u.Degrees(s.e.Before.Layers.MixedTempC)
	return row
}

// oxygen is how deep there is enough of it, where both drops measured that.
func (s seasonal) oxygen() (row Row, ok bool) {
	d := s.e.Oxygen
	if d.Now == nil || d.Was == nil {
		return row, false
	}
	return Row{"Oxygen", "down to " + s.u.Length(d.Now.Best), number(s.p.Fish.OxygenMgL.Value) + " mg/L there; " + s.against(d, d.Was)}, true
}

// years compares the thermocline with that of earlier years.
func (s seasonal) years() (row Row, ok bool) {
	d := s.e.Typical
	if d.Now == nil || d.Was == nil {
		return row, false
	}
	var names []string
	for _, y := range s.e.Years {
		names = append(names, strconv.Itoa(y))
	}
	if n := len(names); n > 4 {
		names = []string{fmt.Sprintf("%d years from %s to %s", n, names[0], names[n-1])}
	}
	t := "thermocline in the same fortnight of " + list(names)
	switch {
	case !d.Shown:
		t += ": about the same now"
	case d.By > 0:
		t += ": now about " + s.span(d.By) + " deeper"
	default:
		t += ": now about " + s.span(-d.By) + " shallower"
	}
	return Row{"Years before", s.u.Span(d.Was.Low, d.Was.High), t}, true
}

// sinking is how fast the thermocline sinks.
func (s seasonal) sinking() Row {
	const label, week = "Sinking", 7.0
	if !s.e.SinkingOK {
		return Row{label, "not known", fmt.Sprintf("%d drops over %d days are the least that show it; so far %d",
			forecast.LeastDrops, forecast.LeastDays, s.e.Thermos)}
	}
	e := s.e.Sinking
	from := fmt.Sprintf("from %d drops over %d days", s.e.Thermos, int(math.Floor(s.e.ThermosDays)))
	if e.Low <= 0 && e.High >= 0 {
		return Row{label, "not clear", fmt.Sprintf("%s: anything from %s up to %s down a week", from, s.rateOf(-e.Low*week), s.rateOf(e.High*week))}
	}
	best, low, high, way := e.Best, e.Low, e.High, " a week"
	if best < 0 {
		best, low, high, way = -best, -high, -low, " a week upwards"
	}
	return Row{label, s.rateOf(best*week) + way, fmt.Sprintf("%s to %s, in 8 of 10 cases; %s", strings.Fields(s.rateOf(low * week))[0], s.rateOf(high*week), from)}
}

// rateOf prints a small length: tenths of a foot, or centimetres.
func (s seasonal) rateOf(m float64) string {
	if s.u.Feet() {
		return unit.Digits(unit.Foot.From(m), 1) + " ft"
	}
	return unit.Digits(100*m, 0) + " cm"
}

// turnover is when the water will be one layer again.
func (s seasonal) turnover() Row {
	const label = "One layer"
	switch s.e.NoTurn {
	case forecast.OneAlready:
		return Row{label, "now", "top to bottom, when last read"}
	case forecast.NotYet:
		month := "August"
		if s.e.South {
			month = "February"
		}
		return Row{label, "in autumn", "a drop of " + month + " or later narrows it"}
	case forecast.NotRead:
		return Row{label, "not known", "three depths are the least that show layers"}
	case forecast.IcedOver:
		return Row{label, "in spring", "when the ice is gone and the top has warmed a little"}
	case forecast.TooDeep:
		return Row{label, "not known", "deeper than " + s.u.Length(forecast.MostTurnM) + " it comes later than in the lakes this was learnt from"}
	}
	from, to := s.e.TurnFrom, s.e.TurnTo
	return Row{label, from.Format("2 Jan") + " to " + to.Format("2 Jan"), "again, by 15 autumns of lakes " + s.u.Span(9, 14) + " deep"}
}

// SeasonJSON is the stable form of it.
type SeasonJSON struct {
	Water       string            `json:"water,omitempty"`
	For         string            `json:"for"`
	Dates       []string          `json:"dates"`
	Thermocline *profile.Estimate `json:"thermocline_m,omitempty"`
	ThermoWas   *profile.Estimate `json:"thermocline_before_m,omitempty"`
	Edge        *profile.Estimate `json:"edge_m,omitempty"`
	EdgeWas     *profile.Estimate `json:"edge_before_m,omitempty"`
	TopC        float64           `json:"top_temp_c"`
	TopWasC     *float64          `json:"top_temp_before_c,omitempty"`
	Oxygen      *profile.Estimate `json:"oxygen_enough_to_m,omitempty"`
	OxygenWas   *profile.Estimate `json:"oxygen_enough_to_before_m,omitempty"`
	Years       []int             `json:"earlier_years"`
	Typical     *profile.Estimate `json:"earlier_years_thermocline_m,omitempty"`
	Sinking     *profile.Estimate `json:"sinking_m_per_day,omitempty"`
	TurnFrom    string            `json:"one_layer_from,omitempty"`
	TurnTo      string            `json:"one_layer_to,omitempty"`
	NoTurn      forecast.WhyNot   `json:"one_layer_unknown,omitempty"`
	Text        []string          `json:"text"`
}

// SeasonAsJSON makes it.
func SeasonAsJSON(e plan.Season) SeasonJSON {
	out := SeasonJSON{
		Water: plain.Line(e.Last.Drop.Water), For: e.Last.Fish.Key, Dates: []string{}, Years: append([]int{}, e.Years...),
		Thermocline: rounded(e.Last.Layers.Thermocline, 3), ThermoWas: rounded(e.Thermocline.Was, 3),
		Edge: rounded(e.Last.Edge(), 3), EdgeWas: rounded(e.Edge.Was, 3), TopC: unit.RoundTo(e.Last.Layers.MixedTempC, 3),
		Oxygen: rounded(e.Oxygen.Now, 3), OxygenWas: rounded(e.Oxygen.Was, 3), Typical: rounded(e.Typical.Was, 3),
		NoTurn: e.NoTurn, Text: SeasonLines(e),
	}
	for _, t := range e.When {
		out.Dates = append(out.Dates, day(t))
	}
	if e.Before != nil {
		was := unit.RoundTo(e.Before.Layers.MixedTempC, 3)
		out.TopWasC = &was
	}
	if e.SinkingOK {
		out.Sinking = rounded(&e.Sinking, 5)
	}
	if e.NoTurn == "" {
		out.TurnFrom, out.TurnTo = day(e.TurnFrom), day(e.TurnTo)
	}
	return out
}
