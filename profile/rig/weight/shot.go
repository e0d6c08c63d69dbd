package weight

import (
	"fmt"
	"strings"
)

// shots are the sizes of split shot by the UK trade's scale (common practice; SSG
// runs from 1.6 to 1.9 g). Sizes of the same names elsewhere, a shotgun's above
// all, are others.
var shots = []struct {
	name string
	g    float64
}{
	{"SSG", 1.6}, {"AAA", 0.8}, {"BB", 0.4}, {"1", 0.3}, {"3", 0.2}, {"4", 0.17},
	{"5", 0.13}, {"6", 0.1}, {"8", 0.06}, {"10", 0.04}, {"12", 0.02},
}

// shotMetal is what shot is taken to be of where its metal is not named: lead is not
// allowed on many waters. A lead shot of the same size weighs 6 % more in water.
const shotMetal = "tin"

// Shot is a split shot by its name on the UK scale: SSG, AAA, BB, or 1, 3, 4, 5, 6,
// 8, 10, 12, with or without "No." before a number, in any case. The scale goes by
// mass; the metal is taken to be tin.
func Shot(name string) (Weight, error) { return shotOf(name, shotMetal) }

func shotOf(name, metal string) (Weight, error) {
	density, _ := MetalDensity(metal)
	wanted := strings.ToUpper(strings.TrimSpace(name))
	for _, prefix := range []string{"NO", "#"} {
		wanted = strings.TrimPrefix(wanted, prefix)
	}
	wanted = strings.TrimLeft(wanted, ". ")
	var names []string
	for _, s := range shots {
		if s.name == wanted {
			label := s.name
			if label[0] <= '9' {
				label = "No. " + label
			}
			return Weight{s.g / 1000, density, label + " shot"}, nil
		}
		names = append(names, s.name)
	}
	return Weight{}, fmt.Errorf("there is no shot %q: write one of %s, e.g. BB shot or no. 4 shot", name, strings.Join(names, ", "))
}
