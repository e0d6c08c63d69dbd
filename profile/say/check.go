package say

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
// the layers have moved.
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
	was, ok := k.Crossing(r.TempC, k.Top(), k.Bottom())
	if !ok {
		c.Text = fmt.Sprintf("%s, expected %s. No depth of the page had that temperature: the water has changed, take a new drop.", at, s.degrees(low, high))
		return c
	}
	shift := milli(r.DepthM - was)
	c.ShiftM = &shift
	way := "deeper"
	if shift < 0 {
		way = "shallower"
	}
	c.Text = fmt.Sprintf("%s, expected %s: the layers lie about %s %s here than on the page.", at, s.degrees(low, high), s.span(math.Abs(shift)), way)
	if !p.Band.Found {
		return c
	}
	b := p.Band
	water := math.Max(b.WaterM+shift, p.ClearanceM)
	c.Text += fmt.Sprintf(" Move all of it by that: the band from about %s", s.u.Length(math.Max(0, b.Top.Best+shift)))
	if p.Rig != nil && !b.Suspended {
		c.Text += fmt.Sprintf(", water under the fly %s, fly about %s down", s.u.Length(water), s.u.Length(math.Max(0, p.Rig.FlyM+shift)))
	}
	c.Text += "; cut the leader for that depth (coldseam rig)."
	return c
}
