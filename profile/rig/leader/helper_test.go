package leader

import (
	"testing"

	"coldseam/profile/expect"
)

var (
	within = expect.Within
	near   = expect.Near
)

const ft, inch = 0.3048, 0.0254 // m, exact (international foot of 1959)

// sized is a body with the drag of a ball of a diameter.
func sized(b Body, diameterM float64) Body {
	b.Dressing = diameterM / b.ball()
	return b
}

// built is a leader's line of a length with 2 ft of butt, nylon of 0.30 mm and an end.
func built(lengthM, endM, endDiameterM, endDensity float64) []Part {
	return []Part{
		{LengthM: 2 * ft, DiameterM: 0.51e-3, DensityKgM3: NylonKgM3},
		{LengthM: lengthM - 2*ft - endM, DiameterM: 0.30e-3, DensityKgM3: NylonKgM3},
		{LengthM: endM, DiameterM: endDiameterM, DensityKgM3: endDensity},
	}
}

// usual is a leader for water of a depth in feet, a quarter longer, with a fly of some
// grams.
func usual(feet, grams float64) (l Leader, depthM float64) {
	m := 1.25 * feet * ft
	return Leader{
		Parts:  built(m, 1.2, 0.18e-3, FluoroKgM3),
		Bodies: []Body{{m, grams / 1000, AnyFlyKgM3, AnyDressing}},
		TempC:  15,
	}, feet * ft
}

// ruleLeader is a leader of common practice, of 18.75 ft for 15 ft of water: 2 ft of
// 0.020 in nylon, 12 ft of nylon that tapers to 3X, 4X fluorocarbon.
func ruleLeader(bodies ...Body) Leader {
	return Leader{
		Parts: []Part{
			{LengthM: 2 * ft, DiameterM: 0.020 * inch, DensityKgM3: 1140},
			{LengthM: 12 * ft, DiameterM: 0.020 * inch, EndDiameterM: 0.008 * inch, DensityKgM3: 1140},
			{LengthM: 4.75 * ft, DiameterM: 0.007 * inch, DensityKgM3: 1780},
		},
		Bodies: bodies,
		TempC:  15,
	}
}

func fly(at, kg float64) Body { return Body{AtM: at, KgDry: kg, DensityKgM3: 4000} }

func mustTow(t *testing.T, l Leader, mps float64) Shape {
	t.Helper()
	s, err := l.Tow(mps)
	if err != nil {
		t.Fatal(err)
	}
	return s
}

func mustSink(t *testing.T, l Leader, depthM float64, tip Tip) float64 {
	t.Helper()
	s, err := l.SinkTime(depthM, tip)
	if err != nil {
		t.Fatal(err)
	}
	return s
}
