package sink

import "testing"

var seconds float64

func BenchmarkWait(b *testing.B) {
	r, depthM := usual(15, 0.25)
	for range b.N {
		s, err := Wait(r, depthM, Held)
		if err != nil {
			b.Fatal(err)
		}
		seconds += s
	}
}

func BenchmarkWaitDroppers(b *testing.B) {
	a := chainRigs()["20 ft, 0.05 g, nylon and two droppers"]
	for range b.N {
		s, err := Wait(a.rig, 20*ft, a.tip)
		if err != nil {
			b.Fatal(err)
		}
		seconds += s
	}
}

func BenchmarkWaitEstimate(b *testing.B) {
	r, depthM := usual(15, 0.25)
	r.Bodies[0].Density, r.Bodies[0].Dressing, r.Parts[2].Density = 0, 0, 0
	for range b.N {
		e, err := WaitEstimate(r, depthM, Slides)
		if err != nil {
			b.Fatal(err)
		}
		seconds += e.Best
	}
}
