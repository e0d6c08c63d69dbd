package settings

import (
	"fmt"

	"coldseam/profile/rig"
	"coldseam/profile/unit"
)

// AddTouched writes a bottom that was touched into the text of a settings file, its depth in
// the angler's units.
func AddTouched(text string, c rig.BottomContact, u unit.System) (string, error) {
	after := fmt.Sprintf("%.0f s", c.S)
	if err := new(wait).UnmarshalText([]byte(after)); err != nil {
		return "", err
	}
	long := u.Shown().Depth
	depth := unit.Exact(long.From(c.DepthM)) + " " + long.String()
	if err := new(waterDepth).UnmarshalText([]byte(depth)); err != nil {
		return "", err
	}
	return Append(text, "touched", Value{"rig", string(c.Kind)}, Value{"depth", depth}, Value{"after", after})
}

// LikelyWater reports whether a bottom so deep can stand in the settings as touched.
func LikelyWater(depthM float64) bool {
	return new(waterDepth).UnmarshalText([]byte(unit.Exact(depthM)+" m")) == nil
}
