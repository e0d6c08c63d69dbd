package response_test

import (
	"fmt"
	"math"

	"coldseam/profile/response"
)

func ExampleFilter() {
	// The closed form of a first-order lag: after one time constant 63.2 % of a step is
	// done, after five 99.3 %.
	const tauS, from, water = 20, 20.0, 10.0
	reading := func(s float64) float64 { return water + (from-water)*math.Exp(-s/tauS) }
	f, err := response.NewFilter(response.Options{TauS: tauS})
	if err != nil {
		panic(err)
	}
	for s := 0.0; s <= 2*tauS; s += 2 {
		e, err := f.Add(s, reading(s))
		if err != nil {
			panic(err)
		}
		if s > 0 && math.Mod(s, tauS) == 0 {
			done := (from - reading(s)) / (from - water)
			fmt.Printf("after %2.0f s %.1f %%: reads %.2f C, will read %.2f C, settled: %v\n", s, 100*done, reading(s), e.EstimateC, e.Settled)
		}
	}
	// Output:
	// after 20 s 63.2 %: reads 13.68 C, will read 10.00 C, settled: false
	// after 40 s 86.5 %: reads 11.35 C, will read 10.00 C, settled: false
}
