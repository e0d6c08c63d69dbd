package batch

import (
	"bytes"
	"fmt"
	"io"
	"testing"
)

// BenchmarkBatch reads 1,000 columns of 14 rows: a thermocline at another depth each.
func BenchmarkBatch(b *testing.B) {
	const columns = 1000
	data := manyColumns(columns)
	for _, intervals := range []bool{false, true} {
		b.Run(fmt.Sprintf("intervals=%t", intervals), func(b *testing.B) {
			b.ReportAllocs()
			b.SetBytes(int64(len(data)))
			for b.Loop() {
				sum, err := Run([]Input{text("in", data)}, io.Discard, Options{ErrC: 0.25, Intervals: intervals})
				if err != nil || sum.Columns != columns || sum.Problems != 0 {
					b.Fatal(sum, err)
				}
			}
			b.ReportMetric(float64(b.N)*columns/b.Elapsed().Seconds(), "columns/s")
		})
	}
}

// BenchmarkRows reads the same rows and finds nothing: what reading costs.
func BenchmarkRows(b *testing.B) {
	const columns = 1000
	data := manyColumns(columns)
	b.ReportAllocs()
	b.SetBytes(int64(len(data)))
	for b.Loop() {
		var r rows
		if err := r.reset("in", bytes.NewReader(data)); err != nil {
			b.Fatal(err)
		}
		n := 0
		for {
			if _, err := r.read(""); err != nil {
				break
			}
			n++
		}
		if n != columns*14 {
			b.Fatalf("%d rows", n)
		}
	}
	b.ReportMetric(float64(b.N)*columns/b.Elapsed().Seconds(), "columns/s")
}
