package notebook

import "testing"

// TestKeyAhead: a key without its colon is taken before a value of its own, and never at
// the head of a sentence.
func TestKeyAhead(t *testing.T) {
	for line, want := range map[string]string{
		"units ft F": "units: ft F", "Unit m/C": "units: m/C", "deepest 40 ft": "deepest: 40 ft", "max depth 12 m": "deepest: 12 m", "altitude 1900 ft": "altitude: 1900 ft",
		"line angle 10": "line angle: 10", "wait 2 min": "wait: 2 min", "date 7/8/2026": "date: 7/8/2026", "thermometer reads 32.5 F in ice water": "thermometer: reads 32.5 F in ice water",
		"thermometer precision 0.5 F": "thermometer precision: 0.5 F", "retrieve 2 in/s": "retrieve: 2 in/s", "retrieve slow": "retrieve: slow", "marks at water": "marks at: water",
		"spot dam": "spot: dam", "Site 3": "spot: 3", "station north buoy": "spot: north buoy", "weather overcast": "sky: overcast", "color green": "colour: green",
		"species rainbow": "for: rainbow", "target brook trout": "for: brook trout", "water Alder Kettle": "water: Alder Kettle",

		"water clear": "", "water 72 at 10 ft": "", "weather turning, bass rising": "", "spot the rises at 10 ft": "", "target the drop off at 9 ft": "", "date night": "",
		"wait for dusk": "", "thermometer 39 F": "", "oxygen 8": "", "station 4 ft 66": "", "units of measure": "", "deepest hole in the lake": "",
		"species unknown": "", "bottom 52": "", "secchi 9 ft": "", "wind SW 8": "", "spot: dam": "", "deepest: 40 ft": "", "5 ft 71.2": "",
	} {
		got := ""
		if name, value, ok := new(reader).keyAhead(line); ok {
			got = name + ": " + value
		}
		if got != want {
			t.Errorf("%q: %q, want %q", line, got, want)
		}
	}
}

// TestLengthRange: a range of bottoms is its middle; a temperature beside a depth is none.
func TestLengthRange(t *testing.T) {
	for line, want := range map[string]string{
		"bottom 25-28 ft": "bottom 26.5 ft", "Bottom: 8 to 9 m, weeds": "Bottom: 8.5 m, weeds", "clarity 10-12 ft": "clarity 11 ft", "anchored in 20 - 25 feet of water": "anchored in 22.5 feet of water",
		"bottom 52-28 ft": "bottom 52-28 ft", "bottom 25 ft 52-53": "bottom 25 ft 52-53", "bottom 20-30 ft 52": "bottom 20-30 ft 52", "bottom 20-25 ft, 52": "bottom 20-25 ft, 52", "10-12 ft 66": "10-12 ft 66",
	} {
		if got := new(reader).oneLength(1, line); got != want {
			t.Errorf("%q: %q, want %q", line, got, want)
		}
	}
}

// TestLogLines: the time that a probe's log puts before each reading goes, the reading
// stays; a depth and its temperature are no time.
func TestLogLines(t *testing.T) {
	for line, want := range map[string]string{
		"2026-07-18 13:02:11,0.5,23.44": "0.5,23.44", "2026-07-18t13:02:11z,0.5,23.44": "0.5,23.44", "13:02:11 0.5 23.44": "0.5 23.44", "13:02:11.250;0.5;23.44": "0.5;23.44",
		"7/18/2026 13:02\t0.5\t23.44\t8.1": "0.5\t23.44\t8.1", "13:02:11 -0.1 23.44": "-0.1 23.44",
		"5: 71.2": "", "5:30 71.2 72": "", "13:02 0.5 23.44": "", "2026-07-18 0.5 23.44": "", "2026-07-18 13:02 windy 8": "", "2026-07-18 13:02": "", "13:02:11 23.44": "",
	} {
		got, ok := new(reader).logged(1, line, nil)
		if ok != (want != "") || ok && got != want {
			t.Errorf("%q: %q, %v, want %q", line, got, ok, want)
		}
	}
}
