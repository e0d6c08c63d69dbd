package notebook

import (
	"os"
	"strings"
	"testing"
)

// BenchmarkRead reads two demo pages: a tidy one of header keys and ten readings,
// and one of readings as they are jotted down.
func BenchmarkRead(b *testing.B) {
	for _, name := range []string{"alder-kettle-july", "as-written"} {
		page, err := os.ReadFile("../../testdata/" + name + ".txt")
		if err != nil {
			b.Fatal(err)
		}
		b.Run(name, func(b *testing.B) {
			b.ReportAllocs()
			for b.Loop() {
				if _, err := Read(page, Options{Name: "page"}); err != nil {
					b.Fatal(err)
				}
			}
		})
	}
}

// BenchmarkReadNotes reads a page whose lines are words: each is searched for the facts
// that anglers write down.
func BenchmarkReadNotes(b *testing.B) {
	page := []byte("units: ft F\n0 74\n5 73\n10 65\n" + strings.Repeat("north bay\n", 190))
	b.ReportAllocs()
	for b.Loop() {
		if _, err := Read(page, Options{Name: "page"}); err != nil {
			b.Fatal(err)
		}
	}
}
