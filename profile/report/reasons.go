package report

import (
	"fmt"

	"coldseam/profile/band"
	"coldseam/profile/fish"
	"coldseam/profile/light"
	"coldseam/profile/plan"
	"coldseam/profile/rig"
)

// Reasons says why the band lies where it does and what would change it, in
// sentences.
func Reasons(p plan.Plan) (why, changes []string) {
	s := speak(p)
	for _, w := range s.why() {
		why = append(why, sentence(w))
	}
	for _, c := range s.changes() {
		changes = append(changes, sentence(c))
	}
	return why, changes
}

func (s speaker) why() []string {
	out := s.needs()
	if b := s.p.Band; b.Found {
		out = append(out, s.bandReasons()...)
		for _, o := range b.Others {
			out = append(out, fmt.Sprintf("also %s: %s", s.u.Span(o.TopM, o.BottomM), s.flaw(o.Why)))
		}
	}
	if r := s.p.Rig; r != nil {
		out = append(out, s.rigReasons(*r)...)
	}
	return out
}

// likes is the temperature that the fish likes, as far as it matters here: "66 F or less".
func (s speaker) likes() string {
	if s.p.Fish.Kind != fish.Coldwater || s.p.Band.Cold {
		return s.comfort()
	}
	return s.u.Degrees(s.p.Fish.ComfortHighC.Value) + " or less"
}

// needs says what the fish needs, with the sources.
func (s speaker) needs() []string {
	b, f := s.p.Band, s.p.Fish
	out := []string{fmt.Sprintf("%s like water of %s (%s)", f.Name, s.likes(), f.ComfortHighC.Source)}
	switch {
	case b.Oxygen:
		out = append(out, fmt.Sprintf("they need %s mg/L of oxygen (%s)", number(f.OxygenMgL.Value), f.OxygenMgL.Source))
	case b.Found:
		if _, over := s.p.OverMud(); !over {
			out = append(out, "not measured, so no depth was ruled out for oxygen")
		}
	}
	return out
}

// bandReasons says why the band and the start lie where they do.
func (s speaker) bandReasons() []string {
	p, b := s.p, s.p.Band
	var out []string
	add := func(when bool, format string, args ...any) {
		if when {
			out = append(out, fmt.Sprintf(format, args...))
		}
	}
	winter := b.Cold && p.UnderIce() && !b.Oxygen
	add(winter, "the warmest water is the deepest, but late in winter oxygen fails there first: start no deeper than over the shelf (common practice)")
	_, _, alike := p.Alike()
	add(b.Cold && !winter && !alike, "it is colder than they like best, so warmer water is the way to go: start where it is warmest")
	add(b.Cold && !winter && alike, "it is colder than they like best and nowhere much warmer: start over the shelf (common practice), and look for warmer water")
	add(!b.Cold && b.ToSurface && p.Fish.Kind == fish.Coldwater, "the top is cool enough, so the band has no upper edge: start over the shelf (common practice)")
	add(b.ToDeepest, "it may go deeper: nothing was read below %s", s.u.Length(p.Column.Last().DepthM))
	add(b.Thin, "the band is thin: its middle edges are given, not the safe ones")
	light := s.lightReason()
	add(light != "", "%s", light)
	if w := b.Weeds; w != nil {
		overWeeds := "a foot or two"
		if !s.u.Feet() {
			overWeeds = "30 to 60 cm"
		}
		add(true, "by the Secchi depth the deepest weeds grow to about %s (%s to %s, Caffrey et al. 2007), and light enough for plants reaches %s (Poole & Atkins 1929): over weeds keep the fly %s above their tops",
			s.u.Length(w.Best), s.u.Mark(w.Low), s.u.Length(w.High), s.u.Length(b.PlantsM), overWeeds)
	}
	rich := s.richness()
	add(rich != "" && !b.Oxygen, "%s", rich)
	return out
}

// flaw says why an interval is not the band.
func (s speaker) flaw(f band.Flaw) string {
	switch f {
	case band.Thinner:
		return "thinner than the band"
	case band.Surer:
		return "warmer than ideal, but more likely to hold oxygen"
	case band.OverMud:
		return "its temperature suits, but the mud came up black and oxygen may be too low"
	case band.LittleOxygen:
		if s.p.Fish.Kind != fish.Coldwater {
			return "neither too warm nor too cold, but too little oxygen"
		}
		return "cool enough, too little oxygen"
	}
	return string(f)
}

// lightReason says what sky and hour did to the start, or that they changed nothing.
func (s speaker) lightReason() string {
	const practice = " (common practice, untested)"
	shift, still := s.p.Band.Shift, s.p.Band.Unmoved
	switch {
	case shift.Why == light.NoEffect || shift.Why == "" && still.Why == light.NoEffect:
		return "sky and hour as noted change nothing about the depth" + practice
	case shift.Why == "" && still.Why == "":
		return ""
	case shift.Why == "":
		return lightSays(still.Why) + ", but here that changes nothing: the start stays" + practice
	case shift.Shift == light.Deeper:
		return lightSays(shift.Why) + ": start deeper" + practice
	}
	return lightSays(shift.Why) + ": start shallower" + practice
}

// lightSays is what sky and hour do to fish.
func lightSays(why light.Reason) string {
	switch why {
	case light.LowSun:
		return "low sun brings fish up"
	case light.Overcast:
		return "a dull sky brings fish up"
	case light.Chop:
		return "a broken surface brings fish up"
	case light.BrightCalm:
		return "bright sun on calm water sends fish down"
	}
	return string(why)
}

// rigReasons says why a rig was chosen, and which would be next.
func (s speaker) rigReasons(r rig.Rig) []string {
	var out []string
	for _, w := range r.Why {
		out = append(out, fmt.Sprintf("%s: %s", rigNames[r.Kind], s.rigReason(w)))
	}
	if r.RunnerUp == "" {
		return out
	}
	return append(out, "next best: "+rigNames[r.RunnerUp])
}

// rigReason says why a rig was chosen or what limits it.
func (s speaker) rigReason(r rig.Reason) string {
	hung, long := s.u.Length(rig.HungToM), s.u.Length(rig.LongToM)
	switch r {
	case rig.ShallowEnough:
		return "the fly is no deeper than " + hung
	case rig.LightWind:
		return fmt.Sprintf("%s to %s down and the wind is light", hung, long)
	case rig.WindUnknown:
		return fmt.Sprintf("%s to %s down; the wind was not noted", hung, long)
	case rig.Windy:
		if !s.u.Feet() {
			return "wind over 4.5 m/s bows a long leader"
		}
		return "wind over 10 mph bows a long leader"
	case rig.TooDeep:
		return "deeper than " + long
	case rig.YourChoice:
		return "as you asked"
	case rig.Preferred:
		return "your settings prefer it, and it reaches the depth"
	case rig.NoIndicators:
		return "indicators are not allowed on this water"
	case rig.OpenWater:
		return "the fish keep to open water"
	case rig.CappedByRule:
		return "the water's rule caps the leader"
	case rig.TooLong:
		return "longer than the longest leader you cast"
	case rig.TooFast:
		return "no long leader that you cast holds this fly down at that retrieve"
	case rig.FewerFlies:
		return "the water's rule allows fewer flies"
	case rig.NoShot:
		return "the water's rule allows no added weight"
	case rig.NoSwivel:
		return "the water's rule allows no added weight, and a swivel is one"
	case rig.OutOfReach:
		return "no sinking line is down there within about two minutes"
	case rig.UnderIce:
		return "there is ice, or it is likely"
	}
	return string(r)
}
