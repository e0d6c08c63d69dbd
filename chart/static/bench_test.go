package static

import (
	"io"
	"testing"

	"coldseam/chart"
)

func benchmark(b *testing.B, draw func(Format) error) {
	for _, f := range []Format{SVG, PNG, PDF} {
		b.Run(string(f), func(b *testing.B) {
			b.ReportAllocs()
			for b.Loop() {
				if err := draw(f); err != nil {
					b.Fatal(err)
				}
			}
		})
	}
}

func BenchmarkColumn(b *testing.B) {
	d := lake(b, "alder-kettle-july")
	benchmark(b, func(f Format) error { return Column(io.Discard, f, Desk, d) })
}

func BenchmarkColumn300(b *testing.B) {
	d := dropOf(b, longPage(300))
	benchmark(b, func(f Format) error { return Column(io.Discard, f, Desk, d) })
}

func BenchmarkCompare(b *testing.B) {
	var all []chart.Drop
	for _, d := range drops(b)[:mostCompared] {
		all = append(all, d.drop)
	}
	benchmark(b, func(f Format) error { return Compare(io.Discard, f, Desk, all) })
}

func BenchmarkSeason(b *testing.B) {
	s := seasonOf(b, 15, 7)
	benchmark(b, func(f Format) error { return DrawSeason(io.Discard, f, Desk, s) })
}
