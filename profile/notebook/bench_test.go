package notebook

import (
	"os"
	"testing"
)

// BenchmarkRead reads the demo page: header keys and ten readings.
func BenchmarkRead(b *testing.B) {
	page, err := os.ReadFile("../../testdata/alder-kettle-july.txt")
	if err != nil {
		b.Fatal(err)
	}
	b.ReportAllocs()
	for b.Loop() {
		if _, err := Read(page, Options{Name: "page"}); err != nil {
			b.Fatal(err)
		}
	}
}

// BenchmarkReadWild reads readings as they are jotted down.
func BenchmarkReadWild(b *testing.B) {
	page, err := os.ReadFile("../../testdata/as-written.txt")
	if err != nil {
		b.Fatal(err)
	}
	b.ReportAllocs()
	for b.Loop() {
		if _, err := Read(page, Options{Name: "page"}); err != nil {
			b.Fatal(err)
		}
	}
}
