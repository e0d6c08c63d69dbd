package report

import (
	"fmt"
	"math"

	"coldseam/profile"
	"coldseam/profile/fish"
	"coldseam/profile/layers"
	"coldseam/profile/plan"
	"coldseam/profile/tilt"
	"coldseam/profile/unit"
)

// tilted says what wind does to the thermocline of a plan.
type tilted struct {
	speaker
	t tilt.Tilt
}

// Tilt says for a terminal of a width which end to try first, how far apart they are, and
// when to read again.
func Tilt(p plan.Plan, t tilt.Tilt, width int) string {
	s := tilted{speak(p), t}
	return laid(width, Title(p), s.warnings(), s.choice(), s.rows(), s.notes())
}

// NoTilt says why nothing can be said, and what to give; without a capital and a full stop.
func NoTilt(p plan.Plan, no tilt.Refusal) string {
	switch no {
	case tilt.NotLayered:
		return "no thermocline was found, so there is none to tilt: " + notLayered(p.Layers.Structure)
	case tilt.NoLength:
		length := "800m"
		if p.Drop.Units.Feet() {
			length = "2600ft"
		}
		return fmt.Sprintf("the length of the lake along the wind is not known: give --lake-length %s, or note it on the page (lake length) or in the settings (length)", length)
	case tilt.NoWind:
		wind := "SW 4 m/s"
		if p.Drop.Units.Feet() {
			wind = "SW 10 mph"
		}
		return fmt.Sprintf("the speed of the wind is not known: give --wind %q, or write it on the page", wind)
	case tilt.ThinLayer:
		return "hardly any water is known above or below the thermocline: read deeper, or give --deepest"
	}
	return string(no)
}

func notLayered(s layers.Structure) string {
	switch s {
	case layers.TooFew:
		return "read three depths at least"
	case layers.Inverse:
		return "it is colder on top, as under ice"
	case layers.SkinOnly:
		return "there is only a warm skin on top"
	}
	return "the water is one layer, top to bottom"
}

// warnings are the cautions that stand first, in a line each.
func (s speaker) warnings() (out []string) {
	for _, c := range s.p.Cautions {
		if text := s.today(c); text != "" && cautionOf(c).first {
			out = append(out, text)
		}
	}
	return out
}

// end names an end by the compass where the wind's direction is known: "the SW end".
func (s speaker) end(e tilt.End) string { return "the " + s.endName(e) }

func (s speaker) endName(e tilt.End) string {
	from := s.p.Drop.WindFrom
	switch {
	case from == "":
		return string(e) + " end"
	case e == tilt.UpwindEnd:
		return from + " end"
	}
	return tilt.To(from) + " end"
}

// choice says which end to try first, and why.
func (s tilted) choice() string {
	up, down := s.end(tilt.UpwindEnd), s.end(tilt.DownwindEnd)
	apart := s.span(2 * s.t.End.Best)
	switch s.t.Choice.Why {
	case tilt.Shallower:
		if s.t.Rise == tilt.Rises {
			return fmt.Sprintf("Try %s first, where the wind comes from: cold water may have come up there, to the top.", up)
		}
		return fmt.Sprintf("Try %s first, where the wind comes from: %s is about %s shallower to reach there than at %s.", up, s.coolWater(), apart, down)
	case tilt.Thicker:
		if s.t.Rise == tilt.Rises {
			return fmt.Sprintf("Try %s first, where the wind blows to: the warm water is pushed there, and %s like it warmer.", down, s.p.Fish.Name)
		}
		return fmt.Sprintf("Try %s first, where the wind blows to: the warm layer reaches about %s deeper there than at %s, and %s like it warmer.", down, apart, up, s.p.Fish.Name)
	case tilt.Calm:
		return "No wind, no tilt: the thermocline lies level, unless it still rocks from an earlier wind."
	case tilt.Small:
		return fmt.Sprintf("No need to move: the ends differ by only about %s.", apart)
	case tilt.NoMatter:
		return fmt.Sprintf("Either end: the water suits %s from the top down at both.", s.p.Fish.Name)
	case tilt.NoGood:
		return fmt.Sprintf("Neither end is better: no water here suits %s.", s.p.Fish.Name)
	}
	return string(s.t.Choice.Why)
}

// coolWater is the water that a fish wants under a warm layer.
func (s speaker) coolWater() string {
	if s.p.Band.Found && s.p.Fish.Kind == fish.Coldwater {
		return "water of " + s.likes()
	}
	return "cool water"
}

// told reports whether the depths at the ends are worth a number: not in a calm, nor where
// the wind lifts the thermocline out of the water.
func (s tilted) told() bool { return s.t.Choice.Why != tilt.Calm && s.t.Rise != tilt.Rises }

func (s tilted) rows() []Row {
	t := s.t
	out := []Row{}
	if s.told() {
		out = append(out,
			Row{"Ends differ", s.span(2 * t.End.Best), s.apart()},
			Row{capital(s.endName(tilt.UpwindEnd)), s.u.Span(t.Up.Low, t.Up.High), "thermocline where the wind comes from"},
			Row{capital(s.endName(tilt.DownwindEnd)), s.u.Span(t.Down.Low, t.Down.High), "thermocline where it blows to"})
	}
	return append(out, Row{"Rocking", lapse(t.Period.Best), "there and back (" + lapses(t.Period) + ")"}, s.readAgain())
}

// apart is how much the ends may differ.
func (s tilted) apart() string {
	e := s.t.End
	if s.span(2*e.Low) == s.span(2*e.High) {
		return "in depth of the thermocline"
	}
	return fmt.Sprintf("in depth of the thermocline; between %s and %s", s.span(2*e.Low), s.span(2*e.High))
}

// readAgain says when the thermocline stands otherwise.
func (s tilted) readAgain() Row {
	half := lapse(s.t.Period.Best / 2)
	switch t := s.t; {
	case t.WindMps == 0:
		return Row{"Read again", "if the wind rises", "after " + lapse(t.Period.Best/4) + " of it the tilt is there"}
	case t.BlownKnown && t.Share.Best < 1:
		return Row{"Read again", "in " + lapse(t.Period.Best/4-t.AfterS), "then this wind has tilted it fully; " + half + " after it drops it leans the other way"}
	}
	return Row{"Read again", half, "after the wind drops or turns: by then it leans the other way"}
}

// notes say what the answer rests on.
func (s tilted) notes() (out []string) {
	t := s.t
	end := s.end(tilt.UpwindEnd)
	switch t.Rise {
	case tilt.Rises:
		out = append(out, fmt.Sprintf("So strong a wind along so long a lake can bring cold water to the top at %s, and stirs the layers: take a new drop there before you trust any depth.", end))
	case tilt.MayRise:
		out = append(out, fmt.Sprintf("If this wind holds and is at the strong end of what you noted, cold water may come to the top at %s.", end))
	}
	if t.WindMps > 0 {
		switch {
		case !t.BlownKnown:
			out = append(out, fmt.Sprintf("How long it has blown was not given (--hours): this holds after %s of this wind.", lapse(t.Period.Best/4)))
		case t.Share.Best < 1:
			out = append(out, fmt.Sprintf("It has not blown long enough: after %s the ends would differ by %s.", lapse(t.Period.Best/4), s.span(2*t.Steady.Best)))
		}
		if t.At == tilt.AnyPlace && s.told() {
			out = append(out, "Where on the lake you took the drop was not given (--at upwind, middle or downwind), so the two depths are wide.")
		}
		out = append(out, fmt.Sprintf("The wind is taken to blow along all %s of the lake; across it the tilt is less.", s.distance(t.LengthM)))
		if t.LengthM > tilt.RoughM {
			out = append(out, "In so long a lake bays, and the turning of the earth, bend the tilt: take it as rough.")
		}
	}
	if !t.BottomKnown {
		out = append(out, fmt.Sprintf("The deepest reading, %s, is taken as the bottom; a deeper lake rocks faster (--deepest).", s.u.Length(s.p.Column.Last().DepthM)))
	}
	return out
}

// distance prints a length along the water: to tens of feet or metres, "2600 ft", "1.2 km".
func (s speaker) distance(m float64) string {
	if s.u.Feet() {
		const mile = 1609.344
		if m >= mile {
			return unit.Digits(m/mile, 1) + " miles"
		}
		return unit.Exact(math.Round(unit.Foot.From(m)/10)*10) + " ft"
	}
	if m >= 1000 {
		return unit.Digits(m/1000, 1) + " km"
	}
	return unit.Exact(math.Round(m/10)*10) + " m"
}

// lapse prints a time as an angler would say it: to 5 minutes, to half hours, to hours.
func lapse(s float64) string {
	n, what := lapseIn(s, s)
	if n == "1" {
		what = what[:len(what)-1]
	}
	return n + " " + what
}

// lapses prints the range of a time, in one unit.
func lapses(e profile.Estimate) string {
	low, what := lapseIn(e.Low, e.Best)
	high, _ := lapseIn(e.High, e.Best)
	return low + " to " + high + " " + what
}

// lapseIn is the number of a time, in the unit that suits another.
func lapseIn(s, like float64) (number, what string) {
	const minute, hour = 60, 3600
	switch {
	case like < 100*minute:
		return unit.Exact(math.Max(1, math.Round(s/minute/5)) * 5), "minutes"
	case like < 10*hour:
		return unit.Exact(math.Max(1, math.Round(s/hour*2)) / 2), "hours"
	}
	return unit.Exact(math.Round(s / hour)), "hours"
}

// windTilts says what the wind of a page can do to its thermocline, as something that would
// change the advice.
func (s speaker) windTilts() string {
	t, _ := s.p.Tilt(profile.Optional{}, tilt.AnyPlace)
	return fmt.Sprintf("this wind, once it has blown for %s, sets the thermocline about %s lower at %s and as much higher at %s",
		lapse(t.Period.Best/4), s.span(t.End.Best), s.end(tilt.DownwindEnd), s.end(tilt.UpwindEnd))
}
