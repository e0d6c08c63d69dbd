package sampling_test

import (
	"fmt"

	"coldseam/profile"
	"coldseam/profile/layers"
	"coldseam/profile/sampling"
)

func ExampleFind() {
	// Peter Lake on 1984-07-02: Carpenter et al., Cascade Project at North Temperate Lakes
	// LTER, Environmental Data Initiative knb-lter-ntl.352.
	cast := [][2]float64{{0, 22.8}, {0.5, 22.8}, {1, 22.8}, {1.5, 22.8}, {2, 22.8}, {2.5, 21.9}, {3, 20.3}, {3.5, 17.5},
		{4, 14.9}, {5, 10.3}, {6, 7.5}, {7, 5.6}, {8, 4.9}, {10, 4.2}, {12, 4.1}, {14, 4}}
	in := sampling.Input{Bottom: profile.Some(14), LevelsC: []float64{19}, MarkM: 0.5}
	var points []profile.Point
	for {
		a := sampling.Find(in)
		if a.Enough {
			break
		}
		i := 1
		for cast[i][0] < a.DepthM && i+1 < len(cast) {
			i++
		}
		above, below := cast[i-1], cast[i] // straight lines from reading to reading
		c := above[1] + (below[1]-above[1])*(a.DepthM-above[0])/(below[0]-above[0])
		fmt.Printf("%s: %.1f m, %.1f C\n", a.Why, a.DepthM, c)
		points = append(points, profile.Point{DepthM: a.DepthM, TempC: c, ErrC: 0.1})
		var err error
		if in.Column, err = profile.NewColumn(points); err != nil {
			panic(err)
		}
	}
	// All sixteen readings of the cast have density rise fastest between 3 and 3.5 m.
	fmt.Printf("break at %.2f m", layers.Find(in.Column).Thermocline.Best)
	// Output:
	// surface: 0.5 m, 22.8 C
	// bottom: 13.5 m, 4.0 C
	// guess: 5.5 m, 8.9 C
	// edge: 3.5 m, 17.5 C
	// edge: 3.0 m, 20.3 C
	// break: 4.0 m, 14.9 C
	// break at 3.51 m
}
