package report

import (
	"fmt"
	"math"
	"strconv"
	"strings"

	"coldseam/profile"
	"coldseam/profile/band"
	"coldseam/profile/layers"
	"coldseam/profile/plain"
	"coldseam/profile/plan"
	"coldseam/profile/rig"
	"coldseam/profile/unit"
)

// speaker says one plan in one system of units.
type speaker struct {
	p plan.Plan
	u unit.System
}

func speak(p plan.Plan) speaker { return speaker{p, p.Drop.Units.Shown()} }

// Title names the drop: water, spot, date and fish.
func Title(p plan.Plan) string {
	t := "for " + p.Fish.Name
	if where := WhereWhen(p.Drop); where != "" {
		t = where + ", " + t
	}
	return strings.TrimSuffix(sentence(t), ".")
}

// WhereWhen names a drop by its water, spot and date, as far as they were noted.
func WhereWhen(d profile.Drop) string {
	var parts []string
	for _, s := range []string{d.Water, d.Spot, d.Date} {
		if s != "" {
			parts = append(parts, plain.Line(s))
		}
	}
	return strings.Join(parts, ", ")
}

// Answer gives the paragraphs of the answer: where the fish should be, what to cast
// over, the leader, the sink time and the retrieve, and the thermocline.
func Answer(p plan.Plan) []string {
	s := speak(p)
	var out []string
	switch {
	case !p.Band.Found:
		out = []string{s.noBand(), s.column()}
	case s.jigged(): // what kind of plan it is comes first
		rigged := s.rig(*s.p.Rig)
		out = []string{rigged[0], s.where(), rigged[1], s.column()}
	default:
		out = append(append([]string{s.where()}, s.rig(*s.p.Rig)...), s.column())
	}
	if t := s.usual(); t != "" {
		out = append(out, t)
	}
	return out
}

func (s speaker) parts(r rig.Rig) string {
	var words []string
	for _, p := range r.Parts {
		words = append(words, s.u.Piece(p.LengthM)+" "+p.Name)
	}
	return list(words)
}

// seconds rounds to 5 s, as nobody times it finer; nothing takes no time at all.
func seconds(s float64) string { return strconv.Itoa(rounds(s)) }

func rounds(s float64) int { return max(1, int(math.Round(s/5))) * 5 }

// column says what kind of column it is, and where the thermocline lies.
func (s speaker) column() string {
	l := s.p.Layers
	last := s.p.Column.Last().DepthM
	switch l.Structure {
	case layers.TooFew:
		return fmt.Sprintf("Too few readings (%d) to find a thermocline: three depths at least, better six to ten.", s.p.Column.Len())
	case layers.Mixed:
		return fmt.Sprintf("One layer, top to bottom: no thermocline in %s of water.", s.u.Length(last))
	case layers.Inverse:
		return "Colder above, below " + s.u.Degrees(4) + ": a winter column, with no thermocline. The warmest water is the deepest, but late in winter oxygen fails there first."
	case layers.SkinOnly:
		return fmt.Sprintf("A warm skin in the top %s, no thermocline below it in %s of water.", s.u.Length(l.SkinM), s.u.Length(last))
	}
	var t string
	if a, b := s.u.Mark(l.Thermocline.Low), s.u.Mark(l.Thermocline.High); a != b {
		t = fmt.Sprintf("The thermocline is between %s and %s.", a, s.u.Length(l.Thermocline.High))
	} else {
		t = fmt.Sprintf("The thermocline is at about %s.", s.u.Length(l.Thermocline.Best))
	}
	if l.MixedLayer != nil && l.MixedLayer.Best >= band.WordM {
		t += fmt.Sprintf(" Above it one layer reaches down to about %s.", s.u.Length(l.MixedLayer.Best))
	}
	if l.BottomReached {
		t += fmt.Sprintf(" The layer of fast change goes on below the deepest reading (%s).", s.u.Length(last))
	}
	if l.SkinM > 0 {
		t += fmt.Sprintf(" The top %s is a warm skin and not the thermocline.", s.u.Length(l.SkinM))
	}
	for _, b := range l.OtherBreaks {
		t += fmt.Sprintf(" A weaker step at about %s.", s.u.Length(b.DepthM))
	}
	return t
}

func number(v float64) string { return strconv.FormatFloat(v, 'f', -1, 64) }

// RigAlone says a rig that was asked for without a drop: what to cut, the sink time and
// the retrieve, why, and the next best.
func RigAlone(r rig.Rig, in rig.Input, u unit.System) []string {
	s := speaker{plan.Plan{Rules: in.Rules, ClearanceM: in.WaterM - in.FlyM}, u.Shown()}
	var out []string
	if r.Kind == rig.Jig {
		out = append(out, s.ice())
	}
	out = append(out, fmt.Sprintf("Water under the fly %s, fly about %s down.", s.u.Marked(in.WaterM), s.u.Length(in.FlyM)))
	out = append(out, s.rig(r)...)
	for _, w := range s.rigReasons(r) {
		out = append(out, sentence(w))
	}
	return append(out, s.rules())
}
