package settings

import (
	"fmt"
	"math"
	"strings"

	"coldseam/profile"
	"coldseam/profile/rig"
	"coldseam/profile/rig/weight"
	"coldseam/profile/unit"
)

// Fly finds a fly: one of the box by its name, without case, else what weight.Parse
// makes of the text.
func (s Settings) Fly(text string) (weight.Weight, error) {
	if w, ok := s.boxed(text); ok {
		return w, nil
	}
	return weight.Parse(text)
}

// FlyDensity is that in kg/m3 of the usual fly, or of one of the box, of such a mass, since a
// page keeps only the fly's mass; 0 where it is not known.
func (s Settings) FlyDensity(kg profile.Optional) float64 {
	for _, w := range append([]weight.Weight{s.Usual}, s.Box...) {
		if density := w.KnownDensity(); kg.Known && math.Abs(w.Kg-kg.Value) < 1e-9 && density > 0 {
			return density
		}
	}
	return 0
}

// boxed finds a fly of the box.
func (s Settings) boxed(name string) (weight.Weight, bool) {
	for _, w := range s.Box {
		if w.Text != "" && strings.EqualFold(strings.TrimSpace(name), strings.TrimSpace(w.Text)) {
			return w, true
		}
	}
	return weight.Weight{}, false
}

// FlyWeight gives the dry mass of what Fly finds as a text with its unit, which the
// notebook takes as its fly weight. A mass is given as it was written, and so is a
// text in which Fly finds nothing.
func (s Settings) FlyWeight(text string) string {
	w, ok := s.boxed(text)
	if !ok {
		if _, err := unit.ParseMass(text); err == nil {
			return text
		}
		var err error
		if w, err = weight.Parse(text); err != nil {
			return text
		}
	}
	return unit.Exact(w.Kg*1000) + " g"
}

func (p *parser) box(list []fly) {
	for i, f := range list {
		w, err := weight.Parse(f.Weight)
		if err != nil {
			p.fail(in("fly", i, "weight"), err)
		}
		if f.Density != nil {
			if w.Density = *f.Density; !(w.Density > 1000 && w.Density <= 20000) {
				p.fail(in("fly", i, "density"), fmt.Errorf("%v is not likely: a fly that sinks has over 1000 kg/m3 and at most 20000", w.Density))
			}
		}
		w.Text = f.Name
		p.s.Box = append(p.s.Box, w)
	}
}

// usual takes the fly of fly_weight and leaves its mass as the text, which is a key
// of the notebook.
func (p *parser) usual(text *string) {
	if *text == "" {
		return
	}
	w, err := p.s.Fly(*text)
	if err != nil {
		p.fail("fly_weight", err)
	}
	p.s.Usual = w
	*text = p.s.FlyWeight(*text)
}

// tied takes how many flies are tied on.
func (p *parser) tied(n *int) {
	if n == nil {
		return
	}
	if *n < 1 || *n > 3 {
		p.fail("flies", fmt.Errorf("%d: tie on 1 to 3", *n))
	}
	p.s.Flies = *n
}

func (p *parser) touched(list []touched) {
	for i, t := range list {
		at := func(key string) string { return in("touched", i, key) }
		for _, k := range []struct {
			key     string
			missing bool
			example string
		}{
			{"rig", strings.TrimSpace(t.Rig) == "", "long-leader"}, {"depth", t.Depth == 0, "12 ft"}, {"after", t.After == 0, "52 s"},
		} {
			if k.missing {
				p.fail(at(k.key), fmt.Errorf("each [[touched]] needs it, e.g. %s = %q", k.key, k.example))
			}
		}
		touch := rig.BottomContact{Kind: rig.Kind(t.Rig), DepthM: float64(t.Depth), S: float64(t.After)}
		if touch.Kind != rig.LongLeader && touch.Kind != rig.Hung {
			p.fail(at("rig"), fmt.Errorf("%q: write long-leader or hung", t.Rig))
		}
		p.s.BottomContacts = append(p.s.BottomContacts, touch)
	}
}
