package report

import (
	"fmt"
	"strings"
	"time"

	"coldseam/profile/fish"
	"coldseam/profile/plain"
	"coldseam/profile/plan"
	"coldseam/profile/rig"
	"coldseam/profile/sun"
	"coldseam/profile/trip"
	"coldseam/profile/unit"
)

// Trip is what to print before a trip.
type Trip struct {
	Water  string
	Day    time.Time
	Fish   fish.Fish
	Units  unit.System
	Rules  rig.Rules
	Clear  bool // how clear the water is was noted
	Expect trip.Expectation
	Kit    trip.Kit
	Sun    *sun.Outlook // nil where the latitude is not known
}

// Text prints it for a terminal of a width: half a page.
func (t Trip) Text(width int) string {
	s := speaker{plan.Plan{Fish: t.Fish, Rules: t.Rules}, t.Units.Shown()}
	blocks := []string{WrapTo(t.title(), width), WrapTo(t.source(), width)}
	if t.Expect.State == trip.Iced {
		blocks = append(blocks, WrapTo("ICE: "+s.ice()[len("If there is ice: "):], width))
	}
	rows := ""
	for _, r := range t.rows(s) {
		rows += r.text(width)
	}
	blocks = append(blocks, strings.TrimSuffix(rows, "\n"))
	if len(t.Kit.Ties) > 0 {
		blocks = append(blocks, strings.TrimSuffix(t.ties(s, width), "\n"))
	}
	last := []string{WrapTo("Bring: "+strings.Join(t.bring(s), ", ")+".", width), WrapTo(s.rules(), width)}
	if t.Sun != nil {
		last = append(last, WrapTo(sunTimes(*t.Sun), width))
		if t.Expect.State != trip.Iced {
			for _, s := range evening(*t.Sun, t.Units.Shown()) {
				last = append(last, WrapTo(s, width))
			}
		}
	}
	return strings.Join(append(blocks, strings.Join(last, "\n")), "\n\n") + "\n"
}

func (t Trip) title() string {
	to := " on "
	if t.Water != "" {
		to = " to " + plain.Line(t.Water) + ", "
	}
	return "Trip" + to + t.Day.Format(time.DateOnly) + ", for " + t.Fish.Name
}

// source says what the expectation comes from.
func (t Trip) source() string {
	e := t.Expect
	switch e.From {
	case trip.Season:
		return fmt.Sprintf("Expected from %s of this season, the last of %s.", count(e.Drops, "drop"), e.Last.Format(time.DateOnly))
	case trip.Years:
		return fmt.Sprintf("Expected from %s about this day in %s, the last of %s.", count(e.Drops, "drop"), count(e.Years, "year"), e.Last.Format(time.DateOnly))
	case trip.Lakes:
		if e.State == trip.Unsure {
			return "The book has nothing for this time of year; of measured lakes so shallow about half were layered in summer."
		}
		return "The book has nothing for this time of year: this is what 8 of 10 measured lakes of that depth do in summer."
	case trip.Length:
		return "The book has nothing for this time of year: this is a rule of thumb by the lake's length, and its spread is a guess. The greatest depth (--deepest) tells more."
	}
	if e.State == trip.Iced {
		return "The book has nothing for this time of year; lakes may be under ice now."
	}
	return "The book has nothing for this time of year, and no measured lakes tell whether the water is layered now."
}

// rows are what to expect and how much line and rope it takes.
func (t Trip) rows(s speaker) []Row {
	e, k := t.Expect, t.Kit
	rows := []Row{t.thermocline(s)}
	if e.State != trip.Iced {
		rows = append(rows, t.band(s), t.cast(s))
	}
	rows = append(rows, Row{"Marked line", s.u.Length(k.LineM), "for readings down to " + s.u.Length(k.DeepestM)})
	if k.AnchorM > 0 {
		rows = append(rows, Row{"Anchor rope", s.u.Span(k.RopeLowM, k.RopeHighM), "5 to 7 times " + s.u.Length(k.AnchorM) + ", for each of two anchors"})
	}
	read := Row{"Read first", "near the top", "then close above the bottom"}
	if k.ReadM.Known {
		read.Detail += ", then " + s.u.Marked(k.ReadM.Value)
	}
	read.Detail += "; `coldseam drop` asks for the rest"
	return append(rows, read)
}

func (t Trip) thermocline(s speaker) Row {
	row := Row{Label: "Thermocline"}
	switch e := t.Expect; {
	case e.Thermocline != nil:
		row.Value, row.Detail = s.u.Span(e.Thermocline.Low, e.Thermocline.High), "in 8 of 10 cases"
	case e.State == trip.OneLayer:
		row.Value, row.Detail = "none", "one layer, top to bottom, is likely"
	case e.State == trip.Iced:
		row.Value, row.Detail = "none", "under ice it is colder on top"
	default:
		row.Value, row.Detail = "not known", "one layer or several"
	}
	return row
}

// band says where the fish's water may begin.
func (t Trip) band(s speaker) Row {
	limit := s.u.Degrees(t.Fish.ComfortHighC.Value)
	switch e := t.Expect; {
	case e.TooWarm:
		return Row{"Fish", "perhaps nowhere", limit + " may lie deeper than any water known here: read first"}
	case e.Edge != nil && e.EdgeUnsure:
		return Row{"Fish below", s.u.Span(e.Edge.Low, e.Edge.High), "where it has cooled to " + limit + ", if it has at all"}
	case e.Edge != nil && e.MaybeTop:
		return Row{"Fish below", s.u.Span(e.Edge.Low, e.Edge.High), "in 8 of 10 cases; or from the top, if it has cooled to " + limit}
	case e.Edge != nil:
		return Row{"Fish below", s.u.Span(e.Edge.Low, e.Edge.High), "where it has cooled to " + limit + ", in 8 of 10 cases"}
	}
	if !t.Fish.ComfortHighC.Known {
		return Row{"Fish", "not known", "a drop tells"}
	}
	return Row{"Fish", "from the top", "down, unless it is warmer than " + limit + " there: a drop tells"}
}

func (t Trip) cast(s speaker) Row {
	row := Row{Label: "Cast over"}
	switch e := t.Expect; {
	case e.Water == nil:
		row.Value = "not known"
	case t.Fish.OpenWater && len(t.Kit.Ties) > 0:
		return Row{"Fly", s.u.Span(t.Kit.Ties[0].FlyM, t.Kit.Ties[len(t.Kit.Ties)-1].FlyM) + " down", "over open water"}
	case e.WaterTaken:
		row.Value, row.Detail = s.u.Span(e.Water.Low, e.Water.High), "of water, surface to bottom, where fish feed (common practice)"
	default:
		row.Value, row.Detail = s.u.Span(e.Water.Low, e.Water.High), "of water, surface to bottom"
	}
	return row
}

// ties are the leaders for the depths that are likely.
func (t Trip) ties(s speaker, width int) string {
	depth := "water under the fly"
	if t.Fish.OpenWater {
		depth = "the fly"
	}
	out := WrapTo("Tie at home, by the depth of "+depth+" (rig; sink time; retrieve):", width) + "\n"
	for _, tie := range t.Kit.Ties {
		out += t.tie(s, tie).text(width)
	}
	return out
}

// tie is one rig in a row.
func (t Trip) tie(s speaker, tie trip.Tie) Row {
	r := tie.Rig
	parts := []string{s.rigShort(r)}
	if !r.Reachable && r.ReachM > 0 && wanted(r) {
		parts = append(parts, "reaches only "+s.u.Length(r.ReachM))
	}
	if r.SinkTime != nil {
		parts = append(parts, "sink time "+seconds(r.SinkTime.Best)+" s")
	}
	parts = append(parts, s.retrieveRow(r).Value)
	depth := tie.WaterM
	if t.Fish.OpenWater {
		depth = tie.FlyM
	}
	return Row{s.u.Length(depth), s.u.Piece(r.LeaderM) + " leader", strings.Join(parts, "; ")}
}

// rigShort is the name of a rig in a word or two.
func (s speaker) rigShort(r rig.Rig) string {
	name, _ := s.rigName(r)
	switch {
	case r.Kind == rig.LongLeader:
		return "long leader"
	case !r.ClassAssumed:
		return strings.TrimSuffix(strings.TrimSuffix(name, ", short leader"), " under the boat")
	case r.Kind == rig.StraightDown:
		return fmt.Sprintf("class %d line, straight down", r.Class)
	}
	return fmt.Sprintf("class %d sinking line", r.Class)
}

// bring is what to take along.
func (t Trip) bring(s speaker) []string {
	ice, weight := "32 F", "8 to 16 oz"
	if !s.u.Feet() {
		ice, weight = "0 C", "200 to 450 g"
	}
	out := []string{"thermometer", "a cup of ice to check it at " + ice, "marked line with " + weight, "pencil and page"}
	if !t.Clear {
		out = append(out, "Secchi disk")
	}
	if t.Expect.State == trip.Iced {
		return append(out, "ice picks and a rope", "a spud to test the ice", "a partner")
	}
	has := func(ok func(rig.Rig) bool) bool {
		for _, tie := range t.Kit.Ties {
			if ok(tie.Rig) {
				return true
			}
		}
		return false
	}
	if has(func(r rig.Rig) bool { return r.Kind == rig.Hung }) {
		out = append(out, "indicators")
	}
	if has(func(r rig.Rig) bool { return r.Kind == rig.Sinking || r.Kind == rig.StraightDown }) {
		out = append(out, "a sinking line")
	}
	if has(func(r rig.Rig) bool { return r.AddBite }) {
		out = append(out, "wire for bite tippets")
	}
	return append(out, "two anchors", "a knife within reach", "life jacket (wear it)")
}
