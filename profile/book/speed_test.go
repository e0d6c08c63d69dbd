package book

import (
	"fmt"
	"os"
	"path/filepath"
	"testing"

	"coldseam/profile"
	"coldseam/profile/notebook"
	"coldseam/profile/unit"
)

// fill makes a book of n drops of some waters, as the program writes them.
func fill(tb testing.TB, n int) string {
	tb.Helper()
	dir := tb.TempDir()
	for i := range n {
		d := profile.Drop{
			Water: fmt.Sprintf("Invented Lake %d", i%40), Spot: fmt.Sprintf("spot %d", i%7), For: "rainbow", Units: unit.System{Depth: unit.Foot, Temp: unit.Fahrenheit},
			Date:   fmt.Sprintf("%d-%02d-%02d %02d:%02d", 1900+i/10000, 1+i/28%12, 1+i%28, i%24, i%60),
			Bottom: profile.Some(9.5), Notes: []string{fmt.Sprintf("drop %d", i)}, Wind: profile.Some(float64(i % 9)), WindFrom: "SW",
		}
		for z := range 10 {
			d.Readings = append(d.Readings, profile.Reading{Depth: float64(3 * z), DepthUnit: unit.Foot, Temp: 74 - float64(z*(i%3)) - float64(i%50)/10, TempUnit: unit.Fahrenheit, Step: 0.1})
		}
		if err := os.WriteFile(filepath.Join(dir, fmt.Sprintf("%s-%d.txt", pageName(d), i)), []byte(notebook.Write(d)), 0o600); err != nil {
			tb.Fatal(err)
		}
	}
	return dir
}

// BenchmarkHeads looks through a book of ten thousand drops.
func BenchmarkHeads(b *testing.B) {
	dir := fill(b, 10000)
	b.ReportAllocs()
	for b.Loop() {
		heads, err := At(dir, System{}).Heads(notebook.Options{Unread: true})
		if err != nil || len(heads) != 10000 || heads[0].Err != nil {
			b.Fatal(len(heads), err)
		}
	}
}
