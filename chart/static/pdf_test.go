package static

import (
	"bytes"
	"testing"

	"gonum.org/v1/plot/vg"
)

// A PDF carries no date of its making, and needs no folder for working files.
func TestPDFAlone(t *testing.T) {
	t.Setenv("TMPDIR", "/nowhere/at/all")
	file := columnBytes(t, PDF, Phone, lake(t, "alder-kettle-july"))
	for _, key := range []string{"/CreationDate (D:20000101000000", "/ModDate (D:20000101000000"} {
		if !bytes.Contains(file, []byte(key)) {
			t.Errorf("no %s", key)
		}
	}
}

// The outlines of a text take the width that the layout counts on, in any alphabet.
func TestOutlines(t *testing.T) {
	for _, s := range []style{{size: 10}, {size: 30, bold: true}} {
		end := func(text string) (x float64) {
			for _, c := range outlines(s.face(), vg.Point{X: 100, Y: 50}, text) {
				if c.Type != vg.CloseComp {
					x = max(x, c.Pos.X.Points())
				}
			}
			return x
		}
		for _, text := range []string{"Alder Kettle 31 ft", "AVAT, To", "Тихое озеро", "Ήρεμη λίμνη", "H", " "} {
			got, want := end(text+"H")-end("H"), s.width(text+"H")-s.width("H")
			if got < want-0.01*s.size || got > want+0.01*s.size {
				t.Errorf("%q at %v: takes %v, want %v", text, s.size, got, want)
			}
		}
	}
}
