package leader_test

import (
	"fmt"

	"coldseam/profile/rig/leader"
)

const foot, inch = 0.3048, 0.0254 // m

// byTheRule is a leader of common practice for 15 ft of water: a quarter longer, 2 ft of
// butt, 12 ft of nylon that tapers to 3X, 4X fluorocarbon and a fly of 0.25 g.
var byTheRule = leader.Leader{
	Parts: []leader.Part{
		{LengthM: 2 * foot, DiameterM: 0.020 * inch, DensityKgM3: leader.NylonKgM3},
		{LengthM: 12 * foot, DiameterM: 0.020 * inch, EndDiameterM: 0.008 * inch, DensityKgM3: leader.NylonKgM3},
		{LengthM: 4.75 * foot, DiameterM: 0.007 * inch, DensityKgM3: leader.FluoroKgM3},
	},
	Bodies: []leader.Body{{AtM: 18.75 * foot, KgDry: 0.25e-3}},
	TempC:  15,
}

// Towed at 2 inches a second the fly is 13.7 ft down; scipy, integrating the towed cable
// of Pode 1951 (DTMB Report 687) apart, says 4.1836 m too (testdata/shapes.csv).
func ExampleLeader_Tow() {
	shape, err := byTheRule.Tow(2 * inch)
	fmt.Printf("%.3f m, %v\n", shape.Point.DepthM, err)
	// Output: 4.184 m, <nil>
}

// On a leader by the rule a fly of 0.25 g keeps between the bottom of 15 ft of water and
// 2 ft above it at about 1.8 to 2.3 inches a second (common practice); the
// model was made without this figure.
func ExampleLeader_TowWindow() {
	w, err := byTheRule.TowWindow(13*foot, 15*foot)
	fmt.Printf("%.1f to %.1f in/s, %v\n", w.SlowestMps/inch, w.FastestMps/inch, err)
	// Output: 1.7 to 2.2 in/s, <nil>
}

// A fly of 0.05 g on 7.5 ft of level 4X fluorocarbon takes 12.5 s to the first metre;
// scipy, with 40 springs in place of the chain, says 12.44 (testdata/chain.csv).
func ExampleLeader_SinkTime() {
	l := leader.Leader{
		Parts:  []leader.Part{{LengthM: 7.5 * foot, DiameterM: 0.18e-3, DensityKgM3: leader.FluoroKgM3}},
		Bodies: []leader.Body{{AtM: 7.5 * foot, KgDry: 0.05e-3}},
		TempC:  15,
	}
	s, err := l.SinkTime(1, leader.Held)
	fmt.Printf("%.1f s, %v\n", s, err)
	// Output: 12.5 s, <nil>
}

// A level line of 1.1 mm that sinks at 3 in/s has 1522 kg/m3 at 15 C, by the drag of
// Sucker & Brauer 1975, worked out apart.
func ExampleLineDensity() {
	fmt.Printf("%.0f kg/m3\n", leader.LineDensity(15, 0.0011, 3*inch))
	// Output: 1522 kg/m3
}
