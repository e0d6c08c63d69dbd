package chart

import (
	"strings"
	"testing"

	"coldseam/profile"
	"coldseam/profile/check"
	"coldseam/profile/unit"
)

func TestGrowing(t *testing.T) {
	d := profile.Drop{Units: unit.System{Depth: unit.Foot, Temp: unit.Fahrenheit}}
	if got := Growing(d); got != "" {
		t.Errorf("nothing read: %q", got)
	}
	for _, r := range [][2]float64{{1, 74}, {29, 52}, {14, 63}, {20, 5600000000}} {
		d.Readings = append(d.Readings, profile.Reading{Depth: r[0], DepthUnit: unit.Foot, Temp: r[1], TempUnit: unit.Fahrenheit, Step: 1})
	}
	d = check.Of(d).Drop()
	want := `
    ft       F
     1    74.0 |---------------------------------------o
    14    63.0 |--------------------o
    20 560000! | out of range < new
    29    52.0 |-o
`
	if got := "\n" + Growing(d); got != want {
		t.Errorf("got%s", got)
	}
	// one layer is a straight edge
	d.Readings = d.Readings[:1]
	d.Readings = append(d.Readings, d.Readings[0])
	d.Readings[1].Depth, d.Readings[1].Temp = 10, 73.9
	d = check.Of(d).Drop()
	lines := strings.Split(Growing(d), "\n")
	if a, b := len(lines[1]), strings.IndexByte(lines[2], 'o')+1; a-b > 2 {
		t.Errorf("a tenth of a degree is drawn %d columns wide", a-b)
	}
}
