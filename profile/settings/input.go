package settings

import (
	"coldseam/profile"
	"coldseam/profile/fish"
	"coldseam/profile/plan"
)

// Input is what a plan of a drop is made of: its fish, or the usual one where it names
// none, and what was settled of its water, the tackle and the clock. The error is of a
// fish that nobody knows.
func (s Settings) Input(d profile.Drop) (plan.Input, error) {
	wanted := d.For
	if wanted == "" {
		wanted = fish.Usual
	}
	f, err := fish.FindIn(s.Fish, wanted)
	if err != nil {
		return plan.Input{}, err
	}
	lake := s.LakeFor(d.Water)
	lake.Fill(&d)
	return plan.Input{
		Drop: d, Fish: f, Rules: s.RulesFor(d.Water), ClearanceM: s.ClearanceM,
		FlyDensity: s.FlyDensity(d.FlyWeight), Tackle: s.Tackle, Basin: lake.Basin, Zone: s.Zone,
	}, nil
}
