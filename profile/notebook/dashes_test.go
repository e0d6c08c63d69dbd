package notebook

import "testing"

// TestWordsBehindReading: a depth and a temperature with words behind them are a reading,
// however the words are parted from it; dashes in the temperature's place are none.
func TestWordsBehindReading(t *testing.T) {
	for line, want := range map[string]int{
		"15 ft 66 -- saw a rise here": 4,
		"15 ft 66 -- weeds here":      4,
		"15: 66 --- anchor dragging":  4,
		"15 66 - weeds here":          4,
		"15 66, weeds here":           4,
		"20 58 dead calm here":        4,
		"12ft 70 (weeds)":             4,
		"12' 64 bottom soft":          4,
		"15 66 -- saw 2 fish":         4,
		"15 66 -- 3 follows, lost 1":  4,
		"15 ft 66 -- anchor at 9 am":  4,
		"15 ft --":                    3,
		"15 ft -- lost it":            3,
	} {
		sheets, err := Read([]byte("units: ft F\n5 ft 74\n10 ft 72\n"+line+"\n25 ft 55\n"), Options{Name: "p"})
		if err != nil {
			t.Errorf("%q: %v", line, err)
			continue
		}
		if got := len(sheets[0].Drop.Readings); got != want {
			t.Errorf("%q: %d readings, want %d", line, got, want)
		}
	}
}
