package report

import (
	"fmt"
	"math"
	"strings"

	"coldseam/profile/band"
	"coldseam/profile/layers"
	"coldseam/profile/notebook"
	"coldseam/profile/oxygen"
	"coldseam/profile/plan"
	"coldseam/profile/rig"
)

// Short makes the answer at a glance; notes are those on how the page was read.
func Short(p plan.Plan, notes []notebook.Note) Brief {
	s := speak(p)
	b := Brief{Title: Title(p), Confidence: s.confidence(), Read: AsRead(p, notes)[1:]}
	for _, c := range p.Cautions {
		switch text := s.today(c); {
		case text == "":
		case cautionOf(c).first:
			b.Warnings = append(b.Warnings, text)
		default:
			b.Safety = append(b.Safety, text)
		}
	}
	if p.Band.Found {
		b.Rows = append(s.depthRows(), s.rigRows(*p.Rig)...)
		if s.jigged() { // what kind of plan it is comes first
			b.Rows = append(s.rigRows(*p.Rig)[:1], append(s.depthRows(), s.rigRows(*p.Rig)[1:]...)...)
		}
	} else {
		b.NoWater = s.noBand()
	}
	b.Rows = append(b.Rows, s.thermoclineRow())
	if row, ok := s.usualRow(); ok {
		b.Rows = append(b.Rows, row)
	}
	return b
}

// depthRows say where the fish are, how deep the fly goes and over what water.
func (s speaker) depthRows() []Row {
	b, last := s.p.Band, s.p.Column.Last().DepthM
	top, bottom := b.Safe(last)
	fish := Row{"Fish", s.u.Span(top, bottom), s.suits()}
	if top <= 0 {
		fish.Value = "down to " + s.u.Length(bottom)
	}
	fly := Row{"Fly", s.u.Length(s.p.FlyM()) + " down", "expect " + s.degrees(s.p.Expected(s.p.FlyM())) + " there"}
	if b.Cold && !s.p.UnderIce() {
		fly.Detail += "; warmer is good news"
	}
	if b.Suspended {
		return []Row{fish, fly, {"Anchor over", "open water", "any depth from " + s.u.Length(b.CastShallowM)}}
	}
	label, under := "Cast over", "of water, surface to bottom"
	if s.jigged() {
		label, under = "Hole over", "of water"
	}
	over := Row{label, s.u.Marked(b.WaterM), under}
	if s.u.Mark(b.CastShallowM) != s.u.Mark(b.CastDeepM) {
		over.Detail = s.u.Span(b.CastShallowM, b.CastDeepM) + " " + under
	}
	return []Row{fish, fly, over}
}

// suits says why the water of the band suits the fish, and which part of it is the best bet.
func (s speaker) suits() string {
	b := s.p.Band
	t := "suits them"
	switch {
	case b.Verdict == band.OverWarm:
		t = "warmer than they like best"
	case b.Cold:
		t = "colder than they like best"
		if !s.p.UnderIce() {
			t += ": look for warmer water"
		}
	case s.p.Fish.ComfortHighC.Known && !b.ToSurface:
		t = s.u.Degrees(s.p.Fish.ComfortHighC.Value) + " or less"
	}
	top, bottom, bet := b.BestBet(s.p.Column.Last().DepthM)
	cut, over := s.p.OverMud()
	switch {
	case b.Oxygen && !over:
		return t + ", with enough oxygen"
	case over:
		return fmt.Sprintf("%s; black mud: nothing below %s is counted", t, s.u.Length(cut))
	case bet == band.AllOfIt && oxygen.TurnedOver(s.p.Layers):
		return t + "; oxygen likely in one cold layer"
	case bet == band.AllOfIt:
		return t + "; oxygen not measured"
	case bet == band.NoPart:
		return t + "; oxygen unknown there, may be too low"
	case top <= 0:
		return fmt.Sprintf("%s; best bet down to %s: below that oxygen is unknown", t, s.u.Length(bottom))
	}
	return fmt.Sprintf("%s; best bet %s: below that oxygen is unknown", t, s.u.Span(top, bottom))
}

// rigRows say what is tied on, how long it sinks and how it is retrieved.
func (s speaker) rigRows(r rig.Rig) []Row {
	name, how := s.rigName(r)
	rows := []Row{{"Rig", name, strings.TrimSpace(how + s.swivel(r) + s.bite(r))}}
	if len(r.Parts) > 0 {
		rows = append(rows, Row{"Leader", s.u.Piece(r.LeaderM), s.parts(r)})
	}
	if !r.Reachable {
		limit := s.capped(r)
		if !wanted(r) { // what else would do is for the whole answer
			limit = s.limit(r) + "."
		}
		rows[0].Detail = strings.TrimSpace(limit + " " + rows[0].Detail)
	}
	if t := r.SinkTime; t != nil {
		rows = append(rows, Row{"Sink time", seconds(t.Best) + " s", s.sinkDetail(r)})
	}
	return append(rows, s.retrieveRow(r))
}

// sinkDetail is the range of a sink time, and how it is to be had.
func (s speaker) sinkDetail(r rig.Rig) string {
	t := ""
	if low, high := seconds(r.SinkTime.Low), seconds(r.SinkTime.High); low != high {
		t = fmt.Sprintf("%s to %s s, ", low, high)
	}
	switch r.Kind {
	case rig.LongLeader:
		return t + "holding the line tight"
	case rig.Hung:
		return t + "less if the fly lands beside the indicator"
	}
	return t + "from when the line lands"
}

// rigName is the name of a rig, and where the fly is on it.
func (s speaker) rigName(r rig.Rig) (name, how string) {
	switch r.Kind {
	case rig.Hung:
		kind := "fixed"
		if r.SlidingNeeded {
			kind = "sliding"
		}
		return kind + " indicator", "fly " + s.u.Length(r.HangM) + " under it."
	case rig.Sinking:
		return s.line(r) + ", short leader", ""
	case rig.StraightDown:
		return s.line(r) + ", straight down under the boat", ""
	case rig.Jig:
		return "jig through a hole in the ice, line straight down", ""
	}
	return "floating line, long leader", ""
}

func (s speaker) retrieveRow(r rig.Rig) Row {
	row := Row{Label: "Retrieve"}
	switch {
	case r.Kind == rig.Hung:
		row.Value, row.Detail = "let it hang", "a slow pull now and then"
	case r.Kind == rig.Jig:
		row.Label, row.Value, row.Detail = "Jig", "lift and hold", s.lift()+", then hold it still"
	case r.Kind == rig.StraightDown:
		row.Value, row.Detail = "lift slowly", "with hand twists, then hold it still"
	case r.Kind == rig.Sinking && r.Window.Known:
		row.Value, row.Detail = "slow", fmt.Sprintf("faster than %s a second lifts the fly", s.speed(r.Window.Fastest))
	case r.Kind == rig.Sinking:
		row.Value, row.Detail = "slow", "two strips first to straighten the line"
	case !r.Window.Known:
		row.Value, row.Detail = "let it lie", "any retrieve lifts this fly off the depth"
	case r.Window.Slowest < stillMps:
		row.Value, row.Detail = "up to "+s.aSecond(r.Window.Fastest), "averaged over pauses"+s.handTwist(r)
	default:
		low, _ := s.hands(r.Window.Slowest)
		row.Value, row.Detail = low+" to "+s.aSecond(r.Window.Fastest), "averaged over pauses"+s.handTwist(r)+"; any slower and it drags bottom"
		if s.p.Band.Suspended {
			row.Detail = "averaged over pauses" + s.handTwist(r)
		}
	}
	return row
}

// handTwist says a retrieve as hand twists, "a hand twist every 2 seconds, ".
func (s speaker) handTwist(r rig.Rig) string {
	if t := s.everyTwist(r.Window.Slowest, r.Window.Fastest); t != "" {
		return ", a slow hand twist " + t
	}
	return ""
}

// aSecond prints a speed for a table, "2.2 in/s".
func (s speaker) aSecond(mps float64) string {
	v, _ := s.hands(mps)
	if s.u.Feet() {
		return v + " in/s"
	}
	return v + " cm/s"
}

func (s speaker) thermoclineRow() Row {
	row, l := Row{Label: "Thermocline"}, s.p.Layers
	switch l.Structure {
	case layers.TooFew:
		row.Value, row.Detail = "not known", "three depths are the least that show one"
	case layers.Mixed:
		row.Value, row.Detail = "none", "one layer, top to bottom"
	case layers.Inverse:
		row.Value, row.Detail = "none", "colder on top, as under ice"
	case layers.SkinOnly:
		row.Value, row.Detail = "none", "only a warm skin of "+s.u.Length(l.SkinM)
	default:
		row.Value, row.Detail = s.u.Span(l.Thermocline.Low, l.Thermocline.High), "where it turns cold fastest"
		if l.MixedLayer != nil && s.u.Mark(l.MixedLayer.Best) != "0" {
			row.Detail = "one warm layer above, down to " + s.u.Length(math.Max(l.MixedLayer.Best, 0))
		}
	}
	return row
}

// confidence is both levels and the reason that counts most: the depth's where that is not
// good, else the oxygen's where it was not measured.
func (s speaker) confidence() string {
	d, o := s.p.Depths, s.p.Oxygen
	main := d
	if d.Level == plan.Good && o.Level != plan.Measured {
		main = o
	}
	t := fmt.Sprintf("Confidence: depth %s, oxygen %s", d.Level, o.Level)
	if why := s.doubts(main); len(why) > 0 {
		t += "; " + why[0]
	}
	return strings.TrimSuffix(t, ".") + "."
}

// today is a caution in a line, where it can hurt somebody today.
func (s speaker) today(c plan.Caution) string {
	top := s.u.Degrees(s.p.Layers.MixedTempC)
	switch c {
	case plan.Warm70:
		return fmt.Sprintf("WARM WATER, %s on top: fish are likely to die if released. No catch and release; if you may keep fish, stop at your limit.", top)
	case plan.Warm68:
		return fmt.Sprintf("Warm water, %s on top: land fish fast and keep them in the water.", top)
	case plan.Thunder:
		return "THUNDER: off the water now, and wait 30 minutes after the last thunder."
	case plan.Wind:
		return "WIND: too much for a small boat at anchor. Come in."
	case plan.Pressure:
		if !s.p.Fish.CanVent {
			return fmt.Sprintf("Fish from deeper than %s may not survive release: stop at your limit.", s.u.Length(plan.PressureM))
		}
	case plan.Ice:
		return "ICE: test it as you go, never go alone; clear ice of " + s.leastIce() + " is the least for one person."
	case plan.Cold:
		where := s.u.Degrees(s.p.ColdestC()) + " below"
		if first := s.p.Column.First().TempC; first < plan.ShockC {
			where = s.u.Degrees(first) + " " + s.atTop()
		}
		return "Cold water, " + where + ": a fall can take your breath. Wear the life jacket."
	case plan.Rules:
		if s.p.Rules.Water != "" {
			return s.rules()
		} // else the closing line names them
	}
	return ""
}
