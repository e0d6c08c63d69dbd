package report

import (
	"fmt"

	"coldseam/profile/light"
	"coldseam/profile/oxygen"
	"coldseam/profile/plan"
	"coldseam/profile/unit"
)

// oxygenRead says what is known of the oxygen where it was not measured over the
// band.
func (s speaker) oxygenRead() string {
	var at []string
	for _, q := range s.p.Column.Points() {
		if q.Oxygen.Known {
			at = append(at, fmt.Sprintf("%s mg/L at %s", unit.Digits(q.Oxygen.Value, 1), s.u.Length(q.DepthM)))
		}
	}
	t := "Oxygen not measured"
	if len(at) > 0 {
		t += " over the band: only " + list(at)
	}
	if s.p.Band.Doubtful() {
		t += fmt.Sprintf("; below about %s it is unproven%s", s.u.Length(s.p.Band.DoubtfulBelow.Best), s.hope())
	}
	if s.p.Drop.AnchorBlack() {
		t += ", and the black mud on the anchor says that the bottom has none: keep to the upper edge, and over shallower bottoms"
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
	b := s.p.Band
	switch {
	case !s.p.Band.Doubtful():
		return "oxygen was not measured"
	case b.DoubtfulBelow.Best <= b.Top.High:
		return "oxygen is unproven in all of the band" + s.hope()
	}
	return fmt.Sprintf("oxygen below about %s is unproven%s", s.u.Length(b.DoubtfulBelow.Best), s.hope())
}

// oxygenAssumed says what is taken for granted about the oxygen, and what temperature
// alone cannot tell.
func (s speaker) oxygenAssumed(a plan.Assumption) string {
	p := s.p
	t := "oxygen not measured: the band is by temperature alone"
	if a == plan.OxygenPartly {
		t = "oxygen was not read over the whole band: it is by temperature alone where it was not"
	}
	if !s.p.Band.Doubtful() {
		return t
	}
	t += fmt.Sprintf("; it may run out anywhere from %s down", s.u.Length(p.Band.DoubtfulBelow.Best))
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
	return t + ". An anchor that comes up black or smelling means none: fish above the break"
}

// richness says what clarity and colour let one expect of the oxygen below the break,
// which no lake at hand could test.
func (s speaker) richness() string {
	switch s.p.Richness() {
	case light.Fertile, light.VeryFertile:
		return "green or cloudy water is fertile: below the break oxygen often runs out by the middle of July (common practice, untested)"
	case light.Clear:
		return "in clear, deep lakes oxygen often holds below the break (common practice, untested)"
	}
	return ""
}
