package report

import (
	"fmt"

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
	p, b, f := s.p, s.p.Band, s.p.Fish
	out := []string{}
	add := func(format string, args ...any) { out = append(out, fmt.Sprintf(format, args...)) }
	comfort := fmt.Sprintf("%s like water of %s or less", f.Name, s.u.Degrees(f.ComfortHighC.Value))
	if f.Kind != fish.Coldwater || b.Cold {
		comfort = fmt.Sprintf("%s like water of %s", f.Name, s.comfort())
	}
	add("%s (%s)", comfort, f.ComfortHighC.Source)
	switch {
	case b.Oxygen:
		add("they need %s mg/L of oxygen (%s)", number(f.OxygenMgL.Value), f.OxygenMgL.Source)
	case b.Found:
		add("oxygen was not measured and takes no water away")
	}
	if !b.Found {
		return out
	}
	switch {
	case b.Cold && p.UnderIce() && !b.Oxygen:
		add("the warmest water is the deepest, but late in winter oxygen fails there first: start no deeper than over the shelf (common practice)")
	case b.Cold:
		add("it is colder than they like best, so warmer water is the way to go: start where it is warmest")
	case b.ToSurface && f.Kind == fish.Coldwater:
		add("the top is cool enough, so the band has no upper edge: start over the shelf (common practice)")
	}
	if b.ToDeepest {
		add("it may go deeper: nothing was read below %s", s.u.Length(p.Column.Last().DepthM))
	}
	if b.Thin {
		add("the band is thin: its middle edges are given, not the safe ones")
	}
	if w := s.lightReason(); w != "" {
		add("%s", w)
	}
	if w := b.Weeds; w != nil {
		add("by the Secchi depth the deepest weeds grow to about %s (%s to %s, Caffrey et al. 2007), and light enough for plants reaches %s (Poole & Atkins 1929): over weeds keep the fly a foot or two above their tops",
			s.u.Length(w.Best), s.u.Mark(w.Low), s.u.Length(w.High), s.u.Length(light.OnePercentM(p.Drop.Secchi.Value)))
	}
	if w := s.richness(); w != "" && !b.Oxygen {
		add("%s", w)
	}
	for _, o := range b.Others {
		add("also %s: %s", s.u.Span(o.TopM, o.BottomM), o.Why)
	}
	if p.Rig != nil {
		for _, w := range p.Rig.Why {
			add("%s rig: %s", p.Rig.Kind, s.rigReason(w))
		}
		add("next best rig: %s", p.Rig.RunnerUp)
	}
	return out
}

// lightReason says what sky and hour did to the start.
func (s speaker) lightReason() string {
	shift := s.p.Band.Shift
	where := "start shallower"
	if shift.Shift == light.Deeper {
		where = "start deeper"
	}
	switch shift.Why {
	case light.LowSun:
		return "low sun brings fish up: " + where + " (common practice, untested)"
	case light.Overcast:
		return "a dull sky brings fish up: " + where + " (common practice, untested)"
	case light.Chop:
		return "a broken surface brings fish up: " + where + " (common practice, untested)"
	case light.BrightCalm:
		return "bright sun on calm water sends fish down: " + where + " (common practice, untested)"
	}
	return ""
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
		return "wind over 10 mph (4.5 m/s) bows a long leader"
	case rig.TooDeep:
		return "deeper than " + long
	case rig.YourChoice:
		return "as you asked"
	case rig.NoIndicators:
		return "indicators are not allowed on this water"
	case rig.OpenWater:
		return "the fish keep to open water"
	case rig.CappedByRule:
		return "the water's rule caps the leader"
	case rig.TooLong:
		return "longer than the longest leader you cast"
	case rig.TooFast:
		return "no long leader that you cast holds this fly down at that draw"
	case rig.FewerFlies:
		return "the water's rule allows fewer flies"
	case rig.NoShot:
		return "the water's rule allows no added weight"
	}
	return string(r)
}
