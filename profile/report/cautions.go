package report

import (
	"fmt"

	"coldseam/profile/plain"
	"coldseam/profile/plan"
	"coldseam/profile/rig"
)

// first reports whether a caution stands before the answer.
func first(c plan.Caution) bool { return c == plan.Warm70 || c == plan.Wind || c == plan.Thunder }

// Cautions gives the texts of the cautions that apply, in order; those that stand
// before the answer are not repeated.
func Cautions(p plan.Plan) []string {
	var out []string
	for _, c := range p.Cautions {
		if !first(c) {
			out = append(out, CautionText(p, c))
		}
	}
	return out
}

// AtAnchor is the caution for whoever lies at anchor.
const AtAnchor = "Two anchors: the bow's first, the stern's only after; let the stern's go first in a blow; a knife at hand. Thunder: off the water."

// CautionText is the text of one caution.
func CautionText(p plan.Plan, c plan.Caution) string {
	s := speak(p)
	switch c {
	case plan.Warm70:
		return s.gate()
	case plan.Warm68:
		return fmt.Sprintf("The top layer is %s, at which trout are stressed: strong tippet, land them fast, keep them in the water, and stop if one is slow to recover.", s.u.Degrees(p.Layers.MixedTempC))
	case plan.Warm65:
		return fmt.Sprintf("The top layer is %s: handle fish quickly, in the water; later in a hot day stop or keep within the limit.", s.u.Degrees(p.Layers.MixedTempC))
	case plan.Pressure:
		if p.Fish.CanVent {
			return "Fish from deeper than 25 ft (8 m) suffer from the change of pressure. This fish can let the gas out by itself if brought up slowly: release at once, or keep within the limit and stop."
		}
		return "Fish from deeper than 25 ft (8 m) suffer from the change of pressure, and this fish cannot let the gas out: keep within the limit and stop, rather than catch and release."
	case plan.Cold:
		return fmt.Sprintf("The water below is %s, and wind can bring it to the top: a fall into water under 70 F (21 C) can take your breath. Wear the life jacket.", s.u.Degrees(coldest(p)))
	case plan.Ice:
		return "If there is ice: test it as you go, never alone, ice picks at hand; clear ice of 4 in (10 cm) is the least for one person, and near inflows it is thinner."
	case plan.Wind:
		return "WIND of 15 mph (7 m/s) or more, or whitecaps: too much for a small boat at anchor. Come in."
	case plan.Thunder:
		return "THUNDER: off the water now, rods down, and wait 30 minutes after the last of it."
	case plan.Anchors:
		return AtAnchor
	case plan.Rules:
		return s.rules()
	}
	return string(c)
}

// CautionSource is where a caution comes from.
func CautionSource(c plan.Caution) string {
	switch c {
	case plan.Warm70:
		return "New York DEC 2019: no catch and release above 70 F"
	case plan.Warm68:
		return "common practice; no deaths of released fish under 20 C in Boyd et al. 2010, NAJFM 30:898"
	case plan.Warm65:
		return "common practice"
	case plan.Pressure:
		return "agencies' advice to anglers: barotrauma from about 25 ft"
	case plan.Cold:
		return "US Coast Guard, advice to boaters: cold shock in water under 70 F"
	case plan.Ice, plan.Anchors, plan.Wind, plan.Thunder:
		return "common practice of boating safety"
	case plan.Rules:
		return "your settings"
	}
	return ""
}

func coldest(p plan.Plan) float64 {
	t := p.Column.First().TempC
	for _, q := range p.Column.Points() {
		t = min(t, q.TempC)
	}
	return t
}

// rules states what is noted of the water's rules; they come before all advice.
func (s speaker) rules() string {
	r := s.p.Rules
	if r.Water == "" {
		return "Local rules come first: number of flies, added weight, lead, leader length, closures."
	}
	var words []string
	if r.MaxFlies > 0 {
		words = append(words, count(r.MaxFlies, "fly")+" at most")
		if r.MaxFlies > 1 {
			words[len(words)-1] = fmt.Sprintf("%d flies at most", r.MaxFlies)
		}
	}
	if r.MaxLeaderM > 0 {
		words = append(words, "leader no longer than "+s.u.Piece(r.MaxLeaderM))
	}
	if r.NoAddedWeight {
		words = append(words, "no added weight")
	}
	if r.NoIndicator {
		words = append(words, "no indicator")
	}
	if r.Note != "" {
		words = append(words, plain.Line(r.Note))
	}
	t := "Rules of " + plain.Line(r.Water) + " as you noted them"
	if r.Checked != "" {
		t += ", checked " + plain.Line(r.Checked)
	} else {
		t += ", no date of checking"
	}
	if len(words) == 0 {
		words = []string{"nothing noted"}
	}
	t += ": " + list(words) + ". They come before this advice."
	if r.NoAddedWeight && s.p.Rig != nil && s.p.Rig.Kind == rig.Hung {
		t += " No shot or swivel on the leader."
	}
	return t
}
