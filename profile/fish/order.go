package fish

import (
	"math"
	"slices"

	"coldseam/profile/unit"
)

// inWords are the figures as a sentence names them, and the keys that set them.
var inWords = map[string]struct{ what, key string }{
	UseLow:      {"the coldest water used", "use_from"},
	ComfortLow:  {"the low end of comfort", "comfort"},
	Optimum:     {"the optimum", "optimum"},
	ComfortHigh: {"the high end of comfort", "comfort"},
	UseHigh:     {"the warmest water used", "use_up_to"},
	Lethal:      {"what kills them", "lethal"},
	OxygenLeast: {"the least oxygen used", "oxygen_least"},
	Oxygen:      {"the oxygen worth fishing", "oxygen"},
}

// order refuses a fish whose limits cross, and says which and what to write.
func (e Entry) order(f Fish) error {
	below, above, crossed := f.Misplaced()
	if !crossed {
		return nil
	}
	list := e.written()
	keyOf := func(name string) string { // the last one holds
		for _, w := range slices.Backward(list) {
			if w.name == name {
				return w.key
			}
		}
		return ""
	}
	at, other, how := below, above, "over"
	if keyOf(at.Name) == "" {
		at, other, how = above, below, "under"
	}
	advice := "write them in rising order"
	if other.Name == Lethal {
		advice = "write less"
	} else if keyOf(other.Name) == "" {
		advice = "write " + inWords[other.Name].key + " too"
	}
	return wrong(keyOf(at.Name), "%s, %s, is %s %s, %s (%s): %s", inWords[at.Name].what, e.shown(at), how, inWords[other.Name].what, e.shown(other), other.Source, advice)
}

// shown prints a figure to a tenth, a temperature on the scale that was written last.
func (e Entry) shown(g Named) string {
	if g.Name == Oxygen || g.Name == OxygenLeast {
		return unit.Exact(math.Round(g.Value*10)/10) + " mg/L"
	}
	scale := unit.Celsius
	for _, w := range e.written() {
		if w.amount.scale != unit.NoTemperature {
			scale = w.amount.scale
		}
	}
	return unit.Exact(math.Round(scale.FromC(g.Value)*10)/10) + " " + scale.String()
}

// alone refuses a name that another fish of the settings has already.
func (e Entry) alone(f Fish, own []Fish) error {
	for _, other := range own {
		if shared := f.Shares(other); shared != "" {
			key := "name"
			if slices.Contains(e.Alias, shared) {
				key = "alias"
			}
			return wrong(key, "%q means another fish of your settings already, %s: give each its own", shared, other.Key)
		}
	}
	return nil
}
