package notebook

import (
	"math"
	"slices"
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"

	"coldseam/profile"
	"coldseam/profile/unit"
)

// known gives an optional's value, NaN when it is unknown.
func known(o profile.Optional) float64 { return o.Or(math.NaN()) }

// TestHeaderValues: every key that holds a number, read into SI. Lengths by the
// international foot of 0.3048 m, miles of 1609.344 m, ounces of 28.349523125 g; all
// within the rounding to nine decimals that a drop keeps.
func TestHeaderValues(t *testing.T) {
	for _, tc := range []struct {
		line string
		get  func(profile.Drop) float64
		want float64
	}{
		{"bottom: 31 ft", func(d profile.Drop) float64 { return known(d.Bottom) }, 9.4488},
		{"bottom: 31", func(d profile.Drop) float64 { return known(d.Bottom) }, 9.4488}, // in the page's feet
		{"bottom: 12'6\"", func(d profile.Drop) float64 { return known(d.Bottom) }, 3.81},
		{"Bottom: 9,5 m", func(d profile.Drop) float64 { return known(d.Bottom) }, 9.5},
		{"deepest: 40 ft", func(d profile.Drop) float64 { return known(d.Deepest) }, 12.192},
		{"max depth: 40 ft", func(d profile.Drop) float64 { return known(d.Deepest) }, 12.192},
		{"secchi: 9 ft", func(d profile.Drop) float64 { return known(d.Secchi) }, 2.7432},
		{"secchi: 11½", func(d profile.Drop) float64 { return known(d.Secchi) }, 3.5052},
		{"altitude: 1900 ft", func(d profile.Drop) float64 { return known(d.Altitude) }, 579.12},
		{"latitude: 46.1 N", func(d profile.Drop) float64 { return known(d.Latitude) }, 46.1},
		{"latitude: 33° 30' S", func(d profile.Drop) float64 { return known(d.Latitude) }, -33.5},
		{"longitude: 89.3 W", func(d profile.Drop) float64 { return known(d.Longitude) }, -89.3},
		{"altitude: -30 m", func(d profile.Drop) float64 { return known(d.Altitude) }, -30},
		{"lake length: 800 m", func(d profile.Drop) float64 { return known(d.LakeLength) }, 800},
		{"lake length: 1,2 km", func(d profile.Drop) float64 { return known(d.LakeLength) }, 1200},
		{"lake length: 1/2 mi", func(d profile.Drop) float64 { return known(d.LakeLength) }, 804.672},
		{"lake length: 3 miles", func(d profile.Drop) float64 { return known(d.LakeLength) }, 4828.032},
		{"wind: 8 mph", func(d profile.Drop) float64 { return known(d.Wind) }, 3.57632},
		{"line angle: 20", func(d profile.Drop) float64 { return known(d.LineAngle) }, 20},
		{"line-angle: 20 deg", func(d profile.Drop) float64 { return known(d.LineAngle) }, 20},
		{"line angle: 20°", func(d profile.Drop) float64 { return known(d.LineAngle) }, 20},
		{"marks at: gunwale 1.5 ft", func(d profile.Drop) float64 { return d.FreeboardM }, 0.4572},
		{"marks at: gunwale 1.5", func(d profile.Drop) float64 { return d.FreeboardM }, 0.4572},
		{"bulb below zero: 6 in", func(d profile.Drop) float64 { return known(d.BulbBelow) }, 0.1524},
		{"thermometer: reads 32.5 F in ice water", func(d profile.Drop) float64 { return known(d.IcePoint) }, 0.277777778},
		{"thermometer: -0.3 C", func(d profile.Drop) float64 { return known(d.IcePoint) }, -0.3},
		{"thermometer precision: 0.5 F", func(d profile.Drop) float64 { return known(d.Precision) }, 0.277777778},
		{"precision: ±1 C", func(d profile.Drop) float64 { return known(d.Precision) }, 1},
		{"wait: 2 min", func(d profile.Drop) float64 { return known(d.Wait) }, 120},
		{"time constant: 20 s", func(d profile.Drop) float64 { return known(d.TimeConst) }, 20},
		{"fly weight: 1/32 oz", func(d profile.Drop) float64 { return known(d.FlyWeight) }, 0.000885923},
		{"retrieve: 2 in/s", func(d profile.Drop) float64 { return known(d.Retrieve) }, 0.0508},
	} {
		sheets, err := Read([]byte("units: ft F\n"+tc.line+"\n0 74\n"), Options{Name: "p"})
		if err != nil {
			t.Errorf("%s: %v", tc.line, err)
			continue
		}
		if got := tc.get(sheets[0].Drop); !(math.Abs(got-tc.want) < 6e-10) {
			t.Errorf("%s: got %v, want %v", tc.line, got, tc.want)
		}
	}
}

// TestHeaderTexts: every key that holds words, comments cut off, letters as written.
func TestHeaderTexts(t *testing.T) {
	page := `Lake: Alder Kettle # the small one
site: off the reed point
date: 18 July 2026 2:20pm
units: metres C
marks at: water
oxygen: % saturation
fish: Rainbow
weight: 3 oz sinker
sky: cloud
color: stained
anchor: black, smells
notes: wind turned
note: two loons
0 22.5
`
	sheets, err := Read([]byte(page), Options{Name: "p"})
	if err != nil {
		t.Fatal(err)
	}
	d := sheets[0].Drop
	got := []any{d.Water, d.Spot, d.Date, d.Units.String(), d.Marks, d.OxygenUnit, d.For, d.Weight, d.Sky, d.Colour, d.Anchor, d.Notes}
	want := []any{"Alder Kettle", "off the reed point", "2026-07-18 14:20", "m C", profile.MarksAtWater, "%", "Rainbow", "3 oz sinker",
		"cloud", "stained", "black, smells", []string{"wind turned", "two loons"}}
	if diff := cmp.Diff(want, got); diff != "" {
		t.Errorf("(-want +got):\n%s", diff)
	}
}

// badValues is a value that each key refuses; keys that hold any words have a
// control character.
var badValues = map[string]string{
	"water": "Alder\x1bKettle", "spot": "a\nb", "for": "\a", "weight": "\a", "sky": "\a", "colour": "\a", "anchor": "\a", "note": "a\nb", "caught": "a\nb",
	"date": "yesterday", "units": "ft K", "bottom": "31 F", "deepest": "-4 ft", "secchi": "200 m", "altitude": "high", "latitude": "46.1 E", "longitude": "200 W",
	"lake length": "3 hours", "wind": "8 parsecs", "line angle": "80", "marks at": "bow", "bulb below zero": "4 m",
	"thermometer": "reads 60 F in ice water", "thermometer precision": "12 F", "wait": "2 parsecs", "time constant": "-3 s",
	"oxygen": "bubbles", "fly weight": "1 kg", "retrieve": "2",
}

// TestEveryKeyRefuses: every key has a value it refuses, on the page by line, and
// from a flag by the flag's name.
func TestEveryKeyRefuses(t *testing.T) {
	for _, name := range Keys() {
		bad, ok := badValues[name]
		if !ok {
			t.Errorf("%s: no bad value is tried", name)
			continue
		}
		if Help(name) == "" {
			t.Errorf("%s: no help", name)
		}
		if err := Check(name, bad); err == nil {
			t.Errorf("%s: %q is taken", name, bad)
		}
		_, err := Read([]byte("0 ft 74 F"), Options{Name: "p", Flags: []Header{{Key: name, Value: bad, From: "--x"}}})
		if err == nil || !strings.HasPrefix(err.Error(), "--x: ") {
			t.Errorf("%s from a flag: error %v", name, err)
		}
		if strings.ContainsFunc(bad, func(r rune) bool { return r < ' ' }) {
			continue
		}
		_, err = Read([]byte("\n"+name+": "+bad+"\n0 ft 74 F"), Options{Name: "p"})
		if err == nil || !strings.HasPrefix(err.Error(), "p:2: "+name+": ") || strings.Contains(err.Error(), "\n") {
			t.Errorf("%s on a page: error %v", name, err)
		}
	}
	if err := Check("weather", "hot"); err == nil || err.Error() != `"weather" is not a key` {
		t.Errorf("unknown key: %v", err)
	}
	_, err := Read([]byte("0 ft 74 F"), Options{Name: "p", Flags: []Header{{Key: "weather", Value: "hot", From: "--weather"}}})
	if err == nil || err.Error() != `--weather: "weather" is not a key` {
		t.Errorf("unknown flag: %v", err)
	}
}

// TestBareNumbers: a bare length is in the page's units on the page, and refused on
// a flag and in the settings.
func TestBareNumbers(t *testing.T) {
	for _, units := range []string{"ft F", "m C"} {
		sheets, err := Read([]byte("bottom: 9\nunits: "+units+"\n0 24"), Options{Name: "p"})
		if err != nil {
			t.Fatal(err)
		}
		u := sheets[0].Drop.Units.Depth
		if got := u.From(known(sheets[0].Drop.Bottom)); math.Abs(got-9) > 1e-8 {
			t.Errorf("units %s: bottom %v", units, got)
		}
	}
	h := []Header{{Key: "bottom", Value: "31", From: "--bottom"}}
	for _, o := range []Options{{Flags: h}, {Defaults: h}} {
		_, err := Read([]byte("units: ft F\n0 74"), o)
		want := `--bottom: "31" has no unit: write a length with its unit, e.g. 15 ft or 4.5 m`
		if err == nil || err.Error() != want {
			t.Errorf("error %v, want %s", err, want)
		}
	}
}

// TestPrecedence: a flag wins over the page, the page over the settings.
func TestPrecedence(t *testing.T) {
	flag := []Header{{Key: "for", Value: "flag", From: "--for"}, {Key: "units", Value: "m C", From: "--units"}, {Key: "bottom", Value: "9 m", From: "--bottom"}}
	settings := []Header{{Key: "for", Value: "settings", From: "settings"}, {Key: "units", Value: "fathom F", From: "settings"}}
	for _, tc := range []struct {
		name, page       string
		flags, defaults  []Header
		wantFor, reading string
		bottom           float64
	}{
		{"settings alone", "1 35\n2 34", nil, settings, "settings", "1 fathom 35 F", math.NaN()},
		{"page over settings", "for: page\nunits: ft C\nbottom: 30 ft\n1 35", nil, settings, "page", "1 ft 35 C", 9.144},
		{"flag over page", "for: page\nunits: ft F\nbottom: 30 ft\n1 35", flag, settings, "flag", "1 m 35 C", 9},
		{"flag over the bottom of a reading", "units: m C\n5 15\n8 12 B", flag, nil, "flag", "5 m 15 C", 9},
		{"the page's depth, the settings' scale", "units: ft\n1 35", nil, settings, "settings", "1 ft 35 F", math.NaN()},
		{"a unit on the line over all", "units: ft F\n1 m 15 C", flag, settings, "flag", "1 m 15 C", 9},
	} {
		sheets, err := Read([]byte(tc.page), Options{Name: "p", Flags: tc.flags, Defaults: tc.defaults})
		if err != nil {
			t.Errorf("%s: %v", tc.name, err)
			continue
		}
		d := sheets[0].Drop
		if got := listed(sheets)[0]; d.For != tc.wantFor || got != tc.reading {
			t.Errorf("%s: for %q, %q; want %q, %q", tc.name, d.For, got, tc.wantFor, tc.reading)
		}
		if got := known(d.Bottom); !(math.Abs(got-tc.bottom) < 1e-9) && !math.IsNaN(got+tc.bottom) {
			t.Errorf("%s: bottom %v, want %v", tc.name, got, tc.bottom)
		}
	}
}

// TestScale: over 40 is Fahrenheit, up to 31 Celsius, between them the settings, and
// where they say nothing the page is refused. A value that is no lake's on either
// scale does not decide.
func TestScale(t *testing.T) {
	for _, tc := range []struct {
		page, settings string
		want           unit.Temperature // none: asked
	}{
		{"0 40.1", "", unit.Fahrenheit},
		{"0 40", "", unit.NoTemperature},
		{"0 31.1", "", unit.NoTemperature},
		{"0 31", "", unit.Celsius},
		{"0 -1\n1 -0.5", "", unit.Celsius},
		{"0 35", "F", unit.Fahrenheit},
		{"0 35", "C", unit.Celsius},
		{"0 25", "F", unit.Celsius},    // the page's own values are clear
		{"0 60", "C", unit.Fahrenheit}, // likewise
		{"0 742\n1 21\n2 20", "", unit.Celsius},
		{"0 742\n1 72\n2 71", "", unit.Fahrenheit},
		{"0 742", "", unit.Fahrenheit},           // nothing else to go by
		{"0 20\n1 72 F\n2 19", "", unit.Celsius}, // a value with its own scale does not decide for others
	} {
		var asked bool
		o := page{settings: strings.TrimSpace("m " + tc.settings)}.options()
		o.Ask = func(Question) (int, error) { asked = true; return 0, nil }
		p := strings.ReplaceAll(tc.page, " -", ": -")
		sheets, err := Read([]byte(p), o)
		if err != nil {
			t.Errorf("%q: %v", tc.page, err)
			continue
		}
		if tc.want == unit.NoTemperature {
			if !asked {
				t.Errorf("%q: not asked", tc.page)
			}
			continue
		}
		if got := sheets[0].Drop.Readings[0].TempUnit; got != tc.want || asked {
			t.Errorf("%q with settings %q: %v, asked %v; want %v", tc.page, tc.settings, got, asked, tc.want)
		}
	}
}

func TestDates(t *testing.T) {
	for _, tc := range []struct{ in, want, err string }{
		{"2026-07-18", "2026-07-18", ""},
		{"2026-07-18 14:20", "2026-07-18 14:20", ""},
		{"2026-07-18T14:20:59", "2026-07-18 14:20", ""},
		{"18/7/2026", "2026-07-18", ""},
		{"7/18/2026", "2026-07-18", ""},
		{"18.7.2026 6:40", "2026-07-18 06:40", ""},
		{"7/7/2026", "2026-07-07", ""},
		{"18 Jul 2026", "2026-07-18", ""},
		{"July 18, 2026 6:40am", "2026-07-18 06:40", ""},
		{"7/8/2026", "", `"7/8/2026" may be 2026-07-08 or 2026-08-07: write one of these`},
		{"31/2/2026", "", `"2026-02-31" is not a date: write e.g. 2026-07-18 14:20`},
		{"0/7/2026", "", ""},
		{"yesterday", "", `"yesterday" is not a date: write e.g. 2026-07-18 14:20`},
		{"2026-02-30", "", `"2026-02-30" is not a date: write e.g. 2026-07-18 14:20`},
	} {
		got, err := parseDate(tc.in)
		switch {
		case tc.want != "" && (err != nil || got != tc.want):
			t.Errorf("%s: %q, %v; want %q", tc.in, got, err, tc.want)
		case tc.want == "" && (err == nil || tc.err != "" && err.Error() != tc.err):
			t.Errorf("%s: error %v, want %s", tc.in, err, tc.err)
		}
	}
}

// TestKeysAreDistinct: a name given twice would hide a key, and an alias must lead
// to one.
func TestKeysAreDistinct(t *testing.T) {
	names := Keys()
	for i, n := range names {
		if slices.Contains(names[:i], n) {
			t.Errorf("%s stands twice", n)
		}
	}
	for a, n := range aliases {
		if !slices.Contains(names, n) || slices.Contains(names, a) {
			t.Errorf("alias %s leads to %s", a, n)
		}
	}
}

// What was noted in the angler's units is written in them, and what is no short number in
// them in those of SI.
func TestWrittenInOwnUnits(t *testing.T) {
	for in, want := range map[string]string{
		"wind: SW 8 mph": "wind: 8 mph from SW", "wind: 10 kn": "wind: 10 kn", "wind: 4 m/s": "wind: 4 m/s",
		"thermometer: reads 32.5 F in ice water": "thermometer: reads 32.5 F in ice water", "thermometer: 0.3 C": "thermometer: reads 32.54 F in ice water",
		"marks at: gunwale 1.5 ft": "marks at: gunwale 1.5 ft", "retrieve: 2 in/s": "retrieve: 2 in/s", "fly weight: 0.12 g": "fly weight: 0.12 g",
		"bulb below zero: 6 in": "bulb below zero: 0.5 ft",
	} {
		sheets, err := Read([]byte("units: ft F\n"+in+"\n0 70\n"), Options{})
		if err != nil {
			t.Fatal(err)
		}
		if text := Write(sheets[0].Drop); !strings.Contains(text, "\n"+want+"\n") {
			t.Errorf("%s is written\n%s", in, text)
		}
	}
}

// A time of day at the end of a sentence keeps its half of the day.
func TestTimeBeforeStop(t *testing.T) {
	for line, want := range map[string]string{
		"18 July 2026, 2:20 pm. Light SW": "2026-07-18 14:20", "2026-07-18 2:20pm.": "2026-07-18 14:20", "18 July 2026, 2:20 pm": "2026-07-18 14:20",
		"18 July 2026 (2:20 pm) windy": "2026-07-18 14:20", "18 July 2026, 14:20. Windy": "2026-07-18 14:20",
	} {
		sheets, err := Read([]byte(line+"\nunits: ft F\n0 74\n10 60\n"), Options{Name: "p"})
		if err != nil {
			t.Errorf("%s: %v", line, err)
			continue
		}
		if got := sheets[0].Drop.Date; got != want {
			t.Errorf("%s: %s, want %s", line, got, want)
		}
	}
}
