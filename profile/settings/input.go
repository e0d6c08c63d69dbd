package settings

import (
	"slices"

	"coldseam/profile"
	"coldseam/profile/fish"
	"coldseam/profile/notebook"
	"coldseam/profile/plan"
)

// Reading is how a saved page is read: as the settings have it, and nobody is asked.
func (s Settings) Reading() notebook.Options {
	return notebook.Options{Unread: true, Defaults: s.Headers, Fish: s.Fish, Waters: s.WaterNames()}
}

// Adding is how a page is read that is to be added to the book. Of the settings only the
// units of bare numbers count: what holds for this season's thermometer need not have held
// then.
func (s Settings) Adding() notebook.Options {
	o := s.Reading()
	o.Unread = false
	o.Defaults = slices.DeleteFunc(slices.Clone(s.Headers), func(h notebook.Header) bool { return h.Key != "units" && h.Key != "oxygen" })
	return o
}

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
