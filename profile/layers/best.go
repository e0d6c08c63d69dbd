package layers

import "coldseam/profile"

// Best finds the layers of a column as Find does, but without their intervals: Low
// and High of every estimate equal Best. It is for archives of many columns, where
// speed counts.
func Best(c profile.Column) Layers {
	l := Find(c)
	for _, e := range []*profile.Estimate{l.MixedLayer, l.MetaTop, l.MetaBottom, l.Thermocline} {
		if e != nil {
			*e = profile.Exactly(e.Best)
		}
	}
	return l
}
