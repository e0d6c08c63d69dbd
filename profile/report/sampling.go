package report

import (
	"fmt"

	"coldseam/profile/sampling"
	"coldseam/profile/unit"
)

// NextJSON is the stable form of the next depth to read.
type NextJSON struct {
	Enough bool     `json:"enough"`
	DepthM *float64 `json:"depth_m,omitempty"`
	Reason string   `json:"reason"`
}

// Next says the next depth to read and why, or that it is enough.
func Next(a sampling.Advice, u unit.System) string {
	if a.Enough {
		return "Enough: " + nextReason(a, u) + "."
	}
	return "Read " + u.Marked(a.DepthM) + " next: " + nextReason(a, u) + "."
}

// NextAsJSON makes the stable form.
func NextAsJSON(a sampling.Advice, u unit.System) NextJSON {
	out := NextJSON{Enough: a.Enough, Reason: nextReason(a, u)}
	if !a.Enough {
		d := unit.RoundTo(a.DepthM, 3)
		out.DepthM = &d
	}
	return out
}

func nextReason(a sampling.Advice, u unit.System) string {
	between := fmt.Sprintf("%s and %s", u.Mark(a.FromM), u.Length(a.ToM))
	switch a.Why {
	case sampling.Surface:
		return "nothing was read just under the surface"
	case sampling.Bottom:
		return "nothing was read close above the bottom"
	case sampling.Guess:
		return "many lakes turn cold about there"
	case sampling.Deeper:
		return "it may get colder further down; stop when the weight touches bottom"
	case sampling.Thermocline:
		return fmt.Sprintf("the thermocline lies between %s in 8 of 10 cases, and this narrows it most", between)
	case sampling.Isotherm:
		return fmt.Sprintf("%s lies between %s in 8 of 10 cases, and this narrows it most", u.Degrees(a.LevelC), between)
	case sampling.CloseEnough:
		return fmt.Sprintf("the thermocline lies between %s in 8 of 10 cases, and another reading would not move the fly", between)
	case sampling.NoGain:
		return fmt.Sprintf("the thermocline lies between %s in 8 of 10 cases, and no single reading would narrow what is left by much", between)
	case sampling.NoBreak:
		return fmt.Sprintf("no thermocline between %s", between)
	case sampling.OneLayer:
		return fmt.Sprintf("hardly any change between %s: one layer", between)
	}
	return string(a.Why)
}
