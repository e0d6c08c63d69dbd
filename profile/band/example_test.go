package band_test

import (
	"fmt"

	"coldseam/profile"
	"coldseam/profile/band"
	"coldseam/profile/fish"
	"coldseam/profile/layers"
)

func ExampleFind() {
	// Peter Lake on 1984-07-02: Carpenter et al., Cascade Project at North Temperate Lakes
	// LTER, Environmental Data Initiative knb-lter-ntl.352.
	cast := [][3]float64{{0, 22.8, 7.2}, {1, 22.8, 6.7}, {2, 22.8, 6.4}, {2.5, 21.9, 6.6}, {3, 20.3, 7.8}, {3.5, 17.5, 9.8},
		{4, 14.9, 10}, {5, 10.3, 9.9}, {6, 7.5, 10}, {7, 5.6, 1.4}, {8, 4.9, 0.7}, {10, 4.2, 0.6}}
	var points []profile.Point
	for _, r := range cast {
		points = append(points, profile.Point{DepthM: r[0], TempC: r[1], ErrC: 0.1, Oxygen: profile.Some(r[2])})
	}
	column, err := profile.NewColumn(points)
	if err != nil {
		panic(err)
	}
	rainbow, err := fish.Find("rainbow")
	if err != nil {
		panic(err)
	}
	b := band.Find(band.Input{Column: column, Layers: layers.Find(column), Fish: rainbow, ClearanceM: 0.3})
	// Rainbow trout want water of at most 19 C with 5 mg/L (North Twin Lake study, see
	// package fish). Straight lines from reading to reading put 19 C at 3.23 m and 5 mg/L at
	// 6.58 m.
	fmt.Printf("%s: %.2f to %.2f m, start at %.1f m", b.Verdict, b.Top.Best, b.Bottom.Best, b.Start.Best)
	// Output:
	// good: 3.25 to 6.58 m, start at 4.4 m
}
