package report

import (
	"fmt"

	"coldseam/profile/band"
	"coldseam/profile/light"
	"coldseam/profile/oxygen"
	"coldseam/profile/plan"
	"coldseam/profile/unit"
)

// oxygenRead says what was read of the oxygen where it was not measured over the band, and
// what mud and season say of it; "" where there is nothing to say.
func (s speaker) oxygenRead() string {
	var at []string
	for _, q := range s.p.Column.Points() {
		if q.Oxygen.Known {
			at = append(at, fmt.Sprintf("%s mg/L at %s", unit.Digits(q.Oxygen.Value, 1), s.u.Length(q.DepthM)))
		}
	}
	t := "Oxygen not measured"
	cut, over := s.p.OverMud()
	_, _, bet := s.p.Band.BestBet(s.p.Column.Last().DepthM)
	switch {
	case s.p.Band.Oxygen && !over:
		return ""
	case s.p.Band.Oxygen:
		t = fmt.Sprintf("Oxygen was read down to %s", s.u.Length(s.p.OxygenToM()))
	case len(at) == 0 && bet != band.AllOfIt && !s.p.Drop.AnchorBlack():
		return "" // it is said with the best bet
	case len(at) > 0:
		t += " over the band: only " + list(at)
	}
	switch d := s.p.Band.DoubtfulBelow; {
	case over:
		t += fmt.Sprintf(". The mud on the anchor came up black, so no water below %s is counted: oxygen may be too low there", s.u.Length(cut))
	case oxygen.TurnedOver(s.p.Layers):
		t += ", but cold water in one layer has lately mixed with air from top to bottom and should hold enough"
		if s.p.Drop.AnchorBlack() {
			t += "; black mud tells only of the summer"
		}
	case s.p.Drop.AnchorBlack() && d != nil:
		t += fmt.Sprintf(". The mud on the anchor came up black: oxygen may be too low below %s", s.u.Length(d.Best))
	case s.p.Drop.AnchorBlack():
		t += ". The mud on the anchor came up black: keep well above the bottom"
	}
	return t + "."
}

// hope softens a doubt about oxygen where the lake speaks against it: the words, never
// the depth.
func (s speaker) hope() string {
	switch s.p.LakeClass {
	case oxygen.DeepClearLake:
		return ", but most clear, deep lakes hold it all the way down"
	case oxygen.DeepLake:
		return ", but one deep lake in three holds it all the way down"
	}
	return ""
}

// oxygenDoubt is the doubt about oxygen that was not measured.
func (s speaker) oxygenDoubt() string {
	_, bottom, bet := s.p.Band.BestBet(s.p.Column.Last().DepthM)
	switch {
	case !s.p.Band.Found || bet == band.AllOfIt:
		return "oxygen was not measured"
	case bet == band.NoPart:
		return "oxygen is unknown in all of the band" + s.hope()
	}
	return fmt.Sprintf("oxygen unknown below %s%s", s.u.Length(bottom), s.hope())
}

// oxygenAssumed says what is taken for granted about the oxygen, and what temperature
// alone cannot tell.
func (s speaker) oxygenAssumed(a plan.Assumption) string {
	p := s.p
	t := "oxygen not measured: the band is by temperature alone"
	if a == plan.OxygenPartly {
		t = "oxygen was not read over the whole band: it is by temperature alone where it was not"
	}
	if oxygen.TurnedOver(p.Layers) {
		return "oxygen not measured: water that has lately mixed from top to bottom is taken to hold enough"
	}
	if _, _, bet := p.Band.BestBet(p.Column.Last().DepthM); bet == band.AllOfIt {
		return t
	}
	if from := p.Band.DoubtfulBelow.Best; s.u.Mark(from) == "0" {
		t += "; it may run out at any depth"
	} else {
		t += fmt.Sprintf("; it may run out anywhere from %s down", s.u.Length(from))
	}
	if p.Drop.AnchorBlack() {
		return t
	}
	switch p.LakeClass {
	case oxygen.DeepClearLake:
		t += ". Temperature alone cannot tell, and in clear, deep lakes this doubt is nearly always a false alarm (common practice)"
	case oxygen.DeepLake:
		t += fmt.Sprintf(". Temperature alone cannot tell: of the deep lakes measured (%s or more) a third never ran short, and of clear ones more (common practice). Note the Secchi depth", s.u.Length(20))
	default:
		if !p.Drop.Deepest.Known {
			t += ". Temperature alone cannot tell: in clear, deep lakes this doubt is nearly always a false alarm. Note the lake's deepest water and the Secchi depth, if you know them"
		}
	}
	return t + ". An anchor that comes up black or smelling means none: fish above the thermocline"
}

// richness says what clarity and colour let one expect of the oxygen below the thermocline,
// which no lake at hand could test.
func (s speaker) richness() string {
	switch s.p.Richness() {
	case light.Fertile, light.VeryFertile:
		return "green or cloudy water is fertile: below the thermocline oxygen often runs out by the middle of July (common practice, untested)"
	case light.Clear:
		return "in clear, deep lakes oxygen often holds below the thermocline (common practice, untested)"
	}
	return ""
}
