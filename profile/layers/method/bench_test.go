package method

import "testing"

// eight readings, as a column from a boat has
var eightZ, eightT = []float64{0, 2, 4, 5, 6, 8, 10, 12}, []float64{21.6, 21.5, 20.9, 18.2, 14.6, 10.1, 8.7, 8.2}

func BenchmarkThermoclines(b *testing.B) {
	for b.Loop() {
		Thermoclines(eightZ, eightT)
	}
}

func BenchmarkMethods(b *testing.B) {
	c, _ := newColumn(eightZ, eightT)
	i := most(c.rise)
	for _, m := range []struct {
		name string
		run  func()
	}{
		{"intervals", func() { most(c.fall); most(c.rise) }},
		{"parabola", func() { c.parabola(i) }},
		{"cubic", func() { c.cubic(i) }},
		{"centre", func() { c.centre(i) }},
		{"step", func() { fitStep(c.z, c.rho) }},
	} {
		b.Run(m.name, func(b *testing.B) {
			for b.Loop() {
				m.run()
			}
		})
	}
}

func BenchmarkMixedLayers(b *testing.B) {
	for b.Loop() {
		MixedLayers(eightZ, eightT)
	}
}

func BenchmarkEdges(b *testing.B) {
	for b.Loop() {
		Edges(eightZ, eightT)
	}
}
