package report

import (
	"fmt"

	"coldseam/profile"
	"coldseam/profile/plan"
	"coldseam/profile/unit"
)

// Check is what one reading taken at the anchor says about a plan.
type Check struct {
	DepthM    float64  `json:"depth_m"`
	TempC     float64  `json:"temp_c"`
	ExpectedC float64  `json:"expected_c"`
	ShiftM    *float64 `json:"shift_m,omitempty"` // the layers lie this much deeper; absent when it cannot be told
	Text      string   `json:"text"`
}

// CheckReading says what one reading, corrected, changes of a plan.
func CheckReading(p plan.Plan, r profile.Reading) *Check {
	s, c := speak(p), p.Check(r)
	out := &Check{DepthM: unit.RoundTo(r.DepthM, 3), TempC: unit.RoundTo(r.TempC, 3), ExpectedC: unit.RoundTo(c.ExpectedC, 3)}
	if c.Finding == plan.AsExpected || c.Finding == plan.LayersMoved || c.Finding == plan.MovedFar {
		out.ShiftM = &c.ShiftM
	}
	out.Text = s.checked(c, r)
	return out
}

// checked says what a reading changes.
func (s speaker) checked(c plan.CheckedAt, r profile.Reading) string {
	typed := s.u.Degrees(r.TempUnit.ToC(r.Temp))
	corrected := s.p.Drop.IcePoint.Known && typed != s.u.Degrees(r.TempC)
	if r.TempUnit == s.u.Temp { // as it was read
		typed = unit.Exact(r.Temp) + " " + r.TempUnit.String()
	}
	if corrected {
		typed += fmt.Sprintf(" (%s by the ice check)", s.u.Degrees(r.TempC))
	}
	depth := s.u.Length(r.DepthM)
	if r.DepthUnit == s.u.Depth && r.DepthUnit.Metres(r.Depth) == r.DepthM {
		depth = unit.Exact(r.Depth) + " " + r.DepthUnit.String()
	}
	at := fmt.Sprintf("Check: %s at %s", typed, depth)
	expected := s.degrees(c.LowC, c.HighC)
	switch c.Finding {
	case plan.NotReadSoDeep:
		return fmt.Sprintf("%s is below the deepest reading of the page (%s), so there is nothing to compare it with: add it to the page.", at, s.u.Length(s.p.Column.Last().DepthM))
	case plan.Implausible:
		guess := ""
		if c.Guess != "" {
			guess = fmt.Sprintf(" (%s?)", c.Guess)
		}
		return fmt.Sprintf("%s does not look right%s. Read it again: until then nothing changes.", at, guess)
	case plan.AsExpected:
		return fmt.Sprintf("%s: as expected (%s). Nothing changes.", at, expected)
	case plan.LayersMoved:
		return fmt.Sprintf("%s, expected %s: %s", at, expected, s.shifted(c))
	case plan.MovedFar:
		return fmt.Sprintf("%s, expected %s. Read it again first: %s", at, expected, s.movedFar(c))
	}
	return fmt.Sprintf("%s, expected %s. No depth of the page had that temperature: the water has changed. %s", at, expected, s.changed(c.Finding))
}

// changed says what to make of water that is warmer or colder than all of the page.
func (s speaker) changed(f plan.Finding) string {
	switch f {
	case plan.NowTooWarm:
		return fmt.Sprintf("It is too warm there for %s: go deeper, and take a new drop.", s.p.Fish.Name)
	case plan.NowWarmer:
		return fmt.Sprintf("That is good news: %s like %s. Fish it, and take a new drop to see how far down it reaches.", s.p.Fish.Name, s.comfort())
	case plan.NowTooCold:
		return "They like it warmer: take a new drop, in a sunny, sheltered bay or on the shore that the wind blows to (common practice)."
	}
	return "Take a new drop."
}

// movedFar says what a reading would mean that would move the layers further than one
// reading is believed.
func (s speaker) movedFar(c plan.CheckedAt) string {
	t := fmt.Sprintf("if it is right, the layers lie about %s here than on the page, and one reading is too little to go by.", s.moveBy(c))
	if c.Better {
		return t + " It would be good news: they like it warmer."
	}
	return t + " If it stays so, take a new drop."
}

// moveBy is how far the layers have moved, and which way.
func (s speaker) moveBy(c plan.CheckedAt) string {
	if c.ShiftM < 0 {
		return s.span(-c.ShiftM) + " shallower"
	}
	return s.span(c.ShiftM) + " deeper"
}

// shifted says how far the layers have moved, and what follows.
func (s speaker) shifted(c plan.CheckedAt) string {
	t := fmt.Sprintf("the layers lie about %s here than on the page.", s.moveBy(c))
	if c.Better {
		t += " That is good news: it is colder than they like best, and warmer is better."
	}
	if c.Moved != nil {
		t += " " + s.moved(*c.Moved)
	}
	return t
}

// moved says where to fish with the layers where they lie now.
func (s speaker) moved(m plan.Moved) string {
	was := s.p.Band
	now := s
	now.p.Band, now.p.Column = m.Band, m.Column
	switch {
	case !m.Band.Found:
		return now.noBand()
	case m.Band.Suspended:
		return fmt.Sprintf("So hang the fly %s down.", s.u.Length(m.FlyM))
	case s.u.Length(m.FlyM) == s.u.Length(s.p.FlyM()) && s.u.Marked(m.Band.WaterM) == s.u.Marked(was.WaterM):
		return "Fish on: the fly's depth stays."
	}
	t := "So "
	if !m.Band.ToSurface {
		t += fmt.Sprintf("fish should hold %s: ", now.deepEdges())
	}
	return t + fmt.Sprintf("water under the fly %s, fly about %s down; cut the leader for that depth.", s.u.Marked(m.Band.WaterM), s.u.Length(m.FlyM))
}
