package report

import (
	"fmt"

	"coldseam/profile/band"
	"coldseam/profile/fish"
)

// noBand says why there is no water to fish.
func (s speaker) noBand() string {
	p, b := s.p, s.p.Band
	limit := ""
	if p.Fish.UpperUseC.Known && b.CoolestC <= p.Fish.UpperUseC.Value {
		limit = fmt.Sprintf(" It is above what they like (%s) but not above what they use (%s): mornings, springs and inflows first.", s.u.Degrees(p.Fish.ComfortHighC.Value), s.u.Degrees(p.Fish.UpperUseC.Value))
	}
	switch b.Verdict {
	case band.NoOxygen, band.Squeezed:
		return s.starved()
	case band.Smothered:
		return s.smothered()
	case band.TooWarm:
		return fmt.Sprintf("No depth of this lake is cool enough for %s: the coolest, at %s, is %s.%s Leave these fish alone until the water cools.", p.Fish.Name, s.u.Length(b.CoolestM), s.u.Degrees(b.CoolestC), limit)
	}
	move := "move to deeper water and read there"
	if p.DeeperHere() {
		move = "read deeper, the bottom here is at " + s.u.Length(p.Drop.Bottom.Value)
	}
	return fmt.Sprintf("Not reached here: the deepest reading, %s, is still %s, too warm for %s; %s. If no deeper water is cooler, leave these fish alone until the water cools.%s",
		s.u.Length(p.Column.Last().DepthM), s.u.Degrees(p.Column.Last().TempC), p.Fish.Name, move, limit)
}

// starved says that measured oxygen leaves no water: where it ends, and how warm the
// water is above that.
func (s speaker) starved() string {
	p, b := s.p, s.p.Band
	need := fmt.Sprintf("the %s mg/L they need", number(p.Fish.OxygenMgL.Value))
	short := "at no depth where oxygen was measured is there " + need
	if b.OxygenToM.Known {
		short = fmt.Sprintf("below about %s there is less than %s", s.u.Length(b.OxygenToM.Value), need)
	}
	warm := s.u.Degrees(p.Fish.ComfortHighC.Value)
	switch cool := b.CoolFromM; {
	case p.Fish.Kind != fish.Coldwater && cool.Known:
		return fmt.Sprintf("No water here suits %s: where it is neither too warm nor too cold for them (%s) it has too little oxygen (they need %s mg/L). Leave these fish alone until the water cools.", p.Fish.Name, s.comfort(), number(p.Fish.OxygenMgL.Value))
	case cool.Known && cool.Value < band.WordM: // nothing is too warm
		return fmt.Sprintf("No water here is both cool and safe for %s: %s. Leave these fish alone until the water cools.", p.Fish.Name, short)
	case cool.Known:
		warm = fmt.Sprintf("It is over %s down to about %s", warm, s.u.Length(cool.Value))
	default:
		warm = fmt.Sprintf("It is over %s down to the deepest reading, %s", warm, s.u.Length(p.Column.Last().DepthM))
	}
	t := fmt.Sprintf("No water here is both cool and safe for %s: too warm above, no oxygen below. %s, and %s.", p.Fish.Name, warm, short)
	if !b.CoolFromM.Known {
		t += " Deeper water will have no more."
	}
	if b.OxygenToM.Known {
		t += fmt.Sprintf(" The coolest with oxygen is %s, at about %s.", s.u.Degrees(b.CoolestC), s.u.Length(b.CoolestM))
	}
	return t + " Leave these fish alone until the water cools."
}

// smothered says that black mud leaves little hope of oxygen where the temperature suits,
// and what would settle it.
func (s speaker) smothered() string {
	p, b := s.p, s.p.Band
	doubt, from := s.u.Length(b.DoubtfulBelow.Best), s.u.Length(b.CoolFromM.Value)
	t := fmt.Sprintf("Too warm above, and little hope of oxygen below: the water suits %s only from %s down, and the mud on the anchor came up black, so oxygen may be too low from %s down.",
		p.Fish.Name, from, doubt)
	t += fmt.Sprintf(" Measure the oxygen at %s: with %s mg/L or more, fish there.", from, number(p.Fish.OxygenMgL.Value))
	return t + " Otherwise leave these fish alone until the water cools."
}

// again says when to read again where there is no water to fish.
func (s speaker) again() string {
	switch s.p.Band.Verdict {
	case band.Smothered:
		return "Read the oxygen, or read again where the anchor comes up clean."
	case band.NoOxygen, band.Squeezed:
		return "Read again, the oxygen too, after some days of cool and windy weather. Until then the fish crowd into springs and cool inflows: leave them alone there too."
	case band.TooWarm:
		return "Read again after some days of cool and windy weather. Until then the fish crowd into springs and cool inflows: leave them alone there too."
	}
	return "Read again in deeper water, or after a cool night."
}
