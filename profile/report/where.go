package report

import (
	"fmt"
	"strings"

	"coldseam/profile/band"
	"coldseam/profile/fish"
)

// edges gives the printed edges of the band: the inner ones, and the outer in
// brackets where they differ.
func (s speaker) edges() string {
	b := s.p.Band
	top, bottom := b.Safe(s.p.Column.Last().DepthM)
	inner := s.u.Span(top, bottom)
	outer := s.u.Mark(b.Top.Low) + " to " + s.u.Mark(b.Bottom.High)
	if inner == outer+" "+s.u.Depth.String() {
		return inner
	}
	return inner + " down (" + outer + ")"
}

// deepEdges are the edges with the word down.
func (s speaker) deepEdges() string {
	edges := s.edges()
	if !strings.Contains(edges, "down") {
		edges += " down"
	}
	return edges
}

// where says where the fish should be, what is known of the oxygen there, and over what
// water to cast.
func (s speaker) where() string {
	b, p := s.p.Band, s.p
	t := s.holding()
	if b.ToDeepest && !b.ToSurface {
		t += " They may be deeper too: nothing was read below " + s.u.Length(p.Column.Last().DepthM) + "."
	}
	if read := s.oxygenRead(); read != "" {
		t += " " + read
	}
	if b.Suspended {
		return t + fmt.Sprintf(" They keep to open water: hang the fly %s down, over water of any depth from %s.", s.u.Length(s.p.FlyM()), s.u.Length(b.CastShallowM))
	}
	to := "Cast where the water under the fly"
	if s.jigged() {
		to = "Cut the hole where the water"
	}
	t += fmt.Sprintf(" %s is %s deep.", to, s.u.Span(b.CastShallowM, b.CastDeepM))
	if s.u.Mark(b.CastShallowM) != s.u.Mark(b.CastDeepM) {
		t += " Start over " + s.u.Marked(b.WaterM) + "."
	}
	if b.OverDeep {
		t += fmt.Sprintf(" That is deeper than common practice (%s).", s.u.Length(band.PracticeM))
	}
	if p.Rig != nil {
		t += fmt.Sprintf(" Fly about %s down.", s.u.Length(p.Rig.FlyM))
	}
	return t
}

// holding says where the fish should be, and which part of that is the best bet.
func (s speaker) holding() string {
	_, _, bet := s.p.Band.BestBet(s.p.Column.Last().DepthM)
	if bet == band.AllOfIt {
		return s.suitable(false) + "."
	}
	return s.suitable(true) + s.bestBet()
}

// bestBet is what follows on where the temperature suits, where oxygen is unknown in some of
// that: which part of it is the best bet, and why.
func (s speaker) bestBet() string {
	top, bottom, bet := s.p.Band.BestBet(s.p.Column.Last().DepthM)
	const low = " oxygen is unknown and may be too low"
	switch hope := s.hope(); {
	case bet == band.UpperPart && top <= 0:
		return fmt.Sprintf("; best bet down to %s: below that%s%s.", s.u.Length(bottom), low, hope)
	case bet == band.UpperPart:
		return fmt.Sprintf("; best bet %s: below that%s%s.", s.u.Span(top, bottom), low, hope)
	case hope != "":
		return ";" + low + " there" + hope + "."
	case s.p.Band.Cold || s.p.Band.ToSurface: // no upper edge to keep to
		return ";" + low + " there."
	}
	return ";" + low + " there, so the upper edge is the best bet."
}

// suitable says where the temperature suits the fish, without a full stop. Where oxygen is
// in doubt it promises no more than that.
func (s speaker) suitable(doubt bool) string {
	b, p := s.p.Band, s.p
	bottom := s.u.Length(max(b.Bottom.Low, 0))
	switch {
	case b.Verdict == band.Warmest || b.Cold && b.ToSurface:
		return s.coldHere(bottom)
	case b.Verdict == band.OverWarm:
		return fmt.Sprintf("The water that %s like best (%s) lies over black mud, so they should hold in the warmer water above that, %s", p.Fish.Name, s.likes(), s.deepEdges())
	case doubt && p.Fish.Kind != fish.Coldwater && b.ToSurface:
		return fmt.Sprintf("The temperature suits %s down to %s", p.Fish.Name, bottom)
	case doubt && p.Fish.Kind != fish.Coldwater:
		return fmt.Sprintf("The temperature suits %s from %s", p.Fish.Name, s.edges())
	case doubt && b.ToSurface:
		return fmt.Sprintf("Cool enough from top to %s", bottom)
	case doubt:
		return fmt.Sprintf("Cool enough from %s", s.edges())
	case b.ToSurface && b.ToDeepest:
		return fmt.Sprintf("All the water that was read suits %s: top to %s", p.Fish.Name, s.u.Length(p.Column.Last().DepthM))
	case b.ToSurface:
		return fmt.Sprintf("Fish should hold anywhere down to %s", bottom)
	}
	return fmt.Sprintf("Fish should hold %s", s.deepEdges())
}

// coldHere says where to look for fish in water that is colder than they like best.
func (s speaker) coldHere(bottom string) string {
	b, p := s.p.Band, s.p
	cold, warm, alike := p.Alike()
	switch {
	case b.Verdict == band.Warmest:
		return fmt.Sprintf("All of this water is colder than %s like (%s), and they should hold where it is warmest, %s", p.Fish.Name, s.comfort(), s.deepEdges())
	case p.UnderIce():
		return fmt.Sprintf("Under the ice all of it is colder than %s like best, and they hold wherever there is oxygen: top to %s", p.Fish.Name, bottom)
	case alike:
		return fmt.Sprintf("No water here is too warm for %s, top to %s, and none much warmer than the rest: %s, colder than they like best (%s). Look for warmer water first, in sunny, sheltered bays and on the shore that the wind blows to (common practice)",
			p.Fish.Name, bottom, s.degrees(cold, warm), s.comfort())
	}
	return fmt.Sprintf("No water here is too warm for %s, top to %s: it is colder than they like best (%s), so fish the warmest you find, here %s at %s",
		p.Fish.Name, bottom, s.comfort(), s.u.Degrees(p.Layers.Curve.At(p.FlyM())), s.u.Length(p.FlyM()))
}
