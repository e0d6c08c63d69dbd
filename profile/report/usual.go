package report

import (
	"fmt"

	"coldseam/profile/catches"
	"coldseam/profile/plan"
	"coldseam/profile/unit"
)

// UsualJSON is where the fish of a plan was taken before, and what that did to the start.
type UsualJSON struct {
	Here     bool      `json:"this_water"` // else all waters
	In       int       `json:"fish_in_range"`
	Of       int       `json:"fish"`
	LowC     float64   `json:"low_c"`
	HighC    float64   `json:"high_c"`
	MedianC  float64   `json:"median_c"`
	ShallowM float64   `json:"shallow_m"`
	DeepM    float64   `json:"deep_m"`
	Weight   float64   `json:"weight"`
	Heed     plan.Heed `json:"start"`
	Without  *float64  `json:"start_without_m,omitempty"`
}

func usualJSON(p plan.Plan) *UsualJSON {
	u := p.Usual
	if u == nil {
		return nil
	}
	heed, _ := p.Heed()
	return &UsualJSON{
		Here: u.Here, In: u.In, Of: u.Of, LowC: unit.RoundTo(u.LowC, 2), HighC: unit.RoundTo(u.HighC, 2), MedianC: unit.RoundTo(u.MedianC, 2),
		ShallowM: unit.RoundTo(u.ShallowM, 3), DeepM: unit.RoundTo(u.DeepM, 3), Weight: unit.RoundTo(u.Weight, 3),
		Heed: heed, Without: known(p.Band.WithoutM),
	}
}

// usualRow says at a glance where the fish was taken before, and what that does to the
// start; ok is false where it is no help.
func (s speaker) usualRow() (row Row, ok bool) {
	then := s.heeded()
	if then == "" {
		return row, false
	}
	u := *s.p.Usual
	return Row{"You took", share(u), fmt.Sprintf("at %s, %s down%s; %s", s.degrees(u.LowC, u.HighC), s.u.Span(u.ShallowM, u.DeepM), where(u), then)}, true
}

// usual says the same in a sentence; "" where too little was caught.
func (s speaker) usual() string {
	heed, _ := s.p.Heed()
	if heed == plan.NoOpinion {
		return ""
	}
	u := *s.p.Usual
	if heed == plan.Contradicts {
		return fmt.Sprintf("You took %d %s at %s: too far apart to move the start.", u.Of, s.p.Fish.Name, s.degrees(u.LowC, u.HighC))
	}
	t := fmt.Sprintf("You took %s %s at %s, %s down%s", share(u), s.p.Fish.Name, s.degrees(u.LowC, u.HighC), s.u.Span(u.ShallowM, u.DeepM), where(u))
	if then := s.heeded(); then != "" {
		t += ": " + then
	} else if heed == plan.Absent {
		t += ": the band has no such water today"
	}
	return t + "."
}

func share(u catches.Usual) string {
	if u.In == u.Of {
		return fmt.Sprintf("all %d", u.Of)
	}
	return fmt.Sprintf("%d of %d", u.In, u.Of)
}

func where(u catches.Usual) string {
	if u.Here {
		return ""
	}
	return " in all waters"
}

// heeded says what became of the second opinion; "" where there is none to tell at a glance.
func (s speaker) heeded() string {
	switch heed, byM := s.p.Heed(); heed {
	case plan.Deeper:
		return "so the start is " + s.u.Length(byM) + " deeper"
	case plan.Shallower:
		return "so the start is " + s.u.Length(byM) + " shallower"
	case plan.Agrees:
		return "the start is as warm"
	case plan.Near:
		return "the start is close to that"
	case plan.Apart:
		return "the start stays where it is safe"
	}
	return ""
}
