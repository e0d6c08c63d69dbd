package notebook

import (
	"slices"

	"coldseam/profile"
	"coldseam/profile/fish"
)

// carried are the keys that hold from one drop to the next on a water: what lake it is,
// where the boat lies unless another spot is named, and what is in it. Day, wind, sky,
// clarity and notes are of one drop alone.
var carried = []string{
	"water", "spot", "for", "units", "deepest", "altitude", "lake length", "latitude", "longitude", "marks at", "bulb below zero",
	"thermometer", "thermometer precision", "wait", "time constant", "oxygen", "weight",
}

// Carried gives what holds from a drop to the next on its water, but for the keys in
// without; a fish that nobody knows does not. from names where it comes from.
func Carried(d profile.Drop, from string, own []fish.Fish, without ...string) []Header {
	if _, known := fish.Known(own, d.For); !known {
		without = append(slices.Clone(without), "for")
	}
	keys := slices.DeleteFunc(slices.Clone(carried), func(k string) bool { return slices.Contains(without, k) })
	return Headers(d, from, keys...)
}

// Headers gives what a drop says under some of the keys, each as it would be written; from
// names where it comes from. A key that says nothing is left out.
func Headers(d profile.Drop, from string, keys ...string) (out []Header) {
	for _, name := range keys {
		if k := find(name); k != nil && k.get != nil {
			if v := k.get(&d); v != "" {
				out = append(out, Header{Key: name, Value: v, From: from})
			}
		}
	}
	return out
}
