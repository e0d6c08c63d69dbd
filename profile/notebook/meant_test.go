package notebook

import (
	"math"
	"strings"
	"testing"
)

// Two drops written side by side are never taken for one whose depths were read twice.
func TestSideBySide(t *testing.T) {
	const page = "units: m C\ndepth  reeds  island\n0 22.1 22.4\n2 22.0 22.1\n4 20.5 21.8\n6 14.2 17.0\n8 10.1 11.9\n"
	if _, err := Read([]byte(page), Options{}); err == nil || !strings.Contains(err.Error(), "either each depth read twice, or two drops side by side") {
		t.Errorf("%v", err)
	}
	// one depth read again is just that
	if drops, err := Read([]byte("units: m C\n0 22.1 22.4\n2 22.0\n4 20.5\n6 14.2\n8 10.1\n"), Options{}); err != nil || len(drops) != 1 || len(drops[0].Drop.Readings) != 6 {
		t.Errorf("%v, %v", drops, err)
	}
}

// A date with a year that is more oxygen than water holds begins a title.
func TestTitleBeginsWithADate(t *testing.T) {
	drops, err := Read([]byte("7/18/26 Alder Kettle\nunits: ft F\n0 74\n5 73\n10 72\n15 66\n"), Options{})
	if err != nil || len(drops) != 1 {
		t.Fatalf("%v, %v", drops, err)
	}
	if d := drops[0].Drop; d.Date != "2026-07-18" || d.Water != "Alder Kettle" || len(d.Readings) != 4 {
		t.Errorf("%+v", d)
	}
}

// The units may stand without the colon of their key.
func TestUnitsWithoutColon(t *testing.T) {
	drops, err := Read([]byte("units ft F\n0 32.2\n5 37.1\n10 38.6\n20 39.2\n"), Options{})
	if err != nil || len(drops) != 1 || len(drops[0].Drop.Readings) != 4 {
		t.Fatalf("%v, %v", drops, err)
	}
	if got := drops[0].Drop.Readings[0].TempC; math.Abs(got-0.111) > 0.01 {
		t.Errorf("32.2 F read as %v C", got)
	}
}
