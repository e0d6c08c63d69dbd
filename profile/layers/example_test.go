package layers_test

import (
	"fmt"

	"coldseam/profile"
	"coldseam/profile/layers"
)

func ExampleFind() {
	// Peter Lake on 1984-07-02: Carpenter et al., Cascade Project at North Temperate Lakes
	// LTER, Environmental Data Initiative knb-lter-ntl.352.
	cast := [][2]float64{{0, 22.8}, {0.5, 22.8}, {1, 22.8}, {1.5, 22.8}, {2, 22.8}, {2.5, 21.9}, {3, 20.3}, {3.5, 17.5},
		{4, 14.9}, {5, 10.3}, {6, 7.5}, {7, 5.6}, {8, 4.9}, {10, 4.2}, {12, 4.1}, {14, 4}}
	var points []profile.Point
	for _, r := range cast {
		points = append(points, profile.Point{DepthM: r[0], TempC: r[1], ErrC: 0.1})
	}
	column, err := profile.NewColumn(points)
	if err != nil {
		panic(err)
	}
	l := layers.Find(column)
	// Density rises fastest between 3 and 3.5 m. Straight lines from reading to reading give
	// a mixed layer, to 0.5 C below the surface, of 2.28 m, and fall at least 1 C per metre
	// from 2 to 7 m (Birge's criterion).
	fmt.Printf("%s: mixed to %.2f m, break at %.2f m\n", l.Structure, l.MixedLayer.Best, l.Thermocline.Best)
	fmt.Printf("metalimnion %.2f to %.2f m\n", l.MetalimnionTop.Best, l.MetalimnionBottom.Best)
	// Output:
	// layered: mixed to 2.33 m, break at 3.37 m
	// metalimnion 2.50 to 8.00 m
}
