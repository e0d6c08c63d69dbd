package report

import (
	"fmt"

	"coldseam/profile/plain"
	"coldseam/profile/plan"
	"coldseam/profile/rig"
)

// caution is the words for a code: the text for a plan, and where it comes from.
type caution struct {
	text   func(speaker) string
	source string
	first  bool // it stands before the answer
}

const boatSafety = "common practice of boating safety"

// cautionOf is what is said of a code.
func cautionOf(c plan.Caution) caution {
	always := func(text string) func(speaker) string { return func(speaker) string { return text } }
	switch c {
	case plan.Warm70:
		return caution{speaker.gate, "New York DEC 2019: no catch and release above 70 F", true}
	case plan.Warm68:
		return caution{speaker.warm68, "common practice; no deaths of released fish under 20 C in Boyd et al. 2010, NAJFM 30:898", false}
	case plan.Warm65:
		return caution{speaker.warm65, "common practice", false}
	case plan.Pressure:
		return caution{speaker.pressure, "agencies' advice to anglers: barotrauma from about 25 ft", false}
	case plan.Cold:
		return caution{speaker.cold, "US Coast Guard, advice to boaters: cold shock in water under 70 F", false}
	case plan.Ice:
		return caution{speaker.ice, boatSafety, true}
	case plan.Wind:
		return caution{speaker.wind, boatSafety, true}
	case plan.Thunder:
		return caution{always("THUNDER: off the water now, rods down, and wait 30 minutes after the last thunder."), boatSafety, true}
	case plan.Anchors:
		return caution{always(AtAnchor), boatSafety, false}
	case plan.Rules:
		return caution{speaker.rules, "your settings", false}
	}
	return caution{always(string(c)), "", false}
}

// AtAnchor is the caution for whoever lies at anchor.
const AtAnchor = "With two anchors: set the bow first, release the stern first, keep a knife within reach. In thunder: off the water."

// Warnings gives what stands before the answer: wind too strong for the boat, and
// water so warm that fish would not survive release.
func Warnings(p plan.Plan) []string { return cautions(p, true) }

// Cautions gives the texts of the cautions that apply, in order; those that stand
// before the answer are not repeated.
func Cautions(p plan.Plan) []string { return cautions(p, false) }

func cautions(p plan.Plan, first bool) []string {
	var out []string
	for _, c := range p.Cautions {
		if said := cautionOf(c); said.first == first {
			out = append(out, said.text(speak(p)))
		}
	}
	return out
}

func (s speaker) gate() string {
	return fmt.Sprintf("WARM WATER: the top layer is %s. Fish brought up through it are likely to die if released: no catch and release. "+
		"If you may keep fish, stop at your limit, or fish for perch or bass instead.", s.u.Degrees(s.p.Layers.MixedTempC))
}

func (s speaker) warm68() string {
	return fmt.Sprintf("The top layer is %s, at which trout are stressed: strong tippet, land them fast, keep them in the water, and stop if one is slow to recover.", s.u.Degrees(s.p.Layers.MixedTempC))
}

func (s speaker) warm65() string {
	return fmt.Sprintf("The top layer is %s: handle fish quickly, in the water; later on a hot day stop, or keep within your limit.", s.u.Degrees(s.p.Layers.MixedTempC))
}

func (s speaker) pressure() string {
	t := fmt.Sprintf("Fish from deeper than %s suffer from the change of pressure", s.u.Length(plan.PressureM))
	if s.p.Fish.CanVent {
		return t + ". This fish can let the gas out by itself if brought up slowly: release it at once, or keep what you may and stop at your limit."
	}
	return t + ", and this fish cannot let the gas out: if you may keep fish, stop at your limit, rather than catch and release."
}

// cold warns of a fall: into the water at the top, where that is cold, and of what wind can
// bring up where it is not, or is much warmer.
func (s speaker) cold() string {
	top, coldest := s.p.Column.First().TempC, s.p.ColdestC()
	where := fmt.Sprintf("The water below is %s, and wind can bring it to the top", s.u.Degrees(coldest))
	const alikeC = 3
	switch {
	case top < plan.ShockC && top-coldest < alikeC:
		where = fmt.Sprintf("The water is %s %s", s.u.Degrees(top), s.atTop())
	case top < plan.ShockC:
		where = fmt.Sprintf("The water is %s %s, and wind can bring up what is %s below", s.u.Degrees(top), s.atTop(), s.u.Degrees(coldest))
	}
	return fmt.Sprintf("%s: a fall into water under %s can take your breath. Wear the life jacket.", where, s.u.Degrees(plan.ShockC))
}

// atTop is where the reading nearest to the surface stands.
func (s speaker) atTop() string {
	if first := s.p.Column.First().DepthM; first > 1 {
		return "at " + s.u.Length(first)
	}
	return "at the top"
}

func (s speaker) wind() string {
	most := fmt.Sprintf("%.0f mph", plan.WindMps/mphMps)
	if !s.u.Feet() {
		most = fmt.Sprintf("%.0f m/s", plan.WindMps)
	}
	return fmt.Sprintf("WIND of %s or more, or whitecaps: too much for a small boat at anchor. Come in.", most)
}

func (s speaker) ice() string {
	return "If there is ice: test it as you go, never go alone, carry ice picks; clear ice of " + s.leastIce() + " is the least for one person, and near inflows it is thinner."
}

// leastIce is how thick clear ice must be for one person.
func (s speaker) leastIce() string {
	if s.u.Feet() {
		return "4 in"
	}
	return "10 cm"
}

const mphMps = 0.44704 // a mile an hour, by the mile of 1959

// rules states what is noted of the water's rules; they come before all advice.
func (s speaker) rules() string {
	r := s.p.Rules
	if r.Water == "" {
		return "Local rules come first: number of flies, added weight, lead, leader length, closed seasons."
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
