package leader

import "testing"

var kept float64

// keep runs a question many times.
func keep(b *testing.B, ask func() (float64, error)) {
	for b.Loop() {
		v, err := ask()
		if err != nil {
			b.Fatal(err)
		}
		kept += v
	}
}

func BenchmarkTow(b *testing.B) {
	r := listedLeaders(b)[0]
	l := r.leader()
	keep(b, func() (float64, error) {
		s, err := l.Tow(r.Speed)
		return s.Point.DepthM, err
	})
}

func BenchmarkTowSpeed(b *testing.B) {
	l := ruleLeader(fly(18.75*ft, 0.25e-3))
	keep(b, func() (float64, error) { return l.TowSpeed(4) })
}

func BenchmarkTowLength(b *testing.B) {
	cut := longerTippet(ruleLeader(fly(18.75*ft, 0.25e-3)))
	keep(b, func() (float64, error) { return TowLength(cut, 2*inch, 14*ft, 15*ft, 30*ft) })
}

func BenchmarkFlyFor(b *testing.B) {
	l := longerTippet(ruleLeader(fly(18.75*ft, 0.25e-3)))(30 * ft)
	keep(b, func() (float64, error) { return l.FlyFor(14*ft, 6*inch) })
}

func BenchmarkSinkTime(b *testing.B) {
	l, depthM := usual(15, 0.25)
	keep(b, func() (float64, error) { return l.SinkTime(depthM, Held) })
}

func BenchmarkSinkTimeDroppers(b *testing.B) {
	a := chainLeaders()["20 ft, 0.05 g, nylon and two droppers"]
	keep(b, func() (float64, error) { return a.leader.SinkTime(20*ft, a.tip) })
}

func BenchmarkSinkTimeEstimate(b *testing.B) {
	l, depthM := usual(15, 0.25)
	l.Bodies[0].DensityKgM3, l.Bodies[0].Dressing, l.Parts[2].DensityKgM3 = 0, 0, 0
	keep(b, func() (float64, error) {
		e, err := l.SinkTimeEstimate(depthM, Slides)
		return e.Best, err
	})
}
