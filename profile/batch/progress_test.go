package batch

import (
	"bytes"
	"testing"
)

// How far a run is grows with every lot of columns, and at its end is all of the inputs,
// also where their rows were gathered first.
func TestProgress(t *testing.T) {
	data := manyColumns(300)
	for _, unsorted := range []bool{false, true} {
		var columns, lots int
		var taken int64
		o := usual
		o.Intervals, o.Unsorted = false, unsorted
		o.Progress = func(c int, b int64) {
			if c <= columns || b < taken {
				t.Errorf("unsorted %v: %d columns after %d, %d bytes after %d", unsorted, c, columns, b, taken)
			}
			if share := float64(b) / float64(2*len(data)); share < float64(c)/600-0.15 || share > float64(c)/600+0.15 {
				t.Errorf("unsorted %v: %d of 600 columns, and %.2f of the bytes", unsorted, c, share)
			}
			columns, taken = c, b
			lots++
		}
		var out bytes.Buffer
		if _, err := Run([]Input{text("a", data), text("b", data)}, &out, o); err != nil {
			t.Fatal(err)
		}
		if columns != 600 || taken != int64(2*len(data)) || lots < 6 {
			t.Errorf("unsorted %v: %d columns, %d of %d bytes, %d lots", unsorted, columns, taken, 2*len(data), lots)
		}
	}
}
