package report

import (
	"fmt"
	"math"

	"coldseam/profile"
	"coldseam/profile/plan"
	"coldseam/profile/unit"
)

// Basin says what the water's table of depth and area adds; nothing without a table.
func Basin(p plan.Plan) []string {
	s, b := speak(p), p.Basin
	switch {
	case b == nil:
		return nil
	case b.TooShallow:
		return []string{fmt.Sprintf("The table of depth and area ends at %s, and %s was read: correct it in the settings.", s.u.Length(b.FloorM), s.u.Length(p.Column.Last().DepthM))}
	}
	var out []string
	if b.Band != nil {
		out = append(out, sentence(fmt.Sprintf("%s of the lake's bottom lies in the band, %s under the water to cast over", percents(*b.Band), percent(*b.Cast))))
	}
	return append(out, s.stability())
}

// stability says how firmly the water is layered.
func (s speaker) stability() string {
	b := s.p.Basin
	e := b.Stability
	t := "Schmidt stability "
	if b.AtLeast {
		t += "at least "
	}
	t += joules(e.Best)
	if low, high := joules(e.Low), joules(e.High); low != high {
		t += fmt.Sprintf(" (%s to %s)", low, high)
	}
	t += " J/m2: the work per square metre of surface that it would take to mix the lake from top to bottom"
	if b.AtLeast {
		t += fmt.Sprintf("; nothing was read below %s", s.u.Length(s.p.Column.Last().DepthM))
	}
	return t + "."
}

// joules prints a stability with two digits, which is what readings earn.
func joules(j float64) string {
	j = math.Max(j, 0)
	if j < 1 {
		return unit.Digits(j, 1)
	}
	scale := math.Pow(10, math.Max(0, math.Floor(math.Log10(j))-1))
	return unit.Digits(math.Round(j/scale)*scale, 0)
}

func percents(e profile.Estimate) string {
	low, high := percent(e.Low), percent(e.High)
	if low == high {
		return low
	}
	return fmt.Sprintf("%s to %s", low[:len(low)-len(" %")], high)
}

// percent prints a share, 0 to 1.
func percent(share float64) string {
	if share > 0 && share < 0.005 {
		return "under 1 %"
	}
	return unit.Digits(100*share, 0) + " %"
}

// BasinJSON is what the table of depth and area adds.
type BasinJSON struct {
	Band      *profile.Estimate `json:"band_share,omitempty"`
	Cast      *float64          `json:"cast_share,omitempty"`
	Stability profile.Estimate  `json:"schmidt_stability_jm2"`
	AtLeast   bool              `json:"stability_is_least"`
}

// basin is nil where nothing could be worked out.
func (s speaker) basin() *BasinJSON {
	b := s.p.Basin
	if b == nil || b.TooShallow {
		return nil
	}
	out := &BasinJSON{Band: rounded(b.Band, 4), Stability: *rounded(&b.Stability, 2), AtLeast: b.AtLeast}
	if b.Cast != nil {
		v := unit.RoundTo(*b.Cast, 4)
		out.Cast = &v
	}
	return out
}
