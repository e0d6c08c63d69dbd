package notebook

import (
	"math"
	"strings"
	"testing"

	"coldseam/profile/unit"
)

// TestWindBehindWords: the speed may stand behind words about the wind.
func TestWindBehindWords(t *testing.T) {
	sheets, err := Read([]byte("wind picking up, 12 mph gusts\n0 ft 74 F\n5 ft 73 F\n"), Options{Name: "p"})
	if err != nil {
		t.Fatal(err)
	}
	if got, want := everything(sheets, nil), "wind 12 mph"; !strings.Contains(got, want) {
		t.Errorf("no %q in\n%s", want, got)
	}
}

// Classes of the Beaufort scale, m/s (WMO No. 8, table 5.1); whitecaps begin in the
// fourth. 15 mph sends a small boat in, and 10 mph bows a long leader (common practice).
func TestWindWords(t *testing.T) {
	for _, c := range []struct {
		text      string
		low, high float64
		from      string
	}{
		{"calm", 0, 0.5, ""}, {"light air", 0.3, 1.5, ""}, {"light", 1.6, 3.3, ""}, {"light S", 1.6, 3.3, "S"}, {"S light", 1.6, 3.3, "S"}, {"light wind from the west", 1.6, 3.3, "W"},
		{"breeze", 3.4, 5.4, ""}, {"SW breeze", 3.4, 5.4, "SW"}, {"gentle breeze out of the north", 3.4, 5.4, "N"}, {"light breeze", 1.6, 3.3, ""},
		{"chop", 10 * 0.44704, 15*0.44704 - 0.1, ""}, {"NW chop", 10 * 0.44704, 15*0.44704 - 0.1, "NW"}, {"light chop", 3.4, 10 * 0.44704, ""}, {"a bit of chop", 10 * 0.44704, 7.9, ""},
		{"whitecaps", 15 * 0.44704, 7.9, ""}, {"whitecaps, south-westerly", 15 * 0.44704, 7.9, "SW"}, {"moderate breeze", 5.5, 7.9, ""}, {"strong NNE", 10.8, 13.8, "NNE"},
		{"SW 8", 8 * 0.44704, 8 * 0.44704, "SW"}, {"8 mph from the SW", 8 * 0.44704, 8 * 0.44704, "SW"}, {"8 s", 8 * 0.44704, 8 * 0.44704, "S"}, {"4 m/s", 4, 4, ""}, {"4 m/s from NE", 4, 4, "NE"},
		{"north east 5-10 mph", 10 * 0.44704, 10 * 0.44704, "NE"}, {"SW then NW 8 mph", 8 * 0.44704, 8 * 0.44704, ""}, {"force 3 e", 3.4, 5.4, "E"}, {"calme", 0, 0.5, ""},
	} {
		w, err := readWind(c.text, unit.System{Depth: unit.Foot})
		if v := w.speed.Or(-1); err != nil || w.from != c.from || v < c.low-1e-3 || v > c.high+1e-3 {
			t.Errorf("%q: %+v, %v; want %v to %v from %q", c.text, w, err, c.low, c.high, c.from)
		}
	}
	if w, err := readWind("southerly", unit.System{}); err != nil || w.speed.Known || w.from != "S" {
		t.Errorf("a direction alone: %+v, %v", w, err)
	}
	for _, w := range windWords {
		if w.mps < w.low || w.mps > w.high {
			t.Errorf("%s: %v is not within %v to %v", w.word, w.mps, w.low, w.high)
		}
	}
	for _, text := range []string{"much", "light bay", "", "SW dam", "8 parsecs", "40 m/s gusts"} {
		if w, err := readWind(text, unit.System{Depth: unit.Foot}); err == nil {
			t.Errorf("%q is %+v", text, w)
		}
	}
}

// A wind in words, on a line of its own or behind its key, is taken, what was taken for it
// is told, and its direction stays on the page.
func TestWindOnPages(t *testing.T) {
	for line, want := range map[string][]string{
		"wind: light S":  {"wind: 2.45 m/s from S", `wind "light S" taken as about 5 mph`},
		"light S":        {"wind: 2.45 m/s from S", "note: light S"},
		"wind: SW 8":     {"wind: 8 mph from SW"},
		"chop":           {"wind: 12 mph", "sky: chop", `wind "chop" taken as about 12 mph`},
		"whitecaps":      {"wind: 15 mph", `taken as about 15 mph`},
		"calm":           {"wind: 0 mph", "sky: calm"},
		"breeze":         {"wind: 4.4 m/s", `taken as about 10 mph`},
		"S flat":         {"spot: S flat"},
		"wind: S":        {"wind: S"},
		"wind: much":     {"note: wind: much"},
		"retrieve: slow": {"retrieve: 1.5 in/s", `retrieve "slow" taken as about 1.5 inches a second`},
		"no chop":        {"wind: 0 mph"}, "whitecaps further out": {"wind: 15 mph"},
		"wind S, 12 mph":    {"wind: 12 mph"},
		"sunny, light chop": {"sky: sunny, light chop", "wind: 4.4 m/s"},
	} {
		sheets, err := Read([]byte("units: ft F\n"+line+"\n0 74\n5 73\n15 60\n"), Options{Name: "p"})
		got := everything(sheets, err)
		for _, w := range want {
			if !strings.Contains(got, w) {
				t.Errorf("%q: no %q in\n%s", line, w, got)
			}
		}
	}
	sheets, err := Read([]byte("units: m C\nwind: light\nretrieve: crawl\n0 23\n2 22\n"), Options{Name: "p"})
	if got := everything(sheets, err); !strings.Contains(got, "taken as about 2 m/s") || !strings.Contains(got, "taken as about 1.5 cm a second") {
		t.Error(got)
	}
	if _, err := WindMps("S"); err == nil || !strings.Contains(err.Error(), "how strong") {
		t.Errorf("a flag with a direction alone: %v", err)
	}
	if v, err := WindMps("light SW"); err != nil || v != 2.45 {
		t.Errorf("light SW is %v, %v", v, err)
	}
}

// An ultra-slow retrieve gathers 2 to 6 inches in 5 to 10 seconds, pulls of 3 to 4 inches
// every one or two seconds are fast, and the rule of a leader of the depth and a quarter
// holds from 1.8 to 2.3 in/s (all common practice).
func TestRetrieveWords(t *testing.T) {
	for text, in := range map[string][2]float64{
		"crawl": {2. / 10, 6. / 5}, "very slow": {0.2, 1.2}, "a slow crawl": {0.2, 1.2}, "slow": {1, 2}, "slow hand-twist": {1, 2}, "hand twist": {1, 2},
		"steady": {1.8, 2.3}, "fast": {3. / 2, 4}, "fast strips": {1.5, 4}, "2 in/s": {2, 2}, "5 cm/s": {5 / 2.54, 5 / 2.54},
	} {
		v, err := RetrieveMps(text)
		if inches := unit.InchPerSecond.From(v); err != nil || inches < in[0]-1e-9 || inches > in[1]+1e-9 {
			t.Errorf("%q: %v in/s, %v; want %v", text, inches, err, in)
		}
	}
	for _, r := range retrieveWords {
		if r.inches < r.least || r.inches > r.most || math.IsNaN(r.inches) {
			t.Errorf("%+v", r)
		}
	}
	for _, text := range []string{"", "2", "lazy", "slow today", "strip"} {
		if v, err := RetrieveMps(text); err == nil {
			t.Errorf("%q is %v", text, v)
		}
	}
}
