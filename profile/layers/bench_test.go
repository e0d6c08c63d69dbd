package layers

import (
	"fmt"
	"math"
	"testing"
)

func BenchmarkFind(b *testing.B) {
	for _, n := range []int{8, 30} {
		b.Run(fmt.Sprintf("%d readings", n), func(b *testing.B) {
			var z, temps []float64
			for i := range n {
				d := 12 * float64(i) / float64(n-1)
				z, temps = append(z, d), append(temps, 14.5-7.5*math.Tanh(d-5))
			}
			c := metres(b, z, temps)
			if l := Find(c); l.Structure != Layered {
				b.Fatalf("%v", l)
			}
			b.ReportAllocs()
			for b.Loop() {
				Find(c)
			}
		})
	}
}
