package notebook

import (
	"math"
	"strings"
	"testing"
)

// fiveNinths is one degree of the Fahrenheit scale in degrees Celsius: a difference has no
// 32 in it (NIST SP 811, appendix B.9).
const fiveNinths = 5.0 / 9

// TestDifferences: a doubt, a precision and half of a range are differences of temperature;
// what a thermometer reads in ice water is a temperature.
func TestDifferences(t *testing.T) {
	sheets, err := Read([]byte("units: ft F\nthermometer precision: 0.5 F\nthermometer: reads 32.5 F in ice water\n0 74\n5 ~72\n10 70 +-1.5\n15 65-66\n"), Options{Name: "p"})
	if err != nil {
		t.Fatal(err)
	}
	d := sheets[0].Drop
	for what, pair := range map[string][2]float64{
		"precision": {d.Precision.Value, 0.5 * fiveNinths}, "ice point": {d.IcePoint.Value, 0.5 * fiveNinths}, "no doubt": {d.Readings[0].SpreadC, 0},
		"about": {d.Readings[1].SpreadC, 2 * fiveNinths}, "give or take": {d.Readings[2].SpreadC, 1.5 * fiveNinths}, "half a range": {d.Readings[3].SpreadC, 0.5 * fiveNinths},
	} {
		if math.Abs(pair[0]-pair[1]) > 1e-8 {
			t.Errorf("%s: %v C, want %v", what, pair[0], pair[1])
		}
	}
	page := Write(d)
	for _, want := range []string{"+-2 F", "+-1.5 F", "+-0.5 F"} {
		if !strings.Contains(page, want) {
			t.Errorf("%q is not written in\n%s", want, page)
		}
	}
	told := false
	for _, n := range sheets[0].Notes {
		told = told || strings.Contains(n.Text, "72 F give or take 2")
	}
	if !told {
		t.Errorf("the doubt of 2 F is not told: %v", sheets[0].Notes)
	}
	d.Precision.Known = false
	if got := d.PrecisionC(); math.Abs(got-0.5*fiveNinths) > 1e-4 { // half a step
		t.Errorf("precision of readings to a degree F: %v C", got)
	}
}

// TestTwoScales: both scales on a line agree when they differ by no more than half a step
// of each.
func TestTwoScales(t *testing.T) {
	for line, want := range map[string]bool{"20ft 58F 14C": true, "20ft 58F 15C": true, "20ft 58F 16C": false, "20ft 59F 16C": false, "20ft 58.0F 14.4C": true, "20ft 58.0F 14.6C": false} {
		if _, err := Read([]byte(line), Options{Name: "p"}); (err == nil) != want {
			t.Errorf("%q: %v", line, err)
		}
	}
}

// TestSecondDrop: where the depths start again after a blank line a second drop begins,
// once three or more have gone down; the line's angle and the bottom are the first one's.
func TestSecondDrop(t *testing.T) {
	for page, want := range map[string]int{
		"0 20\n5 19\n10 12\n\n0 21\n5 20\n10 13\n":   2,
		"0 20\n5 19\n\n0 21\n5 20\n":                 1, // two readings: a check of the first
		"0 20\n10 12\n5 19\n\n0 21\n5 20\n":          1, // the last was not the deepest
		"0 20\n5 19\n10 12\n\n1 21\n5 20\n10 13\n":   1, // not from where the first began
		"0 20\n5 19\n10 12\n\n0 21\n":                1, // one reading is none
		"10 12\n5 19\n0 20\n\n10 13\n5 20\n0 20.5\n": 1, // read on the way up
	} {
		sheets, err := Read([]byte("units: m C\nwater: Alder Kettle\nline angle: 20\nbottom: 12 m\n"+page), Options{Name: "p"})
		if err != nil || len(sheets) != want {
			t.Errorf("%q: %d drops, want %d: %v", page, len(sheets), want, err)
			continue
		}
		if want == 2 {
			a, b := sheets[0].Drop, sheets[1].Drop
			if !a.LineAngle.Known || b.LineAngle.Known || b.Bottom.Known || b.Water != "Alder Kettle" {
				t.Errorf("%q: angle %v then %v, bottom %v, water %q", page, a.LineAngle, b.LineAngle, b.Bottom, b.Water)
			}
		}
	}
}
