package report

import (
	"fmt"
	"math"

	"coldseam/profile/notebook"
	"coldseam/profile/plan"
)

// Check is what one reading taken at the anchor says about a plan.
type Check struct {
	DepthM    float64  `json:"depth_m"`
	TempC     float64  `json:"temp_c"`
	ExpectedC float64  `json:"expected_c"`
	ShiftM    *float64 `json:"shift_m,omitempty"` // the layers lie this much deeper; absent when it cannot be told
	Text      string   `json:"text"`
}

// CheckReading compares one reading with the column of a plan. Where the reading is
// not as expected, the depth at which the column had that temperature tells how far
// the layers have moved, and the band is found again where they lie now.
func CheckReading(p plan.Plan, sheet notebook.Sheet) *Check {
	s := speak(p)
	r := sheet.Drop.Readings[0]
	k := p.Layers.Curve
	c := &Check{DepthM: milli(r.DepthM), TempC: milli(r.TempC), ExpectedC: milli(k.At(r.DepthM))}
	at := fmt.Sprintf("Check: %s at %s", s.u.Degrees(r.TempC), s.u.Length(r.DepthM))
	if r.DepthM > k.Bottom()+0.62 {
		c.Text = fmt.Sprintf("%s is below the deepest reading of the page (%s), so there is nothing to compare it with: add it to the page.", at, s.u.Length(k.Bottom()))
		return c
	}
	low, high := Expected(p, r.DepthM)
	if r.TempC >= low-0.01 && r.TempC <= high+0.01 {
		zero := 0.0
		c.ShiftM = &zero
		c.Text = fmt.Sprintf("%s: as expected (%s). Nothing changes.", at, s.degrees(low, high))
		return c
	}
	c.Text = fmt.Sprintf("%s, expected %s", at, s.degrees(low, high))
	was, ok := k.Crossing(r.TempC, k.Top(), k.Bottom())
	if !ok {
		c.Text += fmt.Sprintf(". No depth of the page had that temperature: the water has changed. %s", s.changed(r.TempC, r.TempC > high))
		return c
	}
	shift := milli(r.DepthM - was)
	c.ShiftM = &shift
	way := "deeper"
	if shift < 0 {
		way = "shallower"
	}
	c.Text += fmt.Sprintf(": the layers lie about %s %s here than on the page.", s.span(math.Abs(shift)), way)
	if p.Band.Found && p.Band.Cold && r.TempC > high {
		c.Text += " That is good news: it is colder than they like best, and warmer is better."
	}
	if moved, ok := p.Moved(shift); ok {
		c.Text += " " + s.moved(moved)
	}
	return c
}

// changed says what to make of water that is warmer or colder than all of the page.
func (s speaker) changed(tempC float64, warmer bool) string {
	f := s.p.Fish
	switch {
	case warmer && tempC > f.ComfortHighC.Value:
		return fmt.Sprintf("It is too warm there for %s: go deeper, and take a new drop.", f.Name)
	case warmer:
		return fmt.Sprintf("That is good news: %s like %s. Fish it, and take a new drop to see how far down it reaches.", f.Name, s.comfort())
	case s.p.Band.Cold:
		return "They like it warmer: take a new drop, in a sunny, sheltered bay or on the shore that the wind blows to (common practice)."
	}
	return "Take a new drop."
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
	case s.u.Length(m.FlyM) == s.u.Length(s.flyM()) && s.u.Length(m.Band.WaterM) == s.u.Length(was.WaterM):
		return "Fish on: the fly's depth stays."
	}
	t := "So "
	if !m.Band.ToSurface {
		t += fmt.Sprintf("fish should hold %s: ", now.deepEdges())
	}
	return t + fmt.Sprintf("water under the fly %s, fly about %s down; cut the leader for that depth (coldseam rig).", s.u.Length(m.Band.WaterM), s.u.Length(m.FlyM))
}
